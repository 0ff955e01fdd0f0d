import file from '../../content/checklists.json' with { type: 'json' };

export interface Item {
  /** 'rearValve=fitted' or 'a=b|c': only for builds whose choice is one of these. */
  readonly if?: string;
  readonly do: string;
  readonly pass: string;
  readonly fail: string;
  /** What each blank is for. */
  readonly read: readonly string[];
  readonly table?: { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] };
}

export interface Checklist {
  readonly title: string;
  readonly lead: string;
  readonly groups: readonly { readonly title: string; readonly items: readonly Item[] }[];
}

const lists: Readonly<Record<string, Checklist>> = file.lists;

/** @throws RangeError for a list that the file does not have */
export function checklistById(id: string): Checklist {
  const list = Object.hasOwn(lists, id) ? lists[id] : undefined;
  if (!list) throw new RangeError(`checklist: expected one of ${Object.keys(lists).join(', ')}, found ${id}`);
  return list;
}

/** The lists of a guide's text, in its order. */
export function checklistsIn(body: string | undefined): readonly string[] {
  return [...(body ?? '').matchAll(/<Checklist\s+id="([^"]+)"/g)].map((match) => match[1] as string);
}
