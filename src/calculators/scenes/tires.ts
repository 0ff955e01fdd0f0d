import type { Scene, Shape } from '../show.ts';

export interface TireScene {
  readonly old: number;
  readonly front: number;
  readonly rear: number;
  /** What each new tire's push on the road is of the old one's. */
  readonly frontLabel: string;
  readonly rearLabel: string;
}

/**
 * Front and rear tire from the side, front on the left, standing on one road, radii to scale: old dashed, new drawn. The
 * arrows are the road's push on the new tires, backward, longer for more of it; the axles stand closer than on a truck.
 */
export function tireScene(v: TireScene): Scene {
  const reach = Math.max(v.old, v.front, v.rear);
  const wheel = (x: number, radius: number, name: string, label: string, tone: 'front' | 'rear'): Shape[] => [
    { circle: [x, v.old], radius: v.old, tone: 'ghost' },
    { circle: [x, radius], radius, tone },
    { circle: [x, radius], radius: reach * 0.04, tone: 'plain', filled: true },
    { line: [[x, radius], [x, 0]], tone: 'accent' },
    { arrow: [[x - reach * 0.05, reach * -0.09], [x - reach * 0.05 + (reach * 0.55 * v.old) / radius, reach * -0.09]], tone },
    { text: label, at: [x, reach * -0.3], tone },
    { text: name, at: [x, 2 * reach + reach * 0.08] },
  ];
  return {
    box: [-reach * 1.15, -reach * 0.42, reach * 3.5, reach * 2.3],
    shapes: [
      { line: [[-reach * 1.1, 0], [reach * 3.45, 0]], tone: 'ground' },
      ...wheel(0, v.front, 'front', v.frontLabel, 'front'), ...wheel(reach * 2.35, v.rear, 'rear', v.rearLabel, 'rear'),
    ],
  };
}
