import { requireFinite } from './require.ts';

/**
 * What a chain of universal joints does to the speed, exactly and in closed form.
 *
 * Let θ be the angle of a joint's input pins from the plane of its bend. Its output shaft turns by χ with
 * tan χ = tan θ/cos β: the line of direction (cos θ, sin θ) becomes that of (cos β cos θ, sin θ). So a joint is the
 * matrix D = diag(cos β, 1) acting on a line. The shaft after it is a rotation: its pins stand 90° on, plus the
 * clocking c, less the twist t between the planes of the bends. A chain is the product
 *
 *   M = D_n R(90° + c_n − t_n) … D_2 R(90° + c_1 − t_1) D_1       ω_out/ω_in = det M/|M v|²,  v = (cos θ, sin θ)
 *
 * |M v| draws an ellipse with half axes σ_1 ≥ σ_2 and det M = σ_1 σ_2, so the ratio runs between σ_2/σ_1 and σ_1/σ_2.
 * Hence ANY chain, however long and however bent, behaves as ONE joint, of the angle cos β_eq = σ_2/σ_1; highest times
 * lowest is 1, and the mean over a turn is 1. With MᵀM = [[A, C], [C, B]]
 *
 *   ripple = (highest − lowest)/2 = √((A − B)² + 4 C²)/(2 det M)        highest, lowest = √(1 + ripple²) ± ripple
 *
 * bends: β of each joint from the rim down (rad, 0 to below 90°). errors: for each shaft between two joints its clocking
 * less its twist (rad), both clockwise seen from its upper end. ripple: the ± of the speed (0.06 is ± 6 %).
 * quickest: angle of the first joint's input pins, from the plane of its bend, at which the box turns quickest (rad,
 * −90° to 90°; it comes again every 180°; 0 where there is no ripple).
 *
 * Neglected: play, flex, friction, and that a real cross has its pins a hair apart.
 * @throws RangeError if there is not one less error than bends, a bend is out of range, or an error is not finite
 * Source: derived; checked against the published formula and a mechanism solved blindly. Worked value: 20° and 20° with
 * an error of 90° → β_eq = acos(cos²20°) = 28.0°, ripple ± 12.5 %.
 */
export interface ChainRipple {
  readonly ripple: number;
  readonly highest: number;
  readonly lowest: number;
  readonly equivalent: number;
  readonly quickest: number;
  /** Speed out over speed in with the first joint's input pins at this angle from the plane of its bend. */
  readonly ratioAt: (pins: number) => number;
}

type Matrix = readonly [a: number, b: number, c: number, d: number];

function chainMatrix(bends: readonly number[], errors: readonly number[]): Matrix {
  if (errors.length !== bends.length - 1) throw new RangeError(`errors: expected ${bends.length - 1} for ${bends.length} bends, found ${errors.length}`);
  let m: Matrix = [1, 0, 0, 1];
  bends.forEach((bend, k) => {
    if (!(bend >= 0 && bend < Math.PI / 2)) throw new RangeError(`bend: expected an angle of 0 or more and below 90°, found ${bend} rad`);
    if (k > 0) {
      const error = errors[k - 1] as number;
      requireFinite({ error });
      const [s, c] = [Math.sin(error), Math.cos(error)];
      // R(90° + e) = [[−sin e, −cos e], [cos e, −sin e]]
      m = [-s * m[0] - c * m[2], -s * m[1] - c * m[3], c * m[0] - s * m[2], c * m[1] - s * m[3]];
    }
    const cosine = Math.cos(bend);
    m = [cosine * m[0], cosine * m[1], m[2], m[3]];
  });
  return m;
}

export function chainRipple({ bends, errors }: { readonly bends: readonly number[]; readonly errors: readonly number[] }): ChainRipple {
  const m = chainMatrix(bends, errors);
  const det = bends.reduce((product, bend) => product * Math.cos(bend), 1);
  const difference = m[0] ** 2 + m[2] ** 2 - m[1] ** 2 - m[3] ** 2;
  const across = 2 * (m[0] * m[1] + m[2] * m[3]);
  const ripple = Math.hypot(difference, across) / (2 * det);
  const highest = Math.sqrt(1 + ripple ** 2) + ripple;
  const ratioAt = (pins: number): number => {
    const [c, s] = [Math.cos(pins), Math.sin(pins)];
    return det / ((m[0] * c + m[1] * s) ** 2 + (m[2] * c + m[3] * s) ** 2);
  };
  // |M v|² = mean + half of (difference cos 2θ + across sin 2θ): least half a turn of 2θ from its peak.
  const quickest = ripple === 0 ? 0 : Math.atan2(-across, -difference) / 2;
  return { ripple, highest, lowest: 1 / highest, equivalent: Math.acos(1 / highest), quickest, ratioAt };
}

/**
 * The clocking errors (clocking less twist) at which a chain of two or three joints ripples least, exactly.
 *
 * One joint multiplies the ratio of the ellipse's axes by 1/cos β at most. Write λ = −ln cos β. Then two joints add as
 * two sides of a triangle in the hyperbolic plane with twice the error between them:
 *
 *   cosh λ_eq = cosh λ_1 cosh λ_2 − sinh λ_1 sinh λ_2 cos 2e        ripple = sinh λ_eq
 *
 * Two joints: least at e = 0, λ_eq = |λ_1 − λ_2|. Equal angles leave nothing; 20° and 30° leave a joint of 22.8°
 * however the forks are turned, cos β_eq = cos 30°/cos 20°. The clocking to scribe is the twist itself.
 * Three joints: three sides close to a triangle if none is longer than the other two together. Then nothing is left.
 * Else the best is all in line and leaves λ_largest − the others. e_1 follows from the sides, e_2 from closing it.
 * There are two answers, mirror images: e_1 at or above 0 is given.
 *
 * ripple: what is left, as chainRipple gives it. One joint: no errors, all its ripple stays.
 * @throws RangeError if there are no joints or more than three; as chainRipple
 * Source: derived. Worked value: 20°, 20°, 20° → e = 30.0° on both shafts, ripple 0.
 */
export function leastRipple({ bends }: { readonly bends: readonly number[] }): { readonly errors: readonly number[]; readonly ripple: number } {
  if (bends.length < 1 || bends.length > 3) throw new RangeError(`bends: expected one to three joints, found ${bends.length}`);
  if (bends.length < 3) {
    const errors = bends.slice(1).map(() => 0);
    return { errors, ripple: chainRipple({ bends, errors }).ripple };
  }
  const [a, b, c] = bends.map((bend) => -Math.log(Math.cos(bend))) as [number, number, number];
  const wanted = Math.min(a + b, Math.max(Math.abs(a - b), c));
  const first = firstError(a, b, wanted);
  // The upper two as one ellipse: its long axis must meet the axis that the last joint shortens.
  const m = chainMatrix(bends.slice(0, 2), [first]);
  const longAxis = Math.atan2(2 * (m[0] * m[2] + m[1] * m[3]), m[0] ** 2 + m[1] ** 2 - m[2] ** 2 - m[3] ** 2) / 2;
  const second = Math.PI / 2 - longAxis;
  const errors = [first, second - Math.PI * Math.round(second / Math.PI)];
  return { errors, ripple: chainRipple({ bends, errors }).ripple };
}

/** From cosh λ = cosh a cosh b − sinh a sinh b cos 2e, by half angles, which keep their digits for small joints. */
function firstError(a: number, b: number, side: number): number {
  const whole = Math.sinh(a) * Math.sinh(b);
  if (whole === 0) return 0;
  // sin²e = (cosh λ − cosh(a − b))/(2 sinh a sinh b), and cosh x − cosh y = 2 sinh((x + y)/2) sinh((x − y)/2)
  const square = (Math.sinh((side + a - b) / 2) * Math.sinh((side - a + b) / 2)) / whole;
  return Math.asin(Math.sqrt(Math.min(1, Math.max(0, square))));
}
