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
 * lowest is 1, and the mean over a turn is 1. Write MᵀM = 1 − P: P is what the joints take away, built up from the box
 * to the rim by P ← sin²β e_1 e_1ᵀ + D Rᵀ P R D. It keeps its digits where all bends are small. Then
 *
 *   ripple = (highest − lowest)/2 = √((P_11 − P_22)² + 4 P_12²)/(2 det M)      highest, lowest = √(1 + ripple²) ± ripple
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

/** P of MᵀM = 1 − P, see chainRipple. */
type Taken = readonly [p11: number, p12: number, p22: number];

function takenBy(bends: readonly number[], errors: readonly number[]): Taken {
  if (errors.length !== bends.length - 1) throw new RangeError(`errors: expected ${bends.length - 1} for ${bends.length} bends, found ${errors.length}`);
  let p: Taken = [0, 0, 0];
  for (let k = bends.length - 1; k >= 0; k -= 1) {
    const bend = bends[k] as number;
    if (!(bend >= 0 && bend < Math.PI / 2)) throw new RangeError(`bend: expected an angle of 0 or more and below 90°, found ${bend} rad`);
    if (k < bends.length - 1) p = seenThrough(errors[k] as number, p);
    const cosine = Math.cos(bend);
    p = [Math.sin(bend) ** 2 + cosine ** 2 * p[0], cosine * p[1], p[2]];
  }
  return p;
}

/** Rᵀ P R with R(90° + e) = [[−sin e, −cos e], [cos e, −sin e]]. */
function seenThrough(error: number, [p11, p12, p22]: Taken): Taken {
  requireFinite({ error });
  const [s, c] = [Math.sin(error), Math.cos(error)];
  return [s * s * p11 - 2 * s * c * p12 + c * c * p22, s * c * (p11 - p22) + (s * s - c * c) * p12, c * c * p11 + 2 * s * c * p12 + s * s * p22];
}

export function chainRipple({ bends, errors }: { readonly bends: readonly number[]; readonly errors: readonly number[] }): ChainRipple {
  const [p11, p12, p22] = takenBy(bends, errors);
  const det = bends.reduce((product, bend) => product * Math.cos(bend), 1);
  const ripple = Math.hypot(p11 - p22, 2 * p12) / (2 * det);
  const highest = Math.sqrt(1 + ripple ** 2) + ripple;
  const ratioAt = (pins: number): number => {
    const [c, s] = [Math.cos(pins), Math.sin(pins)];
    return det / (1 - p11 * c * c - 2 * p12 * s * c - p22 * s * s);
  };
  return { ripple, highest, lowest: 1 / highest, equivalent: Math.acos(1 / highest), quickest: Math.atan2(2 * p12, p11 - p22) / 2, ratioAt };
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
 * Else the best is all in line and leaves λ_largest − the others. e_2 follows from the sides, e_1 from closing it.
 * There are two answers, mirror images: e_2 at or above 0 is given.
 *
 * ripple: what is left. One joint: no errors, all its ripple stays.
 * @throws RangeError if there are no joints or more than three; as chainRipple
 * Source: derived. Worked value: 20°, 20°, 20° → e = 30.0° on both shafts, ripple 0.
 */
export function leastRipple({ bends }: { readonly bends: readonly number[] }): { readonly errors: readonly number[]; readonly ripple: number } {
  if (bends.length < 1 || bends.length > 3) throw new RangeError(`bends: expected one to three joints, found ${bends.length}`);
  if (bends.length < 3) {
    return { errors: bends.slice(1).map(() => 0), ripple: ripplesLeft(bends) };
  }
  const [a, b, c] = bends.map((bend) => -Math.log(Math.cos(bend))) as [number, number, number];
  const second = errorBetween(b, c, Math.min(b + c, Math.max(Math.abs(b - c), a)));
  // The lower two now are one joint, as strong as the first where they can be. It is in step with the first when the
  // error puts its quickest place where a lone second joint would have it: at 0.
  const first = chainRipple({ bends: bends.slice(1), errors: [second] }).quickest;
  return { errors: [first, second], ripple: ripplesLeft(bends) };
}

/**
 * What the strongest joint has over all others together. With S = sin²β, e^(λ_1 − λ_2 − λ_3) = cos β_2 cos β_3/cos β_1
 * gives S_1 − (S_2 + S_3 − S_2 S_3) over twice all the cosines: nothing is lost where little is left.
 */
function ripplesLeft(bends: readonly number[]): number {
  const squares = bends.map((bend) => Math.sin(bend) ** 2);
  const over = squares.map((own, k) => own - squares.reduce((taken, square, j) => (j === k ? taken : taken + square - taken * square), 0));
  return Math.max(0, ...over) / (2 * bends.reduce((product, bend) => product * Math.cos(bend), 1));
}

/** From cosh λ = cosh a cosh b − sinh a sinh b cos 2e, by half angles, which keep their digits for small joints. */
function errorBetween(a: number, b: number, side: number): number {
  const whole = Math.sinh(a) * Math.sinh(b);
  if (whole === 0) return 0;
  // sin²e = (cosh λ − cosh(a − b))/(2 sinh a sinh b), and cosh x − cosh y = 2 sinh((x + y)/2) sinh((x − y)/2)
  const square = (Math.sinh((side + a - b) / 2) * Math.sinh((side - a + b) / 2)) / whole;
  return Math.asin(Math.sqrt(Math.min(1, Math.max(0, square))));
}
