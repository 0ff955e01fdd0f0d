import type { System, Typed } from './fields.ts';

/** What the store needs of localStorage; tests and private windows bring their own. */
export interface Storage {
  getItem(name: string): string | null;
  setItem(name: string, value: string): void;
}

/** The saved form. Its schema number is raised when the meaning of an entry changes. */
export interface SavedBuild {
  readonly schema: 1;
  readonly values: Readonly<Record<string, Typed>>;
}

const place = 'build';
const systemPlace = 'unit-system';

/** One truck, one set of values: what the reader typed, kept on the device. */
export class Build {
  private readonly values = new Map<string, Typed>();
  private readonly listeners = new Set<() => void>();
  private readonly storage: Storage | undefined;
  /** False once the device has refused to keep what was written. */
  kept: boolean;
  system: System = 'us';

  constructor(storage?: Storage) {
    this.storage = storage;
    this.kept = storage !== undefined;
    this.refresh();
    if (this.read(systemPlace) === 'si') this.system = 'si';
  }

  /** Takes over what another tab has saved since. Unreadable storage changes nothing. */
  private refresh(): void {
    if (!this.kept) return; // what the device has is older than what stands here
    const saved = readSaved(this.read(place));
    if (!saved) return;
    this.values.clear();
    for (const [key, typed] of Object.entries(saved.values)) this.values.set(key, typed);
  }

  /** Another tab has written. */
  reload(): void {
    this.refresh();
    this.system = this.read(systemPlace) === 'si' ? 'si' : 'us';
    this.announce();
  }

  private read(name: string): string | null {
    try {
      return this.storage?.getItem(name) ?? null;
    } catch {
      return null; // storage forbidden: the page works, it just forgets
    }
  }

  /** False when storage is full or forbidden: the value still counts on this page. */
  private write(name: string, value: string): boolean {
    try {
      this.storage?.setItem(name, value);
      return this.storage !== undefined;
    } catch {
      return false;
    }
  }

  /** Finds out whether the device keeps what is typed, before anything is. */
  try(): boolean {
    this.kept &&= this.write(systemPlace, this.system);
    return this.kept;
  }

  readonly get = (key: string): Typed | undefined => this.values.get(key);

  set(key: string, typed: Typed | undefined): void {
    if (typed) this.setAll([[key, typed]]);
    else {
      this.refresh();
      this.values.delete(key);
      this.changed();
    }
  }

  setAll(entries: Iterable<readonly [string, Typed]>): void {
    this.refresh();
    for (const [key, { text, unit, system }] of entries) this.values.set(key, { text, unit, system });
    this.changed();
  }

  clear(): void {
    this.values.clear();
    this.changed();
  }

  setSystem(system: System): void {
    this.system = system;
    this.write(systemPlace, system);
    this.announce();
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  save(): SavedBuild {
    return { schema: 1, values: Object.fromEntries(this.values) };
  }

  private changed(): void {
    this.kept = this.write(place, JSON.stringify(this.save()));
    this.announce();
  }

  private announce(): void {
    for (const listener of this.listeners) listener();
  }
}

/**
 * A saved build out of text; undefined when it is none. Entries that are not well formed are dropped. Keys that
 * this page does not know are kept: another page, or a newer one, may.
 */
export function readSaved(text: string | null): SavedBuild | undefined {
  let data: unknown;
  try {
    data = JSON.parse(text ?? '');
  } catch {
    return undefined;
  }
  const { schema, values: found } = (data ?? {}) as { schema?: unknown; values?: unknown };
  if (schema !== 1 || typeof found !== 'object' || found === null) return undefined;
  const values: [string, Typed][] = [];
  for (const [key, entry] of Object.entries(found)) {
    const { text: typed, unit, system } = (entry ?? {}) as Partial<Record<string, unknown>>;
    if (/^[a-z]\w{0,60}$/i.test(key) && typeof typed === 'string' && typeof unit === 'string') values.push([key, { text: typed, unit, system: system === 'si' ? 'si' : 'us' }]);
  }
  return { schema: 1, values: Object.fromEntries(values) };
}
