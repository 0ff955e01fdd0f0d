import { pairChange } from '../../engine/bodyDrop.ts';
import type { Attached, BodyPoint } from '../../engine/bodyDrop.ts';
import { gapAlong } from '../../engine/gapAlong.ts';
import { lineSlack } from '../../engine/lineSlack.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { mm } from '../../units/si.ts';
import type { Refusal, ValuesOf } from '../record.ts';
import type { ValueOf } from '../vocabulary/index.ts';
import { mountMovement } from './body-drop-tables.ts';
import type { MotionValues, Stand } from './body-drop-motion.ts';
import { motionOf, noSuchDrop } from './body-drop-motion.ts';

export type PairsValues = MotionValues & ValuesOf<'truckPoints' | 'pointPairs'>;
type Row = ValueOf<'truckPoints'>[number];
export type PairRow = ValueOf<'pointPairs'>[number];

/** The heights after the drop. */
export const heights = ['drive height', 'aired out', 'lifted'] as const satisfies readonly Stand[];
export type Height = (typeof heights)[number];

/** Below this a tape sees no change. */
export const unseen = 0.5 * mm;
/** A gap that closes just so leaves the last bits of its terms. */
const rounding = 1e-12;
/** Common practice, no source: bent to no less than this many outside diameters. */
export const bendDiameters = 5;

const attachments: Readonly<Record<Row['on'], Attached>> = { body: 'body', floor: 'floor', frame: 'frame', frontAxle: 'axle-front', rearAxle: 'axle-rear' };

export const asPoint = (row: Row): BodyPoint => ({ x: row.x, y: row.y, z: row.z, attached: attachments[row.on] });

export const pairName = ({ from, to }: PairRow): string => `${from} to ${to}`;

export interface PairAt {
  /** Of the two points, or for a gap, what is left of it along the line that joined them. */
  readonly span: number;
  readonly slack?: number;
  readonly gentlestRadius?: number;
}

export interface PairFound {
  readonly pair: PairRow;
  readonly before: number;
  readonly at: Readonly<Record<Height, PairAt>>;
  /** The height at which the span is least, and what it lost by then. */
  readonly least: Height;
  readonly loss: number;
}

/** Every pair at every height, or why there is none. */
export function pairsFound(v: PairsValues): readonly PairFound[] | Refusal {
  const refusal = noSuchDrop(v);
  if (refusal) return refusal;
  const points = new Map(v.truckPoints.map((row) => [row.name, asPoint(row)]));
  for (const { from, to } of v.pointPairs) {
    for (const name of [from, to]) if (!points.has(name)) return { refused: () => `A pair names the point “${name}”, and no point of that name is in the list.` };
    if (from === to) return { refused: () => `One pair runs from “${from}” to itself. Choose two different points.` };
  }
  return v.pointPairs.map((pair) => onePair(v, pair, points.get(pair.from) as BodyPoint, points.get(pair.to) as BodyPoint));
}

function onePair(v: PairsValues, pair: PairRow, a: BodyPoint, b: BodyPoint): PairFound {
  let before = 0;
  const at = Object.fromEntries(heights.map((height): [Height, PairAt] => {
    const r = pairChange({ ...motionOf(v, height), a, b });
    if (isImpossible(r)) throw new RangeError(`drop: expected numbers that noSuchDrop lets pass, found ${r.impossible}`);
    before = r.before;
    const exact = pair.kind === 'gap' ? gapAlong({ a, b, dx: r.dx, dy: r.dy, dz: r.dz }) : r.after;
    const span = Math.abs(exact) < rounding ? 0 : exact;
    const flexible = pair.kind !== 'gap' && pair.kind !== 'shaft' && pair.length !== undefined;
    return [height, { span, ...(flexible ? lineSlack({ length: pair.length as number, distance: r.after }) : {}) }];
  })) as Record<Height, PairAt>;
  const least = heights.reduce((best, height) => (at[height].span < at[best].span ? height : best));
  return { pair, before, at, least, loss: before - at[least].span };
}

/** The pairs of values that are known to compute. */
export function pairsOf(v: PairsValues): readonly PairFound[] {
  const found = pairsFound(v);
  if ('refused' in found) throw new RangeError('pairs: expected values that compute lets pass, found a refusal');
  return found;
}

export const worstOf = (found: readonly PairFound[]): PairFound => found.reduce((worst, pair) => (pair.loss > worst.loss ? pair : worst));

/** The least of something over the heights, and where; undefined where no height has it. */
export function leastAt({ at }: PairFound, of: (state: PairAt) => number | undefined): { readonly value: number; readonly height: Height } | undefined {
  const known = heights.flatMap((height) => {
    const value = of(at[height]);
    return value === undefined ? [] : [{ value, height }];
  });
  return known.length === 0 ? undefined : known.reduce((best, one) => (one.value < best.value ? one : best));
}

export const leastSlack = (pair: PairFound) => leastAt(pair, ({ slack }) => slack);
export const leastRadius = (pair: PairFound) => leastAt(pair, ({ gentlestRadius }) => gentlestRadius);

export const gapCloses = ({ pair, at, least }: PairFound): boolean => pair.kind === 'gap' && at[least].span < mountMovement;
export const tooShort = (pair: PairFound): boolean => (leastSlack(pair)?.value ?? Infinity) < 0;
/** The gentlest curve there is bends it too tight already; a part long enough for a whole loop can always be laid in one. */
export const bentTooTight = (found: PairFound): boolean => {
  const { diameter, length } = found.pair;
  if (diameter === undefined || length === undefined || length > 2 * Math.PI * bendDiameters * diameter) return false;
  return (leastRadius(found)?.value ?? Infinity) < bendDiameters * diameter;
};
