/**
 * SI values as text: for reading (`formatNumber`, `formatIn`, `formatQuantity`, `echo`) and for
 * putting into a field (`editText`). A value that is not finite is a programmer's error here, so
 * that NaN can never be shown: a reader's error never becomes a number in the first place.
 */
import { dimensions, fromSi, settle, toSi, unitFor, unitOf } from './dimensions.ts';
import type { Dimension, System, Unit } from './dimensions.ts';
import type { Parsed } from './parse.ts';

const minus = '\u2212';

function requireFinite(x: number): void {
  if (!Number.isFinite(x)) throw new RangeError(`quantity: expected a finite number, found ${x}`);
}

/** From 10 000 on. */
const inGroups = (whole: string): string => (whole.replace('-', '').length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, '\u202f'));

/**
 * Rounded to `digits` significant digits, zeros at the end of the decimals left off (6.2, not
 * 6.20). No power of ten from 1e-4 to 1e7. Digits are grouped by a narrow no-break space from 10 000.
 *
 * @throws RangeError if x is not finite
 */
export function formatNumber(x: number, digits = 3): string {
  requireFinite(x);
  const rounded = settle(x, digits);
  const size = Math.abs(x);
  const [whole = '', decimals] = String(rounded).split('.');
  const text =
    size && (size < 1e-4 || size > 1e7) ? rounded.toExponential().replace('+', '')
    : inGroups(whole) + (decimals ? '.' + decimals : '');
  return text.replace(/-/g, minus);
}

/** 12° stands close; every other unit keeps a no-break space. */
const withUnit = (number: string, { label }: Unit): string =>
  number + (label && label !== '°' ? '\u00a0' : '') + label;

export function formatIn(si: number, dimension: Dimension, unitId: string, digits = 3): string {
  const unit = unitOf(dimension, unitId);
  return withUnit(formatNumber(fromSi(si, unit), digits), unit);
}

export const formatQuantity = (si: number, dimension: Dimension, system: System, digits = 3): string =>
  formatIn(si, dimension, unitFor(dimension, system), digits);

function withTwin(number: string, si: number, dimension: Dimension, unit: Unit, sign: string, digits: number): string {
  return withUnit(number, unit) + (unit.twin && sign + formatIn(si, dimension, unit.twin, digits));
}

/** What was understood, in the unit typed and its twin: "13/16 in = 20.64 mm". '' where a twin would not help. */
export function echo(parsed: Parsed, dimension: Dimension): string {
  if (!parsed.ok) return '';
  const unit = unitOf(dimension, parsed.unit);
  return unit.twin && withTwin(parsed.number.replace(/ \D+$/, '').replace(/^-?\d{5,}(?![\d/e])/i, inGroups).replace(/^-/, minus), parsed.si, dimension, unit, ' = ', 4);
}

/** What to type, for instance: "7/8 in or 22.2 mm". */
export function exampleOf(dimension: Dimension): string {
  const { example, us } = dimensions[dimension];
  const unit = unitOf(dimension, us);
  const si = toSi(example, unit);
  return withTwin(editText(si, dimension, us), si, dimension, unit, ' or ', 3);
}

/** A bare share up to 1 or written as a fraction is asked about, and one above 1 is percent: such a number keeps its unit. */
export const withShareUnit = (number: string, value: number, dimension: Dimension, { id }: Unit): string =>
  dimension === 'share' && value && (id === '%' ? Math.abs(value) <= 1 || number.includes('/') : Math.abs(value) > 1) ? `${number} ${id}` : number;

/**
 * Text for a field: plain ASCII, no unit unless the bare number would be read otherwise, six
 * significant digits or as many more as it takes to read back within 5e-6.
 *
 * Inches within 1e-6 of a sixteenth become the fraction a drill or bore is called by (13/16,
 * 1-1/4). Above 4 in, halves and quarters stay decimal (108.5), because there a tape is read.
 */
export function editText(si: number, dimension: Dimension, unitId: string): string {
  const unit = unitOf(dimension, unitId);
  requireFinite(si);
  const exact = fromSi(si, unit);
  const size = Math.abs(exact);
  const below = [1, 2, 4, 8, 16].find((b) => Math.abs(size * b - Math.round(size * b)) <= 1e-6 * size * b);
  if (unitId === 'in' && below && below > (size > 4 ? 4 : 1)) {
    const above = Math.round(size * below);
    return (exact < 0 ? '-' : '') + (above > below ? Math.floor(above / below) + '-' : '') + (above % below) + '/' + below;
  }
  let digits = 6;
  let shown = settle(exact, digits);
  while (digits < 17 && Math.abs(toSi(shown, unit) - si) > 5e-6 * Math.abs(si)) shown = settle(exact, ++digits);
  return withShareUnit(shown + '', shown, dimension, unit);
}

/** As editText, within 1e-9: for text that replaces what was typed. Shown again in the first unit it is what it was. */
export function exactText(si: number, dimension: Dimension, unitId: string): string {
  const unit = unitOf(dimension, unitId);
  const short = editText(si, dimension, unitId);
  const read = Number(short);
  const same = (x: number): boolean => Math.abs(toSi(x, unit) - si) <= 1e-9 * Math.abs(si);
  if (Number.isNaN(read) || dimension === 'share' || same(read)) return short;
  const exact = fromSi(si, unit);
  for (let digits = 7; digits < 17; digits++) if (same(+exact.toPrecision(digits))) return String(+exact.toPrecision(digits));
  return String(exact);
}
