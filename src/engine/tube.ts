import { isImpossible } from './outcome.ts';
import type { Impossible } from './outcome.ts';
import { requireNonNegative, requirePositive } from './require.ts';

/**
 * Hoop stress in a round tube under inner pressure, at a radius in its wall (Lamé).
 *
 *   σ(r) = p r_i²/(r_o² − r_i²) · (1 + r_o²/r²)        largest at the bore, r = r_i
 *
 * pressure p (Pa over what is outside, 0 or more); outerRadius r_o, boreRadius r_i, radius r (m, r_i to r_o).
 * Elastic and round; far from bends, flares and fittings. It holds for any wall, thick or thin.
 *
 * Impossible 'wall-not-positive', by r_i − r_o.
 * @throws RangeError if p is negative, a radius not above 0, or r not in the wall
 * Source: derived (equilibrium of a ring). Worked value: 10 and 50 mm, 300 MPa → 325 MPa at the bore, 25 outside.
 */
export function hoopStress({ pressure, outerRadius, boreRadius, radius }: {
  readonly pressure: number;
  readonly outerRadius: number;
  readonly boreRadius: number;
  readonly radius: number;
}): { readonly stress: number } | Impossible {
  requireNonNegative({ pressure });
  requirePositive({ outerRadius, boreRadius, radius });
  if (boreRadius >= outerRadius) return { impossible: 'wall-not-positive', by: boreRadius - outerRadius };
  if (radius < boreRadius || radius > outerRadius) {
    throw new RangeError(`radius: expected ${boreRadius} to ${outerRadius}, found ${radius}`);
  }
  const section = (outerRadius - boreRadius) * (outerRadius + boreRadius);
  return { stress: (pressure * boreRadius ** 2 * (1 + (outerRadius / radius) ** 2)) / section };
}

/**
 * Stress, burst pressure and safety factor of a brake tube, by three formulas, and where its bore yields.
 *
 *   bore      k = d/(2t)                         Barlow on the bore: the mean stress over the wall, from cutting it in half
 *   lame      k = (D² + d²)/(D² − d²)            the stress at the bore, where it is largest
 *   outside   k = D/(2t)                         Barlow on the outside: the safe side
 *   stress = k p      burst = σ_u/k      safetyFactor = burst/p        d = D − 2t
 *   yield at the bore: k_y = √3 D²/(D² − d²), by von Mises
 *
 * The three always stand in that order. The bore form is exact as a mean and so says too little of the bore: a thin-wall
 * formula on a wall that is not thin. Use lame, or outside where one number must do.
 *
 * None of them says when the bore yields. There the fluid presses on the wall with −p across the hoop pull, and steel
 * yields by the difference of its stresses: hoop k p, along the tube d² p/(D² − d²) (closed ends), across −p. By von Mises
 * they count as yieldPerPressure × p, in a thick wall more than the hoop stress alone: 3.41 against 2.94 in 3/16 × 0.028 in.
 * The whole wall gives way later: see tubeYield.ts.
 *
 * outsideDiameter D, wall t (m); tensileStrength σ_u (Pa); pressure p (Pa, 0 or more).
 * stressPerPressure k has no unit. safetyFactor: undefined at no pressure.
 *
 * Take the wall that is left, not the one bought. burst is where the formula's stress reaches σ_u; sound ductile tube
 * holds somewhat more than lame says, a pitted or nicked one less. Flares and fittings go first.
 * Neglected: bends (thinner and oval), end load, fatigue, corrosion, heat.
 *
 * Impossible 'wall-not-positive', by −t (m): no wall, no strength and no factor; 'wall-fills-tube', by 2t − D (m).
 * @throws RangeError if D or σ_u is not above 0, t not finite, or p negative
 * Source: derived; the thick-wall form is Lamé's. Worked value: 4.75 × 0.71 mm → k 2.35, 2.93, 3.35; yieldPerPressure 3.41.
 */
export interface TubeFormula {
  readonly stressPerPressure: number;
  readonly stress: number;
  readonly burst: number;
  readonly safetyFactor: number | undefined;
}

export function tubeStrength({ outsideDiameter, wall, tensileStrength, pressure }: {
  readonly outsideDiameter: number;
  readonly wall: number;
  readonly tensileStrength: number;
  readonly pressure: number;
}): { readonly boreDiameter: number; readonly yieldPerPressure: number; readonly bore: TubeFormula; readonly lame: TubeFormula; readonly outside: TubeFormula } | Impossible {
  requirePositive({ outsideDiameter, tensileStrength });
  requireNonNegative({ pressure });
  if (!Number.isFinite(wall)) throw new RangeError(`wall: expected a finite number, found ${wall}`);
  if (wall <= 0) return { impossible: 'wall-not-positive', by: -wall };
  const boreDiameter = outsideDiameter - 2 * wall;
  if (boreDiameter <= 0) return { impossible: 'wall-fills-tube', by: -boreDiameter };
  const formula = (stressPerPressure: number): TubeFormula => {
    const burst = tensileStrength / stressPerPressure;
    return { stressPerPressure, stress: stressPerPressure * pressure, burst, safetyFactor: factor(burst, pressure) };
  };
  const atBore = hoopStress({ pressure: 1, outerRadius: outsideDiameter / 2, boreRadius: boreDiameter / 2, radius: boreDiameter / 2 });
  if (isImpossible(atBore)) return atBore; // a wall thinner than the spacing of doubles
  return {
    boreDiameter,
    // The hoop stress outruns the push across it by atBore + 1, and the stress along lies midway: √3/2 of that counts.
    yieldPerPressure: (Math.sqrt(3) / 2) * (atBore.stress + 1),
    bore: formula(boreDiameter / (2 * wall)),
    lame: formula(atBore.stress),
    outside: formula(outsideDiameter / (2 * wall)),
  };
}

/**
 * How far a hose's own two figures lie above a line pressure.
 *
 *   proofFactor = proof/p     burstFactor = burst/p
 *
 * proof: the pressure every hose of the kind has held for minutes without a leak. burst: what a sample must reach. pressure
 * (Pa). A hose's strength is a tested number, not one to be computed from its wall. Undefined at no pressure.
 * Neglected: age, chafing, kinks, a fitting crimped badly: a hose fails by those.
 *
 * Impossible 'burst-below-proof', by proof − burst (Pa).
 * @throws RangeError if proof or burst is not above 0 or the pressure is negative
 * Source of usual figures: FMVSS 106 S5.3.2, older text (4,000 psi held 2 min, burst 5,000 psi or more), as an agency letter
 * quotes it. Worked value: 4,000 and 5,000 psi at 1,000 psi → 4 and 5.
 */
export function hoseMargin({ proof, burst, pressure }: {
  readonly proof: number;
  readonly burst: number;
  readonly pressure: number;
}): { readonly proofFactor: number | undefined; readonly burstFactor: number | undefined } | Impossible {
  requirePositive({ proof, burst });
  requireNonNegative({ pressure });
  if (burst < proof) return { impossible: 'burst-below-proof', by: proof - burst };
  return { proofFactor: factor(proof, pressure), burstFactor: factor(burst, pressure) };
}

function factor(strength: number, pressure: number): number | undefined {
  return pressure > 0 ? strength / pressure : undefined;
}
