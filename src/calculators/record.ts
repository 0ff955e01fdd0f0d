import type { Dimension } from '../units/index.ts';
import type { Chart, Picture, Table } from './show.ts';
import type { QuantityKey, RowValues, ValueOf } from './vocabulary/index.ts';

/** Prints an SI value in the reader's units: say(4.2e6, 'pressure') → '609 psi'. */
export type Say = (si: number, dimension: Dimension, digits?: number) => string;

/** A result that the numbers, each possible alone, rule out together. Words, never a number. */
export interface Refusal {
  readonly refused: (say: Say) => string;
}

/** An SI number, an option's name, or the rows of a list. */
export type Value = number | string | RowValues;

export type Values = Readonly<Record<string, Value>>;

export type ValuesOf<K extends QuantityKey> = { readonly [P in K]: ValueOf<P> };

/** Signal words with the meanings of ANSI Z535.6. */
export type Level = 'danger' | 'warning' | 'caution' | 'notice';

export interface Caution<V> {
  readonly id: string;
  readonly level: Level;
  /** Fires when true. Sees inputs and results. Without it the caution stands beside every result. */
  readonly when?: (v: V) => boolean;
  /** What is wrong and what it does, in plain words. */
  readonly words: string | ((v: V, say: Say) => string);
  /** What to do about it. */
  readonly todo: string;
  /** With `when`: inputs (over the demo truck's) at which it must fire and must be silent; {} is the demo truck itself. */
  readonly fires?: Partial<V>;
  readonly silent?: Partial<V>;
}

/** A caution that travels: it is said, shortly, beside results of other calculators that use this one's. */
export interface Alarm<V> {
  /** The danger or warning of the whole record that it stands for, with the same `when`. */
  readonly caution: string;
  readonly level: 'danger' | 'warning';
  readonly when: (v: V) => boolean;
  /** What is wrong, as the end of a sentence, without numbers: it travels as plain text. */
  readonly first: string;
}

export interface Equation {
  /** The quantity on the left. */
  readonly result: QuantityKey;
  /**
   * The right side in quantity keys, numbers, + - * / ^, parentheses and
   * sqrt sin cos tan asin acos atan exp log abs min max. `g` is standard gravity, `pi` is π.
   */
  readonly expression: string;
  readonly words: string;
  readonly source: string;
  /** Shown and true only for these values, for example one caliper type. */
  readonly when?: (v: Values) => boolean;
  /** Said where the result is found by search and the equation is the condition it meets. */
  readonly found?: string;
}

/** A result that no line of algebra gives, such as a fit through the reader's rows or the least of many: what is done, in words. */
export interface Method {
  readonly result: QuantityKey;
  readonly words: string;
  readonly source: string;
}

export interface Example<V> {
  /** Names the source and its standing, as a sentence fragment: 'Gillespie, chapter 3 (from memory)'. */
  readonly source: string;
  readonly inputs: Partial<V>;
  /** Expected results, SI, each with the relative tolerance its printing allows. */
  readonly results: Readonly<Record<string, { readonly value: number; readonly within: number }>>;
}

export interface InputGroup<I extends QuantityKey> {
  readonly title: string;
  readonly of: readonly I[];
}

/**
 * What drawing a record's trucks needs to know beyond the tolerances of its inputs. All of it may be left out. A
 * computed input has its own tolerance, which covers the errors of what it is computed from.
 */
export interface HowSure<I extends QuantityKey, O extends QuantityKey> {
  /**
   * What a search has found stays as it is while trucks are drawn: another truck would only find another. Given all
   * values, how the results follow from other inputs then; `of` and what `happens` looks at are enough of them.
   */
  readonly held?: {
    /** 'With the set shown' */
    readonly words: string;
    /** Why some trucks drawn have no answer, after 'In about 5 of 100 trucks measured like this'. Left out: 'the numbers have no answer'. */
    readonly refused?: (v: ValuesOf<I | O>, say: Say) => string;
    readonly compute: (v: ValuesOf<I | O>) => (inputs: ValuesOf<I>) => Partial<ValuesOf<O>> | Refusal;
  };
  /** The result looked at. Left out: the headline. */
  readonly of?: O;
  /** How many trucks, as a number and not as a time, so that every phone finds the same. Left out: 10,000. */
  readonly draws?: number;
  /**
   * Those results of `compute` that `of`, `band` and `happens` look at, found by the same functions, and refused whenever
   * `compute` refuses: where all the others take long. The sweep tests compare the two.
   */
  readonly quick?: (v: ValuesOf<I>) => { readonly [K in O]?: ValuesOf<O>[K] } | Refusal;
  /** Inputs that are the question, not a measurement: the road asked about. */
  readonly given?: readonly I[];
  /** An input that is itself the error, one standard deviation, of others, or of columns of a list: 'points.x'. */
  readonly errorOf?: { readonly [K in I]?: readonly (I | `${I}.${string}`)[] };
  /** A result: half the width of the band about `of` in which friction may leave it. */
  readonly band?: O;
  /** Front and rear brakes err together if their pads are of one compound. The reader says whether they are. */
  readonly samePads?: true;
  /** Something of which the chance is said: '… in about 65 of 100 trucks measured like this <words>'. */
  readonly happens?: {
    readonly when: (v: ValuesOf<I | O>) => boolean;
    readonly words: (v: ValuesOf<I | O>, say: Say) => string;
  };
}

/** A measured result that may take the place of a value of the truck: the reader types it into that value's field with one press. */
export interface Carry<V> {
  /** An input of other calculators, of the same dimension. */
  readonly to: QuantityKey;
  readonly from: QuantityKey;
  /** Left out: always asked about. */
  readonly when?: (v: V) => boolean;
  /** Why it had better not be taken over. */
  readonly refuses?: (v: V) => string | undefined;
}

export interface Calculator<I extends QuantityKey = QuantityKey, O extends QuantityKey = QuantityKey> {
  /** Permanent: it stands in links. */
  readonly id: string;
  /** Raised when inputs change meaning; `upgrade` then reads links made by older versions. */
  readonly version: number;
  readonly upgrade?: Readonly<Record<number, (link: ReadonlyMap<string, string>) => Map<string, string>>>;
  readonly title: string;
  readonly purpose: string;
  readonly inputs: readonly InputGroup<I>[];
  /** Records whose results may stand for inputs that the reader has not typed. */
  readonly feeds?: readonly Feed[];
  readonly howSure?: HowSure<I, O>;
  readonly carries?: readonly Carry<ValuesOf<I | O>>[];
  /** Every conditional danger and warning of a record that feeds others, for them to pass on. */
  readonly alarms?: readonly Alarm<ValuesOf<I | O>>[];
  /** Small pieces of work that bring a long compute up to speed, run one at a time before the calculator comes to life. */
  readonly warm?: (v: ValuesOf<I>) => Iterable<void>;
  /** Its results are a best place, found by search: flat where it is best, so no input can be read back from them. */
  readonly oneWay?: boolean;
  /** Results in the order shown; the first one is the headline. */
  readonly outputs: readonly O[];
  readonly compute: (v: ValuesOf<I>) => ValuesOf<O> | Refusal;
  /** One or two sentences that say the result and what it means. */
  readonly summary: (v: ValuesOf<I | O>, say: Say) => string;
  readonly equations: readonly Equation[];
  readonly methods?: readonly Method[];
  readonly cautions: readonly Caution<ValuesOf<I | O>>[];
  readonly picture?: Picture<ValuesOf<I | O>>;
  readonly charts?: readonly Chart<ValuesOf<I | O>>[];
  readonly tables?: readonly Table<ValuesOf<I | O>>[];
  /** Paper: printed beside the live part, never sent to the phone twice. */
  readonly paper: {
    readonly assumptions: readonly string[];
    readonly leftOut: readonly string[];
    /** Where formulas and constants come from, with the kind: derived, published, common practice, measured, defined. */
    readonly sources: readonly { readonly of: string; readonly kind: 'derived' | 'published' | 'common practice' | 'measured' | 'defined' | 'from memory'; readonly id?: string; readonly note?: string }[];
    readonly examples: readonly Example<ValuesOf<I | O>>[];
    /** Guide slugs and calculator ids to read or compute next. */
    readonly related: readonly string[];
  };
}

/** What it takes to compute an input of another calculator: less than a whole record, so that a script carries less. */
export type Feed = Pick<AnyCalculator, 'id' | 'title' | 'inputs' | 'outputs' | 'compute' | 'feeds' | 'alarms'> & Partial<Pick<AnyCalculator, 'oneWay'>>;

// eslint-disable-next-line @typescript-eslint/no-explicit-any
export type AnyCalculator = Calculator<any, any>;

/** Checks a record's types where it is written and hands it on as it is. */
export function defineCalculator<I extends QuantityKey, O extends QuantityKey>(record: Calculator<I, O>): Calculator<I, O> {
  return record;
}

/** Marks a list kept in a file beside its record, so that the browser gets it as it gets the record: words in the page. */
export function defineCautions<V>(cautions: readonly Caution<V>[]): readonly Caution<V>[] {
  return cautions;
}

export function defineEquations(equations: readonly Equation[]): readonly Equation[] {
  return equations;
}

/** The computing part of a record, kept in a file of its own when other records are fed by it. */
export function defineFeed<I extends QuantityKey, O extends QuantityKey>(feed: Pick<Calculator<I, O>, 'id' | 'title' | 'inputs' | 'outputs' | 'compute' | 'feeds' | 'alarms'>): typeof feed {
  return feed;
}

export function isRefusal(x: object): x is Refusal {
  return 'refused' in x;
}

export function inputKeys(record: Feed): QuantityKey[] {
  return record.inputs.flatMap((group) => group.of as readonly QuantityKey[]);
}
