import { mixer, sfc32, shapeIn } from './draws.ts';
import type { Correlation, Tolerance } from './draws.ts';
import { entryOf } from './evaluate.ts';
import { numbersIn } from './numbers.ts';
import type { Cell } from './numbers.ts';
import type { Calculator, Value, Values, ValuesOf } from './record.ts';
import { inputKeys, isRefusal } from './record.ts';
import { isQuantity, isRows } from './vocabulary/index.ts';
import type { QuantityKey, RowValues } from './vocabulary/index.ts';

export interface Chance {
  /** What 5, 50 and 95 of 100 draws stay below, SI. */
  readonly p5: number;
  readonly p50: number;
  readonly p95: number;
  /** Part of the draws that have no answer. They count nowhere else. */
  readonly refused: number;
  /** Part of the answered draws in which it happens, with the error of counting so many draws, which is never 0. */
  readonly happens?: { readonly probability: number; readonly standardError: number };
  /** The result's own 5 and 95 of 100 when one input alone is off: the widest first, every input that can be off. */
  readonly tornado: readonly { readonly key: string; readonly cell?: Cell; readonly low: number; readonly high: number; readonly swing: number }[];
}

export interface ChanceOptions<V> {
  /** The result looked at. Left out: the headline. */
  readonly of?: string;
  /** 50 or more. */
  readonly draws?: number;
  readonly seed?: number;
  /** Inputs that err together, as two axles with pads of one compound do. */
  readonly correlated?: readonly Correlation[];
  /** In place of the vocabulary's; {} holds an input still. Of a list by its key, for all its cells, or by 'key.column'. */
  readonly tolerance?: Readonly<Record<string, Tolerance>>;
  /** A result: half the width of the band about `of` in which friction may leave it, any place as likely as another. */
  readonly band?: string;
  /** Sees inputs and results of one draw, in an object that the next draw uses again. */
  readonly happens?: (v: V) => boolean;
}

/**
 * Each input alone is tried at levels (k − ½)/50, which put the 3rd and the 48th of 50 sorted results exactly on 5 %
 * and 95 %. Ten do too, with less to see of a bend in between: enough where this would take longer than the draws.
 */
const levelsFor = (numbers: number, draws: number): number => (50 * numbers >= draws ? 10 : 50);
const fewest = 50;
/** A step is about a thousandth of the work: to stop after each of 10,000 draws would cost a third of a short one. */
const steps = 1000;

/**
 * What a result is worth when every input is off by its usual measuring error, found by drawing them many times
 * (Monte Carlo). Unlike a root sum of squares it holds where the result bends, jumps or is refused.
 *
 * Every number among the inputs, each cell of a list too, takes one random number in every draw, held still or not,
 * so that moving a tolerance or a correlation moves the answer smoothly. The same seed gives the same draws
 * everywhere, up to the last bits in which engines differ over exp and log.
 *
 * Undefined where the result is a choice, or not one draw has an answer.
 * Neglected: errors of the formulas, and of inputs without a tolerance.
 * @throws RangeError for draws below 50, a key that the record lacks, and as shapeOf and mixer
 * Worked value: a sum of two masses with errors of 3 and 4 kg has p95 − p5 = 2 × 1.645 × 5 kg.
 */
export function chanceOf<I extends QuantityKey, O extends QuantityKey>(record: Drawn<I, O>, values: Values, options: ChanceOptions<ValuesOf<I | O>> = {}): Chance | undefined {
  const drawing = drawChance(record, values, options);
  for (;;) {
    const step = drawing.next();
    if (step.done) return step.value;
  }
}

type Drawn<I extends QuantityKey, O extends QuantityKey> = Pick<Calculator<I, O>, 'id' | 'title' | 'inputs' | 'outputs' | 'compute'>;

/** The same in steps of one evaluation or a few short ones, for a page that has to answer the reader in between. */
export function* drawChance<I extends QuantityKey, O extends QuantityKey>(
  record: Drawn<I, O>,
  values: Values,
  { of = record.outputs[0], draws = 10_000, seed = 1, correlated = [], tolerance = {}, band, happens }: ChanceOptions<ValuesOf<I | O>> = {},
): Generator<void, Chance | undefined> {
  const keys: readonly string[] = inputKeys(record);
  const outputs: readonly string[] = record.outputs;
  const result = of as string;
  for (const key of [...Object.keys(tolerance).map((name) => name.replace(/\..*/, '')), ...correlated.flatMap(([a, b]) => [a, b])]) if (!keys.includes(key)) throw new RangeError(`chance: expected an input of ${record.id}, found ${key}`);
  for (const key of [result, band ?? result]) if (!outputs.includes(key)) throw new RangeError(`chance: expected a result of ${record.id}, found ${key}`);
  if (!Number.isInteger(draws) || draws < fewest) throw new RangeError(`draws: expected a whole number of ${fewest} or more, found ${draws}`);
  if (!isQuantity(entryOf(result))) return undefined;

  // One object for all draws: to make it anew each time would cost as much as the physics. Spread, because one filled key by
  // key is a slow dictionary in some engines as soon as it has 19 keys.
  const inputs = { ...Object.fromEntries(keys.map((key): [string, Value] => [key, isRows(entryOf(key)) ? (values[key] as RowValues).map((row) => ({ ...row })) : (values[key] as Value)])) };
  const shapes = numbersIn(record as never, values).map(({ key, cell, entry, x }) => {
    const into = (cell ? (inputs[key] as RowValues)[cell.row] : inputs) as Record<string, number>;
    return { key, cell, into, at: cell?.column ?? key, shape: shapeIn(key, entry, x, (cell && tolerance[`${key}.${cell.column}`]) ?? tolerance[key]) };
  });
  for (const { into, at, shape } of shapes) into[at] = shape.centre as number;
  const mix = mixer(shapes.map(({ key, cell }) => (cell ? '' : key)), correlated);
  const compute = (): Values | undefined => {
    const results = record.compute(inputs as never) as object as Values;
    if (isRefusal(results)) return undefined;
    for (const key in results) {
      const x = results[key];
      if (typeof x === 'number' && !Number.isFinite(x)) return undefined;
    }
    return results;
  };

  const levels = levelsFor(shapes.length, draws);
  const tornado: Chance['tornado'][number][] = [];
  const alone = (place: { readonly key: string; readonly cell?: Cell }, found: readonly number[]): void => {
    if (found.length === 0) return;
    const line = Float64Array.from(found).sort();
    const [low, high] = [quantile(line, 0.05), quantile(line, 0.95)];
    tornado.push({ ...place, low, high, swing: high - low });
  };
  for (const { key, cell, into, at, shape } of shapes) {
    if (!shape.at) continue;
    const found: number[] = [];
    for (let k = 0; k < levels; k += 1) {
      into[at] = shape.at((k + 0.5) / levels);
      const results = compute();
      if (results) found.push(results[result] as number);
      yield;
    }
    into[at] = shape.centre as number;
    alone({ key, ...(cell ? { cell } : {}) }, found);
  }
  if (band !== undefined) {
    const results = compute();
    const [middle, half] = [results?.[result] as number, results?.[band] as number];
    if (results) alone({ key: band }, Array.from({ length: levels }, (_, k) => middle + half * ((2 * k + 1) / levels - 1)));
  }
  tornado.sort((a, b) => b.swing - a.swing);

  const random = sfc32(seed);
  const varying = shapes.flatMap(({ into, at, shape }, i) => (shape.at ? [{ i, into, at, draw: shape.at }] : []));
  const u = new Float64Array(shapes.length);
  const found = new Float64Array(draws);
  let [answered, times] = [0, 0];
  let results: Values | undefined;
  // What `happens` sees is looked up when it looks: copied, it would take longer than a short formula.
  const both = Object.defineProperties({}, Object.fromEntries([...keys, ...outputs].map((key) => [key, { enumerable: true, get: () => (keys.includes(key) ? inputs : (results as Values))[key] }]))) as ValuesOf<I | O>;
  const drawOne = (): void => {
    for (let i = 0; i < u.length; i += 1) u[i] = random();
    mix(u);
    for (const { i, into, at, draw } of varying) into[at] = draw(u[i] as number);
    results = compute();
    if (!results) return;
    found[answered] = (results[result] as number) + (band === undefined ? 0 : (results[band] as number) * (2 * random() - 1));
    answered += 1;
    if (happens?.(both)) times += 1;
  };
  const step = Math.ceil(draws / steps);
  for (let draw = 0; draw < draws; draw += 1) {
    drawOne();
    if (draw % step === 0) yield;
  }
  if (answered === 0) return undefined;
  const line = found.subarray(0, answered).sort();
  // One count to either side: what never happened in 10,000 draws is rare, not impossible.
  const p = (times + 1) / (answered + 2);
  return {
    p5: quantile(line, 0.05), p50: quantile(line, 0.5), p95: quantile(line, 0.95),
    refused: 1 - answered / draws,
    ...(happens ? { happens: { probability: times / answered, standardError: Math.sqrt((p * (1 - p)) / answered) } } : {}),
    tornado,
  };
}

/** Of sorted numbers, each standing for an equal part of the whole and lying in its middle. */
function quantile(line: Float64Array, part: number): number {
  const place = Math.min(line.length - 1, Math.max(0, part * line.length - 0.5));
  const k = Math.floor(place + 1e-9);
  const low = line[k] as number;
  return low + Math.max(0, place - k) * ((line[k + 1] ?? low) - low);
}
