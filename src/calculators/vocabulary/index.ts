import { balance } from './balance.ts';
import { brakes } from './brakes.ts';
import { firewall } from './firewall.ts';
import { geometry } from './geometry.ts';
import { hydraulics } from './hydraulics.ts';
import { pedal } from './pedal.ts';
import { stopping } from './stopping.ts';
import { truck } from './truck.ts';

/** Every quantity of the site, by its permanent key. The same key means the same thing on every page. */
export const vocabulary = { ...truck, ...pedal, ...hydraulics, ...brakes, ...balance, ...geometry, ...stopping, ...firewall };

export type QuantityKey = keyof typeof vocabulary;

/** The type of a quantity's value: one of its option names for a choice, else an SI number. */
export type ValueOf<K extends QuantityKey> = (typeof vocabulary)[K] extends { options: infer O } ? keyof O & string : number;

export type { Choice, Entry, Quantity, Range } from './quantity.ts';
export { commonPractice, isChoice } from './quantity.ts';
