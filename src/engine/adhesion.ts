import { requireLoadRatios } from './distribution.ts';
import type { Impossible } from './outcome.ts';
import { requireNonNegative } from './require.ts';

/**
 * How much grip each axle uses at a braking rate, and how much of the road's grip the split turns into braking.
 *
 *   f_f = (1 − Φ) z/(1 − ψ + χ z)     f_r = Φ z/(ψ − χ z)     E = z/max(f_f, f_r)
 *
 * f is brake force over load at that axle: the axle locks where f reaches the grip of the road. A perfect split has
 * f_f = f_r = z, so E = 1; any other has one axle working harder than z and E below 1. E is written here as
 * min((1 − ψ + χ z)/(1 − Φ), (ψ − χ z)/Φ), the same thing without 0/0 at standstill.
 *
 * rearBrakeFraction Φ: rear brake force over total brake force at that rate (0–1); rearFraction ψ, heightRatio χ as
 * idealDistribution; rate z (0 up to rear lift ψ/χ).
 *
 * Yardsticks, given as information. They belong to type approval of new light vehicles and say nothing about
 * whether this truck complies with anything:
 *   minimumLine  the most grip k that a rate z may need: z = 0.1 + 0.7 (k − 0.2), for k from 0.2 to 0.8, so z from
 *                0.10 to 0.52 (UN R13-H, from memory, not checked against the text; an older line has 0.85).
 *                undefined outside. meetsMinimum: both f ≤ k.
 *   frontLeads   f_f > f_r. The EU braking text and FMVSS 135 S7.2 ask it for z from 0.15 to 0.80.
 *
 * Neglected: as axleLoads; drag of engine and tires; a bend, where the inner rear wheel uses more than its axle.
 *
 * Impossible 'rear-axle-lifts', by how much z is at or past ψ/χ.
 * @throws RangeError if Φ or z is negative, Φ above 1, ψ not between 0 and 1, χ not above 0
 * Source: statics. Worked value: Φ 0.24, ψ 0.42, χ 0.58/2.743, z 0.8 → f_f 0.812, f_r 0.765, E 0.986.
 */
export interface Adhesion {
  readonly frontUtilized: number;
  readonly rearUtilized: number;
  readonly needed: number;
  readonly efficiency: number;
  readonly frontLeads: boolean;
  readonly minimumLine: number | undefined;
  readonly meetsMinimum: boolean | undefined;
}

export function adhesion(p: {
  readonly rearBrakeFraction: number;
  readonly rearFraction: number;
  readonly heightRatio: number;
  readonly rate: number;
}): Adhesion | Impossible {
  const { rearBrakeFraction, rearFraction, heightRatio, rate } = p;
  requireLoadRatios({ rearFraction, heightRatio });
  requireNonNegative({ rearBrakeFraction, rate });
  if (rearBrakeFraction > 1) throw new RangeError(`rearBrakeFraction: expected at most 1, found ${rearBrakeFraction}`);
  const frontLoad = 1 - rearFraction + heightRatio * rate;
  const rearLoad = rearFraction - heightRatio * rate;
  if (rearLoad <= 0) return { impossible: 'rear-axle-lifts', by: rate - rearFraction / heightRatio };
  const frontUtilized = ((1 - rearBrakeFraction) * rate) / frontLoad;
  const rearUtilized = (rearBrakeFraction * rate) / rearLoad;
  const needed = Math.max(frontUtilized, rearUtilized);
  const { minimumLine } = minimumAdhesionLine({ rate });
  return {
    frontUtilized,
    rearUtilized,
    needed,
    efficiency: Math.min(frontLoad / (1 - rearBrakeFraction), rearLoad / rearBrakeFraction),
    // f_f > f_r is the same as Φ below the rear's part of the load, and that still holds at z = 0.
    frontLeads: rearBrakeFraction < rearLoad,
    minimumLine,
    meetsMinimum: minimumLine === undefined ? undefined : needed <= minimumLine,
  };
}

/** The yardstick line alone, for a chart: k at a rate z, undefined outside its range (k from 0.2 to 0.8). */
export function minimumAdhesionLine({ rate }: { readonly rate: number }): { readonly minimumLine: number | undefined } {
  requireNonNegative({ rate });
  const inside = rate >= 0.1 && rate <= 0.1 + 0.7 * (0.8 - 0.2);
  return { minimumLine: inside ? 0.2 + (rate - 0.1) / 0.7 : undefined };
}
