import type { VNode } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Reading, System } from '../build/fields.ts';
import { readRecord, sayIn } from '../build/fields.ts';
import { firingCautions } from '../build/cautions.ts';
import { linkQuery, withoutLink } from '../build/links.ts';
import { entryOf } from '../calculators/evaluate.ts';
import type { AnyCalculator, Say, Values } from '../calculators/record.ts';
import { isQuantity } from '../calculators/vocabulary/index.ts';
import { Carries } from './carries.tsx';
import { CautionList } from './caution-list.tsx';
import { ChartView } from './chart.tsx';
import { editors } from './editors.ts';
import { AlarmLine, CauseLink, Field } from './field.tsx';
import { PictureView } from './picture.tsx';
import type { Session } from './session.ts';
import { Share } from './share.tsx';
import { loadHelp } from './help.ts';
import { HowSure } from './how-sure.tsx';
import { TableView } from './table.tsx';
import { ResultList } from './result-list.tsx';
import { TurnRound } from './turn-round.tsx';
import { Working } from './working.tsx';

export interface CalculatorProps {
  readonly record: AnyCalculator;
  /** Absent while the page is built: then every value is the demo truck's. */
  readonly session?: Session;
  /** On a page of its own nothing is folded. */
  readonly own?: boolean;
}

/** Draws any record: answer, fields, results, cautions, pictures, working, links. */
export function Calculator({ record, session, own = false }: CalculatorProps): VNode {
  const [started, start] = useState(false);
  const [, redraw] = useState(0);
  const [open, setOpen] = useState<string | undefined>();
  const [unfolded, unfold] = useState(own);
  // The first drawing equals the built page; what the device knows comes right after it, before the paint.
  useLayoutEffect(() => {
    start(true);
    if (session?.linked(record)) unfold(true);
    return session?.subscribe(() => redraw((k) => k + 1));
  }, []);
  const live = started ? session : undefined;
  useLayoutEffect(live ? holdField() : () => undefined);
  const system: System = live?.system ?? 'us';
  const say = sayIn(system);
  const reading = readRecord(record, live?.lookup(record) ?? (() => undefined), system, live?.shownIn);
  const values = reading.state === 'ok' ? reading.values : undefined;
  const linked = live?.linked(record);
  useAddress(record, reading, live);
  // A field that is wrong stands open with its help, though nobody has touched it.
  const wrong = reading.fields.some(({ problem }) => problem !== undefined);
  useEffect(() => {
    if (live && wrong) void loadHelp().then(() => redraw((k) => k + 1));
  }, [live, wrong]);
  return (
    <>
      {linked && <LinkNote newer={linked.newer} onKeep={() => { live?.keepLink(record); leaveAddress(record); }} onDrop={() => { live?.dropLink(); leaveAddress(record); }} />}
      {live?.loses(record) && <p class="link-note">This browser keeps nothing for this page: your numbers are gone when you leave it. “Copy link” below takes them along.</p>}
      <Answer record={record} reading={reading} say={say} />
      <details class="fold" open={unfolded}>
        <summary>Put in your numbers</summary>
        <form class="fields" autocomplete="off" autocapitalize="off" spellcheck={false} onSubmit={(event) => event.preventDefault()}>
          {record.inputs.map((group) => (
            <fieldset key={group.title}>
              <legend>{group.title}</legend>
              {(group.of as readonly string[]).map((key) => {
                const field = reading.fields.find((f) => f.key === key);
                if (field?.rows) return editors.Rows && <editors.Rows key={key} id={`${record.id}-${key}`} field={field} system={system} onOpen={loadHelp} onType={(text) => session?.type(record, key, text)} onRename={(from, to) => session?.rename(record, key, from, to)} />;
                return field && <Field key={key} id={`${record.id}-${key}`} field={field} open={open === key} onOpen={() => {
                  if (open === key) return;
                  setOpen(key);
                  void loadHelp().then(() => redraw((k) => k + 1));
                }} undoes={live?.undoes(record, key)} onType={(text, unit) => live?.type(record, key, text, unit)} onShowIn={(unit) => live?.showIn(key, unit)} />;
              })}
            </fieldset>
          ))}
        </form>
      </details>
      <div class="results">
        {values ? <Results record={record} values={values} say={say} /> : <p class="blank">{reading.state === 'blank' && <Reason record={record} reading={reading} />}</p>}
        {values && live && record.carries && <Carries record={record} session={live} values={values} system={system} />}
        {values && (
          <details class="fold" open={own}>
            <summary>Results in full, charts and tables</summary>
            <InFull record={record} values={values} say={say} system={system} />
          </details>
        )}
        <Working record={record} values={values} system={system} others={(record.outputs as readonly string[]).slice(inSight)} />
        <HowSure record={record} reading={reading} say={say} own={own} />
        {session && !record.oneWay && <TurnRound record={record} session={session} reading={reading} system={system} say={say} />}
      </div>
      {session ? <Share record={record} reading={reading} system={system} /> : <p class="printed address">/calculators/{record.id}/</p>}
    </>
  );
}

/** What comes and goes above the field in use must not move it under the fingers: the page scrolls by as much. */
function holdField(): () => void {
  const used = document.activeElement;
  const top = used?.closest('.fields') && used.getBoundingClientRect().top;
  return () => {
    if (typeof top === 'number' && used?.isConnected) scrollBy(0, used.getBoundingClientRect().top - top);
  };
}

/** The headline: one line that stays in sight while the fields scroll by. */
function Answer({ record, reading, say }: { record: AnyCalculator; reading: Reading; say: Say }): VNode {
  const key = record.outputs[0] as string;
  const entry = entryOf(key);
  const worst = reading.state === 'ok' ? firingCautions(record, reading.values, say)[0] : undefined;
  return (
    <p class="answer" role="status">
      <span>{entry.name}</span>
      <output>{reading.state === 'ok' && isQuantity(entry) ? say(reading.values[key] as number, entry.dimension) : '–'}</output>
      {worst && worst.level !== 'notice' && <a class={worst.level} href={`#${record.id}-cautions`}>{worst.level.toUpperCase()}</a>}
      {reading.state === 'ok' && <AlarmLine alarms={reading.alarms} />}
      {reading.state === 'blank' && <small><Reason record={record} reading={reading} /></small>}
    </p>
  );
}

/** Why there is no result, with the way to where it began. */
function Reason({ record, reading }: { record: AnyCalculator; reading: Reading & { state: 'blank' } }): VNode {
  const [cause] = reading.causes;
  return <>{reading.reason}{cause && cause.in.id !== record.id && <CauseLink cause={cause} />}</>;
}

function Results({ record, values, say }: { record: AnyCalculator; values: Values; say: Say }): VNode {
  return (
    <>
      <p class="summary">{record.summary(values as never, say)}</p>
      <CautionList record={record} values={values} say={say} />
      {record.picture && <PictureView id={record.id} picture={record.picture as never} values={values} say={say} />}
    </>
  );
}

function InFull({ record, values, say, system }: { record: AnyCalculator; values: Values; say: Say; system: System }): VNode {
  return (
    <>
      <ResultList keys={(record.outputs as readonly string[]).slice(0, inSight)} values={values} say={say} />
      {record.charts?.map((chart) => <ChartView key={chart.title} chart={chart as never} values={values} system={system} say={say} />)}
      {record.tables?.map((table) => <TableView key={table.caption} table={table as never} values={values} say={say} />)}
    </>
  );
}

/** Results that stand in sight; the others are steps on the way and stand with the steps. */
const inSight = 8;

function LinkNote({ newer, onKeep, onDrop }: { newer: boolean; onKeep: () => void; onDrop: () => void }): VNode {
  return (
    <p class="link-note">
      These are the numbers of the link you opened, not yours. Your own stay as they are.
      {newer && ' The link was made by a newer version of this page: check each number.'}{' '}
      <button type="button" onClick={onKeep}>Keep these as mine</button> <button type="button" onClick={onDrop}>Show mine</button>
    </p>
  );
}

/** What the page itself wrote into the address is no link of somebody else's, also after a reload or Back. */
interface Written {
  readonly own: boolean;
}

function leaveAddress(record: AnyCalculator): void {
  history.replaceState({ own: true } satisfies Written, '', `${location.pathname}${withoutLink(record, location.search)}${location.hash}`);
}

/** Writes the numbers into the address once the reader has changed one, debounced, keeping foreign parameters. */
function useAddress(record: AnyCalculator, reading: Reading, session: Session | undefined): void {
  const typed = reading.fields.map((field) => `${field.text} ${field.unit}`).join('|');
  const written = useRef<string | undefined>(undefined);
  useEffect(() => {
    if (!session) return undefined;
    if (written.current === undefined || session.lastTyped !== record.id) written.current = typed;
    if (typed === written.current) return undefined;
    const timer = setTimeout(() => {
      written.current = typed;
      history.replaceState({ own: session.linked(record) === undefined } satisfies Written, '', `${location.pathname}${linkQuery(record, reading.fields, location.search)}#${record.id}`);
    }, 400);
    return () => clearTimeout(timer);
  }, [typed, session]);
}
