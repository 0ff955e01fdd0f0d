import { bisect } from './roots.ts';
import { requireNonNegative, requirePositive } from './require.ts';

/**
 * How far into its wall a pressure makes a tube yield, and the pressures at which that begins and ends.
 *
 * Steel yields by the differences of its three stresses (von Mises). In a tube with closed ends the stress along lies midway
 * between hoop and radial stress, so what counts is √3/2 of hoop less radial. With a the bore's radius and b the outside's:
 *
 *   all elastic        σ_v(r) = √3 p a² b²/((b² − a²) r²)                 largest at the bore
 *   bore yields        p_y = (σ_y/√3)(1 − a²/b²)
 *   yielded out to c   p = (σ_y/√3)(2 ln(c/a) + 1 − c²/b²)                 a ring that yields inside one that does not
 *                      σ_v(r) = σ_y up to c, σ_y c²/r² beyond
 *   whole wall yields  p_w = (2/√3) σ_y ln(b/a)                           c = b: from here the tube swells
 *
 * A yielded bore is no burst. Until c reaches b an elastic ring holds the rest, in a brake tube to strains of about two
 * thousandths, and once the pressure is gone it squeezes the bore: the same pressure makes nothing yield the second time.
 *
 * outerRadius b, boreRadius a (m, a < b); yieldStrength σ_y (Pa); pressure p (Pa, 0 or more).
 * yieldedRadius c (m): a where nothing yields, b where all does. counted(r): σ_v (Pa) at a radius in the wall.
 *
 * Neglected: hardening (real steel holds more than p_w), bends, thin places, fatigue.
 * @throws RangeError if a size or σ_y is not above 0, a is not below b, or p is negative
 * Source: derived (equilibrium of a ring, dp = 2σ_y/√3 dr/r where it yields). Worked value: 3/16 × 0.028 in of 170 MPa steel:
 * 49.9 MPa at the bore, 69.6 MPa for the whole wall. A formula for bursting from trials, p_w (2 − σ_y/σ_u) (Faupel, from
 * memory, not checked against the text), gives 98.5 MPa there for σ_u 290 MPa: as much as Lamé's stress at the bore does.
 */
export function tubeYield({ outerRadius, boreRadius, yieldStrength, pressure }: {
  readonly outerRadius: number;
  readonly boreRadius: number;
  readonly yieldStrength: number;
  readonly pressure: number;
}): { readonly borePressure: number; readonly wallPressure: number; readonly yieldedRadius: number; readonly counted: (radius: number) => number } {
  requirePositive({ outerRadius, boreRadius, yieldStrength });
  requireNonNegative({ pressure });
  if (boreRadius >= outerRadius) throw new RangeError(`boreRadius: expected below ${outerRadius}, found ${boreRadius}`);
  const shear = yieldStrength / Math.sqrt(3);
  const reached = (radius: number): number => shear * (2 * Math.log(radius / boreRadius) + 1 - (radius / outerRadius) ** 2);
  const [borePressure, wallPressure] = [reached(boreRadius), reached(outerRadius)];
  const yieldedRadius = pressure <= borePressure ? boreRadius : pressure >= wallPressure ? outerRadius : bisect((radius) => reached(radius) - pressure, boreRadius, outerRadius);
  const edge = yieldStrength * Math.min(1, pressure / borePressure);
  return { borePressure, wallPressure, yieldedRadius, counted: (radius) => edge * Math.min(1, (yieldedRadius / radius) ** 2) };
}
