import type { At, Scene, Shape } from '../show.ts';

export interface PadFloorScene {
  readonly pivotHeight: number;
  readonly padArm: number;
  readonly edgeArm: number;
  readonly restAngle: number;
  readonly toeStart: number;
  readonly toeSlope: number;
  readonly stack: number;
  readonly at: number;
  readonly contact: number;
  readonly gap: string;
  readonly heel: string;
}

/** The hung pedal over floor and toe board from the side, to scale, front on the left. */
export function padFloorScene(v: PadFloorScene): Scene {
  const size = Math.max(v.pivotHeight, v.edgeArm);
  const on = (radius: number, travel: number): At => {
    const angle = v.restAngle + travel / v.padArm;
    return [-radius * Math.sin(angle), v.pivotHeight - radius * Math.cos(angle)];
  };
  const bend: At = [-v.toeStart, 0];
  const rise = Math.min(0.95 * size, 0.9 * size * Math.tan(Math.min(v.toeSlope, 1.4)));
  const toe: At = [bend[0] - (v.toeSlope > 0.02 ? rise / Math.tan(v.toeSlope) : 0.8 * size), v.toeSlope > 0.02 ? rise : 0];
  const back: At = [Math.max(0.75 * size, bend[0] + 0.3 * size), 0];
  // The loose layers: both planes moved square to themselves, met at the bend.
  const lift = v.stack * Math.tan(v.toeSlope / 2);
  const carpet: At[] = [[back[0], v.stack], [bend[0] + lift, v.stack], [toe[0] + v.stack * Math.sin(v.toeSlope), toe[1] + v.stack * Math.cos(v.toeSlope)]];
  const arm = (travel: number, tone: 'plain' | 'ghost'): Shape[] => [{ line: [[0, v.pivotHeight], on(v.edgeArm, travel)], tone }];
  const half = v.edgeArm - v.padArm;
  const edge = on(v.edgeArm, v.at);
  // Square from the pad's edge to whichever of the two it is nearer.
  const gaps = [0, v.toeSlope].map((slope) => ({ slope, left: (edge[0] - (slope === 0 ? 0 : bend[0])) * Math.sin(slope) + edge[1] * Math.cos(slope) - v.stack }));
  const gap = gaps.reduce((a, b) => (b.left < a.left ? b : a));
  const foot: At = [edge[0] - gap.left * Math.sin(gap.slope), edge[1] - gap.left * Math.cos(gap.slope)];
  return {
    box: [Math.min(toe[0], on(v.edgeArm, v.contact)[0]) - 0.1 * size, -0.12 * size, back[0] + 0.1 * size, v.pivotHeight + 0.16 * size],
    shapes: [
      { line: [back, bend, toe], tone: 'ground' },
      { line: carpet, tone: 'body' },
      ...arm(0, 'ghost'), ...arm(v.contact, 'ghost'),
      { capsule: [[0, v.pivotHeight], on(v.padArm, v.at)], radius: 0.014 * size, tone: 'plain' },
      { capsule: [on(v.padArm - half, v.at), edge], radius: 0.012 * size, tone: 'accent' },
      ...(gap.left > 0.02 * size ? [{ line: [edge, foot], tone: 'alert' } as Shape] : []),
      { circle: [0, v.pivotHeight], radius: 0.022 * size, tone: 'plain', filled: true },
      { text: 'pivot', at: [0.05 * size, v.pivotHeight + 0.02 * size], anchor: 'start' },
      { text: `${v.gap} to carpet`, at: [back[0] + 0.06 * size, v.pivotHeight * 0.42], anchor: 'end' },
      { text: `pad ${v.heel} over heel`, at: [back[0] + 0.06 * size, -0.09 * size], anchor: 'end', small: true },
    ],
  };
}
