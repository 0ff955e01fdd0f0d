import type { AnyCalculator, Level, Say, Values } from '../calculators/record.ts';

const order: readonly Level[] = ['danger', 'warning', 'caution', 'notice'];

/** The cautions these values fire, worst first, in words. */
export function firingCautions(record: AnyCalculator, values: Values, say: Say): { id: string; level: Level; words: string; todo: string }[] {
  return record.cautions
    .filter((caution) => caution.when?.(values as never) ?? true)
    .map((caution) => ({ id: caution.id, level: caution.level, todo: caution.todo, words: typeof caution.words === 'string' ? caution.words : caution.words(values as never, say) }))
    .sort((a, b) => order.indexOf(a.level) - order.indexOf(b.level));
}
