import { evaluate, scalarProblem } from '../../src/calculators/evaluate.ts';
import type { AnyCalculator, Values } from '../../src/calculators/index.ts';
import { numbersIn, withNumber } from '../../src/calculators/numbers.ts';
import type { Place } from '../../src/calculators/numbers.ts';

/** A second opinion on a spread: root sum of squares of central differences, inputs independent. Good where nothing bends. */
export function firstOrder(record: AnyCalculator, values: Values): { low: number; high: number; causes: (Pick<Place, 'key' | 'cell'> & { part: number })[] } | undefined {
  const headline = record.outputs[0] as string;
  const centre = values[headline];
  if (typeof centre !== 'number') return undefined;
  const moves = numbersIn(record, values).map((place) => {
    const { entry, x } = place;
    const at = (y: number): number | undefined => {
      const result = scalarProblem(entry, y) === undefined ? evaluate(record, withNumber(values, place, y)) : undefined;
      return result?.ok ? (result.values[headline] as number) : undefined;
    };
    const step = Math.hypot((entry.tolerance?.relative ?? 0) * x, entry.tolerance?.absolute ?? 0);
    const [up, down] = step > 0 ? [at(x + step), at(x - step)] : [];
    // Where one side has no answer, the other side's slope stands for both.
    return { ...place, move: up !== undefined && down !== undefined ? (up - down) / 2 : (up ?? centre) - (down ?? centre) };
  });
  const variance = moves.reduce((sum, { move }) => sum + move * move, 0);
  if (!(variance > 0)) return undefined;
  const half = 1.6448536269514722 * Math.sqrt(variance);
  return { low: centre - half, high: centre + half, causes: moves.map(({ key, cell, move }) => ({ key, cell, part: (move * move) / variance })).sort((a, b) => b.part - a.part) };
}
