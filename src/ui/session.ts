import { readRecord } from '../build/fields.ts';
import type { Lookup, ShownIn, System, Typed } from '../build/fields.ts';
import type { Build } from '../build/store.ts';
import { readLink } from '../build/links.ts';
import { encodeRows, renamedRows } from '../build/rows.ts';
import { entryOf } from '../calculators/evaluate.ts';
import type { AnyCalculator } from '../calculators/record.ts';
import { isRows } from '../calculators/vocabulary/index.ts';

/**
 * What one page works with: the reader's build, and over it, for one calculator, the numbers of the link
 * the page was opened with. The link's numbers are never written into the build unless the reader keeps them.
 */
export class Session {
  readonly build: Build;
  /** The calculator typed into last: its numbers go into the address. */
  lastTyped: string | undefined;
  private link: { readonly id: string; readonly sent: ReadonlyMap<string, Typed>; readonly values: Map<string, Typed>; readonly newer: boolean } | undefined;
  private readonly listeners = new Set<() => void>();
  private readonly units = new Map<string, string>();

  constructor(build: Build) {
    this.build = build;
    build.subscribe(() => this.changed());
  }

  get system(): System {
    return this.build.system;
  }

  openLink(record: AnyCalculator, query: string): void {
    const read = readLink(record, query);
    if (read) this.link = { id: record.id, sent: read.values, values: new Map(read.values), newer: read.newer };
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
    const next = typed ?? this.link.sent.get(key);
    if (next) this.link.values.set(key, next);
    this.changed();
  }

  /** A measured result takes the place of a value of the reader's truck. Never of a link's: that is somebody else's truck. */
  carry(record: AnyCalculator, key: string, typed: Typed | undefined): void {
    this.lastTyped = record.id;
    this.build.set(key, typed);
  }

  /** What `type(…, undefined)` would bring back in place of what the reader typed; undefined where he typed nothing. */
  undoes(record: AnyCalculator, key: string): 'demo' | 'link' | undefined {
    if (this.link?.id === record.id) return this.link.values.get(key) === this.link.sent.get(key) ? undefined : 'link';
    return this.build.get(key) && 'demo';
  }

  /** The reader has typed something here that the device does not keep. */
  loses(record: AnyCalculator): boolean {
    return !this.build.kept && this.lastTyped === record.id && this.link?.id !== record.id;
  }

  /** A label of one list has another name now: the lists that refer to it follow. */
  rename(record: AnyCalculator, list: string, from: string, to: string): void {
    for (const { key, rows } of readRecord(record, this.lookup(record), this.system).fields) {
      const entry = entryOf(key);
      if (!rows || !isRows(entry)) continue;
      const before = encodeRows(rows.rows.map(({ cells }) => cells.map(({ text }) => text)));
      const after = renamedRows(entry, before, list, from, to);
      if (after !== before) this.type(record, key, after);
    }
  }

  /**
   * The link's numbers become the reader's own, but for those that cannot be read, and those that the other numbers
   * give anyway: a computed value stays computed.
   */
  keepLink(record: AnyCalculator): void {
    const sent = readRecord(record, this.lookup(record), this.system).fields;
    const good = [...(this.link?.values ?? [])].filter(([key]) => sent.find((field) => field.key === key)?.problem === undefined);
    const fed = (key: string): boolean => record.feeds?.some((feed) => (feed.outputs as readonly string[]).includes(key)) ?? false;
    this.link = undefined;
    this.build.setAll(good.filter(([key]) => !fed(key)));
    const own = readRecord(record, this.build.get, this.system).fields;
    this.build.setAll(good.filter(([key]) => {
      const [a, b] = [sent, own].map((fields) => fields.find((field) => field.key === key)?.value);
      return fed(key) && !(typeof a === 'number' && typeof b === 'number' && Math.abs(a - b) <= 1e-4 * Math.abs(b));
    }));
  }

  dropLink(): void {
    this.link = undefined;
    this.changed();
  }

  readonly shownIn: ShownIn = (key) => this.units.get(key);

  /** Shows a value that nobody typed in another unit. */
  showIn(key: string, unit: string): void {
    this.units.set(key, unit);
    this.changed();
  }

  /** A change of the unit system ends what was chosen field by field. */
  setSystem(system: System): void {
    this.units.clear();
    this.build.setSystem(system);
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private changed(): void {
    for (const listener of this.listeners) listener();
  }
}
