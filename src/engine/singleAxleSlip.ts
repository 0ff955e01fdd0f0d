import { requireNonNegative, requirePositive } from './require.ts';

/**
 * The most braking rate that one braked axle can give before its tires slide, the other axle rolling free.
 *
 *   rear only   z = μ ψ/(1 + μ χ)
 *   front only  z = μ (1 − ψ)/(1 − μ χ), but never more than ψ/χ
 *
 * axle: the one that brakes. grip μ (0.2–1.1) of tire on road; rearLoadFraction ψ (0–1), static; cgHeight h (m);
 * wheelbase L (m); χ = h/L.
 *
 * Free body: z M g = μ × load on the braked axle, and that load is M g (ψ − χ z) at the rear, M g (1 − ψ + χ z) at the
 * front. A rear axle unloads itself as it brakes, a front one loads itself. At z = ψ/χ the rear wheels leave the
 * road: all the weight is then in front and no formula of a flat truck goes further. That comes first when μ χ > ψ,
 * which also covers μ χ ≥ 1, where the front-only formula has no answer. limitedBy says which.
 *
 * Neglected: a tire that has locked grips less than one about to; engine and rolling drag; the lean of the truck.
 * @throws RangeError if grip or wheelbase is not above 0, ψ is outside 0–1 or the height is negative
 * Source: derived. Worked value: μ 0.9, ψ 0.42, h 0.58 m, L 2.743 m → 0.318 rear only, 0.645 front only.
 */
export function singleAxleSlip({ axle, grip, rearLoadFraction, cgHeight, wheelbase }: {
  readonly axle: 'front' | 'rear';
  readonly grip: number;
  readonly rearLoadFraction: number;
  readonly cgHeight: number;
  readonly wheelbase: number;
}): { readonly rate: number; readonly limitedBy: 'tires' | 'rear-lift' } {
  requirePositive({ grip, wheelbase });
  requireNonNegative({ rearLoadFraction, cgHeight });
  if (rearLoadFraction > 1) throw new RangeError(`rearLoadFraction: expected at most 1, found ${rearLoadFraction}`);
  const transfer = cgHeight / wheelbase;
  if (axle === 'rear') {
    return { rate: (grip * rearLoadFraction) / (1 + grip * transfer), limitedBy: 'tires' };
  }
  if (grip * transfer > rearLoadFraction) return { rate: rearLoadFraction / transfer, limitedBy: 'rear-lift' };
  // μχ ≤ ψ ≤ 1 leaves 1 − μχ at 0 only for a truck with all its weight on the rear axle: there the two limits meet.
  if (grip * transfer === 1) return { rate: rearLoadFraction / transfer, limitedBy: 'rear-lift' };
  return { rate: (grip * (1 - rearLoadFraction)) / (1 - grip * transfer), limitedBy: 'tires' };
}
