import type { VNode } from 'preact';
import type { Say } from '../calculators/record.ts';
import type { Table } from '../calculators/show.ts';

export function TableView({ table, values, say }: { table: Table<never>; values: unknown; say: Say }): VNode {
  return (
    <div class="scroll" tabIndex={0} role="group" aria-label={table.caption}>
      <table>
        <caption>{table.caption}</caption>
        <thead><tr>{table.head.map((cell) => (cell === '' ? <td /> : <th scope="col">{cell}</th>))}</tr></thead>
        <tbody>
          {table.rows(values as never, say).map((row) => (
            <tr>{row.map((cell, k) => {
              const text = typeof cell === 'string' ? cell : say(cell.value, cell.dimension, cell.digits);
              return k === 0 ? <th scope="row">{text}</th> : <td>{text}</td>;
            })}</tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
