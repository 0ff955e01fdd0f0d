import { requireFinite } from './require.ts';

export type Row3 = readonly [number, number, number];
export type Symmetric3 = readonly [Row3, Row3, Row3];

/**
 * Eigenvalues and eigenvectors of a symmetric 3 × 3 matrix, largest first, by Jacobi rotations.
 *
 * Each rotation takes one off-diagonal element to zero; a few sweeps leave them below rounding. vectors[k] is the unit
 * vector of values[k]. Only the upper triangle is read.
 *
 * @throws RangeError if an element is not finite
 * Source: textbook linear algebra. Worked value: [[2,1,0],[1,2,0],[0,0,5]] → 5, 3, 1.
 */
export function eigenSymmetric3({ matrix }: { readonly matrix: Symmetric3 }): { readonly values: Row3; readonly vectors: readonly [Row3, Row3, Row3] } {
  for (const [k, row] of matrix.entries()) requireFinite({ [`matrix[${k}]`]: row[0] + row[1] + row[2] });
  const a = [0, 1, 2].map((r) => [0, 1, 2].map((c) => (r <= c ? matrix[r]![c] : matrix[c]![r]) as number)) as number[][];
  const v = [[1, 0, 0], [0, 1, 0], [0, 0, 1]];
  for (let sweep = 0; sweep < 20; sweep++) {
    for (const [p, q] of [[0, 1], [0, 2], [1, 2]] as const) {
      const off = a[p]![q] as number;
      if (off === 0) continue;
      const half = ((a[q]![q] as number) - (a[p]![p] as number)) / (2 * off);
      const t = Math.sign(half || 1) / (Math.abs(half) + Math.hypot(half, 1));
      const c = 1 / Math.hypot(t, 1);
      const s = t * c;
      for (let k = 0; k < 3; k++) {
        const [x, y] = [a[k]![p] as number, a[k]![q] as number];
        a[k]![p] = c * x - s * y;
        a[k]![q] = s * x + c * y;
      }
      for (let k = 0; k < 3; k++) {
        const [x, y] = [a[p]![k] as number, a[q]![k] as number];
        a[p]![k] = c * x - s * y;
        a[q]![k] = s * x + c * y;
        const [vp, vq] = [v[k]![p] as number, v[k]![q] as number];
        v[k]![p] = c * vp - s * vq;
        v[k]![q] = s * vp + c * vq;
      }
    }
  }
  const order = [0, 1, 2].sort((i, j) => (a[j]![j] as number) - (a[i]![i] as number));
  const column = (k: number): Row3 => [v[0]![k] as number, v[1]![k] as number, v[2]![k] as number];
  const [i, j, k] = order as [number, number, number];
  return { values: [a[i]![i] as number, a[j]![j] as number, a[k]![k] as number], vectors: [column(i), column(j), column(k)] };
}
