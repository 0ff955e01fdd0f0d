import { circleArea } from './circle.ts';
import type { Impossible } from './outcome.ts';
import { requireNonNegative, requirePositive } from './require.ts';

/**
 * The disc brake that does at one pressure what a drum does, and the fluid it takes to get there.
 *
 *   μ A_1 r_e = F R/(4 η_c (p − p_po))      from F = 4 μ A_1 η_c r_e (p − p_po)/R, as in discAxle
 *   drum swallows 2 A_wc s per wheel, disc 2 A_1 g
 *
 * axleForce F (N) of the drums at pressure p (Pa), as from drumAxle; loadedRadius R (m). The disc: friction μ,
 * effectiveRadius r_e (m), efficiency η_c, pushOut p_po (Pa, 2e4–7e4), pistonsPerSide n. cylinderDiameter (m) of one
 * wheel cylinder piston; shoeTravel s (m, 0.0005–0.0015) of it until the lining rubs: gap at the lining's middle × h over
 * the anchor-to-center distance. padGap g (m, 0.0001–0.0002) at each pad.
 *
 * product (m³) is what one disc must have of μ × piston area on one side × effective radius; clampArea and pistonDiameter
 * follow for the pad and rotor given. volumeRatio: disc over drum, take-up only; undefined for a drum without travel.
 *
 * It matches at this pressure only. A drum needs more push-out, so below it the disc brakes more; and the drum's force
 * rises faster than μ. What swells under pressure (hoses, calipers, pads) comes on top of both volumes.
 * Impossible 'below-push-out', by the pressure missing (Pa) for the disc to clamp at all.
 * @throws RangeError if a size is not above 0, η_c is above 1 or n is not a whole number of 1 or more
 * Source: derived. Worked value: 1304 N at 40 bar, R 0.300 m, 0.38, 0.112 m, 0.98, no push-out → one 27.3 mm piston.
 */
export function discToMatch(p: {
  readonly axleForce: number;
  readonly pressure: number;
  readonly loadedRadius: number;
  readonly friction: number;
  readonly effectiveRadius: number;
  readonly efficiency: number;
  readonly pushOut: number;
  readonly pistonsPerSide: number;
  readonly padGap: number;
  readonly cylinderDiameter: number;
  readonly shoeTravel: number;
}):
  | {
      readonly product: number;
      readonly clampArea: number;
      readonly pistonDiameter: number;
      readonly drumVolume: number;
      readonly discVolume: number;
      readonly volumeRatio: number | undefined;
    }
  | Impossible {
  const { axleForce, pressure, loadedRadius, friction, effectiveRadius, efficiency, pushOut, pistonsPerSide, padGap, shoeTravel } = p;
  requireNonNegative({ axleForce, pressure, pushOut, padGap, shoeTravel });
  requirePositive({ loadedRadius, friction, effectiveRadius, efficiency });
  if (efficiency > 1) throw new RangeError(`efficiency: expected at most 1, found ${efficiency}`);
  if (!Number.isInteger(pistonsPerSide) || pistonsPerSide < 1) {
    throw new RangeError(`pistonsPerSide: expected a whole number of 1 or more, found ${pistonsPerSide}`);
  }
  if (pressure <= pushOut) return { impossible: 'below-push-out', by: pushOut - pressure };
  const product = (axleForce * loadedRadius) / (4 * efficiency * (pressure - pushOut));
  const clampArea = product / (friction * effectiveRadius);
  const drumVolume = 2 * circleArea({ diameter: p.cylinderDiameter }).area * shoeTravel;
  const discVolume = 2 * clampArea * padGap;
  return {
    product,
    clampArea,
    pistonDiameter: Math.sqrt((4 * clampArea) / (Math.PI * pistonsPerSide)),
    drumVolume,
    discVolume,
    volumeRatio: drumVolume > 0 ? discVolume / drumVolume : undefined,
  };
}
