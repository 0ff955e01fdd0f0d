import { bucklingLoad } from '../../engine/brace.ts';
import { inch } from '../../units/si.ts';
import type { Table } from '../show.ts';
import type { ValuesOf } from '../record.ts';

/** Length that buckles over length. Real ends are never quite held, so 0.5 is the far end. */
export const ends = { pinned: 1, held: 0.5, loose: 2 } as const;

const sizes = [[0.5, 0.065], [0.625, 0.065], [0.75, 0.065], [0.75, 0.095], [1, 0.065], [1, 0.095]] as const;

export const tubes: Table<ValuesOf<'braceLength' | 'braceEnds' | 'steelModulus' | 'steelYield' | 'braceAlong'>> = {
  caption: 'Other tubes of this length and metal',
  head: ['Outside', 'Wall', 'Buckles at', 'Factor'],
  rows: (v) => sizes.map(([outside, wall]) => {
    const { load } = bucklingLoad({ length: v.braceLength, endFactor: ends[v.braceEnds], outside: outside * inch, bore: (outside - 2 * wall) * inch, modulus: v.steelModulus, yieldStress: v.steelYield });
    return [{ value: outside * inch, dimension: 'length' as const }, { value: wall * inch, dimension: 'length' as const, digits: 2 }, { value: load, dimension: 'force' as const }, { value: load / v.braceAlong, dimension: 'ratio' as const, digits: 2 }];
  }),
};
