import { entryOf } from '../calculators/evaluate.ts';
import type { AnyCalculator } from '../calculators/record.ts';
import { isChoice, isQuantity, isRows } from '../calculators/vocabulary/index.ts';
import type { Column } from '../calculators/vocabulary/index.ts';
import { firingCautions } from './cautions.ts';
import type { Field, Reading, System } from './fields.ts';
import { sayIn } from './fields.ts';
import { cellWords } from './rows.ts';

/** One calculation as plain text for a forum post: title, numbers in, numbers out, cautions, link. */
export function forumText(record: AnyCalculator, reading: Reading, system: System, link: string): string {
  const say = sayIn(system);
  const lines = [record.title, record.purpose, '', 'Numbers in'];
  for (const field of reading.fields) {
    const entry = entryOf(field.key);
    if (isRows(entry)) lines.push(`- ${entry.name}: ${Object.values(entry.columns).map((column) => column.name).join(' | ')}`, ...rowLines(Object.values(entry.columns), field));
    else lines.push(`- ${entry.name}: ${isChoice(entry) ? (Object.hasOwn(entry.options, field.text) ? entry.options[field.text] : field.text) : (field.problem === undefined && field.echo) || (field.text === '' ? 'no value' : [field.text, field.unit].join(' ').trim())}`);
  }
  lines.push('', 'Result');
  if (reading.state === 'blank') lines.push(reading.reason);
  else {
    lines.push(record.summary(reading.values as never, say));
    for (const key of record.outputs as readonly string[]) {
      const entry = entryOf(key);
      const value = reading.values[key];
      if (isQuantity(entry) && typeof value === 'number') lines.push(`- ${entry.name}: ${say(value, entry.dimension)}`);
    }
    lines.push('', 'Cautions');
    for (const alarm of reading.alarms) lines.push(`- ${alarm.in.title} says ${alarm.level.toUpperCase()}: ${alarm.first}`);
    for (const caution of firingCautions(record, reading.values, say)) lines.push(`- ${caution.level.toUpperCase()}: ${caution.words} ${caution.todo}`);
  }
  lines.push('', link);
  // Forums eat typographic spaces, and 12 560 with a plain one would fall apart.
  return lines.join('\n').replace(/(\d)\u202f(?=\d{3})/g, '$1,').replace(/[\u00a0\u202f\u2009]/g, ' ');
}

function rowLines(columns: readonly Column[], { rows: reading }: Field): string[] {
  const rows = reading?.rows.filter((row) => !row.empty) ?? [];
  return rows.map(({ cells }, k) => `  ${k + 1}. ${cells.map((cell, at) => cellWords(columns[at] as Column, cell, reading?.system ?? 'us')).join(' | ')}`);
}
