import { shoeFactor } from './drum.ts';
import type { Impossible } from './outcome.ts';
import { isImpossible } from './outcome.ts';
import { requireNonNegative, requirePositive } from './require.ts';

/**
 * The arms of shoeFactor, from the angles of a lining on a shoe that turns about a fixed pin.
 *
 *   pressure p = p_a sin θ/sin θ_a          θ from the line between drum center and pin
 *   N   = p_a b r/sin θ_a · I      I = ∫ sin θ dθ = cos θ_1 − cos θ_2
 *   M_N = N a      a = d ∫ sin²θ dθ/I              ∫ sin²θ dθ = (θ_2 − θ_1)/2 − (sin 2θ_2 − sin 2θ_1)/4
 *   M_f = μ N c    c = ∫ sin θ (r − d cos θ) dθ/I = r − (d/2)(sin²θ_2 − sin²θ_1)/I
 *
 * Sine pressure: a rigid shoe turned about its pin by a small angle closes on the drum by d sin θ times it, and a
 * bedded lining presses as it is closed. b is the lining's width. θ_a: where the lining presses hardest, 90° or the
 * lining's end that is nearest to it. Moments about the pin; friction at θ has the arm r − d cos θ.
 *
 * drumRadius r (m); hingeRadius d (m): drum center to pin; startAngle θ_1, endAngle θ_2 (rad, 0–π, usual 5–30° and
 * 110–140°). a and c (m) do not depend on μ, on the width or on the force.
 * Impossible 'lining-ends-before-it-starts', by θ_1 − θ_2 (rad); 'hinge-outside-drum', by d − r (m).
 * @throws RangeError if a length is not above 0 or an angle is outside 0–π
 * Source: derived; J. E. Shigley, Mechanical Engineering Design, ch. 16, has M_f and M_N (from memory). Worked value: r 150,
 * d 122.65 mm, 0–126° → a 103.3, c 124.7 mm.
 */
export interface Lining {
  readonly drumRadius: number;
  readonly hingeRadius: number;
  readonly startAngle: number;
  readonly endAngle: number;
}

export function liningArms({ drumRadius, hingeRadius, startAngle, endAngle }: Lining):
  | { readonly normalArm: number; readonly frictionArm: number; readonly sineSum: number; readonly peakAngle: number }
  | Impossible {
  requirePositive({ drumRadius, hingeRadius });
  requireNonNegative({ startAngle, endAngle });
  const widest = Math.max(startAngle, endAngle);
  if (widest > Math.PI) throw new RangeError(`lining: expected angles up to π, found ${widest}`);
  if (startAngle >= endAngle) return { impossible: 'lining-ends-before-it-starts', by: startAngle - endAngle };
  if (hingeRadius >= drumRadius) return { impossible: 'hinge-outside-drum', by: hingeRadius - drumRadius };
  const sineSum = Math.cos(startAngle) - Math.cos(endAngle);
  const squares = (endAngle - startAngle) / 2 - (Math.sin(2 * endAngle) - Math.sin(2 * startAngle)) / 4;
  const rise = Math.sin(endAngle) ** 2 - Math.sin(startAngle) ** 2;
  return {
    normalArm: (hingeRadius * squares) / sineSum,
    frictionArm: drumRadius - (hingeRadius * rise) / (2 * sineSum),
    sineSum,
    peakAngle: Math.min(Math.max(Math.PI / 2, startAngle), endAngle),
  };
}

/**
 * Moments, lining pressure and torque of one pinned shoe pushed with a force.
 *
 *   F h = M_N ∓ M_f (leading −, trailing +)      T = μ N r = μ p_a b r² (cos θ_1 − cos θ_2)/sin θ_a
 *
 * liningWidth b (m, 0.03–0.06); applyArm h (m): pin to the line of the force; friction μ; applyForce F (N, 0 or more).
 * normalMoment M_N, frictionMoment M_f (N·m) about the pin; peakPressure p_a (Pa); factor S as in shoeFactor.
 * Both shoes of one wheel cylinder get the same F, so the leading one has the higher pressure and wears first.
 *
 * Neglected: as shoeFactor; a new lining that touches at one end only.
 * Impossible as liningArms, and 'self-locks' as shoeFactor. @throws RangeError as those, or if F is negative
 * Source: as liningArms. Worked value: that lining 32 mm wide, μ 0.32, h 212 mm, F 2.279 kN leading → M_N 787, M_f 304,
 * T 366 N·m at 1.00 MPa; trailing 162 N·m.
 */
export function pinnedShoe(p: Lining & {
  readonly liningWidth: number;
  readonly applyArm: number;
  readonly friction: number;
  readonly sense: 'leading' | 'trailing';
  readonly applyForce: number;
}):
  | {
      readonly normalMoment: number;
      readonly frictionMoment: number;
      readonly peakPressure: number;
      readonly torque: number;
      readonly factor: number;
      readonly normalArm: number;
      readonly frictionArm: number;
    }
  | Impossible {
  const { liningWidth, applyArm, friction, sense, applyForce, drumRadius } = p;
  requirePositive({ liningWidth });
  requireNonNegative({ applyForce });
  const arms = liningArms(p);
  if (isImpossible(arms)) return arms;
  const { normalArm, frictionArm } = arms;
  const shoe = shoeFactor({ applyArm, normalArm, frictionArm, friction, sense });
  if (isImpossible(shoe)) return shoe;
  const normal = shoe.normalPerForce * applyForce;
  return {
    normalMoment: normal * normalArm,
    frictionMoment: friction * normal * frictionArm,
    peakPressure: (normal * Math.sin(arms.peakAngle)) / (liningWidth * drumRadius * arms.sineSum),
    torque: friction * normal * drumRadius,
    factor: shoe.factor,
    normalArm,
    frictionArm,
  };
}
