import { calipersPerAxle, squeezed } from './circuitVolume.ts';
import { caliperAreas } from './caliper.ts';
import type { Caliper } from './caliper.ts';
import { circleArea } from './circle.ts';
import { requireFinite, requireNonNegative, requirePositive } from './require.ts';

/**
 * What would explain a pad travel longer than the ledger's, if all of it came from one circuit.
 *
 *   ΔV = A_m excess/(i w)     air ΔV/[1 − (p_0/(p_0 + p))^(1/m)]     knock-back ΔV/(2 A_1)
 *
 * excess (m of pad, at the foot force that makes pressure p; volume needs do not change p); pedalRatio i; weight w: the
 * circuit's share of the bar, s in front and 1 − s behind; bore of its master; strokeLeft (m): what the ledger leaves of its
 * stroke; caliper; pressure p (Pa); polytropic m (1 slow to 1.4 fast).
 *
 * air in m³ at atmospheric pressure, knockBack in m per caliper, each on top of what the ledger has already. air is
 * undefined at no pressure, where air takes no travel. withinStroke: false where the master would have bottomed first, so that
 * this circuit alone cannot be the cause. undefined: no excess, so nothing to explain.
 *
 * Read it as candidates, not as a finding: pads, hoses or a flexing firewall out of their assumed range look the same.
 * @throws RangeError if i, w or the bore is not above 0, p negative, m below 1, or as caliperAreas
 * Source: derived. Worked value: reference truck A, 17.7 mm too long at the front → 1.15 cm³, 0.25 mm in each caliper.
 */
export interface Explanation {
  readonly volume: number;
  readonly stroke: number;
  readonly air: number | undefined;
  readonly knockBack: number;
  readonly withinStroke: boolean;
}

export function explainExcess({ excess, pedalRatio, weight, bore, strokeLeft, caliper, pressure, polytropic }: {
  readonly excess: number;
  readonly pedalRatio: number;
  readonly weight: number;
  readonly bore: number;
  readonly strokeLeft: number;
  readonly caliper: Caliper;
  readonly pressure: number;
  readonly polytropic: number;
}): Explanation | undefined {
  requireFinite({ excess, strokeLeft });
  requirePositive({ pedalRatio, weight });
  requireNonNegative({ pressure });
  const gone = squeezed({ pressure, polytropic });
  const stroke = excess / (pedalRatio * weight);
  const volume = stroke * circleArea({ diameter: bore }).area;
  const knockBack = volume / (calipersPerAxle * caliperAreas(caliper).clampArea);
  if (excess <= 0) return undefined;
  return { volume, stroke, air: gone > 0 ? volume / gone : undefined, knockBack, withinStroke: stroke <= strokeLeft };
}

/**
 * An excess at two foot forces, parted into what is there from the first touch and what grows with the push.
 *
 *   e(F) = dead + soft F     soft = (e_2 − e_1)/(F_2 − F_1)     dead = e_1 − soft F_1
 *
 * light F_1, firm F_2 (N, F_1 < F_2); excess e at each (m). dead: knock-back, free play and most of any air; soft (m/N): swell,
 * flex, a spongy pad. Air past its first bars counts nearly whole as dead: 5 bar squeezes away 72–83 % of it and 20 bar 88–95 %.
 * softAtFirm = soft F_2, so dead + softAtFirm = e_2. Either may be below 0: less than the ledger has of it.
 *
 * @throws RangeError if a force is negative, F_2 not above F_1, or an excess not finite
 * Source: derived. Worked value: 10 mm at 50 N and 12 mm at 400 N → 9.71 mm dead, 2.29 mm soft.
 */
export function partExcess({ light, firm }: {
  readonly light: { readonly force: number; readonly excess: number };
  readonly firm: { readonly force: number; readonly excess: number };
}): { readonly dead: number; readonly softAtFirm: number } {
  requireNonNegative({ lightForce: light.force });
  requireFinite({ lightExcess: light.excess, firmExcess: firm.excess });
  requirePositive({ forceBetween: firm.force - light.force });
  const soft = (firm.excess - light.excess) / (firm.force - light.force);
  return { dead: light.excess - soft * light.force, softAtFirm: soft * firm.force };
}
