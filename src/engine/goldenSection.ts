/**
 * The least value of a function with one valley between two places, by cutting the interval in the golden ratio: each
 * cut costs one evaluation and keeps 0.618 of it. 14 cuts leave 0.12 % of the interval; the value is then right to that
 * squared, since a valley is flat at its bottom. The ends themselves are tried too.
 *
 * With several valleys it finds one of them, never a value that the function does not have.
 * Source: derived. Worked value: (x − 0.3)² on 0 to 1 → x 0.300.
 */
export function goldenSection(f: (x: number) => number, low: number, high: number, cuts: number): { readonly x: number; readonly y: number } {
  const keep = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  let [x1, x2] = [b - keep * (b - a), a + keep * (b - a)];
  let [y1, y2] = [f(x1), f(x2)];
  for (let k = 0; k < cuts; k++) {
    if (y1 <= y2) {
      [b, x2, y2] = [x2, x1, y1];
      x1 = b - keep * (b - a);
      y1 = f(x1);
    } else {
      [a, x1, y1] = [x1, x2, y2];
      x2 = a + keep * (b - a);
      y2 = f(x2);
    }
  }
  let best = y1 <= y2 ? { x: x1, y: y1 } : { x: x2, y: y2 };
  for (const x of [low, high]) {
    const y = f(x);
    if (y < best.y) best = { x, y };
  }
  return best;
}
