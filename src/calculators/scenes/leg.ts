import type { Flat } from '../../engine/legAngles.ts';
import type { At, Scene } from '../show.ts';

export interface LegScene {
  readonly hip: Flat;
  readonly kneePoint: Flat;
  readonly anklePoint: Flat;
  readonly heel: Flat;
  readonly pad: Flat;
  readonly pivot: Flat;
  readonly padArm: number;
  readonly kneeLabel: string;
  readonly ankleLabel: string;
}

/** A leg from the side, to scale, front on the left. */
export function legScene(v: LegScene): Scene {
  const p = (a: Flat): At => [-a.x, a.z];
  const all = [v.hip, v.kneePoint, v.anklePoint, v.heel, v.pad, v.pivot].map(p);
  const [left, right] = [Math.min(...all.map((a) => a[0])), Math.max(...all.map((a) => a[0]))];
  const high = Math.max(...all.map((a) => a[1]));
  const size = Math.max(right - left, high, 0.2);
  const face = Math.atan2(v.pad.z - v.pivot.z, -(v.pad.x - v.pivot.x));
  const half = 0.05 * size;
  return {
    box: [left - 0.14 * size, -0.1 * size, right + 0.16 * size, high + 0.16 * size],
    shapes: [
      { line: [[left - 0.1 * size, 0], [right + 0.12 * size, 0]], tone: 'ground' },
      { capsule: [p(v.pivot), p(v.pad)], radius: 0.008 * size, tone: 'plain' },
      { line: [[p(v.pad)[0] - half * Math.cos(face), p(v.pad)[1] - half * Math.sin(face)], [p(v.pad)[0] + half * Math.cos(face), p(v.pad)[1] + half * Math.sin(face)]], tone: 'frame' },
      { capsule: [p(v.hip), p(v.kneePoint)], radius: 0.05 * size, tone: 'body' },
      { capsule: [p(v.kneePoint), p(v.anklePoint)], radius: 0.035 * size, tone: 'body' },
      { line: [p(v.anklePoint), p(v.heel), p(v.pad), p(v.anklePoint)], tone: 'body' },
      { line: [p(v.hip), p(v.pad)], tone: 'ghost' },
      { arrow: [p(v.pad), [p(v.pad)[0] + 0.13 * size * Math.sin(face), p(v.pad)[1] - 0.13 * size * Math.cos(face)]], tone: 'accent' },
      { circle: p(v.hip), radius: 0.018 * size, tone: 'accent', filled: true },
      { circle: p(v.kneePoint), radius: 0.018 * size, tone: 'accent', filled: true },
      { circle: p(v.anklePoint), radius: 0.018 * size, tone: 'accent', filled: true },
      { text: `knee ${v.kneeLabel}`, at: [p(v.kneePoint)[0], p(v.kneePoint)[1] + 0.08 * size], anchor: 'middle' },
      { text: v.ankleLabel, at: [p(v.anklePoint)[0] + 0.05 * size, p(v.anklePoint)[1] - 0.01 * size], anchor: 'start' },
      { text: 'hip', at: [p(v.hip)[0] + 0.06 * size, p(v.hip)[1]], anchor: 'start' },
    ],
  };
}
