import { formatQuantity } from '../units/index.ts';

/** In both unit systems, for a sentence: '424 psi (29.2 bar)'. */
export function inBoth(si: number, dimension: Parameters<typeof formatQuantity>[1]): string {
  const us = formatQuantity(si, dimension, 'us');
  const metric = formatQuantity(si, dimension, 'si');
  return us === metric ? us : `${us} (${metric})`;
}
