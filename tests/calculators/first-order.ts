import { entryOf, evaluate, hardProblem, inputKeys } from '../../src/calculators/index.ts';
import type { AnyCalculator, Values } from '../../src/calculators/index.ts';
import { isChoice } from '../../src/calculators/vocabulary/index.ts';

/** A second opinion on a spread: root sum of squares of central differences, inputs independent. Good where nothing bends. */
export function firstOrder(record: AnyCalculator, values: Values): { low: number; high: number; causes: { key: string; part: number }[] } | undefined {
  const headline = record.outputs[0] as string;
  const centre = values[headline];
  if (typeof centre !== 'number') return undefined;
  const at = (key: string, x: number): number | undefined => {
    const result = hardProblem(key, x) === undefined ? evaluate(record, { ...values, [key]: x }) : undefined;
    return result?.ok ? (result.values[headline] as number) : undefined;
  };
  const moves = inputKeys(record).flatMap((key) => {
    const entry = entryOf(key);
    if (isChoice(entry) || !entry.tolerance) return [];
    const x = values[key] as number;
    const step = Math.hypot((entry.tolerance.relative ?? 0) * x, entry.tolerance.absolute ?? 0);
    const [up, down] = [at(key, x + step), at(key, x - step)];
    // Where one side has no answer, the other side's slope stands for both.
    return [{ key, move: up !== undefined && down !== undefined ? (up - down) / 2 : (up ?? centre) - (down ?? centre) }];
  });
  const variance = moves.reduce((sum, { move }) => sum + move * move, 0);
  if (!(variance > 0)) return undefined;
  const half = 1.6448536269514722 * Math.sqrt(variance);
  return { low: centre - half, high: centre + half, causes: moves.map(({ key, move }) => ({ key, part: (move * move) / variance })).sort((a, b) => b.part - a.part) };
}
