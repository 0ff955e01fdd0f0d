import { Component } from 'preact';
import type { VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Field, System } from '../build/fields.ts';
import { columnHead, decodeRows, encodeRows, fitRows, shownBeyond } from '../build/rows.ts';
import type { CellReading, RowReading } from '../build/rows.ts';
import { entryOf } from '../calculators/evaluate.ts';
import type { Column, Rows } from '../calculators/vocabulary/index.ts';
import { isChoice, isNumberColumn } from '../calculators/vocabulary/index.ts';
import { CsvPanel } from './csv-panel.tsx';
import { editors } from './editors.ts';

export interface RowsFieldProps {
  readonly id: string;
  readonly field: Field;
  readonly system: System;
  /** Called when a cell is touched: its help may be wanted, and is there when this is done. */
  readonly onOpen: () => Promise<void>;
  /** The whole list as one text; undefined takes back what was typed. */
  readonly onType: (text: string | undefined) => void;
  readonly onRename: (from: string, to: string) => void;
}

/** What a step back brings. Texts are in the units of their system, so it holds only under that one. */
interface Past {
  readonly said: string;
  readonly text: string | undefined;
  readonly system: System;
}

/** A list as a table of fields: on a narrow screen each row is a card. */
function RowsField({ id, field, system, onOpen, onType, onRename }: RowsFieldProps): VNode {
  const entry = entryOf(field.key) as Rows;
  const columns = Object.entries(entry.columns);
  const { rows = [], labels = {} } = field.rows ?? {};
  const [past, remember] = useState<Past | undefined>();
  const [at, goTo] = useState<{ row: number; column: string } | undefined>();
  const [focus, setFocus] = useState<string | undefined>();
  const [, haveHelp] = useState(false);
  useEffect(() => {
    if (focus !== undefined) document.getElementById(focus)?.focus();
    setFocus(undefined);
  }, [focus]);
  // Two changes may come before the next drawing: the second builds on the first.
  const latest = useRef<readonly (readonly string[])[]>([]);
  latest.current = rows.map(({ cells }) => cells.map(({ text }) => text));
  const cellId = (row: number, column: string): string => `${id}-${row}-${column}`;
  const change = (next: string | undefined, said?: string): void => {
    remember(said === undefined ? undefined : { said, text: field.origin === 'typed' ? encodeRows(latest.current) : undefined, system });
    if (next !== undefined) latest.current = fitRows(entry, decodeRows(next));
    onType(next);
  };
  const add = (): void => {
    change(encodeRows([...latest.current, columns.map(() => '')]));
    setFocus(cellId(latest.current.length - 1, columns[0]?.[0] ?? ''));
  };
  const remove = (row: number): void => {
    change(encodeRows(latest.current.filter((_, k) => k !== row)), `Row ${row + 1} is removed.`);
    setFocus(`${id}-back`);
  };
  const shown = rows.slice(0, entry.most + shownBeyond);
  return (
    <div id={id} class={`rows${field.problem === undefined ? '' : ' wrong'}`} data-rows={field.key}>
      <table>
        <caption>{entry.name}{field.origin === 'demo' && <small> (demo)</small>}</caption>
        <thead>
          <tr>
            <th scope="col"><span class="visually-hidden">row</span></th>
            {columns.map(([key, column]) => <th key={key} scope="col">{columnHead(column, system)}{column.optional && <small> if known</small>}</th>)}
            <td />
          </tr>
        </thead>
        {shown.map((row, k) => (
          <tbody key={k}>
            <tr data-row={k}>
              <th scope="row">{k + 1}</th>
              {columns.map(([key, column], c) => (
                <CellEntry
                  key={key} id={cellId(k, key)} row={k} column={column} cell={row.cells[c] as CellReading} system={system} labels={labels[key]} said={`${id}-${k}-said`}
                  onFocus={() => { goTo({ row: k, column: key }); void onOpen().then(() => haveHelp(true)); }} onText={(text) => change(encodeRows(latest.current.map((cells, i) => (i === k ? cells.map((cell, j) => (j === c ? text : cell)) : cells))))} onRename={onRename}
                />
              ))}
              <td class="remove"><button type="button" aria-label={`remove row ${k + 1}${typeof row.cells[0]?.value === 'string' ? `, ${row.cells[0].value}` : ''}`} onClick={() => remove(k)}><span aria-hidden="true">×</span></button></td>
            </tr>
            <Said id={`${id}-${k}-said`} entry={entry} row={row} number={k + 1} touched={at?.row === k ? at.column : undefined} />
          </tbody>
        ))}
      </table>
      {rows.length > shown.length && <p class="echo"><strong>{rows.length - shown.length} more rows are kept but not shown.</strong></p>}
      {field.problem !== undefined && <p class="echo"><strong>{field.problem}</strong></p>}
      <p class="buttons">
        {rows.length < entry.most && <button type="button" onClick={add}>Add a {entry.row}</button>}
        {field.origin === 'typed' && <button type="button" onClick={() => { change(undefined, 'The demo’s list is back.'); setFocus(`${id}-back`); }}>undo mine</button>}
        <span role="status">{past?.system === system && past.said}</span>
        {past?.system === system && <button type="button" id={`${id}-back`} onClick={() => { onType(past.text); remember(undefined); }}>Undo that</button>}
      </p>
      <CsvPanel id={id} entry={entry} field={field} system={system} onList={(text, said) => change(text, said)} />
    </div>
  );
}

/** A keystroke elsewhere draws no list anew. What its handlers do depends on nothing but the key. */
class KeptRows extends Component<RowsFieldProps> {
  override shouldComponentUpdate({ field, system }: RowsFieldProps): boolean {
    const was = this.props.field;
    return field.rows !== was.rows || field.origin !== was.origin || field.problem !== was.problem || system !== this.props.system;
  }

  override render(): VNode {
    return <RowsField {...this.props} />;
  }
}

editors.Rows = KeptRows;

interface CellProps {
  readonly id: string;
  readonly row: number;
  readonly column: Column;
  readonly cell: CellReading;
  readonly system: System;
  readonly labels?: readonly string[];
  readonly said: string;
  readonly onFocus: () => void;
  readonly onText: (text: string) => void;
  readonly onRename: (from: string, to: string) => void;
}

function CellEntry({ id, row, column, cell, system, labels, said, onFocus, onText, onRename }: CellProps): VNode {
  const [before, hold] = useState('');
  const common = { id, 'aria-describedby': said, 'aria-invalid': cell.problem !== undefined || undefined } as const;
  const label = <label for={id}>{columnHead(column, system)}<span class="visually-hidden">, row {row + 1}</span></label>;
  const options = isChoice(column) ? Object.entries(column.options) : 'labelIn' in column ? labels?.map((name) => [name, name] as const) : undefined;
  if (options) {
    const value = cell.value ?? cell.text;
    return (
      <td class="pick">
        {label}
        <select {...common} onFocus={onFocus} onChange={(event) => onText(event.currentTarget.value)}>
          {!options.some(([key]) => key === value) && <option value={cell.text} selected>{cell.text.trim() === '' ? (column.optional ? 'none' : 'choose') : cell.text}</option>}
          {column.optional && cell.text.trim() !== '' && <option value="">none</option>}
          {options.map(([key, words]) => <option key={key} value={key} selected={key === value}>{words}</option>)}
        </select>
      </td>
    );
  }
  const number = isNumberColumn(column);
  const plain = number && column.dimension !== 'length' && column.dimension !== 'grade' && !(column.hard && column.hard.min < 0);
  return (
    <td class={number ? 'number-cell' : 'words-cell'}>
      {label}
      <input
        {...common} inputMode={plain ? 'decimal' : undefined} value={cell.text}
        onFocus={(event) => { hold(event.currentTarget.value); onFocus(); }} onInput={(event) => onText(event.currentTarget.value)}
        onChange={(event) => { if ('letters' in column && before.trim() !== '' && event.currentTarget.value.trim() !== '') onRename(before, event.currentTarget.value); }}
      />
    </td>
  );
}

/** What is to be said about a row, below it: what is wrong, what is missing, what was understood in the cell last touched. */
function Said({ id, entry, row, number, touched }: { id: string; entry: Rows; row: RowReading; number: number; touched: string | undefined }): VNode {
  const name = (column: string): string => entry.columns[column]?.name ?? '';
  const cell = row.cells.find(({ column }) => column === touched);
  const measure = touched === undefined ? undefined : entry.columns[touched]?.measure;
  const lines = [
    ...row.cells.flatMap(({ column, problem }) => (problem === undefined ? [] : [<strong key={column}>{name(column)}: {problem}. </strong>])),
    ...(row.lacks === undefined ? [] : [<strong key="lacks">Row {number} {row.lacks}. </strong>]),
    ...row.cells.flatMap(({ column, note }) => (note === undefined ? [] : [<em key={column}>{name(column)}: {note} </em>])),
    ...(touched !== undefined && cell?.echo ? [<span key="echo">{name(touched)}: {cell.echo}. </span>] : []),
    ...(measure === undefined ? [] : [<span key="measure">{measure}</span>]),
  ];
  return <tr class="said"><td colSpan={Object.keys(entry.columns).length + 2} id={id} class={lines.length === 0 ? 'none' : ''}>{lines}</td></tr>;
}
