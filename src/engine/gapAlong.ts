import type { Point } from './capsule.ts';
import { requireFinite } from './require.ts';

/**
 * The gap between two points along the line that joined them first, after one has moved past the other.
 *
 *   gap = (b' − a')·e,   e = (b − a)/|b − a|
 *
 * Two faces that looked at each other along e have that much left between them. Unlike the distance of the points it
 * goes through zero and turns negative when one has come through the other, and it does not change when they only
 * slide past. b' − a' = b − a + (dx, dy, dz).
 *
 * a, b, dx, dy, dz (m). Two points at one place have no direction: the gap is then their distance afterwards.
 * Neglected: the shape of the faces, and their turn.
 *
 * @throws RangeError if a number is not finite
 * Source: geometry. Worked value: 0.10 m straight above, comes down 0.12 m → −0.02 m.
 */
export function gapAlong({ a, b, dx, dy, dz }: { readonly a: Point; readonly b: Point; readonly dx: number; readonly dy: number; readonly dz: number }): number {
  requireFinite({ ax: a.x, ay: a.y, az: a.z, bx: b.x, by: b.y, bz: b.z, dx, dy, dz });
  const [x, y, z] = [b.x - a.x, b.y - a.y, b.z - a.z];
  const before = Math.hypot(x, y, z);
  return before === 0 ? Math.hypot(dx, dy, dz) : before + (dx * x + dy * y + dz * z) / before;
}
