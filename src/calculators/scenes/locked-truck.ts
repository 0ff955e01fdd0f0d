import type { At, Scene, Shape } from '../show.ts';
import { bodyShapes, frameShapes, shape } from './truck.ts';

export interface TruckScene {
  readonly wheelbase: number;
  /** Center of gravity: ahead of the rear axle, and above the road. */
  readonly cgAhead: number;
  readonly cgHeight: number;
  /** A load in the bed, by its center. */
  readonly load?: { readonly ahead: number; readonly height: number };
  readonly locked: 'front' | 'rear' | 'together';
  /** What to write under each axle. */
  readonly labels: { readonly front: string; readonly rear: string };
}

/**
 * The outline of truck.ts with what locks. Wheelbase, center of gravity and load are to scale; body and wheels are any
 * pickup's. A locked wheel carries a cross and leaves a mark behind it.
 */
export function truckScene(v: TruckScene): Scene {
  const L = v.wheelbase;
  const radius = shape.tireRadius * L;
  // The front axle stands at −L, the rear axle at 0: the nose points left and "ahead" counts to the left.
  const place = (x: number, z: number): At => [-L - x, z + shape.railHeight * L];
  const wheel = (ahead: number, locked: boolean): Shape[] => {
    const [x, y]: At = [-ahead * L, radius];
    const arm = radius * 0.7;
    return [
      { circle: [x, y], radius, tone: locked ? 'alert' : 'plain', filled: true },
      ...(locked
        ? [1, -1].map((sign): Shape => ({ line: [[x - arm, y - sign * arm], [x + arm, y + sign * arm]], tone: 'alert' }))
        : [{ circle: [x, y], radius: radius * 0.5, tone: 'plain' } as Shape]),
    ];
  };
  const skid = (ahead: number): Shape => ({ line: [[-ahead * L + radius * 0.4, 0.018 * L], [-ahead * L + radius * 3, 0.018 * L]], tone: 'alert' });
  const frontLocked = v.locked !== 'rear';
  const rearLocked = v.locked !== 'front';
  const half = 0.1 * L;
  const cg: At = [-v.cgAhead, v.cgHeight];
  const top = Math.max(0.62 * L, v.cgHeight + 0.12 * L, v.load ? v.load.height + 0.2 * L : 0);
  return {
    box: [Math.min(-1.42 * L, -v.cgAhead - 0.2 * L), -0.3 * L, Math.max(0.44 * L, v.load ? -v.load.ahead + 0.2 * L : 0), top],
    shapes: [
      { line: [[-1.42 * L, 0], [0.44 * L, 0]], tone: 'ground' },
      ...frameShapes({ wheelbase: L, place, tone: 'ghost' }),
      ...bodyShapes({ wheelbase: L, place, tone: 'body' }),
      ...(v.load ? [
        { line: [[-v.load.ahead - half, v.load.height - half * 0.8], [-v.load.ahead + half, v.load.height - half * 0.8], [-v.load.ahead + half, v.load.height + half * 0.8], [-v.load.ahead - half, v.load.height + half * 0.8]], tone: 'accent', closed: true } as Shape,
        { text: 'load', at: [-v.load.ahead, v.load.height + half], small: true } as Shape,
      ] : []),
      ...(frontLocked ? [skid(1)] : []), ...(rearLocked ? [skid(0)] : []),
      ...wheel(1, frontLocked), ...wheel(0, rearLocked),
      { circle: cg, radius: 0.03 * L, tone: 'accent', filled: true },
      { text: 'center of gravity', at: [cg[0], cg[1] + 0.05 * L], small: true },
      { text: frontLocked ? 'front locks' : 'front rolls', at: [-L, -0.12 * L], tone: frontLocked ? 'alert' : 'front' },
      { text: v.labels.front, at: [-L, -0.22 * L], tone: 'front' },
      { text: rearLocked ? 'rear locks' : 'rear rolls', at: [0, -0.12 * L], tone: rearLocked ? 'alert' : 'rear' },
      { text: v.labels.rear, at: [0, -0.22 * L], tone: 'rear' },
    ],
  };
}
