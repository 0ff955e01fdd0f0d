/**
 * Where a function of one variable passes through zero.
 *
 * Plain bisection: it halves a bracket until the bracket is as narrow as asked. It is slower than
 * cleverer methods by a few dozen evaluations and cannot be led astray, which is the better bargain here.
 */

const FINEST = 200; // a double's bracket cannot be halved more often than this and still change

/**
 * The root of f between lo and hi, where f has opposite signs at the two ends (or is zero at one).
 *
 * `tolerance` is the width of the final bracket in the unit of x; 0 (the default) goes down to the
 * spacing of doubles. f must be continuous: a jump through zero is reported as if it were a root.
 *
 * @throws RangeError if the ends are not finite, f is not a number there, or both have the same sign
 * Worked value: x² − 2 between 1 and 2 gives 1.41421356237.
 */
export function bisect(
  f: (x: number) => number,
  lo: number,
  hi: number,
  { tolerance = 0 }: { readonly tolerance?: number } = {},
): number {
  if (!Number.isFinite(lo) || !Number.isFinite(hi)) {
    throw new RangeError(`bracket: expected finite ends, found ${lo} and ${hi}`);
  }
  if (!(tolerance >= 0)) throw new RangeError(`tolerance: expected 0 or more, found ${tolerance}`);
  let a = lo;
  let b = hi;
  const fa = valueAt(f, a);
  const fb = valueAt(f, b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) throw new RangeError(`bracket: expected opposite signs, found ${fa} at ${lo} and ${fb} at ${hi}`);
  for (let i = 0; i < FINEST && Math.abs(b - a) > tolerance; i += 1) {
    const mid = a + (b - a) / 2;
    if (mid === a || mid === b) break;
    const fm = valueAt(f, mid);
    if (fm === 0) return mid;
    if (fm > 0 === fa > 0) a = mid;
    else b = mid;
  }
  return a + (b - a) / 2;
}

/**
 * The first root of f from lo toward hi, found by looking at `samples` equal steps for a change of
 * sign and bisecting that step. Steps with an end where f is not a finite number are passed over.
 *
 * Returns undefined where no step changes sign. Two roots inside one step cancel and are missed, so
 * take the step finer than the closest pair of roots can be.
 *
 * @throws RangeError if samples is not a whole number of 1 or more, or an end is not finite
 * Worked value: sin x from 1 to 10 in 50 steps gives π, the first of its three roots there.
 */
export function findRoot(f: (x: number) => number, lo: number, hi: number, samples: number): number | undefined {
  if (!Number.isInteger(samples) || samples < 1) {
    throw new RangeError(`samples: expected a whole number of 1 or more, found ${samples}`);
  }
  if (!Number.isFinite(lo) || !Number.isFinite(hi)) {
    throw new RangeError(`bracket: expected finite ends, found ${lo} and ${hi}`);
  }
  let x0 = lo;
  let f0 = f(x0);
  if (f0 === 0) return x0;
  for (let i = 1; i <= samples; i += 1) {
    const x1 = i === samples ? hi : lo + ((hi - lo) * i) / samples;
    const f1 = f(x1);
    if (f1 === 0) return x1;
    if (Number.isFinite(f0) && Number.isFinite(f1) && f0 > 0 !== f1 > 0) return bisect(f, x0, x1);
    x0 = x1;
    f0 = f1;
  }
  return undefined;
}

function valueAt(f: (x: number) => number, x: number): number {
  const y = f(x);
  if (Number.isNaN(y)) throw new RangeError(`function: expected a number at ${x}, found NaN`);
  return y;
}
