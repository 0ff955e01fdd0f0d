/**
 * Physical constants the engine uses, each with where it comes from.
 *
 * A page prints the record beside a result; a formula imports the plain number below it.
 * `kind` says how far to trust the value: 'defined' is exact by agreement and carries no spread.
 */
export type ConstantKind = 'defined' | 'measured' | 'published' | 'common practice' | 'derived';

export interface Constant {
  readonly name: string;
  readonly symbol: string;
  readonly value: number;
  readonly unit: string;
  readonly kind: ConstantKind;
  readonly source: string;
}

const constant = (c: Constant): Constant => Object.freeze(c);

export const constants = Object.freeze({
  standardGravity: constant({
    name: 'standard acceleration of free fall',
    symbol: 'g_n',
    value: 9.80665,
    unit: 'm/s²',
    kind: 'defined',
    source: 'NIST SP 811: 9.80665 m/s², exact by definition. Local gravity differs from it by up to 0.3 %.',
  }),
  atmosphere: constant({
    name: 'standard atmosphere',
    symbol: 'p_0',
    value: 101325,
    unit: 'Pa',
    kind: 'defined',
    source: '101 325 Pa, exact by definition; from memory, not checked against the text. Air on a high pass is thinner.',
  }),
});

/** m/s² */
export const standardGravity: number = constants.standardGravity.value;

/** Pa, absolute */
export const atmosphere: number = constants.atmosphere.value;
