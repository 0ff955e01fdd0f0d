import type { VNode } from 'preact';
import { useRef, useState } from 'preact/hooks';
import type { System, Typed } from '../build/fields.ts';
import { entryOf, hardProblem } from '../calculators/evaluate.ts';
import type { AnyCalculator, Values } from '../calculators/record.ts';
import type { Quantity } from '../calculators/vocabulary/index.ts';
import { editText, formatIn, fromSi, toSi, unitFor, unitOf } from '../units/index.ts';
import type { Session } from './session.ts';

/** Measured values, each with a button that types it into its field for every page: measured replaces computed. */
export function Carries({ record, session, values, system }: { record: AnyCalculator; session: Session; values: Values; system: System }): VNode | null {
  const [said, say] = useState('');
  const [before, setBefore] = useState<ReadonlyMap<string, Typed | undefined>>(new Map());
  const words = useRef<HTMLParagraphElement>(null);
  const offered = (record.carries ?? []).filter((carry) => carry.when?.(values as never) ?? true);
  if (offered.length === 0) return null;
  const linked = session.linked(record) !== undefined;
  const use = (key: string, typed: Typed | undefined, what: string): void => {
    session.carry(record, key, typed);
    say(what);
    words.current?.focus();
  };
  return (
    <div class="turned carries" role="group" aria-label="Measured replaces computed">
      <p><strong>Measured replaces computed.</strong> Type these into my truck, for every page:</p>
      <ul>
        {offered.map(({ to, from, refuses }) => {
          const entry = entryOf(to) as Quantity;
          const typed = asTyped(values[from] as number, entry, system);
          const now = session.build.get(to);
          const inUse = now?.text === typed.text && now.unit === typed.unit;
          const no = linked ? 'These are the numbers of a link: keep them as yours first.' : refuses?.(values as never) ?? hardProblem(to, values[from] as number);
          const shown = formatIn(values[from] as number, entry.dimension, typed.unit, 4);
          return (
            <li key={to}>
              <p>{entry.name} <strong>{shown}</strong>{no && !inUse && <em> {no}</em>}</p>
              {inUse
                ? <button type="button" aria-label={`Undo: ${entry.name}`} onClick={() => use(to, before.get(to), `${entry.name}: as it was before.`)}>Undo</button>
                : !no && <button type="button" aria-label={`Use as mine: ${entry.name} ${shown}`} onClick={() => { setBefore(new Map(before).set(to, now)); use(to, typed, `${entry.name}: ${shown} is in its field now, on every page that asks for it.`); }}>Use as mine</button>}
            </li>
          );
        })}
      </ul>
      <p ref={words} tabIndex={-1} class="used" hidden={said === ''}>{said}</p>
    </div>
  );
}

/** Four digits: the gauges have no more. */
function asTyped(si: number, { dimension }: Quantity, system: System): Typed {
  const unit = unitFor(dimension, system);
  const own = unitOf(dimension, unit);
  return { text: editText(toSi(Number(fromSi(si, own).toPrecision(4)), own), dimension, unit), unit, system };
}
