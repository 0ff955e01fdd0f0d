import { entryOf } from '../calculators/evaluate.ts';
import type { AnyCalculator } from '../calculators/record.ts';
import { isChoice } from '../calculators/vocabulary/index.ts';
import { firingCautions } from './cautions.ts';
import type { Reading, System } from './fields.ts';
import { sayIn } from './fields.ts';

/** One calculation as plain text for a forum post: title, numbers in, numbers out, cautions, link. */
export function forumText(record: AnyCalculator, reading: Reading, system: System, link: string): string {
  const say = sayIn(system);
  const lines = [record.title, record.purpose, '', 'Numbers in'];
  for (const field of reading.fields) {
    const entry = entryOf(field.key);
    const value = isChoice(entry) ? (Object.hasOwn(entry.options, field.text) ? entry.options[field.text] : field.text) : (field.problem === undefined && field.echo) || (field.text === '' ? 'no value' : [field.text, field.unit].join(' ').trim());
    lines.push(`- ${entry.name}: ${value}`);
  }
  lines.push('', 'Result');
  if (reading.state === 'blank') lines.push(reading.reason);
  else {
    lines.push(record.summary(reading.values as never, say));
    for (const key of record.outputs as readonly string[]) {
      const entry = entryOf(key);
      const value = reading.values[key];
      if (!isChoice(entry) && typeof value === 'number') lines.push(`- ${entry.name}: ${say(value, entry.dimension)}`);
    }
    lines.push('', 'Cautions');
    for (const alarm of reading.alarms) lines.push(`- ${alarm.in.title} says ${alarm.level.toUpperCase()}: ${alarm.first}`);
    for (const caution of firingCautions(record, reading.values, say)) lines.push(`- ${caution.level.toUpperCase()}: ${caution.words} ${caution.todo}`);
  }
  lines.push('', link);
  // Forums eat typographic spaces, and 12 560 with a plain one would fall apart.
  return lines.join('\n').replace(/(\d)\u202f(?=\d{3})/g, '$1,').replace(/[\u00a0\u202f\u2009]/g, ' ');
}
