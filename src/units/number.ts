/**
 * Reads the number at the start of a short text: shop fractions (7/8, 1-1/4, 1 1/4, ½), decimals,
 * powers of ten (1.5e3). What could be read in two ways is refused with a question, because a
 * 22,225 taken for twenty-two thousand hurts someone.
 *
 * Comma: thousands in 1,234,567 and 1,234.5; decimal in 0,875, 12,5 and 1.234,5; a question in
 * 3,000. A single point is always the decimal point. An ordinary space never groups digits (1 125
 * is an unfinished fraction); a thin or no-break space, which this site's own output uses, does.
 */
export type Trouble =
  | 'empty' | 'unreadable' | 'ambiguous' | 'wrongUnit' | 'unknownUnit' | 'tooLong' | 'zeroDivide' | 'halfTyped';

export interface NumberRead {
  readonly value: number;
  /** As typed, in plain ASCII: 0,875 is 0.875, 1½ is 1-1/2. */
  readonly number: string;
  /** What follows the number. */
  readonly rest: string;
}

export interface NotUnderstood {
  readonly ok: false;
  /** What is wrong and how to mend it, to follow the name of the field. */
  readonly problem: string;
  readonly code: Trouble;
}

export type Refuse = (code: Trouble, why: string) => NotUnderstood;

/** Keyboard, phone and word processor spellings of one sign become that sign. */
export const tidy = (text: string): string =>
  text
    .replace(/[！-～]/g, (c) => c.normalize('NFKC')) // full-width forms
    .replace(/[\u200b-\u200f\u2060]/g, '') // invisible
    .replace(/[‐-―−]/g, '-')
    .replace(/^[-+]?[1-9]\d{0,2}([\u00a0\u2009\u202f]\d{3})+(?![\d/])/, (c) => c.replace(/\s/g, ''))
    // The spaces keep 1½ from becoming 11/2 and ½5 from becoming 1/25.
    .replace(/(\d?)\s*([¼-¾⅐-⅞])/g, (_, digit: string, c: string) => `${digit && digit + ' '}${c.normalize('NFKC')} `)
    .replace(/[′‘’´`]/g, "'")
    .replace(/[″“”]|''/g, '"')
    .replace(/\s+/g, ' ')
    .replace(/ ?[/⁄∕] ?/g, '/')
    .trim();

const unfinished = /^[-+]? ?(\.|\d+-|(\d+[ -])?\d+\/|[\d.,]*,|[\d.,]+e[-+]?)?$/i;
const signed = /^([-+]?) ?(.*)/;
const fraction = /^((\d+)[ -])?(\d+)\/(\d+)(?![\d.,])/;
const decimal = /^([\d.,]+)(e[-+]?\d+)?/i;

/** Digits read the US way, without the thousands commas; '' where the commas stand wrong. */
const plainDigits = (digits: string): string =>
  /^(?=\.?\d)(\d*|[1-9]\d{0,2}(,\d{3})+)(\.\d*)?$/.test(digits) ? digits.replace(/,/g, '') : '';

/** @param text the output of `tidy` */
export function readNumber(text: string, refuse: Refuse): NumberRead | NotUnderstood {
  if (unfinished.test(text)) return refuse('halfTyped', `${text} is not finished`);
  const [, sign, body] = signed.exec(text) as unknown as [string, string, string];
  const match = (fraction.exec(body) ?? decimal.exec(body) ?? ['']) as [string, ...string[]];
  const [typed] = match;
  let size: number;
  let number: string;
  if (typed.includes('/')) {
    const [, , whole, above, below] = match as unknown as [string, string, string | undefined, string, string];
    if (!+below) return refuse('zeroDivide', `${typed} divides by zero`);
    if (whole && +above >= +below) return refuse('unreadable', `the fraction in ${typed} is not less than 1`);
    size = +(whole ?? 0) + +above / +below;
    number = typed.replace(' ', '-');
  } else {
    const [, digits = '', power = ''] = match;
    const us = plainDigits(digits);
    const european = plainDigits(digits.replace(/[.,]/g, (mark) => (mark === '.' ? ',' : '.')));
    if (us && european && digits.includes(',')) return refuse('ambiguous', `${digits} can mean ${us} or ${european}; type one of these`);
    number = (us || european || '?').replace(/^\./, '0.').replace(/\.$/, '') + power;
    size = +number;
  }
  if (isNaN(size)) return refuse('unreadable', `${text} cannot be read as one number`);
  // Far outside anything on a truck, and before arithmetic overflows or vanishes.
  if (size > 1e15 || (size < 1e-15 && /^[^e/]*[1-9]/i.test(number))) return refuse('unreadable', `${text} is too large or too small`);
  const minus = sign === '-' && size ? sign : '';
  return { value: minus ? -size : size, number: minus + number, rest: body.slice(typed.length).trim() };
}
