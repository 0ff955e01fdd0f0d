import type { AnyCalculator, Values } from './record.ts';
import { inputKeys } from './record.ts';
import { entryOf, evaluate, hardProblem } from './evaluate.ts';
import { isChoice } from './vocabulary/index.ts';

export interface Spread {
  /** One standard deviation of the headline result, SI. */
  readonly sigma: number;
  readonly low: number;
  readonly high: number;
  /** Where the spread comes from: the largest part first, each with its part of the variance. */
  readonly causes: readonly { readonly key: string; readonly part: number }[];
}

/** Errors of most home measurements stay within this many standard deviations, 9 times in 10. */
const nineInTen = 1.645;

/**
 * How far the headline result moves when each input is off by its usual measuring error:
 * root sum of squares of central differences, inputs taken as independent. First order only, so
 * it is undefined where a step leaves the possible range on both sides or the result does not move.
 */
export function spreadOf(record: AnyCalculator, values: Values): Spread | undefined {
  const headline = record.outputs[0] as string;
  const centre = values[headline];
  if (typeof centre !== 'number') return undefined;
  const at = (key: string, x: number): number | undefined => {
    if (hardProblem(key, x) !== undefined) return undefined;
    const result = evaluate(record, { ...values, [key]: x });
    return result.ok ? (result.values[headline] as number) : undefined;
  };
  const moves: { key: string; move: number }[] = [];
  for (const key of inputKeys(record)) {
    const entry = entryOf(key);
    if (isChoice(entry) || !entry.tolerance) continue;
    const x = values[key] as number;
    const step = Math.hypot((entry.tolerance.relative ?? 0) * x, entry.tolerance.absolute ?? 0);
    if (step === 0) continue;
    const up = at(key, x + step);
    const down = at(key, x - step);
    const move = up !== undefined && down !== undefined ? (up - down) / 2 : up !== undefined ? up - centre : down !== undefined ? centre - down : 0;
    moves.push({ key, move });
  }
  const variance = moves.reduce((sum, { move }) => sum + move * move, 0);
  if (!(variance > 0)) return undefined;
  const sigma = Math.sqrt(variance);
  const causes = moves.map(({ key, move }) => ({ key, part: (move * move) / variance })).filter((c) => c.part > 0.005).sort((a, b) => b.part - a.part);
  return { sigma, low: centre - nineInTen * sigma, high: centre + nineInTen * sigma, causes };
}
