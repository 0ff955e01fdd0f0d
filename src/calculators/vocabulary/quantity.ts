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
  /** Offers the standard master cylinder bores beside the field. */
  readonly standard?: 'bores';
}

/** A choice between named kinds rather than a number. */
export interface Choice {
  readonly name: string;
  readonly options: Readonly<Record<string, string>>;
  readonly measure?: string;
}

export type Entry = Quantity | Choice;

export function isChoice(entry: Entry): entry is Choice {
  return 'options' in entry;
}

export const commonPractice = 'common practice, no source';
