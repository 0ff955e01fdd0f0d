import type { At, Scene, Shape } from '../show.ts';
import { bodyShapes, frameShapes, shape, wheelShapes } from './truck.ts';

export interface DropHeightScene {
  /** How far the frame came down at each axle, and the body over the frame. */
  readonly frameDown: { readonly front: number; readonly rear: number };
  readonly bodyDown: number;
  readonly rearFraction: number;
  readonly before: number;
  readonly now: number;
  readonly label: string;
}

/** Lengths along the truck are invented, so are its outlines; heights moved are to scale. */
export function dropHeightScene(v: DropHeightScene): Scene {
  const L = 2.743;
  const rail = shape.railHeight * L;
  const lowered = (down: number) => (x: number, z: number): At => [-x, z + rail - down - (v.frameDown.front + ((v.frameDown.rear - v.frameDown.front) * -x) / L)];
  const x = v.rearFraction * L;
  const lowest = Math.min(0, v.now - 0.1);
  const highest = Math.max((shape.roof + shape.railHeight) * L, v.before, v.now, (shape.roof + shape.railHeight) * L - v.bodyDown - Math.min(v.frameDown.front, v.frameDown.rear));
  const center = (at: At, tone: 'ghost' | 'accent'): Shape => ({ circle: at, radius: 0.025 * L, tone, filled: true });
  return {
    box: [-0.36 * L, lowest - 0.1 * L, 1.76 * L, highest + 0.08 * L],
    shapes: [
      ...bodyShapes({ wheelbase: L, place: (px, pz) => [-px, pz + rail], tone: 'ghost' }),
      ...frameShapes({ wheelbase: L, place: lowered(0), tone: 'frame' }),
      ...bodyShapes({ wheelbase: L, place: lowered(v.bodyDown), tone: 'body' }),
      ...wheelShapes([[0, shape.tireRadius * L], [L, shape.tireRadius * L]], shape.tireRadius * L),
      { line: [[-0.36 * L, 0], [1.76 * L, 0]], tone: 'ground' },
      { line: [[x - 0.08 * L, v.before], [x + 0.08 * L, v.before]], tone: 'ghost' },
      center([x, v.before], 'ghost'), center([x, v.now], 'accent'),
      { span: [[1.42 * L, 0], [1.42 * L, v.now]], label: v.label },
      { line: [[x, v.now], [1.42 * L, v.now]], tone: 'ghost' },
    ],
  };
}
