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
