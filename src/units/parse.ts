/**
 * What a reader typed, as an SI value: a number, then a unit of the field's own dimension or none.
 * Never throws for any text and never yields NaN or Infinity; a text that cannot be read gives the
 * reason and the fix in words.
 *
 * Share without a unit: above 1 it is percent; up to 1 it may be a fraction, so a field in percent asks, and
 * one in fractions takes it. A pair that makes up 100 (60/40) is two shares: it asks which.
 * Grade without a unit is in the field's unit always: 0.2 is 0.2 %.
 * A length of 11/2 may be 1-1/2 with the space lost: it asks. 3/2 and 13/16 can be read in one way.
 * Feet and inches: 9'2", 9'2, 9'-2 1/2", 9 ft 2 1/2 in. Inches stay below 12.
 */
import { bareShare, dimensions, settle, spelled, toSi, unitOf } from './dimensions.ts';
import type { Dimension, Unit } from './dimensions.ts';
import { exampleOf, withShareUnit } from './format.ts';
import { readNumber, tidy } from './number.ts';
import type { NotUnderstood, Refuse } from './number.ts';

export interface Understood {
  readonly ok: true;
  readonly si: number;
  /** Unit id understood, typed or not. */
  readonly unit: string;
  readonly typedUnit: boolean;
  /** The number as typed, tidied. Reads back to the same value with `unit` after it, and alone in a field of that unit. */
  readonly number: string;
}

export type Parsed = Understood | NotUnderstood;

const longest = 40;
const feetAndInches = /^([-+]?) ?(\d{1,6}) ?('|(?:ft|foot|feet)\.?)( ?-? ?)(?=\.?\d)(.+)$/i;

/** @throws RangeError if the dimension has no unit `fieldUnit`: the calling code is wrong */
export function parseQuantity(text: string, dimension: Dimension, fieldUnit: string): Parsed {
  const bare = unitOf(dimension, fieldUnit);
  const ask = `type ${dimensions[dimension].name} such as ${exampleOf(dimension)}`;
  const refuse: Refuse = (code, why) =>
    ({ ok: false, code, problem: code === 'empty' ? ask : code === 'ambiguous' ? why : `${why}; ${ask}` });

  const typed = text.trim();
  if (typed.length > longest) return refuse('tooLong', 'too long for one number');
  const clean = tidy(typed);
  if (!clean) return refuse('empty', '');
  const feet = dimension === 'length' && feetAndInches.exec(clean);
  return feet ? readFeet(feet, refuse) : readOne(clean, dimension, bare, refuse);
}

function readOne(text: string, dimension: Dimension, bare: Unit, refuse: Refuse): Parsed {
  const read = readNumber(text, refuse);
  if ('ok' in read) return read;
  const { value, number, rest } = read;
  const unit = rest ? spelled(dimension, rest) : dimension === 'share' ? unitOf(dimension, bareShare(value, bare.id)) : bare;
  if (!unit) {
    const owner = (Object.keys(dimensions) as Dimension[]).find((d) => spelled(d, rest));
    if (owner) return refuse('wrongUnit', `${rest} is ${dimensions[owner].name}`);
    return /\d|^\W+$/.test(rest) ? refuse('unreadable', `${text} cannot be read as one number`) : refuse('unknownUnit', `${rest} is not a unit known here`);
  }
  const question = dimension === 'share' ? twoShares(number, value, bare, !!rest) : dimension === 'length' ? lostSpace(number) : '';
  if (question) return refuse('ambiguous', question);
  if (unit.id === 'MPa' && /^mP/.test(rest)) return refuse('ambiguous', 'mPa is a thousandth of a pascal; type MPa or Pa');
  if (unit.tangent && !(Math.abs(value) < 90)) return refuse('unreadable', `a slope of ${number}° is not a grade`);
  return { ok: true, si: toSi(value, unit), unit: unit.id, typedUnit: !!rest, number: withShareUnit(number, value, dimension, unit) };
}

const plainFraction = /^-?(\d+)\/(\d+)$/;

/** The question that 0.5 or 60/40 in a field of percent leaves open; '' if none. */
function twoShares(number: string, value: number, bare: Unit, typedUnit: boolean): string {
  const [, above = '', below = ''] = plainFraction.exec(number) ?? [];
  const ask = (a: string | number, b: string | number): string => `${a} % or ${b} %? Type ${a} % or ${b} %.`;
  if (above && +above + +below === 100) return ask(above, below);
  return !typedUnit && value && (Math.abs(value) <= 1 ? bare.id === '%' : above) ? ask(settle(value), settle(value * 100)) : '';
}

/** The question that 11/2 leaves open, 1-1/2 with its space lost or 5-1/2; '' for what can be read in one way. */
function lostSpace(number: string): string {
  const [, above = '', below = ''] = plainFraction.exec(number) ?? [];
  if (!/^(2|4|8|16|32|64)$/.test(below) || +above < +below) return '';
  const mixed = (whole: string | number, part: string | number): string => `${whole}${+part ? `-${part}/${below}` : ''}`;
  const lost = [...above].flatMap((_, k) => {
    const part = above.slice(k);
    return k > 0 && part[0] !== '0' && +part < +below ? [mixed(above.slice(0, k), part)] : [];
  });
  return lost.length > 0 ? `${number} can mean ${[...lost, mixed(Math.floor(+above / +below), +above % +below)].join(' or ')}; type one of these` : '';
}

function readFeet(feet: RegExpExecArray, refuse: Refuse): Parsed {
  const [all, sign, whole, mark, gap, rest] = feet as unknown as [string, string, string, string, string, string];
  const inch = unitOf('length', 'in');
  const inches = readOne(rest, 'length', inch, refuse);
  if (!inches.ok) return inches;
  // "5 ft2" may be an area; "5 ft 2" and "5'2" cannot.
  const marked = inches.typedUnit || gap || mark === "'";
  const total = +whole * 12 + inches.si / inch.factor;
  if (!marked || inches.unit !== 'in' || total >= +whole * 12 + 12) return refuse('unreadable', `${all} is not feet and inches`);
  const minus = sign === '-' && total ? sign : '';
  return { ok: true, si: toSi(minus ? -total : total, inch), unit: 'in', typedUnit: true, number: `${minus}${+whole} ft ${inches.number}` };
}
