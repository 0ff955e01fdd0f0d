import type { VNode } from 'preact';
import type { Field as FieldState } from '../build/fields.ts';
import { entryOf } from '../calculators/evaluate.ts';
import type { Quantity } from '../calculators/vocabulary/index.ts';
import { isChoice, isQuantity } from '../calculators/vocabulary/index.ts';
import { editText, exactText, otherUnit, parseQuantity, standardBores, unitOf } from '../units/index.ts';

export interface FieldProps {
  readonly id: string;
  readonly field: FieldState;
  /** The field last touched shows its help; it stays open until another one is touched. */
  readonly open: boolean;
  readonly onOpen: () => void;
  /** Undefined takes back what was typed. */
  /** Shows a value that was not typed in another unit. */
  readonly onShowIn: (unit: string) => void;
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
      <p class="echo" id={`${id}-echo`}>
        {problem ? <strong>{field.problem}</strong> : [origin(field), field.echo].filter(Boolean).join(': ')}
        {field.note && <em> {field.note}</em>}
      </p>
      {(props.open || (problem && field.origin === 'typed')) && <Help {...props} />}
    </div>
  );
}

function origin(field: FieldState): string {
  if (field.origin === 'typed') return '';
  return field.origin === 'demo' ? 'demo' : 'computed';
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
        id={id} data-unit={field.unit} type="text" inputMode={plain ? 'decimal' : 'text'} autocomplete="off" autocapitalize="off" spellcheck={false}
        value={field.text} aria-describedby={`${id}-echo`} aria-invalid={field.problem !== undefined}
        onInput={(event) => onType(event.currentTarget.value, field.unit)}
        onBlur={() => parsed.ok && parsed.typedUnit && onType(parsed.number, parsed.unit)}
      />
      {other === '' || other === field.unit
        ? <span class="unit">{label(field.unit)}</span>
        : (
          <button
            type="button" class="unit" aria-label={`${label(field.unit)}: show in ${label(other)}`}
            onClick={() => (field.origin === 'typed' ? onType(parsed.ok ? exactText(field.value as number ?? parsed.si, entry.dimension, other) : field.text, other) : onShowIn(other))}
          >{label(field.unit)}</button>
        )}
    </span>
  );
}

/** How to measure it, steps without a slash key, the way back to where the value came from. */
function Help({ id, field, onType }: FieldProps): VNode {
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
        {stepped && <button type="button" onClick={step(-1)}>− {stepName}</button>}
        {stepped && <button type="button" onClick={step(1)}>+ {stepName}</button>}
        {isQuantity(entry) && entry.standard === 'bores' && (
          <select aria-label={`standard bores for ${entry.name}`} id={`${id}-bores`} onChange={(event) => event.currentTarget.value && onType(event.currentTarget.value, 'in')}>
            <option value="">standard bores</option>
            {standardBores.map((bore) => <option value={bore.label}>{bore.label} in</option>)}
          </select>
        )}
        {field.origin === 'typed' && <button type="button" onClick={() => onType(undefined)}>undo mine</button>}
        {field.from && <a href={`/calculators/${field.from.id}/`}>from “{field.from.title}”; type to override</a>}
      </p>
    </div>
  );
}
