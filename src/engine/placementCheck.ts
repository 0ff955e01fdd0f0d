import { requireFinite, requirePositive } from './require.ts';
import { eigenSymmetric3 } from './symmetric3.ts';
import type { Row3 } from './symmetric3.ts';

/**
 * How large a slip of one tape must be before the misses show it.
 *
 *   residuals = P · slip,  P = 1 − U (UᵀU)⁻¹ Uᵀ      shows from  show / maxⱼ |P_jk|      for tape k
 *
 * point X and marks (m, any axes), at least three; show (m, above 0): the largest miss that one still takes for tape error.
 * U has one row for each mark: the unit vector from it to X. slips (m), one for each mark, Infinity for a tape that nothing
 * checks: all of its slip goes into the place. Small slips, so that the directions stay; the size of the slip only.
 *
 * Why: least squares move the point toward the wrong tape, so the miss that is left is a part of the slip, and it may stand
 * at another tape. Three distances leave nothing.
 *
 * @throws RangeError for fewer than three marks, a mark on the point, show not above 0, or anything not finite
 * Source: derived (the hat matrix of least squares). Worked value: six marks, one on either side along each axis: half of a
 * slip is left, so 5 mm show a slip of 10.
 */
export function slipsThatShow({ point, marks, show }: {
  readonly point: Row3;
  readonly marks: readonly Row3[];
  readonly show: number;
}): { readonly slips: readonly number[] } {
  requirePositive({ show });
  if (marks.length < 3) throw new RangeError(`marks: expected 3 or more, found ${marks.length}`);
  const rows = marks.map((mark): Row3 => {
    const away = [0, 1, 2].map((k) => (point[k] as number) - (mark[k] as number)) as unknown as Row3;
    const far = Math.hypot(...away);
    requireFinite({ far });
    if (!(far > 0)) throw new RangeError('marks: expected none on the point itself');
    return away.map((a) => a / far) as unknown as Row3;
  });
  const matrix = [0, 1, 2].map((r) => [0, 1, 2].map((c) => rows.reduce((sum, u) => sum + (u[r] as number) * (u[c] as number), 0)));
  const { values, vectors } = eigenSymmetric3({ matrix: matrix as unknown as readonly [Row3, Row3, Row3] });
  // Along each eigenvector a tape sees the point by so much, in units of how well all see it there.
  const seen = rows.map((u) => vectors.map((vector, k) => dot(u, vector) / Math.sqrt(Math.max(values[k] as number, 1e-12))));
  return {
    slips: rows.map((_, k) => {
      const left = Math.max(...rows.map((__, j) => Math.abs((j === k ? 1 : 0) - [0, 1, 2].reduce((sum, e) => sum + ((seen[j] as number[])[e] as number) * ((seen[k] as number[])[e] as number), 0))));
      return left > 1e-6 ? show / left : Infinity;
    }),
  };
}

const dot = (a: Row3, b: Row3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
