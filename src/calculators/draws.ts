import { entryOf } from './evaluate.ts';
import type { Value } from './record.ts';
import { isQuantity } from './vocabulary/index.ts';
import type { NumberColumn } from './vocabulary/index.ts';

/**
 * How far off an input may be: one standard deviation of a normal error (relative and absolute add as squares), or
 * `uniform`, a half-width in SI within which any value is as likely as another.
 */
export interface Tolerance {
  readonly relative?: number;
  readonly absolute?: number;
  readonly uniform?: number;
}

/** Two inputs and the correlation, −1 to 1, of the normal errors behind them. */
export type Correlation = readonly [a: string, b: string, rho: number];

/**
 * Random numbers between 0 and 1, neither end ever, the same in every engine for the same seed: sfc32 (Doty-Humphrey),
 * whole-number steps of 32 bits on 128 bits of state, twelve of them thrown away so that near seeds part.
 * Source: from memory, not checked against the text; the tests check evenness and independence.
 */
export function sfc32(seed: number): () => number {
  // An array of whole numbers: a phone's engine would make an object of every large one kept in a variable out here.
  const state = Int32Array.of(0, seed, Math.floor(seed / 4294967296), 1);
  const next = (): number => {
    const [a, b, c, count] = [state[0] as number, state[1] as number, state[2] as number, state[3] as number];
    const out = (((a + b) | 0) + count) | 0;
    state[0] = b ^ (b >>> 9);
    state[1] = c + (c << 3);
    state[2] = ((c << 21) | (c >>> 11)) + out;
    state[3] = count + 1;
    return ((out >>> 0) + 0.5) / 4294967296;
  };
  for (let k = 0; k < 12; k += 1) next();
  return next;
}

/**
 * Φ(z): the part of a normal distribution (mean 0, sigma 1) below z, to about 1e-15.
 * Φ(z) = ½ + φ(z) (z + z³/3 + z⁵/(3·5) + …). Source: Marsaglia 2004, from memory; derived again by differentiating.
 * Worked value: Φ(1.6449) = 0.95.
 */
export function normalPart(z: number): number {
  if (Math.abs(z) > 8) return z > 0 ? 1 : 0;
  let term = z;
  let sum = z;
  for (let n = 3, before = NaN; sum !== before; n += 2) {
    before = sum;
    term *= (z * z) / n;
    sum += term;
  }
  return 0.5 + sum * Math.exp(-0.5 * z * z - 0.9189385332046727);
}

/**
 * The inverse: the z below which the part u lies, to 2e-9 of z; about ±8.2 at the very ends.
 * Rational fit of Acklam, from memory; the tests check it against Φ. Worked value: u 0.95 gives 1.6449.
 */
export function normalAt(u: number): number {
  const p = Math.min(1 - 1.2e-16, Math.max(1e-16, u));
  if (p > 0.97575) return -tail(1 - p);
  if (p < 0.02425) return tail(p);
  const q = p - 0.5;
  const r = q * q;
  return ((((((-39.69683028665376 * r + 220.9460984245205) * r - 275.9285104469687) * r + 138.357751867269) * r - 30.66479806614716) * r + 2.506628277459239) * q)
    / (((((-54.47609879822406 * r + 161.5858368580409) * r - 155.6989798598866) * r + 66.80131188771972) * r - 13.28068155288572) * r + 1);
}

function tail(p: number): number {
  const q = Math.sqrt(-2 * Math.log(p));
  return (((((-0.007784894002430293 * q - 0.3223964580411365) * q - 2.400758277161838) * q - 2.549732539343734) * q + 4.374664141464968) * q + 2.938163982698783)
    / ((((0.007784695709041462 * q + 0.3224671290700398) * q + 2.445134137142996) * q + 3.754408661907416) * q + 1);
}

/** The values one input may really have. */
export interface Shape {
  readonly centre: number | string;
  /** The value below which the part u of all draws lies; left out for an input that is held still. */
  readonly at?: (u: number) => number;
}

/**
 * The shape of an input that is no list: normal about its value and cut off at the hard range, or uniform.
 * @throws RangeError for a value that is no number, or a negative tolerance
 */
export function shapeOf(key: string, value: Value | undefined, given?: Tolerance): Shape {
  const entry = entryOf(key);
  return isQuantity(entry) ? shapeIn(key, entry, value as number, given) : { centre: value as string };
}

/** The same for a number whose entry is at hand: an input's, or that of a list's column. */
export function shapeIn(key: string, entry: NumberColumn, value: number | undefined, given?: Tolerance): Shape {
  if (!Number.isFinite(value)) throw new RangeError(`${key}: expected a number, found ${value}`);
  const { relative = 0, absolute = 0, uniform = 0 }: Tolerance = given ?? entry.tolerance ?? {};
  if (!(relative >= 0 && absolute >= 0 && uniform >= 0)) throw new RangeError(`${key}: expected tolerances of 0 or more, found ${relative}, ${absolute} and ${uniform}`);
  const { min, max } = entry.hard ?? { min: -Infinity, max: Infinity };
  const inside = (x: number): number => Math.min(max, Math.max(min, x));
  const centre = inside(value as number);
  if (uniform > 0) {
    const [low, high] = [inside(centre - uniform), inside(centre + uniform)];
    return { centre, at: (u) => low + u * (high - low) };
  }
  const sigma = Math.hypot(relative * centre, absolute);
  if (!(sigma > 0)) return { centre };
  const low = normalPart((min - centre) / sigma);
  const kept = normalPart((max - centre) / sigma) - low;
  return { centre, at: (u) => inside(centre + sigma * normalAt(low + u * kept)) };
}

/**
 * Gives the inputs' random numbers their correlations, in place (Gaussian copula): they become normal, are mixed by
 * Cholesky's triangle of the correlation matrix, and become even again.
 * @throws RangeError for a correlation beyond ±1, of an input with itself, or a set of them that no errors can have
 */
export function mixer(keys: readonly string[], correlated: readonly Correlation[]): (u: Float64Array) => void {
  const mixed = keys.map((_, i) => i).filter((i) => correlated.some(([a, b]) => a === keys[i] || b === keys[i]));
  if (mixed.length === 0) return () => undefined;
  const matrix = mixed.map((i) => mixed.map((j) => (i === j ? 1 : 0)));
  for (const [a, b, rho] of correlated) {
    const [i, j] = [mixed.indexOf(keys.indexOf(a)), mixed.indexOf(keys.indexOf(b))];
    if (i === j || i < 0 || j < 0 || !(Math.abs(rho) <= 1)) throw new RangeError(`correlation: expected two inputs and −1 to 1, found ${a}, ${b}, ${rho}`);
    (matrix[i] as number[])[j] = (matrix[j] as number[])[i] = rho;
  }
  const triangle: number[][] = [];
  matrix.forEach((row, i) => {
    const line: number[] = [];
    triangle.push(line);
    for (let j = 0; j <= i; j += 1) {
      const above = triangle[j] as number[];
      let rest = row[j] as number;
      for (let k = 0; k < j; k += 1) rest -= (line[k] as number) * (above[k] as number);
      const pivot = above[j] ?? 1;
      // A pivot of nearly 0 is an input that others fix already: nothing may be left for it to explain.
      const spent = j < i && pivot < 1e-6;
      if (j === i ? rest < -1e-12 : spent && Math.abs(rest) > 1e-9) throw new RangeError(`correlation: expected a set that errors can have together, found ${JSON.stringify(correlated)}`);
      line.push(j === i ? Math.sqrt(Math.max(0, rest)) : spent ? 0 : rest / pivot);
    }
  });
  const z = new Float64Array(mixed.length);
  return (u) => {
    for (let m = 0; m < z.length; m += 1) z[m] = normalAt(u[mixed[m] as number] as number);
    // The first follows nobody and keeps its number.
    for (let m = 1; m < z.length; m += 1) {
      const line = triangle[m] as number[];
      let sum = 0;
      for (let k = 0; k <= m; k += 1) sum += (line[k] as number) * (z[k] as number);
      u[mixed[m] as number] = normalPart(sum);
    }
  };
}
