import type { Entry } from '../calculators/vocabulary/quantity.ts';
import { data } from './page-data.ts';

/** In the browser: the part of the vocabulary that this page uses. Same name and shape as the whole. */
export const vocabulary = data.vocabulary as Record<string, Entry>;
export { isChoice } from '../calculators/vocabulary/quantity.ts';
