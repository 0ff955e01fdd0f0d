import type { VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { demoSure } from '../build/demo-sure.ts';
import type { Field as FieldState, Reading, System, Typed } from '../build/fields.ts';
import { readNumber } from '../build/fields.ts';
import { plainName } from '../build/sure-words.ts';
import { askable, besidePresent, turning, wantable } from '../build/turning.ts';
import type { Turned, Way } from '../build/turning.ts';
import { entryOf } from '../calculators/evaluate.ts';
import type { AnyCalculator, Say } from '../calculators/record.ts';
import type { Quantity } from '../calculators/vocabulary/index.ts';
import { editText, formatIn, fromSi, toSi, unitFor, unitOf } from '../units/index.ts';
import { Field } from './field.tsx';
import type { Session } from './session.ts';
import { inSlices } from './slices.ts';

export interface TurnProps {
  readonly record: AnyCalculator;
  readonly session: Session;
  readonly reading: Reading;
  readonly system: System;
  readonly say: Say;
}

/** A reader who types on is not done yet. */
const pause = 300;

/**
 * One result is wanted, one input is asked for, the others stay. The question is not part of a link: what comes of
 * it is, once it is typed into its field.
 */
export function TurnPanel({ record, session, reading, system, say }: TurnProps): VNode {
  const [fix, setFix] = useState(record.outputs[0] as string);
  const [ask, setAsk] = useState(() => mostTelling(record));
  const [typed, setTyped] = useState<Typed | undefined>();
  const [unit, setUnit] = useState<string | undefined>();
  const [answer, setAnswer] = useState<{ readonly to: string; readonly turned: Turned } | undefined>();
  const [used, setUsed] = useState('');
  const said = useRef<HTMLParagraphElement>(null);

  const entry = entryOf(fix) as Quantity;
  const wanted = typed ? readNumber(fix, typed, system) : present(fix, entry, reading, unit ?? unitFor(entry.dimension, system));
  const complete = reading.fields.every((field) => field.problem === undefined);
  const target = wanted.value as number | undefined;
  const question = complete && typed && wanted.problem === undefined && typeof target === 'number' ? JSON.stringify([reading.fields.map((field) => field.value), system, fix, ask, target]) : undefined;
  const turned = answer?.to === question ? answer?.turned : undefined;
  useEffect(() => {
    if (question === undefined) return undefined;
    let work: { readonly stop: () => void } | undefined;
    const timer = setTimeout(() => {
      work = inSlices((late) => turning(record, reading.fields, session.lookup(record), system, say, { ask, fix, target: target as number }, late), (found) => setAnswer({ to: question, turned: found }));
    }, pause);
    return () => { clearTimeout(timer); work?.stop(); };
  }, [question]);

  const use = (way: Way): void => {
    session.type(record, ask, way.text, way.unit);
    setUsed(`${entryOf(ask).name}: ${way.words} is in its field now.`);
    said.current?.focus();
  };
  const change = (set: (key: string) => void) => (event: { readonly currentTarget: HTMLSelectElement }): void => {
    set(event.currentTarget.value);
    setUsed('');
  };
  return (
    <>
      <div class="field">
        <label for={`${record.id}-fix`}>Result to fix</label>
        <select id={`${record.id}-fix`} onChange={change((key) => { setFix(key); setTyped(undefined); setUnit(undefined); })}>
          {wantable(record).map((key) => <option value={key} selected={key === fix}>{entryOf(key).name}</option>)}
        </select>
      </div>
      <Field key={fix} id={`${record.id}-target`} field={wanted} open={false} onOpen={() => undefined} onShowIn={setUnit} onType={(text, as) => { setUsed(''); setTyped(text === undefined ? undefined : { text, unit: as ?? '', system }); }} />
      <div class="field">
        <label for={`${record.id}-ask`}>Input to find, all others as they are</label>
        <select id={`${record.id}-ask`} onChange={change(setAsk)}>
          {record.inputs.map((group) => {
            const keys = askable({ ...record, inputs: [group] });
            return keys.length > 0 && <optgroup label={group.title}>{keys.map((key) => <option value={key} selected={key === ask}>{entryOf(key).name}</option>)}</optgroup>;
          })}
        </select>
      </div>
      <p ref={said} tabIndex={-1} class="used" hidden={used === ''}>{used}</p>
      <div class="turned" aria-live="polite">
        {!complete && <p>First put the fields above right.</p>}
        {complete && question === undefined && <p>Type above what you want of the {plainName(fix)}.</p>}
        {question !== undefined && (turned ? <Answer turned={turned} ask={ask} fix={fix} say={say} near={(gives) => besidePresent(gives, target as number, reading.state === 'ok' ? reading.values[fix] as number : 0)} onUse={use} /> : <p>Looking for it …</p>)}
      </div>
    </>
  );
}

/** The result as it stands, for the reader to change. */
function present(fix: string, { dimension }: Quantity, reading: Reading, unit: string): FieldState {
  const value = reading.state === 'ok' ? (reading.values[fix] as number) : undefined;
  if (value === undefined) return { key: fix, text: '', unit, origin: 'computed' };
  const own = unitOf(dimension, unit);
  return { key: fix, text: editText(toSi(Number(fromSi(value, own).toPrecision(4)), own), dimension, unit), unit, value, origin: 'computed', echo: formatIn(value, dimension, unit, 4) };
}

/** The input that moves the demo truck's result most; a record may look at another result, so the headline decides nothing here. */
function mostTelling(record: AnyCalculator): string {
  const keys = askable(record);
  return demoSure(record.id)?.bars.find((bar) => keys.includes(bar.key))?.key ?? (keys[0] as string);
}

interface AnswerProps {
  readonly ask: string;
  readonly fix: string;
  readonly say: Say;
  /** A result as it is to be shown beside the one that stands. */
  readonly near: (gives: number) => number;
  readonly onUse: (way: Way) => void;
}

function Answer({ turned, ...rest }: AnswerProps & { readonly turned: Turned }): VNode {
  const { ask, fix, say } = rest;
  const entry = entryOf(ask) as Quantity;
  if (turned.kind === 'refused') return <p>{turned.words}</p>;
  if (turned.kind === 'unmoved') return <p>The {plainName(ask)} does not move the {plainName(fix)}. Ask for another input.</p>;
  const range = entry.hard && `from ${say(entry.hard.min, entry.dimension)} to ${say(entry.hard.max, entry.dimension)}`;
  return (
    <>
      {turned.kind === 'nearest' && <p>No value in the possible range, {range}, does it. The nearest:</p>}
      {turned.kind === 'found' && turned.ways.length > 1 && <p>{turned.ways.length} values do it, the nearest to yours first:</p>}
      <ul>{turned.ways.map((way) => <WayRow key={way.text} way={way} {...rest} />)}</ul>
      {turned.beyond !== undefined && <p>Past it there is no answer. With {turned.beyond}</p>}
      {turned.bores.length > 0 && <p>{turned.bores.length > 1 ? 'The standard bores on either side:' : 'The nearest standard bore:'}</p>}
      {turned.bores.length > 0 && <ul>{turned.bores.map((way) => <WayRow key={way.text} way={way} {...rest} />)}</ul>}
    </>
  );
}

/** One value, what it gives, what it does besides. */
function WayRow({ way, ask, fix, say, near, onUse }: AnswerProps & { readonly way: Way }): VNode {
  return (
    <li>
      <p>
        {plainName(ask)} <strong>{way.words}</strong>{way.gives === undefined ? ' has no answer with the others as they are.' : `: ${plainName(fix)} ${say(near(way.gives), (entryOf(fix) as Quantity).dimension, 4)}.`}
        {way.note && <em> {way.note}</em>}
      </p>
      {way.present ? <span>yours now</span> : way.gives !== undefined && <button type="button" aria-label={`Use it: ${way.words}`} onClick={() => onUse(way)}>Use it</button>}
      {way.caution && <p class={way.caution.level}><strong>{way.caution.level.toUpperCase()}</strong> {way.caution.words}</p>}
    </li>
  );
}
