import { caliperAreas } from './caliper.ts';
import type { Caliper } from './caliper.ts';
import type { Impossible } from './outcome.ts';
import { requireNonNegative, requirePositive } from './require.ts';

/**
 * Does a reservoir hold the fluid that goes behind the pistons as pads and discs wear?
 *
 *   V_w = Σ axles  2 · pistonArea · travelPerGap · (w_pad + w_disc)
 *   needed = V_w (1 + σ) + V_min        left = V_full − V_w
 *   wornAtMinimum = (V_full − V_min)/V_w
 *
 * Wear is a gap that never closes again, so it counts as gaps do (caliperAreas): all pistons of an opposed caliper by their
 * own pad's wear, the pistons of a floating one by the wear of both pads. Clamp area × one pad's wear is half of it.
 *
 * axles: those this reservoir feeds, two calipers each. newLining, wornLining (m): pad material, backing left out, at
 * fitting and at the end; discWear w_disc (m per face, 0 if left out): half of what the disc may lose. fullVolume V_full (m³): brim of
 * the full mark to the outlet; minimumVolume V_min (m³): below it air may be drawn in; sloshShare σ (about 0.15 of the
 * wear volume, common practice, no source).
 *
 * left, aboveMinimum (m³) at worn-out pads with no slosh: below 0 the reservoir ran dry, or to its minimum, before that.
 * shortBy: what is missing to `needed`, 0 if nothing. wornAtMinimum: part of the wear at which the minimum is reached, above 1
 * if the pads are worn out first.
 *
 * Neglected: fluid in use while the brakes are on, uneven wear within a caliper beyond its mean, leaks, topping up (a
 * reservoir topped up on worn pads overflows when new ones push the pistons home).
 *
 * Impossible 'worn-not-thinner', by wornLining − newLining (m); 'minimum-above-full', by V_min − V_full (m³).
 * @throws RangeError if axles is empty, a thickness or volume is negative, V_full not above 0, or as caliperAreas
 * Source: derived, volume kept. Worked value: 54 mm floating, 9 mm of wear per pad → 82 cm³ for the axle.
 */
export interface WearingAxle extends Caliper {
  readonly newLining: number;
  readonly wornLining: number;
  readonly discWear?: number;
}

export function reservoir({ axles, fullVolume, minimumVolume, sloshShare }: {
  readonly axles: readonly WearingAxle[];
  readonly fullVolume: number;
  readonly minimumVolume: number;
  readonly sloshShare: number;
}):
  | {
      readonly wearVolume: number;
      readonly wearByAxle: readonly number[];
      readonly needed: number;
      readonly shortBy: number;
      readonly left: number;
      readonly aboveMinimum: number;
      readonly wornAtMinimum: number;
    }
  | Impossible {
  requirePositive({ axles: axles.length, fullVolume });
  requireNonNegative({ minimumVolume, sloshShare });
  if (minimumVolume >= fullVolume) return { impossible: 'minimum-above-full', by: minimumVolume - fullVolume };
  const wearByAxle: number[] = [];
  for (const { newLining, wornLining, discWear = 0, ...caliper } of axles) {
    requireNonNegative({ newLining, wornLining, discWear });
    if (wornLining >= newLining) return { impossible: 'worn-not-thinner', by: wornLining - newLining };
    const { pistonArea, travelPerGap } = caliperAreas(caliper);
    wearByAxle.push(2 * pistonArea * travelPerGap * (newLining - wornLining + discWear));
  }
  const wearVolume = wearByAxle.reduce((sum, v) => sum + v, 0);
  const needed = wearVolume * (1 + sloshShare) + minimumVolume;
  const left = fullVolume - wearVolume;
  return {
    wearVolume,
    wearByAxle,
    needed,
    shortBy: Math.max(0, needed - fullVolume),
    left,
    aboveMinimum: left - minimumVolume,
    wornAtMinimum: (fullVolume - minimumVolume) / wearVolume,
  };
}
