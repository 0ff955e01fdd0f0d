/**
 * Guards for programmer errors. A reader's bad number never gets this far: the record refuses it
 * with words. So a throw from here means that the calling code is wrong.
 *
 * for…in, because Object.keys makes an array on every call, and these run in every formula of 10,000 draws.
 *
 * @throws RangeError naming the element, what was expected and what was found
 */
export function requirePositive(values: Readonly<Record<string, number>>): void {
  for (const name in values) {
    const x = values[name] as number;
    if (!(x > 0) || x === Infinity) throw new RangeError(`${name}: expected a finite number above 0, found ${x}`);
  }
}

export function requireNonNegative(values: Readonly<Record<string, number>>): void {
  for (const name in values) {
    const x = values[name] as number;
    if (!(x >= 0) || x === Infinity) throw new RangeError(`${name}: expected a finite number of 0 or more, found ${x}`);
  }
}

export function requireFinite(values: Readonly<Record<string, number>>): void {
  for (const name in values) {
    const x = values[name] as number;
    if (!Number.isFinite(x)) throw new RangeError(`${name}: expected a finite number, found ${x}`);
  }
}

/**
 * The same questions without names, for up to five numbers: asked first where 10,000 draws go through a formula, because to
 * make the object that names its numbers takes longer than the formula.
 *
 * A number less itself is 0, only for a finite one. All of them in one sum: adding is quicker than asking.
 */
export const areFinite = (a: number, b = 0, c = 0, d = 0, e = 0): boolean => a - a + (b - b) + (c - c) + (d - d) + (e - e) === 0;
export const arePositive = (a: number, b = 1, c = 1, d = 1, e = 1): boolean => a > 0 && b > 0 && c > 0 && d > 0 && e > 0 && areFinite(a, b, c, d, e);
export const areNonNegative = (a: number, b = 0, c = 0, d = 0, e = 0): boolean => a >= 0 && b >= 0 && c >= 0 && d >= 0 && e >= 0 && areFinite(a, b, c, d, e);
