import type { At, Scene, Shape } from '../show.ts';

export interface PedalScene {
  readonly padArm: number;
  readonly clevisArm: number;
  readonly boreOffset: number;
  readonly rodLength: number;
  readonly footAngle: number;
  /** Clevis arm from square to the bore axis, + as the pedal goes down: now, at rest, at the end of the swing. */
  readonly armAngle: number;
  readonly restAngle: number;
  readonly fullAngle: number;
  /** Pivot to ball seat along the bore, now, at rest and at the end. */
  readonly rodPosition: number;
  readonly restPosition: number;
  readonly fullPosition: number;
}

/**
 * The hung pedal from the side, front of the truck to the left, to scale. Pad, clevis and pivot are drawn in one line;
 * a bent arm has the same lever as long as the two distances are straight ones.
 */
export function pedalScene(v: PedalScene): Scene {
  const reach = v.padArm;
  const on = (radius: number, angle: number): At => [-radius * Math.sin(angle), -radius * Math.cos(angle)];
  const clevis = on(v.clevisArm, v.armAngle);
  const pad = on(v.padArm, v.armAngle);
  const seat: At = [-v.rodPosition, -v.boreOffset];
  const bore = reach * 0.05;
  const mouth = -v.restPosition + bore * 0.4;
  const bottom = -v.fullPosition - bore * 1.2;
  const arc = Array.from({ length: 25 }, (_, k) => on(v.padArm, v.restAngle + ((v.fullAngle - v.restAngle) * k) / 24));
  // The pad's path runs forward square to the arm; the foot pushes forward and off it by the foot angle, toward the floor.
  const lean = v.footAngle - v.armAngle;
  const from: At = [pad[0] + Math.cos(lean) * reach * 0.24, pad[1] + Math.sin(lean) * reach * 0.24];
  const face = [on(v.padArm - bore * 1.7, v.armAngle), on(v.padArm + bore * 1.7, v.armAngle)] as const;
  const left = Math.min(bottom - reach * 0.06, ...arc.map((p) => p[0])) - reach * 0.04;
  const right = Math.max(on(v.padArm, v.restAngle)[0], 0) + reach * 0.38;
  const low = Math.min(...arc.map((p) => p[1]), -v.boreOffset) - reach * 0.12;
  const high = reach * 0.14;
  const axisEnd = Math.max(reach * 0.12, on(v.clevisArm, v.restAngle)[0] + reach * 0.08);
  const master: Shape[] = [
    { line: [[mouth, -v.boreOffset + bore], [bottom, -v.boreOffset + bore], [bottom, -v.boreOffset - bore], [mouth, -v.boreOffset - bore]], tone: 'plain' },
    { line: [[mouth, -v.boreOffset + bore * 2], [mouth, -v.boreOffset - bore * 2]], tone: 'frame' },
    { line: [[seat[0], -v.boreOffset + bore * 0.85], [seat[0], -v.boreOffset - bore * 0.85]], tone: 'frame' },
    { line: [[left, -v.boreOffset], [axisEnd, -v.boreOffset]], tone: 'ghost' },
  ];
  return {
    box: [left, low, right, high],
    shapes: [
      { line: arc, tone: 'ghost' },
      { line: [[0, 0], on(v.padArm, v.restAngle)], tone: 'ghost' },
      ...master,
      { capsule: [[0, 0], pad], radius: reach * 0.018, tone: 'plain' },
      { line: face, tone: 'frame' },
      { capsule: [clevis, seat], radius: reach * 0.01, tone: 'accent' },
      { circle: clevis, radius: reach * 0.022, tone: 'accent', filled: true },
      { circle: [0, 0], radius: reach * 0.032, tone: 'plain', filled: true },
      { arrow: [from, pad], tone: 'accent' },
      { text: 'foot', at: [from[0] + reach * 0.01, from[1] - reach * 0.05], anchor: 'start' },
      { text: 'pivot', at: [reach * 0.06, reach * 0.03], anchor: 'start' },
      { text: 'master', at: [mouth - reach * 0.02, -v.boreOffset + bore * 1.5], anchor: 'end' },
      { text: 'bore axis', at: [axisEnd + reach * 0.02, -v.boreOffset - reach * 0.015], anchor: 'start', small: true },
    ],
  };
}
