import type { FunctionComponent, VNode } from 'preact';
import { useState } from 'preact/hooks';
import type { TurnProps } from './turn-panel.tsx';

/** Asks a calculator the other way round. Its code comes when it is opened. */
export function TurnRound(props: TurnProps): VNode {
  const [Panel, setPanel] = useState<FunctionComponent<TurnProps> | undefined>();
  const [lost, setLost] = useState(false);
  const open = (): void => {
    if (Panel) return;
    import('./turn-panel.tsx').then((code) => { setPanel(() => code.TurnPanel); setLost(false); }, () => setLost(true));
  };
  return (
    <details class="turn-round" onToggle={(event) => event.currentTarget.open && open()}>
      <summary>Turn it round: fix a result, find an input</summary>
      {Panel ? <Panel {...props} /> : <p>{lost ? 'The code for this could not be loaded. Close this and open it again when there is a network.' : 'Loading …'}</p>}
    </details>
  );
}
