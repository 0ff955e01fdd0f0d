import type { VNode } from 'preact';
import { firingCautions } from '../build/cautions.ts';
import type { AnyCalculator, Say, Values } from '../calculators/record.ts';

/** The cautions a result fires. Signal word first, in words, never folded away. */
export function CautionList({ record, values, say }: { record: AnyCalculator; values: Values; say: Say }): VNode {
  return (
    <ul class="cautions" id={`${record.id}-cautions`}>
      {firingCautions(record, values, say).map((caution) => (
        <li key={caution.id} class={caution.level}>
          <strong>{caution.level.toUpperCase()}</strong> {caution.words} <span>{caution.todo}</span>
        </li>
      ))}
    </ul>
  );
}
