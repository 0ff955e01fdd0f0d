import type { At, Scene, Shape } from '../show.ts';
import type { Place } from './truck.ts';
import { bodyShapes, frameShapes, shape, wheelShapes } from './truck.ts';

export interface ParkingScene {
  readonly wheelbase: number;
  readonly cgHeight: number;
  readonly rearFraction: number;
  /** Rise over run; the truck's nose is on the left. */
  readonly grade: number;
  readonly nose: 'up' | 'down';
  /** Loads on the road over the weight, square to it, and the pull along it. */
  readonly front: number;
  readonly rear: number;
  readonly pull: number;
  readonly slides: boolean;
  readonly labels: { readonly pull: string; readonly front: string; readonly rear: string; readonly grade: string };
}

/** The parked truck on its hill: weight, what the road carries at each axle and what the rear tires hold. Force arrows share one scale, 0.55 wheelbase for the whole weight. */
export function parkingScene(v: ParkingScene): Scene {
  const L = v.wheelbase;
  const angle = Math.atan(v.grade) * (v.nose === 'up' ? -1 : 1);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  // Road axes: front wheel's contact at the origin, x to the rear, y off the road.
  const at = (x: number, y: number): At => [x * c - y * s, x * s + y * c];
  const place: Place = (x, z) => at(-x, z + shape.railHeight * L);
  const force = (part: number): number => part * 0.55 * L;
  const cg = at(v.rearFraction * L, v.cgHeight);
  const load = (x: number, part: number, tone: 'front' | 'rear', label: string): Shape[] => [
    { arrow: [at(x, -force(part) - 0.02 * L), at(x, -0.02 * L)], tone },
    { text: label, at: [at(x, -force(part))[0], at(x, -force(part))[1] - 0.1 * L], tone },
  ];
  const uphill = v.nose === 'up' ? -1 : 1;
  const tire: At = at(L + uphill * 0.14 * L, 0.03 * L);
  const corners = [at(-0.5 * L, 0), at(1.55 * L, 0), at(0.58 * L, 0.56 * L), at(-0.28 * L, 0.35 * L), at(1.4 * L, 0.4 * L), at(0, -force(v.front) - 0.2 * L), at(L, -force(v.rear) - 0.2 * L)];
  const [xs, ys] = [corners.map((p) => p[0]), corners.map((p) => p[1])];
  return {
    box: [Math.min(...xs) - 0.04 * L, Math.min(...ys) - 0.04 * L, Math.max(...xs) + 0.04 * L, Math.max(...ys) + 0.14 * L],
    shapes: [
      ...frameShapes({ wheelbase: L, place, tone: 'ghost' }), ...bodyShapes({ wheelbase: L, place, tone: 'body' }),
      ...wheelShapes([at(0, shape.tireRadius * L), at(L, shape.tireRadius * L)], shape.tireRadius * L),
      { line: [at(-0.48 * L, 0), at(1.53 * L, 0)], tone: 'ground' },
      ...load(0, v.front, 'front', v.labels.front), ...load(L, v.rear, 'rear', v.labels.rear),
      { arrow: [[cg[0], cg[1]], [cg[0], cg[1] - 0.18 * L]], tone: 'plain' },
      { circle: cg, radius: 0.022 * L, tone: 'accent', filled: true },
      { arrow: [tire, [tire[0] + uphill * force(v.pull) * c, tire[1] + uphill * force(v.pull) * s]], tone: v.slides ? 'alert' : 'accent' },
      { text: v.labels.pull, at: [0.52 * L * c, 0.52 * L * s - 0.16 * L], ...(v.slides ? { tone: 'alert' as const } : {}) },
      { text: v.labels.grade, at: [Math.min(...xs), Math.max(...ys) + 0.06 * L], anchor: 'start' },
    ],
  };
}
