import type { Dimension } from '../units/index.ts';
import type { Say } from './record.ts';

/** What a record can show besides numbers. All positions in SI units; the page scales them. */

export type At = readonly [x: number, y: number];

/** Tells things apart by line style first, color second. */
export type Tone = 'plain' | 'front' | 'rear' | 'body' | 'frame' | 'ghost' | 'ground' | 'accent' | 'alert';

export type Shape =
  | { readonly line: readonly At[]; readonly tone: Tone; readonly closed?: boolean; readonly filled?: boolean }
  | { readonly circle: At; readonly radius: number; readonly tone: Tone; readonly filled?: boolean }
  /** A straight part with a radius. */
  | { readonly capsule: readonly [At, At]; readonly radius: number; readonly tone: Tone }
  | { readonly arrow: readonly [At, At]; readonly tone: Tone; readonly label?: string }
  | { readonly text: string; readonly at: At; readonly anchor?: 'start' | 'middle' | 'end'; readonly tone?: Tone; readonly small?: boolean }
  /** A distance with ticks at both ends and a label at its middle. */
  | { readonly span: readonly [At, At]; readonly label: string };

export interface Scene {
  /** The part of the plane to show: left, bottom, right, top. Drawn to scale, y up. */
  readonly box: readonly [number, number, number, number];
  readonly shapes: readonly Shape[];
}

export interface Picture<V> {
  readonly title: string;
  /** The picture in a sentence or two, for who cannot see it. */
  readonly describe: (v: V, say: Say, at: number) => string;
  /** A slider that moves the picture, with a play button; `at` runs over its range. */
  readonly motion?: { readonly label: string; readonly dimension: Dimension; readonly range: (v: V) => readonly [number, number]; readonly start: (v: V) => number; readonly say?: (v: V, at: number, say: Say) => string };
  /** Or a few named states to switch between; `at` is the index. */
  readonly states?: { readonly label: string; readonly names: readonly string[]; readonly start?: number };
  readonly scene: (v: V, at: number, say: Say) => Scene;
}

export interface Series {
  readonly label: string;
  readonly tone: Tone;
  readonly points: readonly At[];
}

export interface Chart<V> {
  readonly title: string;
  readonly x: { readonly label: string; readonly dimension: Dimension };
  /** `near` starts the axis near the data instead of at zero, where zero would flatten the curve. */
  readonly y: { readonly label: string; readonly dimension: Dimension; readonly near?: boolean };
  readonly series: (v: V) => readonly Series[];
  /** Single points worth a name: where the truck is now, a crossing. */
  readonly marks?: (v: V, say: Say) => readonly { readonly at: At; readonly label: string; readonly tone?: Tone }[];
  /** The curve in a sentence, for who cannot see it. */
  readonly describe: (v: V, say: Say) => string;
}

export type Cell = string | { readonly value: number; readonly dimension: Dimension; readonly digits?: number };

export interface Table<V> {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: (v: V, say: Say) => readonly (readonly Cell[])[];
}
