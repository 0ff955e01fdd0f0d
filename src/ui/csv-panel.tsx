import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import type { Field, System } from '../build/fields.ts';
import type { Rows } from '../calculators/vocabulary/index.ts';

export interface CsvPanelProps {
  readonly id: string;
  readonly entry: Rows;
  readonly field: Field;
  readonly system: System;
  /** A list that was read, and what to say of it. */
  readonly onList: (text: string, said: string) => void;
}

const csv = () => import('../build/csv.ts');

/** A list to and from a spreadsheet. Its code comes when it is used. */
export function CsvPanel({ id, entry, field, system, onList }: CsvPanelProps): VNode {
  const [said, say] = useState('');
  const [notes, setNotes] = useState<readonly string[]>([]);
  const [text, setText] = useState('');
  const asCsv = async (): Promise<string> => (await csv()).rowsToCsv(entry, field.rows?.rows ?? [], system);
  const copy = async (): Promise<void> => {
    const out = await asCsv();
    try {
      await navigator.clipboard.writeText(out);
      say('CSV copied.');
    } catch {
      setText(out); // no clipboard without https or permission: show it to be copied by hand
      say('Copy it from the box.');
    }
  };
  const save = async (): Promise<void> => {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([await asCsv()], { type: 'text/csv' }));
    link.download = `${entry.name.replace(/\W+/g, '-')}.csv`;
    link.click();
    URL.revokeObjectURL(link.href);
  };
  const read = async (from: string): Promise<void> => {
    const found = (await csv()).csvToRows(entry, from, system);
    setNotes(found.notes);
    if (found.text === undefined) return say('Nothing was changed.');
    onList(found.text, `${found.count} rows are read; your former list is one step back.`);
    setText('');
    say('');
  };
  const readFile = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    if (file.size > 300_000) return say(`${file.name} is too large for such a list. Nothing was changed.`);
    await read(await file.text());
  };
  return (
    <details class="csv">
      <summary>Spreadsheet: copy, paste, CSV files</summary>
      <p class="buttons">
        <button type="button" onClick={() => void copy()}>Copy as CSV</button>
        <button type="button" onClick={() => void save()}>Save as CSV</button>
        <label class="button file">Read a CSV file<input class="visually-hidden" type="file" accept=".csv,.tsv,.txt,text/csv" onChange={(event) => { void readFile(event.currentTarget.files?.[0]); event.currentTarget.value = ''; }} /></label>
      </p>
      <label for={`${id}-paste`}>Or paste rows here. First line: the names of the columns, with units in parentheses.</label>
      <textarea id={`${id}-paste`} rows={4} spellcheck={false} value={text} onInput={(event) => setText(event.currentTarget.value)} />
      <p class="buttons"><button type="button" onClick={() => (text.trim() === '' ? say('The box is empty.') : void read(text))}>Read the box</button> <span role="status">{said}</span></p>
      {notes.length > 0 && <ul class="notes">{notes.map((note) => <li key={note}>{note}</li>)}</ul>}
    </details>
  );
}
