import type { Scene, Shape } from '../show.ts';
import { bodyShapes, frameShapes, shape, wheelShapes } from './truck.ts';

export interface LoadScene {
  readonly wheelbase: number;
  readonly cgHeight: number;
  /** Static rear load over weight: where the center of gravity stands between the axles. */
  readonly rearFraction: number;
  readonly rate: number;
  /** Axle loads over the weight, at rest and now. */
  readonly atRest: { readonly front: number; readonly rear: number };
  readonly now: { readonly front: number; readonly rear: number };
  readonly labels: { readonly front: string; readonly rear: string; readonly push: string };
}

/**
 * The free body of a braking truck, traveling left. Force arrows share one scale, 0.6 wheelbase for the whole weight. Solid
 * arrows under the tires: axle loads now; dashed lines beside them: at rest. The road's pull on the tires is one arrow,
 * because how the axles share it does not change the loads.
 */
export function loadScene(v: LoadScene): Scene {
  const L = v.wheelbase;
  const force = (part: number): number => part * 0.6 * L;
  const rail = shape.railHeight * L;
  const place = (x: number, z: number): readonly [number, number] => [-x, z + rail];
  const cg = [v.rearFraction * L, v.cgHeight] as const;
  const roof = Math.max((shape.roof + shape.railHeight) * L, v.cgHeight) + 0.06 * L;
  const load = (x: number, side: 'front' | 'rear'): Shape[] => [
    { line: [[x + 0.07 * L, 0], [x + 0.07 * L, -force(v.atRest[side])]], tone: 'ghost' },
    { line: [[x + 0.05 * L, -force(v.atRest[side])], [x + 0.09 * L, -force(v.atRest[side])]], tone: 'ghost' },
    { arrow: [[x, -force(v.now[side])], [x, 0]], tone: side },
    { text: v.labels[side], at: [x, -Math.max(force(v.now[side]), force(v.atRest[side])) - 0.09 * L], tone: side },
  ];
  return {
    box: [-0.36 * L, -0.72 * L, 1.48 * L, roof],
    shapes: [
      ...frameShapes({ wheelbase: L, place, tone: 'ghost' }),
      ...bodyShapes({ wheelbase: L, place, tone: 'body' }),
      ...wheelShapes([[0, shape.tireRadius * L], [L, shape.tireRadius * L]], shape.tireRadius * L),
      { line: [[-0.36 * L, 0], [1.48 * L, 0]], tone: 'ground' },
      ...load(0, 'front'), ...load(L, 'rear'),
      { arrow: [cg, [cg[0] - force(v.rate), cg[1]]], tone: 'accent' },
      { arrow: [cg, [cg[0], cg[1] - 0.14 * L]], tone: 'plain' },
      { circle: cg, radius: 0.022 * L, tone: 'accent', filled: true },
      { text: 'push of the mass', at: [1.46 * L, 0.5 * L], anchor: 'end', small: true },
      { text: v.labels.push, at: [1.46 * L, 0.43 * L], anchor: 'end' },
      { arrow: [[0.5 * L - force(v.rate) / 2, -0.06 * L], [0.5 * L + force(v.rate) / 2, -0.06 * L]], tone: 'accent' },
      { text: 'pull of the road', at: [0.5 * L, -0.14 * L], small: true },
      { text: 'dashed: at rest', at: [0.5 * L, -0.66 * L], small: true },
    ],
  };
}
