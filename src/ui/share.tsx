import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Reading, System } from '../build/fields.ts';
import { forumText } from '../build/forum-text.ts';
import { linkQuery } from '../build/links.ts';
import type { AnyCalculator } from '../calculators/record.ts';

/** The calculator's permanent address with every number in it. */
function linkOf(record: AnyCalculator, reading: Reading): string {
  return `${location.origin}/calculators/${record.id}/${linkQuery(record, reading.fields)}#${record.id}`;
}

export function Share({ record, reading, system }: { record: AnyCalculator; reading: Reading; system: System }): VNode {
  const [said, say] = useState('');
  const [fallback, setFallback] = useState<string | undefined>();
  // What was copied, or waits in the box, is not what stands above any more.
  const query = linkQuery(record, reading.fields);
  useEffect(() => {
    say('');
    setFallback(undefined);
  }, [query, system]);
  const copy = async (what: string, text: string): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      setFallback(undefined);
      say(`${what} copied.`);
    } catch {
      setFallback(text); // no clipboard without https or permission: show it to be copied by hand
      say(`Copy the ${what.toLowerCase()} from the box.`);
    }
  };
  return (
    <>
      <div class="share">
      <button type="button" onClick={() => copy('Link', linkOf(record, reading))}>Copy link</button>
      <button type="button" onClick={() => copy('Text', forumText(record, reading, system, linkOf(record, reading)))}>Copy as text</button>
      <span role="status">{said}</span>
      {fallback !== undefined && <textarea readOnly rows={6} aria-label="text to copy" value={fallback} onFocus={(event) => event.currentTarget.select()} />}
    </div>
    <p class="printed address">With these numbers: {linkOf(record, reading)}</p>
    </>
  );
}
