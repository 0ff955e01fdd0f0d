/**
 * How the engine says that a reader's numbers, each possible alone, cannot be together.
 *
 * The code names the reason, `by` the amount by which it fails (SI, same dimension as the thing
 * that fails); the calculator record puts it into words and into the reader's units.
 */
export interface Impossible {
  readonly impossible: string;
  readonly by?: number;
}

export function isImpossible(x: unknown): x is Impossible {
  return typeof x === 'object' && x !== null && 'impossible' in x;
}
