import type { VNode } from 'preact';
import { entryOf } from '../calculators/evaluate.ts';
import type { AnyCalculator, Say, Values } from '../calculators/record.ts';
import { placeName } from '../calculators/numbers.ts';
import { spreadOf } from '../calculators/spread.ts';
import { isQuantity } from '../calculators/vocabulary/index.ts';

/** How far the headline may be off, and which measurement to better first. */
export function HowSure({ record, values, say }: { record: AnyCalculator; values: Values; say: Say }): VNode | null {
  const spread = record.ownSpread ? undefined : spreadOf(record, values);
  const entry = entryOf(record.outputs[0] as string);
  if (!spread || !isQuantity(entry)) return null;
  const [first, second] = spread.causes;
  return (
    <p class="how-sure">
      <strong>How sure.</strong> With ordinary measuring errors, 9 in 10 trucks measured like this have their {entry.name} between {say(spread.low, entry.dimension)} and {say(spread.high, entry.dimension)}.
      {first && ` Most of that, ${Math.round(first.part * 100)} %, comes from the ${placeName(first)}`}
      {second && second.part > 0.1 && `, then ${Math.round(second.part * 100)} % from the ${placeName(second)}`}
      {first && '.'} First-order estimate, errors taken as independent.
    </p>
  );
}
