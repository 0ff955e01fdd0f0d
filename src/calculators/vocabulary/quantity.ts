import type { Dimension } from '../../units/index.ts';

/** A range of SI values, both ends included. */
export interface Range {
  readonly min: number;
  readonly max: number;
}

/**
 * One physical quantity, defined once for the whole site. Its key is permanent: it stands in links.
 */
export interface Quantity {
  /** Name by ISO 611 / ISO 8855 where they have one, as it reads inside a sentence. */
  readonly name: string;
  /** Letter and subscript as in 'p_f'; generated formulas use it. */
  readonly symbol: string;
  readonly dimension: Dimension;
  /** Where real trucks lie, and who says so. Outside it the result stands, with a note. */
  readonly usual?: Range & { readonly source: string };
  /** Outside it nothing physical is left: no number, the reason. */
  readonly hard?: Range & { readonly reason: string };
  /** How to get it at home, with the tool. */
  readonly measure?: string;
  /** One standard deviation of an ordinary home measurement: relative, or absolute in SI. */
  readonly tolerance?: { readonly relative?: number; readonly absolute?: number };
  /** The same where another calculator computes it and nobody has measured it: what the errors of its inputs make of it. Left out: no worse. */
  readonly computedTolerance?: { readonly relative?: number; readonly absolute?: number };
  /** Offers the standard master cylinder bores beside the field. */
  readonly standard?: 'bores';
}

/** A choice between named kinds rather than a number. */
export interface Choice {
  readonly name: string;
  readonly options: Readonly<Record<string, string>>;
  readonly measure?: string;
}

/** Where an empty cell means something, and is left out of the row. */
interface Optional {
  readonly optional?: true;
}

/** A number in every row: as a quantity, but it stands in no formula, so it has no letter. */
export type NumberColumn = Omit<Quantity, 'symbol' | 'standard'> & Optional;

/** A few words of the reader's own, so many letters at most. `unique` where other rows refer to them. */
export interface LabelColumn extends Optional {
  readonly name: string;
  readonly letters: number;
  readonly unique?: true;
  readonly measure?: string;
}

/** One of the labels that the reader gave in another list of the same record. */
export interface ReferenceColumn extends Optional {
  readonly name: string;
  readonly labelIn: string;
  readonly measure?: string;
}

export type Column = NumberColumn | (Choice & Optional) | LabelColumn | ReferenceColumn;

/** A list that the reader can lengthen: gauge readings, points, parts. The keys of its columns are permanent, and their order is: they are in links. */
export interface Rows {
  /** In the plural, as it reads inside a sentence. */
  readonly name: string;
  /** What one row is, for the buttons. */
  readonly row: string;
  readonly columns: Readonly<Record<string, Column>>;
  readonly least: number;
  readonly most: number;
  readonly measure: string;
}

/** What a list is worth: SI numbers, option names and labels, an optional cell left out. */
export type RowValues = readonly Readonly<Record<string, number | string | undefined>>[];

export type Entry = Quantity | Choice | Rows;

export function isChoice(entry: Entry | Column): entry is Choice {
  return 'options' in entry;
}

export function isRows(entry: Entry): entry is Rows {
  return 'columns' in entry;
}

export function isQuantity(entry: Entry): entry is Quantity {
  return 'dimension' in entry;
}

export function isNumberColumn(column: Column): column is NumberColumn {
  return 'dimension' in column;
}

export const commonPractice = 'common practice, no source';
