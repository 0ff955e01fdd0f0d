import { Build } from '../build/store.ts';
import { Session } from './session.ts';

function storage(): globalThis.Storage | undefined {
  try {
    return localStorage;
  } catch {
    return undefined; // forbidden in this window: the page works, it just forgets
  }
}

/** The one session of the page that is open. */
export const session = new Session(new Build(storage()));

addEventListener('storage', () => session.build.reload());
addEventListener('pageshow', (event) => event.persisted && session.build.reload());
