import { clearanceSweep } from '../../engine/clearanceSweep.ts';
import type { PairSweep } from '../../engine/clearanceSweep.ts';
import { heldGap } from '../../engine/heldGap.ts';
import type { Impossible } from '../../engine/outcome.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { feels, shaftLine } from '../../engine/sweepMotion.ts';
import type { Motions, Rides, SweepPart } from '../../engine/sweepMotion.ts';
import { deg, mm } from '../../units/si.ts';
import type { Refusal, Say, ValuesOf } from '../record.ts';
import type { ValueOf } from '../vocabulary/index.ts';

export type SweepValues = ValuesOf<
  | 'sweepParts' | 'engineRoll' | 'rollLineSide' | 'rollLineHeight' | 'mountMovement' | 'mountSideways' | 'mountForeAft' | 'columnEndXAfter' | 'columnEndY' | 'columnEndZAfter' | 'boxInputX' | 'boxInputY' | 'boxInputZ'
  | 'pivotStation' | 'pivotHeight' | 'pedalSwing' | 'airedOutFront' | 'liftedFront' | 'airedOutRear' | 'liftedRear' | 'positionError'
>;
export type PartRow = ValueOf<'sweepParts'>[number];

/** Common practice, no source: below the first stop, below the second watch; the third is what an engine or exhaust wants. */
export const stop = 6 * mm;
export const watch = 12 * mm;
export const hot = 25 * mm;

const rides: Readonly<Record<PartRow['on'], Rides>> = {
  frame: 'frame', body: 'body', engine: 'engine', pedal: 'pedal', rod: 'rod', steering: 'steering', frontAxle: 'front-axle', rearAxle: 'rear-axle',
};

export function motionsIn(v: SweepValues): Motions {
  return {
    roll: v.engineRoll, rollY: v.rollLineSide, rollZ: v.rollLineHeight, mountUp: v.mountMovement, mountSideways: v.mountSideways, mountForeAft: v.mountForeAft, pivotX: v.pivotStation, pivotZ: v.pivotHeight, swing: v.pedalSwing,
    columnEnd: { x: v.columnEndXAfter, y: v.columnEndY, z: v.columnEndZAfter }, box: { x: v.boxInputX, y: v.boxInputY, z: v.boxInputZ },
    airedOutFront: v.airedOutFront, liftedFront: v.liftedFront, airedOutRear: v.airedOutRear, liftedRear: v.liftedRear,
  };
}

const partIn = (row: PartRow): SweepPart => ({ rides: rides[row.on], start: { x: row.x1, y: row.y1, z: row.z1 }, end: { x: row.x2, y: row.y2, z: row.z2 }, radius: row.radius });

export function partsIn({ sweepParts }: SweepValues): SweepPart[] {
  const numbers = new Map(sweepParts.map(({ name }, k) => [name, k]));
  return sweepParts.map((row) => (row.touches === undefined ? partIn(row) : { ...partIn(row), touches: numbers.get(row.touches) ?? -1 }));
}

interface Sweep {
  readonly pairs: readonly PairSweep[];
  readonly states: number;
}

/**
 * The result, its words, tables, cautions and picture all ask for the same sweep, and a reader types one cell at a time.
 * So the last answer is kept, and of the next one only the pairs are looked for of which a part has changed or what
 * moves it. Compared by value: a list may be changed in place.
 */
let kept: { readonly error: number; readonly stamps: readonly string[]; readonly pairs: ReadonlyMap<number, PairSweep>; readonly answer: Sweep | Refusal } | undefined;

const slot = (a: number, b: number): number => a * 1000 + b;

export function sweepFound(v: SweepValues): Sweep | Refusal {
  const [parts, motions] = [partsIn(v), motionsIn(v)];
  const stamps = parts.map(({ rides: on, start, end, radius, touches }, k) => [v.sweepParts[k]?.name, on, start.x, start.y, start.z, end.x, end.y, end.z, radius, touches, ...feels(on, motions)].join());
  const before = kept;
  const same = stamps.map((stamp, k) => stamp === before?.stamps[k]);
  if (before?.error === v.positionError && same.length === before.stamps.length && same.every(Boolean)) return before.answer;
  const known = (a: number, b: number): PairSweep | undefined => (same[a] && same[b] ? before?.pairs.get(slot(a, b)) : undefined);
  const found = clearanceSweep({ parts, motions, measurementError: v.positionError, known });
  const answer = isImpossible(found) ? noSweep(v, found) : found;
  const pairs = new Map(isImpossible(found) ? [] : found.pairs.map((pair) => [slot(pair.a, pair.b), pair] as const));
  kept = { error: v.positionError, stamps, pairs, answer };
  return answer;
}

/** The pairs of values that are known to compute, the closest first. */
export function pairsSwept(v: SweepValues): readonly PairSweep[] {
  const found = sweepFound(v);
  if ('refused' in found) throw new RangeError('sweep: expected values that compute lets pass, found a refusal');
  return found.pairs;
}

/**
 * The gap of the worst pair in trucks measured a little differently, every pair held where it came nearest. Left out are
 * pairs farther apart by more than three of both their errors, and 6 mm for what lines and movements may be off besides.
 */
export function heldSweep(v: SweepValues): (x: SweepValues) => { readonly sweepGap: number } {
  const [first, ...others] = pairsSwept(v) as [PairSweep, ...PairSweep[]];
  const pairs = [first, ...others.filter(({ gap, gapError }) => gap - 3 * gapError < first.gap + 3 * first.gapError + stop)];
  const was = motionsIn(v);
  return (x) => {
    const motions = motionsIn(x);
    const line = shaftLine(motions);
    let [sweepGap, least] = [Infinity, Infinity];
    for (const { a, b, state, gapError } of pairs) {
      const gap = heldGap({ A: partIn(x.sweepParts[a] as PartRow), B: partIn(x.sweepParts[b] as PartRow), motions, line, was, state });
      if (gap - 2 * gapError < least) [sweepGap, least] = [gap, gap - 2 * gapError];
    }
    return { sweepGap };
  };
}

function noSweep(v: SweepValues, { impossible, by = 0 }: Impossible): Refusal {
  const row = v.sweepParts[by];
  const crossed = (end: string) => (say: Say) => `The ${end} ride height lifted lies ${say(by, 'length')} below the one aired out. Exchange them, or check their signs: + is up from drive height.`;
  const words: Readonly<Record<string, (say: Say) => string>> = {
    'too-few-parts': () => 'Two parts at least are needed: a gap lies between two.',
    'no-such-part': () => `“${row?.name}” is meant to touch “${row?.touches}”, and no part of that name is in the list.`,
    'touches-itself': () => `“${row?.name}” is said to touch itself. Name the part that it is joined to, or leave the cell empty.`,
    'nothing-to-compare': () => 'Every two of these parts are meant to touch, so no gap is left to look for. Add a part, or empty one of those cells.',
    'steering-points-coincide': (say) => `The column joint and the box joint stand ${say(by, 'length')} apart. The steering turns about the line through them, so they must be two places, ${say(10 * mm, 'length')} apart at the least.`,
    'heights-crossed-front': crossed('front'),
    'heights-crossed-rear': crossed('rear'),
  };
  return { refused: words[impossible] ?? (() => 'These parts and movements cannot be swept together.') };
}

export const nameOf = (v: SweepValues, k: number): string => v.sweepParts[k]?.name ?? '';
export const pairWords = (v: SweepValues, { a, b }: PairSweep): string => `${nameOf(v, a)} and ${nameOf(v, b)}`;
export const isHot = (v: SweepValues, { a, b }: PairSweep): boolean => v.sweepParts[a]?.on === 'engine' || v.sweepParts[b]?.on === 'engine';

export const tooNear = ({ gapLessError }: PairSweep): boolean => gapLessError < stop;
export const toWatch = ({ gapLessError }: PairSweep): boolean => gapLessError >= stop && gapLessError < watch;
/** Of two parts of the engine none rolls against the other. */
export const nearEngine = (v: SweepValues, pair: PairSweep): boolean => isHot(v, pair) && v.sweepParts[pair.a]?.on !== v.sweepParts[pair.b]?.on && pair.gapLessError < hot;

const atHeight = (end: string, at: number, aired: number, lifted: number, say: Say): string => {
  if (at === 0) return `${end} at drive height`;
  if (Math.abs(at - aired) < 0.1 * mm) return `${end} aired out`;
  return Math.abs(at - lifted) < 0.1 * mm ? `${end} lifted` : `${end} ${say(Math.abs(at), 'length')} ${at > 0 ? 'above' : 'below'} drive height`;
};

/** What has to move, and how far, for this gap to come about: 'steering at 120°, pedal down'. */
export function stateWords(v: SweepValues, { state, dependsOn }: PairSweep, say: Say): string {
  if (dependsOn.length === 0) return 'always the same';
  const on = (name: PairSweep['dependsOn'][number]): boolean => dependsOn.includes(name);
  const shift = [
    on('up') && Math.abs(state.up) > 0.1 * mm ? `${say(Math.abs(state.up), 'length', 2)} ${state.up > 0 ? 'up' : 'down'}` : '',
    on('sideways') && Math.abs(state.sideways) > 0.1 * mm ? `${say(Math.abs(state.sideways), 'length', 2)} ${state.sideways > 0 ? 'left' : 'right'}` : '',
    on('foreAft') && Math.abs(state.foreAft) > 0.1 * mm ? `${say(Math.abs(state.foreAft), 'length', 2)} ${state.foreAft > 0 ? 'forward' : 'back'}` : '',
  ].filter(Boolean);
  const turn = ((state.steering % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  const down = v.pedalSwing === 0 ? 0 : state.pedal / v.pedalSwing;
  return [
    on('roll') && (Math.abs(state.roll) < 0.05 * deg ? 'engine still' : `engine rolled ${say(Math.abs(state.roll), 'angle', 2)}, ${state.roll > 0 ? 'left' : 'right'} side up`),
    on('steering') && (turn < 0.5 * deg || turn > 359.5 * deg ? 'steering straight' : `steering at ${say(turn, 'angle')}`),
    on('pedal') && (down < 0.005 ? 'pedal up' : down > 0.995 ? 'pedal down' : `pedal ${say(down, 'share', 2)} down`),
    shift.length > 0 && `body ${shift.join(' and ')}`,
    on('frontHeight') && atHeight('front', state.frontHeight, v.airedOutFront, v.liftedFront, say),
    on('rearHeight') && atHeight('rear', state.rearHeight, v.airedOutRear, v.liftedRear, say),
  ].filter((words) => words !== false).join(', ') || 'body at rest';
}

/** Where along a part. */
export const placeWords = (part: number, say: Say): string => (part < 0.005 ? 'start' : part > 0.995 ? 'end' : say(part, 'share', 2));
