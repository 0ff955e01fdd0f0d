import type { At, Scene } from '../show.ts';
import { bodyShapes, frameShapes, shape, wheelShapes } from './truck.ts';

export interface AxleLiftScene {
  readonly wheelbase: number;
  readonly loadedRadius: number;
  readonly cgHeight: number;
  readonly rearFraction: number;
  /** Rise of the rear axle's center over level. */
  readonly lift: number;
  readonly labels: { readonly lift: string; readonly reading: string };
}

/** The truck with its tail up, turned about the front axle's center: front on a scale, rear axle on a stand. Front on the left. */
export function axleLiftScene(v: AxleLiftScene): Scene {
  const { wheelbase: L, loadedRadius: R } = v;
  const [sin, cos] = [v.lift / L, Math.sqrt(1 - (v.lift / L) ** 2)];
  /** x forward of the front axle, up from the line through both axle centers. */
  const turned = (x: number, up: number): At => [-(x * cos + up * sin), R - x * sin + up * cos];
  const rail = (shape.railHeight - shape.tireRadius) * L;
  const place = (x: number, z: number): At => turned(x, z + rail);
  const rear = turned(-L, 0);
  const cg = turned(-v.rearFraction * L, v.cgHeight - R);
  const foot = turned(-v.rearFraction * L, 0);
  const pad = 0.03 * L;
  const right = 1.62 * L;
  return {
    box: [-0.42 * L, -0.2 * L, right, R + v.lift + 0.6 * L],
    shapes: [
      ...frameShapes({ wheelbase: L, place, tone: 'ghost' }),
      ...bodyShapes({ wheelbase: L, place, tone: 'body' }),
      ...wheelShapes([[0, R], rear], R),
      { line: [turned(0, 0), rear], tone: 'ghost' },
      { line: [[-0.12 * L, 0], [0.12 * L, 0], [0.12 * L, -pad], [-0.12 * L, -pad]], tone: 'front', closed: true, filled: true },
      { line: [[-0.42 * L, -pad], [right, -pad]], tone: 'ground' },
      { line: [[rear[0] - 0.09 * L, -pad], [rear[0], rear[1] - 0.02 * L], [rear[0] + 0.09 * L, -pad]], tone: 'plain', closed: true },
      // Wedges a finger clear of the front tires, on both sides.
      ...[-1, 1].map((side) => ({ line: [[side * R * 0.95, 0], [side * (R * 0.95 + 0.07 * L), 0], [side * (R * 0.95 + 0.07 * L), 0.05 * L]] as At[], tone: 'alert' as const, closed: true })),
      { line: [foot, cg], tone: 'accent' },
      { line: [cg, [cg[0], 0]], tone: 'ghost' },
      { circle: cg, radius: 0.022 * L, tone: 'accent', filled: true },
      { span: [[rear[0] + 0.24 * L, R], [rear[0] + 0.24 * L, R + v.lift]], label: v.labels.lift },
      { text: v.labels.reading, at: [0, -0.14 * L], tone: 'front' },
    ],
  };
}
