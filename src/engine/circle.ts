import { arePositive, requirePositive } from './require.ts';

/**
 * Area of a round bore or piston.
 *
 * A = π d²/4
 *
 * diameter (m, above 0; master bores 0.012–0.030, caliper pistons 0.025–0.065) → area (m²).
 * Nothing is neglected. Area follows the square of the diameter: 1 % on the bore is 2 % on the pressure.
 *
 * @throws RangeError if the diameter is not a finite number above 0
 * Source: plane geometry. Worked value: 0.75 in = 0.01905 m → 2.850e-4 m² = 0.442 in².
 */
export function circleArea({ diameter }: { readonly diameter: number }): { readonly area: number } {
  if (!arePositive(diameter)) requirePositive({ diameter });
  return { area: (Math.PI / 4) * diameter ** 2 };
}
