import { movePoint } from '../../engine/bodyDrop.ts';
import type { Attached, BodyPoint, MovedPoint } from '../../engine/bodyDrop.ts';
import { gapAlong } from '../../engine/gapAlong.ts';
import { bendsTighter, lineSlack } from '../../engine/lineSlack.ts';
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
  // A point is moved once for all its pairs: a long list is computed hundreds of times to see how sure its result is.
  const moved = heights.map((height) => {
    const motion = motionOf(v, height);
    return new Map([...points].map(([name, point]) => {
      const to = movePoint({ ...motion, point });
      if (isImpossible(to)) throw new RangeError(`drop: expected numbers that noSuchDrop lets pass, found ${to.impossible}`);
      return [name, to];
    }));
  });
  return v.pointPairs.map((pair) => onePair(pair, [points.get(pair.from), points.get(pair.to)] as Ends<BodyPoint>, moved.map((at) => [at.get(pair.from), at.get(pair.to)] as Ends<MovedPoint>)));
}

type Ends<P> = readonly [P, P];

function onePair(pair: PairRow, [a, b]: Ends<BodyPoint>, moved: readonly Ends<MovedPoint>[]): PairFound {
  const before = Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
  const at = Object.fromEntries(heights.map((height, k): [Height, PairAt] => {
    const [p, q] = moved[k] as Ends<MovedPoint>;
    const distance = Math.hypot(q.x - p.x, q.y - p.y, q.z - p.z);
    const exact = pair.kind === 'gap' ? gapAlong({ a, b, dx: q.dx - p.dx, dy: q.dy - p.dy, dz: q.dz - p.dz }) : distance;
    const span = Math.abs(exact) < rounding ? 0 : exact;
    return [height, pair.kind === 'gap' || pair.kind === 'shaft' || pair.length === undefined ? { span } : { span, slack: pair.length - distance }];
  })) as Record<Height, PairAt>;
  const least = heights.reduce((best, height) => (at[height].span < at[best].span ? height : best));
  return { pair, before, at, least, loss: before - at[least].span };
}

const shown = new WeakMap<PairsValues, readonly PairFound[]>();

/** The pairs of values that are known to compute, and that nobody changes any more: cautions, tables and picture all ask for them. */
export function pairsOf(v: PairsValues): readonly PairFound[] {
  const found = shown.get(v) ?? pairsFound(v);
  if ('refused' in found) throw new RangeError('pairs: expected values that compute lets pass, found a refusal');
  shown.set(v, found);
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

/** The gentlest bend that the part's length leaves, where it is tightest; undefined where it lies straight or its length is not known. */
export function leastRadius({ pair, at }: PairFound): number | undefined {
  const radii = heights.flatMap((height) => {
    const { span, slack } = at[height];
    const radius = slack === undefined ? undefined : lineSlack({ length: pair.length as number, distance: span }).gentlestRadius;
    return radius === undefined ? [] : [radius];
  });
  return radii.length === 0 ? undefined : Math.min(...radii);
}

export const gapCloses = ({ pair, at, least }: PairFound): boolean => pair.kind === 'gap' && at[least].span < mountMovement;
export const tooShort = (pair: PairFound): boolean => (leastSlack(pair)?.value ?? Infinity) < 0;
/** Even the gentlest curve bends it tighter than it may be. */
export function bentTooTight({ pair: { kind, length, diameter }, at }: PairFound): boolean {
  if (kind === 'gap' || kind === 'shaft' || length === undefined || diameter === undefined) return false;
  return heights.some((height) => bendsTighter({ length, distance: at[height].span, radius: bendDiameters * diameter }));
}
