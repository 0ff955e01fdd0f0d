import type { VNode } from 'preact';
import { entryOf } from '../calculators/evaluate.ts';
import type { Say, Values } from '../calculators/record.ts';
import { isChoice, isQuantity } from '../calculators/vocabulary/index.ts';

export function ResultList({ keys, values, say }: { keys: readonly string[]; values: Values; say: Say }): VNode {
  return (
    <dl>
      {keys.map((key) => {
        const entry = entryOf(key);
        const value = values[key];
        return <div key={key}><dt>{entry.name}</dt>{isChoice(entry) ? <dd class="words">{entry.options[value as string]}</dd> : isQuantity(entry) && <dd>{say(value as number, entry.dimension)}</dd>}</div>;
      })}
    </dl>
  );
}
