import { calculatorById, entryOf } from '../calculators/index.ts';
import { isQuantity } from '../calculators/vocabulary/index.ts';
import { formatIn, otherUnit, parseQuantity, unitFor, unitOf } from '../units/index.ts';
import { demoText } from './demo.ts';
import { readRecord } from './fields.ts';
import { inBoth } from './number-text.ts';

export interface DemoRequest {
  /** A calculator and one of its results … */
  readonly calculator?: string;
  readonly of?: string;
  /** … or an input of the demo truck. */
  readonly input?: string;
  /** Inputs to change first, as typed text. */
  readonly set?: Readonly<Record<string, string>>;
}

/**
 * A number about the demo truck for use in a sentence, in both unit systems: '424 psi (29.2 bar)'.
 *
 * @throws RangeError when the calculator, key or result does not exist, so that prose cannot go stale
 */
export function demoNumber({ calculator, of, input, set = {} }: DemoRequest): string {
  const key = input ?? of ?? '';
  const entry = entryOf(key);
  if (!isQuantity(entry)) throw new RangeError(`${key}: expected a number, found a choice or a list`);
  return input === undefined ? inBoth(result(calculator ?? '', key, set), entry.dimension) : inputInBoth(key);
}

/** As the file of the demo truck has it, and in the other system: '0.70 in (17.8 mm)'. */
function inputInBoth(key: string): string {
  const entry = entryOf(key);
  const text = demoText(key);
  if (!isQuantity(entry) || text === undefined) throw new RangeError(`demo truck: expected a number for ${key}, found ${text}`);
  const parsed = parseQuantity(text, entry.dimension, unitFor(entry.dimension, 'us'));
  if (!parsed.ok) throw new RangeError(`demo truck: expected a number for ${key}, found ${text}`);
  const { label } = unitOf(entry.dimension, parsed.unit);
  const typed = `${parsed.number}${label === '' || label === '°' ? label : `\u00a0${label}`}`;
  const other = otherUnit(entry.dimension, parsed.unit);
  return other === '' || other === parsed.unit ? typed : `${typed} (${formatIn(parsed.si, entry.dimension, other)})`;
}

function result(calculator: string, key: string, set: Readonly<Record<string, string>>): number {
  const record = calculatorById(calculator);
  const reading = readRecord(record, (name) => (Object.hasOwn(set, name) ? { text: set[name] as string, unit: unitOrNone(name), system: 'us' as const } : undefined), 'us');
  if (reading.state === 'blank') throw new RangeError(`${calculator}: expected a result, found: ${reading.reason}`);
  const found = reading.values[key];
  if (typeof found !== 'number') throw new RangeError(`${calculator}: expected a result ${key}, found one of ${record.outputs.join(', ')}`);
  return found;
}

function unitOrNone(key: string): string {
  const entry = entryOf(key);
  return isQuantity(entry) ? unitFor(entry.dimension, 'us') : '';
}
