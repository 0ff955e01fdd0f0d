import { drawChance } from '../calculators/chance.ts';
import type { ChanceOptions } from '../calculators/chance.ts';
import type { Correlation, Tolerance } from '../calculators/draws.ts';
import { entryOf } from '../calculators/evaluate.ts';
import type { AnyCalculator, Values } from '../calculators/record.ts';
import { isQuantity } from '../calculators/vocabulary/index.ts';
import { usualDraws } from './sure-words.ts';
import type { Sure } from './sure-words.ts';

/** Rows of the list: what moves the result less than this part of what the widest does is only counted. */
const [rows, least] = [5, 0.1];

/**
 * The gains of two axles with brake pads of one compound, so much off together: batch, weather and bedding are common
 * to both, heat and glaze are each axle's own. Of the variance of one pad's friction 0.8 is taken as common (our
 * judgment, no source). Friction is 8 of the gain's 9 %, so 0.8 × 8²/9² = 0.63; tire radius and caliper efficiency, 1 %
 * each, are common too: 0.63 + 2/9² = 0.66. With two compounds that 0.02 would be left, which is nothing.
 */
export const padsOfOneCompound: readonly Correlation[] = [['frontBrakeGain', 'rearBrakeGain', 0.66]];

/**
 * How sure a record's result is, in steps of one evaluation. `computed`: the inputs nobody typed, which other calculators
 * give. Undefined where not one truck drawn has an answer.
 */
export function* drawSure(record: AnyCalculator, values: Values, samePads: boolean, computed: readonly string[] = []): Generator<void, Sure | undefined> {
  const { held, of, draws = usualDraws, band, happens, quick = record.compute } = record.howSure ?? {};
  const options: ChanceOptions<never> = { of, draws, band, happens: happens?.when as never, tolerance: tolerances(record, values, computed), correlated: samePads && record.howSure?.samePads ? padsOfOneCompound : [] };
  const chance = yield* drawChance({ ...record, compute: (held ? held.compute(values as never) : quick) as AnyCalculator['compute'] }, values, options as never);
  if (!chance) return undefined;
  const wide = chance.tornado.filter((bar) => bar.swing > 0 && bar.swing >= least * (chance.tornado[0]?.swing ?? 0)).slice(0, rows);
  return {
    low: rounded(chance.p5), high: rounded(chance.p95), refused: rounded(chance.refused),
    ...(chance.happens && { happens: rounded(chance.happens.probability), error: rounded(chance.happens.standardError) }),
    bars: wide.map(({ key, cell, low, high }) => ({ key, ...(cell && { cell }), low: rounded(low), high: rounded(high) })),
    others: chance.tornado.filter((bar) => bar.swing > 0).length - wide.length,
  };
}

/** What stands in place of the vocabulary's tolerances. */
function tolerances(record: AnyCalculator, values: Values, computed: readonly string[]): Record<string, Tolerance> {
  const { given = [], errorOf = {} } = record.howSure ?? {};
  return Object.fromEntries([
    ...computed.flatMap((key) => {
      const entry = entryOf(key);
      return isQuantity(entry) && entry.computedTolerance ? [[key, entry.computedTolerance] as const] : [];
    }),
    ...(given as readonly string[]).map((key) => [key, {}] as const),
    ...Object.entries(errorOf as Readonly<Record<string, readonly string[]>>).flatMap(([error, keys]) => keys.map((key) => [key, { absolute: values[error] as number }] as const)),
  ]);
}

/** Six digits: less to send, and more than is shown. */
const rounded = (x: number): number => Number(x.toPrecision(6));
