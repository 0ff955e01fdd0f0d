import { balance } from './balance.ts';
import { bores } from './bores.ts';
import { brakes } from './brakes.ts';
import { clutch } from './clutch.ts';
import { dropPoints } from './drop-points.ts';
import { firewall } from './firewall.ts';
import { fluid } from './fluid.ts';
import { gauges } from './gauges.ts';
import { geometry } from './geometry.ts';
import { heat } from './heat.ts';
import { hydraulics } from './hydraulics.ts';
import { lines } from './lines.ts';
import { pedal } from './pedal.ts';
import { placement } from './placement.ts';
import { rear } from './rear.ts';
import { reservoirs } from './reservoirs.ts';
import { shaft } from './shaft.ts';
import { stopping } from './stopping.ts';
import { sweep } from './sweep.ts';
import { tires } from './tires.ts';
import { truck } from './truck.ts';

/** Every quantity of the site, by its permanent key. The same key means the same thing on every page. */
export const vocabulary = {
  ...balance,
  ...bores,
  ...brakes,
  ...clutch,
  ...dropPoints,
  ...firewall,
  ...fluid,
  ...gauges,
  ...geometry,
  ...heat,
  ...hydraulics,
  ...lines,
  ...pedal,
  ...placement,
  ...rear,
  ...reservoirs,
  ...shaft,
  ...stopping,
  ...sweep,
  ...tires,
  ...truck,
};

export type QuantityKey = keyof typeof vocabulary;

type CellOf<C> = C extends { options: infer O } ? keyof O & string : C extends { dimension: string } ? number : string;
type RowOf<C> = { readonly [P in keyof C as C[P] extends { optional: true } ? never : P]: CellOf<C[P]> } & { readonly [P in keyof C as C[P] extends { optional: true } ? P : never]?: CellOf<C[P]> };

/** The type of a quantity's value: one of its option names for a choice, a list of rows for a list, else an SI number. */
export type ValueOf<K extends QuantityKey> = (typeof vocabulary)[K] extends { columns: infer C } ? readonly RowOf<C>[] : (typeof vocabulary)[K] extends { options: infer O } ? keyof O & string : number;

export type { Choice, Column, Entry, LabelColumn, NumberColumn, Quantity, Range, ReferenceColumn, Rows, RowValues } from './quantity.ts';
export { commonPractice, isChoice, isNumberColumn, isQuantity, isRows } from './quantity.ts';
