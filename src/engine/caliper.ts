import { circleArea } from './circle.ts';

/**
 * The two areas of a caliper: what squeezes the pads, and what swallows fluid.
 *
 *   A_1 = n π d²/4                      clampArea, pistons of one side
 *   V = pistonArea · travelPerGap · g   for a gap (or wear) g at each of the two pads
 *
 * Floating: n pistons, and each closes both gaps, as the housing slides: A_1 · 2g. Opposed: 2n pistons, and each closes
 * its own: 2 A_1 · g. The volume is the same; the clamp counts one side in both, and never this product.
 *
 * pistonDiameter d (m, 0.030–0.060); pistonsPerSide n (1–4).
 * @throws RangeError if d is not above 0 or n is not a whole number of 1 or more
 * Source: derived. Worked value: 54 mm floating, 0.15 mm at each pad → 0.687 cm³ per caliper.
 */
export interface Caliper {
  readonly pistonDiameter: number;
  readonly pistonsPerSide: number;
  readonly type: 'floating' | 'opposed';
}

export function caliperAreas({ pistonDiameter, pistonsPerSide, type }: Caliper): {
  readonly clampArea: number;
  readonly pistonArea: number;
  readonly travelPerGap: number;
} {
  if (!Number.isInteger(pistonsPerSide) || pistonsPerSide < 1) {
    throw new RangeError(`pistonsPerSide: expected a whole number of 1 or more, found ${pistonsPerSide}`);
  }
  const clampArea = pistonsPerSide * circleArea({ diameter: pistonDiameter }).area;
  return type === 'floating' ? { clampArea, pistonArea: clampArea, travelPerGap: 2 } : { clampArea, pistonArea: 2 * clampArea, travelPerGap: 1 };
}
