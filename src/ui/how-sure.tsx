import type { VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { demoSure } from '../build/demo-sure.ts';
import type { Reading } from '../build/fields.ts';
import { barName, computedKeys, sureOf, sureWords, usualDraws } from '../build/sure-words.ts';
import type { Bar, Sure } from '../build/sure-words.ts';
import { entryOf } from '../calculators/evaluate.ts';
import type { AnyCalculator, Say, Values } from '../calculators/record.ts';
import { inputKeys } from '../calculators/record.ts';
import { isQuantity, isRows } from '../calculators/vocabulary/index.ts';
import type { NumberColumn, Quantity } from '../calculators/vocabulary/index.ts';
import { formatNumber } from '../units/index.ts';
import { n } from './path.ts';

/** A reader who types on is not done yet. */
const pause = 300;

/** `sure` is undefined where no truck drawn has an answer. */
type Drawn = { readonly of: string } & ({ readonly sure: Sure | undefined } | { readonly lost: true });

/**
 * How far the result may be off, and which measurement to better first. The built page carries the demo truck's
 * answer; another truck's is drawn when the reader pauses. While that is under way no number stands here.
 */
export function HowSure({ record, reading, say, own }: { record: AnyCalculator; reading: Reading; say: Say; own: boolean }): VNode {
  const values = reading.state === 'ok' ? reading.values : undefined;
  const computed = computedKeys(reading.fields);
  const [samePads, setSamePads] = useState(false);
  const [drawn, setDrawn] = useState<Drawn | undefined>();
  const place = useRef<HTMLDivElement>(null);
  const now = values && JSON.stringify([samePads, computed, inputKeys(record).map((key) => values[key])]);
  // The first drawing of a page is the demo truck's.
  const first = useRef(now);
  const known: Drawn | undefined = now === undefined ? undefined : now === first.current ? { of: now, sure: demoSure(record.id) } : drawn?.of === now ? drawn : undefined;
  const wanted = now !== undefined && known === undefined;
  useEffect(() => {
    if (!wanted || !values) return undefined;
    let stop: (() => void) | undefined;
    const timer = setTimeout(() => {
      import('./drawing.ts').then(({ drawing }) => {
        if (stop && place.current) stop = drawing(record, values, samePads, computed, place.current, (sure) => setDrawn({ of: now, sure }));
      }, () => setDrawn({ of: now, lost: true }));
    }, pause);
    stop = () => clearTimeout(timer);
    return () => { stop?.(); stop = undefined; };
  }, [now, wanted]);
  return (
    <div class="how-sure" ref={place} role="group" aria-label="How sure" aria-busy={wanted} hidden={!values}>
      {values && words(record, values, say, known).map((text, k) => <p>{k === 0 && <strong>How sure.</strong>} {text}</p>)}
      {record.howSure?.samePads && (
        <label>Brake pad compounds
          <select value={samePads ? 'one' : 'two'} onChange={(event) => setSamePads(event.currentTarget.value === 'one')}>
            <option value="two">different front and rear</option>
            <option value="one">the same front and rear</option>
          </select>
        </label>
      )}
      {values && known && 'sure' in known && known.sure && known.sure.bars.length > 0 && <Bars record={record} values={values} say={say} sure={known.sure} samePads={samePads} computed={computed} own={own} />}
    </div>
  );
}

function words(record: AnyCalculator, values: Values, say: Say, known: Drawn | undefined): string[] {
  if (!known) return ['Drawing trucks about your numbers …'];
  if ('lost' in known) return ['The code for this could not be loaded. Reload the page when there is a network.'];
  return sureWords(record, values, say, known.sure);
}

function Bars({ record, values, say, sure, samePads, computed, own }: { record: AnyCalculator; values: Values; say: Say; sure: Sure; samePads: boolean; computed: readonly string[]; own: boolean }): VNode {
  const of = sureOf(record);
  const entry = entryOf(of);
  const at = values[of] as number;
  const { draws = usualDraws } = record.howSure ?? {};
  const all: Bar = { key: '', low: sure.low, high: sure.high };
  const ends = [all, ...sure.bars].flatMap((bar) => [bar.low, bar.high]).concat(at);
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const x = (value: number): string => n(2 + ((value - low) / (high - low)) * 96);
  return (
    <details class="fold" open={own}>
      <summary>What moves it, widest first</summary>
      <ul class="bars">
        {[all, ...sure.bars].map((bar) => (
          <li key={`${bar.key} ${bar.cell?.row} ${bar.cell?.column}`}>
            <span>{bar === all ? 'all of them together' : barName(bar, values)}{bar !== all && <small>{error(record, values, bar, computed, say)}</small>}</span>
            <span>{isQuantity(entry) && `${say(bar.low, entry.dimension)} to ${say(bar.high, entry.dimension)}`}</span>
            <svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
              <rect x={x(bar.low)} y="2" width={n(Math.max(0.4, Number(x(bar.high)) - Number(x(bar.low))))} height="6" />
              <line x1={x(at)} x2={x(at)} y1="0" y2="10" />
            </svg>
          </li>
        ))}
      </ul>
      <p><small>
        {sure.others > 0 && `${sure.others} more move it less. `}The stroke is the result as calculated; ± is one standard deviation, which two errors in three stay within. Drawn by chance: {draws.toLocaleString('en-US')} trucks, the same ones every time, each input off on its own{samePads && ', but for the brakes front and rear, which are mostly off together'}. Errors of the formulas are not in it.
      </small></p>
    </details>
  );
}

/** The error an input is taken to have: ' ± 8 %'. */
function error(record: AnyCalculator, values: Values, { key, cell }: Bar, computed: readonly string[], say: Say): string {
  const of = entryOf(key);
  const entry = (cell && isRows(of) ? of.columns[cell.column] : of) as NumberColumn;
  const typed = Object.entries((record.howSure?.errorOf ?? {}) as Readonly<Record<string, readonly string[]>>).find(([, keys]) => keys.includes(key) || keys.includes(`${key}.${cell?.column}`))?.[0];
  const { relative, absolute = undefined } = typed ? { relative: undefined, absolute: values[typed] as number } : (computed.includes(key) && (entry as Quantity).computedTolerance) || entry.tolerance || {};
  const points = absolute && formatNumber(100 * absolute, 2);
  const parts = [
    relative && say(relative, 'share', 2),
    // One percent of a share would read as a part of it; a difference of temperatures is no temperature.
    absolute && (entry.dimension === 'share' ? `${points} ${points === '1' ? 'point' : 'points'}` : entry.dimension !== 'temperature' && say(absolute, entry.dimension, 2)),
  ].filter(Boolean);
  return parts.length > 0 ? ` ±\u00a0${parts.join(' and ')}` : '';
}
