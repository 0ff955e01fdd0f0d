/** The only border between what people type and SI. */
export { dimensions, fromSi, otherUnit, toSi, unitFor, unitOf } from './dimensions.ts';
export type { Dimension, DimensionInfo, System, Unit } from './dimensions.ts';
export type { NotUnderstood, Trouble } from './number.ts';
export { parseQuantity } from './parse.ts';
export type { Parsed, Understood } from './parse.ts';
export { echo, editText, exactText, formatIn, formatNumber, formatQuantity } from './format.ts';
export { standardBores } from './bores.ts';
