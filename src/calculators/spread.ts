import type { AnyCalculator, Values } from './record.ts';
import { evaluate, scalarProblem } from './evaluate.ts';
import { numbersIn, withNumber } from './numbers.ts';
import type { Cell } from './numbers.ts';

export interface Spread {
  /** One standard deviation of the headline result, SI. */
  readonly sigma: number;
  readonly low: number;
  readonly high: number;
  /** Where the spread comes from: the largest part first, each with its part of the variance. */
  readonly causes: readonly { readonly key: string; readonly cell?: Cell; readonly part: number }[];
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
  const moves = numbersIn(record, values).flatMap((place) => {
    const { key, cell, entry: { tolerance }, entry, x } = place;
    const step = Math.hypot((tolerance?.relative ?? 0) * x, tolerance?.absolute ?? 0);
    if (step === 0) return [];
    const at = (y: number): number | undefined => {
      if (scalarProblem(entry, y) !== undefined) return undefined;
      const result = evaluate(record, withNumber(values, place, y));
      return result.ok ? (result.values[headline] as number) : undefined;
    };
    const up = at(x + step);
    const down = at(x - step);
    return [{ key, cell, move: up !== undefined && down !== undefined ? (up - down) / 2 : up !== undefined ? up - centre : down !== undefined ? centre - down : 0 }];
  });
  const variance = moves.reduce((sum, { move }) => sum + move * move, 0);
  if (!(variance > 0)) return undefined;
  const sigma = Math.sqrt(variance);
  const causes = moves.map(({ key, cell, move }) => ({ key, ...(cell ? { cell } : {}), part: (move * move) / variance })).filter((c) => c.part > 0.005).sort((a, b) => b.part - a.part);
  return { sigma, low: centre - nineInTen * sigma, high: centre + nineInTen * sigma, causes };
}
