import type { Lookup, System, Typed } from '../build/fields.ts';
import type { Build } from '../build/store.ts';
import { readLink } from '../build/links.ts';
import type { AnyCalculator } from '../calculators/record.ts';

/**
 * What one page works with: the reader's build, and over it, for one calculator, the numbers of the link
 * the page was opened with. The link's numbers are never written into the build unless the reader keeps them.
 */
export class Session {
  readonly build: Build;
  /** The calculator typed into last: its numbers go into the address. */
  lastTyped: string | undefined;
  private link: { readonly id: string; readonly values: Map<string, Typed>; readonly newer: boolean } | undefined;
  private readonly listeners = new Set<() => void>();

  constructor(build: Build) {
    this.build = build;
    build.subscribe(() => this.changed());
  }

  get system(): System {
    return this.build.system;
  }

  openLink(record: AnyCalculator, query: string): void {
    const read = readLink(record, query, this.system);
    if (read) this.link = { id: record.id, values: new Map(read.values), newer: read.newer };
    this.changed();
  }

  linked(record: AnyCalculator): { readonly newer: boolean } | undefined {
    return this.link?.id === record.id ? this.link : undefined;
  }

  lookup(record: AnyCalculator): Lookup {
    const link = this.link?.id === record.id ? this.link : undefined;
    return (key) => link?.values.get(key) ?? this.build.get(key);
  }

  type(record: AnyCalculator, key: string, text: string | undefined, unit = ''): void {
    const typed = text === undefined ? undefined : { text, unit, system: this.system };
    this.lastTyped = record.id;
    if (this.link?.id !== record.id) return this.build.set(key, typed);
    if (typed) this.link.values.set(key, typed);
    else this.link.values.delete(key);
    this.changed();
  }

  /** The link's numbers become the reader's own. */
  keepLink(): void {
    const values = this.link?.values ?? [];
    this.link = undefined;
    this.build.setAll(values);
  }

  dropLink(): void {
    this.link = undefined;
    this.changed();
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private changed(): void {
    for (const listener of this.listeners) listener();
  }
}
