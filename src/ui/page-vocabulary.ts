import type { Entry } from '../calculators/vocabulary/quantity.ts';

/** In the browser: the entries that the calculators brought so far use. Same name and shape as the whole. */
export const vocabulary: Record<string, Entry> = {};
export { isChoice, isNumberColumn, isQuantity, isRows } from '../calculators/vocabulary/quantity.ts';
