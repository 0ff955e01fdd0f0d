import { calculators, entryOf, inputKeys } from '../calculators/index.ts';
import { isChoice, isNumberColumn, isRows } from '../calculators/vocabulary/index.ts';
import type { Column } from '../calculators/vocabulary/index.ts';
import { unitFor } from '../units/index.ts';
import { demoText } from './demo.ts';
import { linkName } from './links.ts';

/** Every calculator as plain data: what goes in under which name in a link, what comes out, by which equations. */
export function catalogue() {
  return calculators.map((record) => ({
    id: record.id,
    version: record.version,
    title: record.title,
    purpose: record.purpose,
    address: `/calculators/${record.id}/`,
    inputs: inputKeys(record).map((key) => ({ link: linkName(key), default: demoText(key), ...described(key) })),
    outputs: (record.outputs as readonly string[]).map((key) => ({ key, ...described(key) })),
    methods: record.methods,
    equations: record.equations.map(({ result, expression, words, source }) => ({ result, expression, words, source })),
    assumptions: record.paper.assumptions,
    leftOut: record.paper.leftOut,
  }));
}

function described(key: string) {
  const entry = entryOf(key);
  if (isChoice(entry)) return { name: entry.name, options: entry.options };
  if (isRows(entry)) return { name: entry.name, least: entry.least, most: entry.most, columns: Object.entries(entry.columns).map(([column, of]) => ({ column, ...columnDescribed(of) })) };
  return { name: entry.name, symbol: entry.symbol, dimension: entry.dimension, unit: unitFor(entry.dimension, 'us'), siUnit: unitFor(entry.dimension, 'si') };
}

function columnDescribed(column: Column) {
  const { name, optional } = column;
  if (isNumberColumn(column)) return { name, optional, dimension: column.dimension, unit: unitFor(column.dimension, 'us'), siUnit: unitFor(column.dimension, 'si') };
  return isChoice(column) ? { name, optional, options: column.options } : 'letters' in column ? { name, optional, letters: column.letters } : { name, optional, labelIn: column.labelIn };
}
