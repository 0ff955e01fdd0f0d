import { entryOf, evaluate, hardProblem } from '../calculators/evaluate.ts';
import type { Evaluation } from '../calculators/evaluate.ts';
import type { AnyCalculator, Feed, Refusal, Say, Value, Values } from '../calculators/record.ts';
import { inputKeys } from '../calculators/record.ts';
import { turnRound } from '../calculators/turn-round.ts';
import { isQuantity } from '../calculators/vocabulary/index.ts';
import type { Quantity } from '../calculators/vocabulary/index.ts';
import { editText, exactText, formatIn, fromSi, standardBores, toSi, unitOf } from '../units/index.ts';
import { firingCautions } from './cautions.ts';
import type { Field, Lookup, Reading, System } from './fields.ts';
import { readRecord } from './fields.ts';

/** A calculator turned round: which `ask` gives `target` (SI) of `fix`? */
export interface Question {
  readonly ask: string;
  readonly fix: string;
  readonly target: number;
}

/** A value of the input, as the field will have it, and what the whole page then says. */
export interface Way {
  readonly text: string;
  readonly unit: string;
  /** In both systems, in words. */
  readonly words: string;
  /** Undefined where this value, rounded as shown, has no result. */
  readonly gives?: number;
  /** The reader has it already. */
  readonly present: boolean;
  readonly note?: string;
  /** The worst caution it fires, of those that depend on the numbers. */
  readonly caution?: { readonly level: string; readonly words: string };
}

export type Turned =
  | { readonly kind: 'found' | 'nearest'; readonly ways: readonly Way[]; /** Standard bores on either side of the first. */ readonly bores: readonly Way[]; /** Why the nearest is the last: a value past it, and what it meets, in words. */ readonly beyond?: string }
  | { readonly kind: 'unmoved' }
  | { readonly kind: 'refused'; readonly words: string };

/** The most answers shown. */
const most = 5;

/** Inputs that may be asked for: numbers with an end to them. */
export function askable(record: Feed): string[] {
  return inputKeys(record).filter((key) => {
    const entry = entryOf(key);
    return isQuantity(entry) && entry.hard !== undefined;
  });
}

/** Results that may be wanted. */
export function wantable(record: Feed): string[] {
  return (record.outputs as readonly string[]).filter((key) => isQuantity(entryOf(key)));
}

const paused = new Error('paused');

/**
 * Answers a question, in steps that end when `late` says so: the search starts again with every evaluation it has
 * made in hand, and gets so much further. What other calculators compute for this one is computed again where it
 * depends on the input asked for, so that the answer holds once it is typed.
 */
export function* turning(record: AnyCalculator, fields: readonly Field[], lookup: Lookup, system: System, say: Say, { ask, fix, target }: Question, late: () => boolean): Generator<void, Turned> {
  const values: Values = Object.fromEntries(fields.map((field) => [field.key, field.value as Value]));
  const seen = new Map<number, object>();
  let fresh = 0;
  const compute = refed(record, fields, lookup, system, ask);
  const remembered: Feed = {
    ...record,
    compute: (v: Values) => {
      const x = v[ask] as number;
      let results = seen.get(x);
      if (!results) {
        if (fresh > 0 && late()) throw paused;
        fresh += 1;
        results = compute(v, x);
        seen.set(x, results);
      }
      return results as never;
    },
  };
  const search = (): ReturnType<typeof turnRound> | undefined => {
    try {
      return turnRound(remembered, values, { ask, fix, target });
    } catch (error) {
      if (error !== paused) throw error;
      return undefined;
    }
  };
  let turned = search();
  while (!turned) {
    yield;
    fresh = 0;
    turned = search();
  }
  if ('refused' in turned) return { kind: 'refused', words: turned.refused(say) };
  const way = (x: number, text?: string): Way => wayOf(record, lookup, system, say, fields, ask, fix, x, text);
  if ('nearest' in turned) {
    const results = [...seen.values()].flatMap((found) => ('refused' in found ? [] : [(found as Values)[fix] as number]));
    if (results.every((result) => Math.abs(result - (results[0] as number)) <= 1e-9 * Math.abs(result))) return { kind: 'unmoved' };
  }
  const first = 'found' in turned ? turned.found : turned.nearest;
  const ways: Way[] = [];
  for (const x of 'found' in turned ? turned.all.slice(0, most) : [turned.nearest]) {
    ways.push(way(x));
    yield;
  }
  const bores: Way[] = [];
  if ((entryOf(ask) as Quantity).standard === 'bores') for (const bore of neighbors(first)) {
    bores.push(way(bore.si, bore.label));
    yield;
  }
  const past = 'found' in turned ? undefined : refusedPast(seen, first);
  return { kind: 'found' in turned ? 'found' : 'nearest', ways, bores, ...(past && { beyond: `${say(past.at, (entryOf(ask) as Quantity).dimension, 4)}: ${past.refusal.refused(say)}` }) };
}

/**
 * The next place looked at past x, if x stands on an edge and none past it has an answer. On the edge itself a refusal would
 * tell of a ten-millionth of an inch.
 */
function refusedPast(seen: ReadonlyMap<number, object>, x: number): { readonly at: number; readonly refusal: Refusal } | undefined {
  const refused = [...seen].filter((look): look is [number, Refusal] => 'refused' in look[1]).sort(([a], [b]) => Math.abs(a - x) - Math.abs(b - x));
  const [edge] = refused[0] ?? [];
  if (edge === undefined || Math.abs(edge - x) > 1e-4 * Math.abs(x)) return undefined;
  const past = refused.find(([at]) => (at - x) * (edge - x) > 0 && Math.abs(at - x) > 0.003 * Math.abs(x));
  return past && { at: past[0], refusal: past[1] };
}

/** A result beside the one that stands: what is nothing beside it, where next to nothing was wanted, is 0 and not 3e-7. */
export function besidePresent(gives: number, target: number, present: number): number {
  const little = 1e-4 * Math.abs(present);
  return Math.abs(gives) <= little && Math.abs(target) <= little ? 0 : gives;
}

/**
 * A calculator's compute at the value x of `ask`, with the inputs that other calculators compute for it following x.
 * Everything else is read once: a search asks some hundred times.
 */
function refed(record: Feed, fields: readonly Field[], lookup: Lookup, system: System, ask: string): (v: Values, x: number) => object {
  const moving = fields.filter((field) => field.key !== ask && field.from && depends(field.from, ask));
  const sources = new Map<Feed, (x: number) => Evaluation>();
  for (const { from } of moving as readonly { readonly from: Feed }[]) {
    if (sources.has(from)) continue;
    const own = readRecord(from, lookup, system).fields;
    const base = Object.fromEntries(own.map((field) => [field.key, field.value as Value]));
    const compute = refed(from, own, lookup, system, ask);
    sources.set(from, (x) => evaluate({ ...from, compute: (v: Values) => compute(v, x) as never }, Object.hasOwn(base, ask) ? { ...base, [ask]: x } : base));
  }
  return (v, x) => {
    const inputs: Record<string, Value> = { ...v };
    const found = new Map([...sources].map(([from, at]) => [from, at(x)]));
    for (const { key, from } of moving as readonly { readonly key: string; readonly from: Feed }[]) {
      const source = found.get(from) as Evaluation;
      if (!source.ok) return { refused: (say: Say) => `“${from.title}” then has no result: ${source.refusal.refused(say)}` };
      const value = source.values[key] as number;
      const problem = hardProblem(key, value);
      if (problem !== undefined) return { refused: () => `“${from.title}” then gives no ${entryOf(key).name} that is possible: ${problem}.` };
      inputs[key] = value;
    }
    return record.compute(inputs as never);
  };
}

function depends(feed: Feed, ask: string): boolean {
  return (inputKeys(feed) as readonly string[]).includes(ask) || (feed.feeds?.some((each) => depends(each, ask)) ?? false);
}

/** What the page says once this value is typed: read the way the page reads it. */
function wayOf(record: AnyCalculator, lookup: Lookup, system: System, say: Say, fields: readonly Field[], ask: string, fix: string, x: number, standard?: string): Way {
  const entry = entryOf(ask) as Quantity;
  const own = fields.find((field) => field.key === ask) as Field;
  const unit = standard === undefined ? own.unit : 'in';
  const read = (text: string) => readRecord(record, (key) => (key === ask ? { text, unit, system } : lookup(key)), system);
  const present = own.value as number;
  let text = '';
  let reading: Reading | undefined;
  for (text of standard === undefined ? texts(x, present, entry, unit) : [standard]) {
    reading = read(text);
    if (reading.state === 'ok') break;
  }
  if (!reading) throw new RangeError(`${ask}: expected a text for ${x}, found none`);
  const field = reading.fields.find((each) => each.key === ask) as Field;
  const values = reading.state === 'ok' ? reading.values : undefined;
  const worst = values && firingCautions({ ...record, cautions: record.cautions.filter((caution) => caution.when) }, values, say).find((caution) => caution.level !== 'notice');
  return {
    text, unit, note: field.note, caution: worst, gives: values?.[fix] as number | undefined,
    words: field.echo?.replace(/ = (.*)$/, ' ($1)') || formatIn(x, entry.dimension, unit, 5),
    present: Math.abs(present - x) <= 1e-5 * Math.abs(x),
  };
}

/**
 * What to type for x: five digits, which is more than a shop can set; one step nearer to the present value where that
 * leads over an edge; as many digits as it takes where that does not help. A limit is typed as a limit.
 */
function texts(x: number, present: number, { dimension, hard }: Quantity, unit: string): string[] {
  if (x === hard?.min || x === hard?.max) return [editText(x, dimension, unit)];
  const at = unitOf(dimension, unit);
  const [shown, toward] = [fromSi(x, at), Math.sign(fromSi(present, at) - fromSi(x, at))];
  const step = shown === 0 ? 0 : 10 ** (Math.floor(Math.log10(Math.abs(shown))) - 4);
  return [...[0, toward * step].map((by) => editText(toSi(Number((shown + by).toPrecision(5)), at), dimension, unit)), exactText(x, dimension, unit)];
}

/** The standard bores just below and just above a bore that is none itself. */
function neighbors(x: number): { readonly label: string; readonly si: number }[] {
  const near = 1e-4 * x;
  if (standardBores.some(({ si }) => Math.abs(si - x) <= near)) return [];
  const above = standardBores.findIndex(({ si }) => si > x);
  return above < 0 ? standardBores.slice(-1) : standardBores.slice(Math.max(0, above - 1), above + 1);
}
