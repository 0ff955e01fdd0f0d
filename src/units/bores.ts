/** The bores, in inches, that single-piston master cylinders are commonly sold in (common practice, no source). */
import { parseQuantity } from './parse.ts';
import type { Understood } from './parse.ts';

export const standardBores: readonly { readonly label: string; readonly si: number }[] = [
  '5/8', '0.70', '3/4', '13/16', '7/8', '15/16', '1',
].map((label) => ({ label, si: (parseQuantity(label, 'length', 'in') as Understood).si }));
