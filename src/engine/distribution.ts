import type { Impossible } from './outcome.ts';
import { arePositive, requireNonNegative, requirePositive } from './require.ts';

/**
 * The split of brake force that uses the same part of the grip at both axles.
 *
 *   F_f = z W (1 − ψ + χ z)     F_r = z W (ψ − χ z)     Φ_i = ψ − χ z
 *
 * Both axles use the grip alike when brake force over load is the same at each. Together they make z W on a weight
 * W, so that part is z: each axle brakes with z times the load it carries at that moment.
 *
 * rearFraction ψ = static rear load over weight (0–1); heightRatio χ = CG height over wheelbase (above 0, about
 * 0.2); rate z (0 up to rear lift ψ/χ); weight W (N).
 *
 * A fixed rear share is a level line against Φ_i, which falls as z rises: the two meet at one rate only.
 * Neglected: as axleLoads; rolling resistance and engine drag; a difference of grip between the axles' tires.
 *
 * Impossible 'rear-axle-lifts', by how much z is past ψ/χ: there is no load left to brake with.
 * @throws RangeError if ψ is not between 0 and 1, χ or W not above 0, z negative
 * Source: statics. Worked value: ψ 0.42, χ 0.58/2.743, z 0.8 → rear share 0.251.
 */
export interface IdealPoint {
  readonly rate: number;
  readonly frontForce: number;
  readonly rearForce: number;
  readonly frontShare: number;
  readonly rearShare: number;
}

export function idealDistribution(p: {
  readonly rearFraction: number;
  readonly heightRatio: number;
  readonly rate: number;
  readonly weight: number;
}): IdealPoint | Impossible {
  const { rearFraction, heightRatio, rate, weight } = p;
  requireLoadRatios({ rearFraction, heightRatio });
  requireNonNegative({ rate });
  requirePositive({ weight });
  const lift = rearFraction / heightRatio;
  if (rate > lift) return { impossible: 'rear-axle-lifts', by: rate - lift };
  const rearShare = rearFraction - heightRatio * rate;
  const frontShare = 1 - rearShare;
  return {
    rate,
    frontForce: rate * weight * frontShare,
    rearForce: rate * weight * rearShare,
    frontShare,
    rearShare,
  };
}

/**
 * Points of the ideal curve for a chart, evenly spaced in z from 0 to `upTo` or to rear lift, whichever comes first.
 *
 * steps: number of intervals (1 or more), so steps + 1 points. peakRate = ψ/(2χ): where the ideal rear force is
 * largest; beyond it the rear must brake less, not only a smaller share (often past what tires can give).
 *
 * @throws RangeError as idealDistribution; if upTo is not above 0 or steps is not a whole number of 1 or more
 */
export function idealCurve(p: {
  readonly rearFraction: number;
  readonly heightRatio: number;
  readonly weight: number;
  readonly upTo: number;
  readonly steps: number;
}): { readonly points: readonly IdealPoint[]; readonly peakRate: number; readonly liftRate: number } {
  const { rearFraction, heightRatio, weight, upTo, steps } = p;
  requireLoadRatios({ rearFraction, heightRatio });
  requirePositive({ weight, upTo });
  if (!Number.isInteger(steps) || steps < 1) throw new RangeError(`steps: expected a whole number of 1 or more, found ${steps}`);
  const liftRate = rearFraction / heightRatio;
  const end = Math.min(upTo, liftRate);
  const points: IdealPoint[] = [];
  for (let i = 0; i <= steps; i += 1) {
    const rate = i === steps ? end : (end * i) / steps;
    points.push(idealDistribution({ rearFraction, heightRatio, rate, weight }) as IdealPoint);
  }
  return { points, peakRate: liftRate / 2, liftRate };
}

/** The range in which ψ and χ describe a truck standing on both axles. @throws RangeError outside it */
export function requireLoadRatios({ rearFraction, heightRatio }: {
  readonly rearFraction: number;
  readonly heightRatio: number;
}): void {
  if (!arePositive(rearFraction, heightRatio)) requirePositive({ rearFraction, heightRatio });
  if (!(rearFraction < 1)) throw new RangeError(`rearFraction: expected less than 1, found ${rearFraction}`);
}
