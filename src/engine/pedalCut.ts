import type { Impossible } from './outcome.ts';
import { requireNonNegative, requirePositive } from './require.ts';

/**
 * What cutting a pedal arm does to ratio, effort and travel.
 *
 *   i' = i (R_p − n)/R_p        effort × R_p/(R_p − n)        travel × (R_p − n)/R_p
 *
 * padArm R_p (m, above 0): pivot to pad center; pedalRatio i; cut n (m, 0 or more) off that arm. The clevis stays where it
 * is, so force and travel at the masters are the same: what the foot gains in travel it pays in push, and the other way.
 *
 * Impossible: 'nothing-left', by n − R_p (m).
 * @throws RangeError as said
 * Source: derived, one lever. Worked value: 0.31 m at 6.2, cut by 0.05 m → 5.2, effort × 1.192, travel × 0.839.
 */
export function pedalCut({ padArm, pedalRatio, cut }: {
  readonly padArm: number;
  readonly pedalRatio: number;
  readonly cut: number;
}): { readonly ratio: number; readonly effort: number; readonly travel: number } | Impossible {
  requirePositive({ padArm, pedalRatio });
  requireNonNegative({ cut });
  if (cut >= padArm) return { impossible: 'nothing-left', by: cut - padArm };
  const left = (padArm - cut) / padArm;
  return { ratio: pedalRatio * left, effort: 1 / left, travel: left };
}

/**
 * Thickness of a floor's layers, loose and under a boot.
 *
 *   loose = Σ t     pressed = Σ c t
 *
 * layers: thickness t (m, 0 or more) and what is left of it under a standing boot, c (0 to 1). A heel stands on what is
 * pressed; a pedal that comes down meets what is loose first.
 *
 * @throws RangeError for a negative thickness or a c outside 0 to 1
 * Source: definition. Worked value: 2 mm liner, 3 mm deadener, 12 mm carpet pressed to half → 17 and 11 mm.
 */
export function floorStack({ layers }: { readonly layers: readonly { readonly thickness: number; readonly left: number }[] }): { readonly loose: number; readonly pressed: number } {
  let [loose, pressed] = [0, 0];
  for (const { thickness, left } of layers) {
    requireNonNegative({ thickness, left });
    if (left > 1) throw new RangeError(`left: expected at most 1, found ${left}`);
    loose += thickness;
    pressed += thickness * left;
  }
  return { loose, pressed };
}
