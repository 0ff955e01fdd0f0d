import type { Impossible } from './outcome.ts';
import { requireFinite, requireNonNegative, requirePositive } from './require.ts';

/**
 * What a body drop leaves of a telescoping steering shaft: the collapse that a crash needs, and the overlap that holds
 * it together.
 *
 *   shortening = L_0 − L_1
 *   collapse   = in_0 − shortening        how far it can still slide together
 *   overlap    = over_0 + shortening      how far the two halves sit in each other
 *
 * Mounts: the body moves against the frame by up to m in any direction. The distance to a point inside a ball of
 * radius m lies between L − m and L + m, and both are reached along the shaft: no chance draw needed. So
 *
 *   collapseLeast = collapse − m     overlapLeast = overlap − m     bendMore = asin(m/L)
 *
 * bendMore: by how much the shaft can lean over, so by how much each joint can bend more or less.
 *
 * lengthBefore L_0, lengthAfter L_1 (m), center to center; collapseBefore in_0, overlapBefore over_0 (m), measured in
 * the truck before the drop; mountMovement m (m, about 0.010).
 * Only the difference of the lengths counts, so a reading wrong by the same amount before and after does no harm.
 *
 * Impossible: 'slip-bottoms', by how much the shaft would have to be shorter than it can go; 'slip-parts', by how much
 * the two halves would come out of each other; 'mount-exceeds-shaft', by how much m is above L_1.
 * Neglected: rocking of the cab on its mounts, bending of the halves, collapse elsewhere (the column's own).
 * @throws RangeError if a length is not above 0 or another number is negative
 * Source: derived. Worked value: 679 → 640 mm with 80 in, 75 over, m 10: collapse 41, overlap 114, ±0.90°.
 */
export interface SlipLeft {
  readonly shortening: number;
  readonly collapse: number;
  readonly collapseLeast: number;
  readonly overlap: number;
  readonly overlapLeast: number;
  readonly bendMore: number;
}

export function slipLeft(p: {
  readonly lengthBefore: number;
  readonly lengthAfter: number;
  readonly collapseBefore: number;
  readonly overlapBefore: number;
  readonly mountMovement: number;
}): SlipLeft | Impossible {
  const { lengthBefore, lengthAfter, collapseBefore, overlapBefore, mountMovement } = p;
  requirePositive({ lengthBefore, lengthAfter });
  requireNonNegative({ collapseBefore, overlapBefore, mountMovement });
  requireFinite({ mountMovement });
  const shortening = lengthBefore - lengthAfter;
  const collapse = collapseBefore - shortening;
  const overlap = overlapBefore + shortening;
  if (collapse < 0) return { impossible: 'slip-bottoms', by: -collapse };
  if (overlap < 0) return { impossible: 'slip-parts', by: -overlap };
  if (mountMovement >= lengthAfter) return { impossible: 'mount-exceeds-shaft', by: mountMovement - lengthAfter };
  return { shortening, collapse, collapseLeast: collapse - mountMovement, overlap, overlapLeast: overlap - mountMovement, bendMore: Math.asin(mountMovement / lengthAfter) };
}
