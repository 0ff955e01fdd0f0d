import { requireNonNegative, requirePositive } from './require.ts';

/**
 * Push in a brace that keeps a pedal frame from tipping.
 *
 *   H = M/h        N = H/cos φ
 *
 * moment M (N·m, 0 or more) about the middle of the bolts; height h (m): of the brace's end above it; angle φ (rad, 0 to
 * below π/2) between brace and the line of the foot's push. along N (N) is what the brace carries; level H (N) is added to
 * the foot's own push on the firewall, because the brace pushes the frame's top forward.
 *
 * The brace is taken to carry the whole moment: the bound it must be built for. Neglected: give of its far end, the part
 * that the bolts carry, and the push across, H tan φ.
 *
 * @throws RangeError if M is negative, h not above 0, or φ outside its range
 * Source: derived, moments. Worked value: 400 N·m at 0.2 m and 30° → 2,000 N level, 2,309 N along.
 */
export function braceForce({ moment, height, angle }: {
  readonly moment: number;
  readonly height: number;
  readonly angle: number;
}): { readonly level: number; readonly along: number } {
  requireNonNegative({ moment, angle });
  requirePositive({ height });
  if (angle >= Math.PI / 2) throw new RangeError(`angle: expected less than π/2, found ${angle}`);
  const level = moment / height;
  return { level, along: level / Math.cos(angle) };
}

/**
 * Load at which a round tube or bar buckles as a column.
 *
 *   A = π(D² − d²)/4     I = π(D⁴ − d⁴)/64     λ = K L/√(I/A)     λ₀ = π √(2E/σ_y)
 *   slender, λ ≥ λ₀      P = π² E I/(K L)²                 (Euler)
 *   short,   λ < λ₀      P = A σ_y (1 − (λ/λ₀)²/2)         (Johnson)        the two meet at half the yield stress
 *
 * length L (m), endFactor K (1 for pinned ends, 0.5 for ends that cannot turn, 2 for a free end), outside D and bore d (m,
 * 0 for a bar), modulus E, yieldStress σ_y (Pa). load P (N), slenderness λ, slender: which formula it was.
 *
 * Straight, loaded on its center. A brace 1 % of its length out of straight carries much less: hence a factor of 3.
 * @throws RangeError if an argument is not above 0 (d: 0 or more), or d not below D
 * Source: textbook columns, from memory; Euler is derived in any of them.
 * Worked value: 19.05 × 15.75 mm steel, 0.4 m, pinned, 250 MPa → 19.6 kN (200 GPa).
 */
export function bucklingLoad({ length, endFactor, outside, bore, modulus, yieldStress }: {
  readonly length: number;
  readonly endFactor: number;
  readonly outside: number;
  readonly bore: number;
  readonly modulus: number;
  readonly yieldStress: number;
}): { readonly load: number; readonly slenderness: number; readonly slender: boolean } {
  requirePositive({ length, endFactor, outside, modulus, yieldStress });
  requireNonNegative({ bore });
  if (bore >= outside) throw new RangeError(`bore: expected less than the outside ${outside}, found ${bore}`);
  const area = (Math.PI / 4) * (outside ** 2 - bore ** 2);
  const inertia = (Math.PI / 64) * (outside ** 4 - bore ** 4);
  const slenderness = (endFactor * length) / Math.sqrt(inertia / area);
  const limit = Math.PI * Math.sqrt((2 * modulus) / yieldStress);
  const slender = slenderness >= limit;
  const load = slender ? (Math.PI ** 2 * modulus * inertia) / (endFactor * length) ** 2 : area * yieldStress * (1 - (slenderness / limit) ** 2 / 2);
  return { load, slenderness, slender };
}

/**
 * Mean shear in the throat of fillet welds under a pull.
 *
 *   τ = F/(0.7071 a ℓ)
 *
 * force F (N, 0 or more), leg a and length ℓ of sound weld (m). Ends and craters are not sound: leave one leg off each end.
 * Neglected: bending at the weld's root, the notch at its toe.
 *
 * @throws RangeError as said
 * Source: textbook. Worked value: 2,309 N, 3 mm legs, 60 mm → 18.1 MPa.
 */
export function weldShear({ force, leg, length }: {
  readonly force: number;
  readonly leg: number;
  readonly length: number;
}): { readonly stress: number } {
  requireNonNegative({ force });
  requirePositive({ leg, length });
  return { stress: force / (Math.SQRT1_2 * leg * length) };
}
