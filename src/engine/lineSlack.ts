import { bisect } from './roots.ts';
import { areNonNegative, arePositive, requireNonNegative, requirePositive } from './require.ts';

/**
 * A line, cable or hose of length L between two ends d apart: what it has to spare, and how gently it can still bend.
 *
 *   slack = L − d                                  negative: it is too short by that much
 *   R = L/(2u),  sin u / u = d/L,  0 < u < π       the circular arc of length L over the chord d
 *
 * R is an upper bound, whatever the route: of all curves of length L that bend nowhere tighter than R', L ≤ 2πR', the
 * circular arc brings its ends nearest together (Schur's comparison theorem, from memory), and any R' above R has
 * L < 2πR'. So if R is below what the part may be bent to, some place of it must bend tighter; if it is above, the
 * route decides. With the ends together R is L/2π, one full loop; with several loops it would be less.
 *
 * L, d (m, ≥ 0; L > 0). gentlestRadius (m) is left out where the part is straight or too short: nothing bends.
 *
 * Neglected: the directions of the end fittings, weight, stiffness, what the part is clipped to. All make some bend
 * tighter. Parts that run over clips: one pair of points for each stretch.
 *
 * @throws RangeError if a number is not finite, d < 0 or L ≤ 0
 * Source: geometry. Worked value: L = π/2, d = √2 → a quarter circle of radius 1; slack 0.1566.
 */
export function lineSlack({ length, distance }: { readonly length: number; readonly distance: number }): { readonly slack: number; readonly gentlestRadius?: number } {
  if (!arePositive(length)) requirePositive({ length });
  if (!areNonNegative(distance)) requireNonNegative({ distance });
  const slack = length - distance;
  // Straight to within rounding: a radius of thousands of lengths is none.
  if (slack <= 1e-9 * length) return { slack };
  const ratio = distance / length;
  const u = ratio < 1e-12 ? Math.PI : bisect((x) => Math.sin(x) / x - ratio, 1e-5, Math.PI, { tolerance: 1e-14 });
  return { slack, gentlestRadius: length / (2 * u) };
}

/**
 * Whether a part of length L between ends d apart must bend tighter than radius R somewhere: the same, without a search.
 *
 *   d < 2R sin(L/2R)  and  L < 2πR
 *
 * @throws RangeError if a number is not finite, d < 0, or L or R ≤ 0
 * Source: as lineSlack. Worked value: L = π/2, d = 1.4, R = 1 → yes; d = 1.5 → no.
 */
export function bendsTighter({ length, distance, radius }: { readonly length: number; readonly distance: number; readonly radius: number }): boolean {
  requirePositive({ length, radius });
  requireNonNegative({ distance });
  return length < 2 * Math.PI * radius && distance < 2 * radius * Math.sin(length / (2 * radius));
}
