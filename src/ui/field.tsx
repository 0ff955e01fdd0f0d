import type { VNode } from 'preact';
import type { Cause, Field as FieldState, Warned } from '../build/fields.ts';
import { entryOf } from '../calculators/evaluate.ts';
import type { Entry, Quantity } from '../calculators/vocabulary/index.ts';
import { isChoice, isQuantity } from '../calculators/vocabulary/index.ts';
import { editText, exactText, otherUnit, parseQuantity, standardBores, unitOf } from '../units/index.ts';

export interface FieldProps {
  readonly id: string;
  readonly field: FieldState;
  /** The field last touched shows its help; it stays open until another one is touched. */
  readonly open: boolean;
  readonly onOpen: () => void;
  /** Shows a value that was not typed in another unit. */
  readonly onShowIn: (unit: string) => void;
  /** Whose value comes back when what was typed is taken back; undefined where nothing was typed. */
  readonly undoes?: 'demo' | 'link';
  /** Undefined takes back what was typed. */
  readonly onType: (text: string | undefined, unit?: string) => void;
}

export function Field(props: FieldProps): VNode {
  const { id, field } = props;
  const entry = entryOf(field.key);
  const label = <label for={id}>{entry.name}</label>;
  const problem = field.problem !== undefined;
  return (
    <div class={`field${problem ? ' wrong' : ''}${props.open ? ' open' : ''}`} onFocusIn={(event) => { if (!(event.target instanceof HTMLButtonElement)) props.onOpen(); }}>
      {label}
      {isChoice(entry) ? <ChoiceEntry {...props} options={entry.options} /> : isQuantity(entry) && <NumberEntry {...props} entry={entry} />}
      <span class="printed">{onPaper(field, entry)}</span>
      <p class="echo" id={`${id}-echo`}>
        {problem ? <><strong>{field.problem}</strong>{field.cause && <CauseLink cause={field.cause} />}</> : <span>{[origin(field), field.echo].filter(Boolean).join(': ')}</span>}
        {field.note && <em> {field.note}</em>}
        {field.alarms && <AlarmLine alarms={field.alarms} />}
      </p>
      {(props.open || (problem && field.origin === 'typed')) && <Help {...props} />}
    </div>
  );
}

/** To the field that is wrong where it stands on this page, else to the page of its calculator. */
export function CauseLink({ cause }: { cause: Cause }): VNode {
  const id = [cause.in.id, cause.key].filter(Boolean).join('-');
  return <> <a href={wayTo(cause.in.id, id, cause.key && `.fields [id$="-${cause.key}"]`)}>Put it right</a></>;
}

/** To the part of a calculator where it stands on this page, or what stands for it here, else on the calculator's own page. */
function wayTo(calculator: string, id: string, orElse?: string): string {
  const page = typeof document === 'undefined' ? undefined : document; // none while the page is built
  const here = page?.getElementById(id) ?? (orElse && page?.querySelector(orElse));
  return here ? `#${here.id}` : `/calculators/${calculator}/#${id}`;
}

/** A danger or warning of a calculator that computes what is used here: the worst one. */
export function AlarmLine({ alarms }: { alarms: readonly Warned[] }): VNode | null {
  const [worst] = alarms;
  return worst ? (
    <small class={`alarm ${worst.level}`}>
      <a href={wayTo(worst.in.id, `${worst.in.id}-cautions`)}>{worst.in.title}</a> says <strong>{worst.level.toUpperCase()}</strong>: {worst.first}
      {alarms.length > 1 && ` And ${alarms.length - 1} more.`}
    </small>
  ) : null;
}

function origin(field: FieldState): string {
  if (field.origin === 'typed') return field.instead ? 'replaces the computed one' : '';
  return field.origin === 'demo' ? 'demo' : 'computed';
}

/** What a field says on paper, where there is no room for a box: all of it in one line. */
function onPaper(field: FieldState, entry: Entry): string {
  let value = field.echo || field.text;
  if (isChoice(entry)) value = Object.hasOwn(entry.options, field.text) ? (entry.options[field.text] as string) : field.text;
  else if (isQuantity(entry) && !field.echo) value = `${field.text}\u00a0${unitOf(entry.dimension, field.unit).label}`.replace(/\u00a0(?=°|$)/, '');
  return [value, origin(field)].filter(Boolean).join(', ');
}

function ChoiceEntry({ id, field, onType, options }: FieldProps & { options: Readonly<Record<string, string>> }): VNode {
  return (
    <select id={id} aria-describedby={`${id}-echo`} onChange={(event) => onType(event.currentTarget.value)}>
      {!Object.hasOwn(options, field.text) && <option value={field.text} selected>choose</option>}
      {Object.entries(options).map(([value, words]) => <option value={value} selected={value === field.text}>{words}</option>)}
    </select>
  );
}

function NumberEntry({ id, field, entry, onType, onShowIn }: FieldProps & { entry: Quantity }): VNode {
  const parsed = parseQuantity(field.text, entry.dimension, field.unit);
  const other = otherUnit(entry.dimension, field.unit);
  const label = (unit: string): string => unitOf(entry.dimension, unit).label;
  // A phone's decimal keypad has neither slash nor minus: only fields that need neither get it.
  const plain = entry.dimension !== 'length' && entry.dimension !== 'grade' && !(entry.hard && entry.hard.min < 0);
  return (
    <span class="entry">
      <input
        id={id} data-unit={field.unit} inputMode={plain ? 'decimal' : undefined}
        value={field.text} aria-describedby={`${id}-echo`} aria-invalid={field.problem !== undefined || undefined}
        onInput={(event) => onType(event.currentTarget.value, field.unit)}
        onBlur={() => parsed.ok && parsed.typedUnit && onType(parsed.number, parsed.unit)}
      />
      {other === '' || other === field.unit
        ? <span class="unit">{label(field.unit)}</span>
        : (
          <button
            type="button" class="unit" aria-label={`${label(field.unit)}, ${entry.name}: show in ${label(other)}`}
            onClick={() => (field.origin === 'typed' ? onType(parsed.ok ? exactText(field.value as number ?? parsed.si, entry.dimension, other) : field.text, other) : onShowIn(other))}
          >{label(field.unit)}</button>
        )}
    </span>
  );
}

const undoWords = { demo: 'undo mine', link: 'back to the link’s' };

/** How to measure it, steps without a slash key, the way back to where the value came from. */
function Help({ id, field, onType, undoes }: FieldProps): VNode {
  const entry = entryOf(field.key);
  const step = (by: number) => (): void => {
    if (!isQuantity(entry)) return;
    const parsed = parseQuantity(field.text, entry.dimension, field.unit);
    if (parsed.ok) onType(editText(parsed.si + by * (field.unit === 'in' ? 0.0254 / 16 : 0.001), entry.dimension, field.unit), field.unit);
  };
  const stepped = isQuantity(entry) && entry.dimension === 'length' && (field.unit === 'in' || field.unit === 'mm');
  const stepName = field.unit === 'in' ? '1/16 in' : '1 mm';
  return (
    <div class="help">
      {entry.measure && <p>{entry.measure}</p>}
      <p class="buttons">
        {stepped && <button type="button" aria-label={`− ${stepName}: ${entry.name}`} onClick={step(-1)}>− {stepName}</button>}
        {stepped && <button type="button" aria-label={`+ ${stepName}: ${entry.name}`} onClick={step(1)}>+ {stepName}</button>}
        {isQuantity(entry) && entry.standard === 'bores' && (
          <select aria-label={`standard bores for ${entry.name}`} id={`${id}-bores`} value={standardBores.find((bore) => bore.si === field.value)?.label ?? ''} onChange={(event) => event.currentTarget.value && onType(event.currentTarget.value, 'in')}>
            <option value="">standard bores</option>
            {standardBores.map((bore) => <option value={bore.label}>{bore.label} in</option>)}
          </select>
        )}
        {undoes && <button type="button" aria-label={`${undoWords[undoes]}: ${entry.name}`} onClick={() => {
          onType(undefined);
          document.getElementById(id)?.focus(); // the button is gone
        }}>{undoWords[undoes]}</button>}
        {field.instead && <a href={`/calculators/${field.instead.id}/`}>in place of what “{field.instead.title}” computes</a>}
        {field.from && <a href={`/calculators/${field.from.id}/`}>from “{field.from.title}”; type to override</a>}
      </p>
    </div>
  );
}
