import { caliperAreas } from './caliper.ts';
import type { Caliper } from './caliper.ts';
import { atmosphere } from './constants.ts';
import type { Impossible } from './outcome.ts';
import { areNonNegative, arePositive, requireNonNegative, requirePositive } from './require.ts';

/**
 * What one circuit (one axle, two calipers) swallows at a line pressure, part by part.
 *
 *   gaps      2 · 2 A_1 g            pads      2 · 2 A_1 c p/p_c       hoses   n ℓ e p/p_h
 *   knockBack 2 · A_1 κ              calipers  2 k_c p/p_k             fluid   V_f p/B
 *   air       V_a [1 − (p_0/(p_0 + p))^(1/m)]
 *
 * gapPerPad g (m, 1e-4–2e-4). knockBack κ (m per caliper): what has opened at both its pads together, beyond the gaps.
 * fluidVolume V_f (m³, 1e-4–1.8e-4) from master to calipers, reservoir left out; bulkModulus B (Pa, about 1.6e9 cold, 1.0e9
 * hot: from memory). hoses n, hoseLength ℓ (m each), hoseExpansion e (m³ per m at hosePressure p_h). caliperGive k_c (m³ per
 * caliper at caliperPressure p_k). padGive c (m per pad at padPressure p_c). airVolume V_a (m³ at atmospheric pressure);
 * polytropic m (1 slow, 1.4 fast). pressure p (Pa over p_0, 0–1.5e7).
 *
 * Air is not all gone at once: 5 bar squeezes away 72–83 % of it, 20 bar 88–95 %.
 * Neglected: that pads, hoses and fluid stiffen as they are squeezed; the push-out pressure; swell of steel tube.
 * @throws RangeError if a size is negative, B or a reference pressure is not above 0, m is below 1
 * Source: derived, volume kept. Worked value: 54 mm, 0.15 mm gaps → 1.374 cm³; 120 cm³ at 70 bar → 0.525 cm³.
 */
export interface CircuitParts extends Caliper {
  readonly gapPerPad: number;
  readonly knockBack: number;
  readonly fluidVolume: number;
  readonly bulkModulus: number;
  readonly hoses: number;
  readonly hoseLength: number;
  readonly hoseExpansion: number;
  readonly hosePressure: number;
  readonly caliperGive: number;
  readonly caliperPressure: number;
  readonly padGive: number;
  readonly padPressure: number;
  readonly airVolume: number;
  readonly polytropic: number;
}

export type VolumeItem = 'gaps' | 'knockBack' | 'fluid' | 'hoses' | 'calipers' | 'pads' | 'air';

export const calipersPerAxle = 2;

export function circuitVolume(c: CircuitParts & { readonly pressure: number }): {
  readonly items: Readonly<Record<VolumeItem, number>>;
  readonly total: number;
} {
  const { pressure, gapPerPad, knockBack, fluidVolume, hoses, hoseLength, hoseExpansion, caliperGive, padGive, airVolume } = c;
  if (!(areNonNegative(pressure, gapPerPad, knockBack, fluidVolume, hoses) && areNonNegative(hoseLength, hoseExpansion, caliperGive, padGive, airVolume))) requireNonNegative({ pressure, gapPerPad, knockBack, fluidVolume, hoses, hoseLength, hoseExpansion, caliperGive, padGive, airVolume });
  if (!arePositive(c.bulkModulus, c.hosePressure, c.caliperPressure, c.padPressure)) requirePositive({ bulkModulus: c.bulkModulus, hosePressure: c.hosePressure, caliperPressure: c.caliperPressure, padPressure: c.padPressure });
  const { clampArea, pistonArea, travelPerGap } = caliperAreas(c);
  const perGap = calipersPerAxle * pistonArea * travelPerGap;
  const items = {
    gaps: perGap * gapPerPad,
    knockBack: calipersPerAxle * clampArea * knockBack,
    fluid: (fluidVolume * pressure) / c.bulkModulus,
    hoses: (hoses * hoseLength * hoseExpansion * pressure) / c.hosePressure,
    calipers: (calipersPerAxle * caliperGive * pressure) / c.caliperPressure,
    pads: (perGap * padGive * pressure) / c.padPressure,
    air: airVolume * squeezed({ pressure, polytropic: c.polytropic }),
  };
  return { items, total: items.gaps + items.knockBack + items.fluid + items.hoses + items.calipers + items.pads + items.air };
}

/** Part of the air's volume at atmospheric pressure that is gone at a pressure over it. */
export function squeezed({ pressure, polytropic }: { readonly pressure: number; readonly polytropic: number }): number {
  if (!arePositive(polytropic)) requirePositive({ polytropic });
  if (polytropic < 1) throw new RangeError(`polytropic: expected 1 or more, found ${polytropic}`);
  return 1 - (atmosphere / (atmosphere + pressure)) ** (1 / polytropic);
}

/**
 * The straight line V0 + k p through the circuit's volume at two pressures, for fluid.ts.
 *
 *   k = (V(high) − V(low))/(high − low)     V0 = V(low) − k low
 *
 * Between the two the true volume is larger, beyond them smaller: only air bends the curve, and it bends it down. So V0
 * holds the gaps, the knock-back and most of the air, and is never below them.
 *
 * Impossible 'pressures-not-rising', by low − high (Pa). @throws RangeError as circuitVolume. Source: derived.
 */
export function equivalentCircuit(p: CircuitParts & { readonly low: number; readonly high: number }):
  | { readonly takeUpVolume: number; readonly compliance: number }
  | Impossible {
  const { low, high } = p;
  const atLow = circuitVolume({ ...p, pressure: low }).total;
  const atHigh = circuitVolume({ ...p, pressure: high }).total;
  if (high <= low) return { impossible: 'pressures-not-rising', by: low - high };
  const compliance = (atHigh - atLow) / (high - low);
  return { takeUpVolume: atLow - compliance * low, compliance };
}
