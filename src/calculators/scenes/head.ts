import type { At, Scene, Shape, Tone } from '../show.ts';
import { bodyShapes, frameShapes, shape, wheelShapes } from './truck.ts';

export interface HeadScene {
  readonly wheelbase: number;
  /** rad, + nose up */
  readonly tilt: number;
  /** Of the frame over its axles, front and rear. */
  readonly moved: readonly [number, number];
  readonly reservoir: At;
  readonly calipers: readonly { readonly at: At; readonly tone: Tone; readonly label: string; readonly below: boolean }[];
}

/** The truck from its left, front on the left, with the level of its reservoir carried across as a level line. */
export function headScene(v: HeadScene): Scene {
  const L = v.wheelbase;
  const [cos, sin] = [Math.cos(v.tilt), Math.sin(v.tilt)];
  // Truck axes: x forward of the front axle, z up from the road. Drawn front left, so x turns round.
  const put = (x: number, z: number): At => [-(x * cos - z * sin), z * cos + x * sin];
  const rail = shape.railHeight * L * 0.9;
  const lift = (x: number): number => v.moved[0] + ((v.moved[1] - v.moved[0]) * -x) / L;
  const outline = { wheelbase: L, place: (x: number, z: number): At => put(x, z + rail + lift(x)), tone: 'body' as const };
  const wheel = shape.tireRadius * L;
  const level = put(...v.reservoir)[1];
  const ends = [put(0.3 * L, 0), put(-1.4 * L, 0)] as const;
  const side = 0.03 * L;
  const shapes: Shape[] = [
    ...bodyShapes(outline), ...frameShapes({ ...outline, tone: 'ghost' }), ...wheelShapes([put(0, wheel), put(-L, wheel)], wheel),
    { line: [ends[0], ends[1]], tone: 'ground' },
    { line: [[-0.36 * L, level], [1.48 * L, level]], tone: 'accent' },
    { circle: put(...v.reservoir), radius: side, tone: 'accent', filled: true },
    ...v.calipers.flatMap(({ at, tone, label, below }): Shape[] => {
      const [x, y] = put(...at);
      return [
        { circle: [x, y], radius: side * 0.8, tone: below ? 'alert' : tone, filled: true },
        { line: [[x, y], [x, level]], tone: below ? 'alert' : tone },
        { text: label, at: [x, Math.min(...v.calipers.map((c) => put(...c.at)[1])) - 0.34 * L], tone: below ? 'alert' : tone },
      ];
    }),
  ];
  const ys = [...ends.map((p) => p[1]), level, put(-0.4 * L, 0.62 * L)[1], put(0, 0)[1]];
  const low = Math.min(...ys, Math.min(...v.calipers.map((c) => put(...c.at)[1])) - 0.3 * L);
  const top = Math.max(...ys) + 0.14 * L;
  return { box: [-0.4 * L, low - 0.12 * L, 1.5 * L, top], shapes: [...shapes, { text: 'level line: fluid in the reservoir', at: [-0.36 * L, top - 0.07 * L], anchor: 'start', small: true }] };
}
