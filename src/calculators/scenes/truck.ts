import type { At, Shape, Tone } from '../show.ts';

/**
 * An invented pickup from its left side, front on the left, sized by its wheelbase alone. Truck axes in meters: x
 * forward of the front axle line, z up from the lower edge of the frame rail. `place` puts such a point on the picture,
 * so one outline serves a truck that stands, is lifted by its tail, or has its body dropped.
 */
export type Place = (x: number, z: number) => At;

export interface Outline {
  readonly wheelbase: number;
  readonly place: Place;
  readonly tone: Tone;
}

/** Where the invented truck has its parts, as parts of its wheelbase. */
export const shape = { railHeight: 0.093, tireRadius: 0.109, nose: 0.28, tail: -1.37, roof: 0.46 } as const;

type Points = readonly (readonly [number, number])[];

/** Half a wheel opening, over the axle at x, from the front edge to the rear one. */
function opening(x: number, radius: number): Points {
  const axle = shape.tireRadius - shape.railHeight;
  return Array.from({ length: 9 }, (_, k) => {
    const angle = (0.07 + (0.86 * k) / 8) * Math.PI;
    return [x + radius * Math.cos(angle), axle + radius * Math.sin(angle)] as const;
  });
}

const cab: Points = [
  [0.25, 0.04], ...opening(0, 0.135), [-0.62, 0.04], [-0.615, 0.29], [-0.58, 0.46], [-0.33, 0.455], [-0.17, 0.28], [0.25, 0.225], [shape.nose, 0.17], [0.275, 0.04],
];
const window: Points = [[-0.215, 0.285], [-0.345, 0.43], [-0.565, 0.43], [-0.59, 0.285]];
const bed: Points = [[-0.645, 0.05], ...opening(-1, 0.14), [-1.36, 0.05], [shape.tail, 0.27], [-0.645, 0.275]];
const rail: Points = [
  [0.26, 0], [-0.79, 0], [-0.87, 0.1], [-1.12, 0.1], [-1.2, 0.045], [-1.35, 0.045], [-1.35, 0.08], [-1.19, 0.08], [-1.11, 0.135], [-0.88, 0.135], [-0.8, 0.035], [0.26, 0.035],
];

const drawn = (points: Points, { wheelbase, place, tone }: Outline): Shape => ({ line: points.map(([x, z]) => place(x * wheelbase, z * wheelbase)), tone, closed: true });

/** Cab with hood and fenders, side window, bed. */
export const bodyShapes = (o: Outline): Shape[] => [cab, window, bed].map((points) => drawn(points, o));

/** One frame rail with its kick-up over the rear axle. */
export const frameShapes = (o: Outline): Shape[] => [drawn(rail, o)];

/** Two wheels; `centers` on the picture, front first. */
export const wheelShapes = (centers: readonly [At, At], radius: number): Shape[] => centers.flatMap((circle): Shape[] => [
  { circle, radius, tone: 'plain', filled: true },
  { circle, radius: radius * 0.55, tone: 'plain' },
]);
