import { dropPitch, movePoint, pairChange } from '../../engine/bodyDrop.ts';
import type { Attached, DropMotion, DropType } from '../../engine/bodyDrop.ts';
import { isImpossible } from '../../engine/outcome.ts';
import type { Refusal, ValuesOf } from '../record.ts';

export type DropInputs =
  | 'bodyDropType' | 'bodyDropFront' | 'bodyDropRear' | 'cabFrontStation' | 'cabRearStation' | 'suspensionDropFront' | 'suspensionDropRear' | 'wheelbase' | 'frameMarkHeight'
  | 'airedOutFront' | 'airedOutRear' | 'liftedFront' | 'liftedRear' | 'bodyPointStation' | 'bodyPointHeight' | 'framePointStation' | 'framePointHeight';
export type DropValues = ValuesOf<DropInputs>;
/** What moves the truck, without the points. */
export type MotionValues = Omit<DropValues, 'bodyPointStation' | 'bodyPointHeight' | 'framePointStation' | 'framePointHeight'>;

/** How the truck stands. Aired out and lifted are counted from the new drive height. */
export const stands = ['before', 'drive height', 'aired out', 'lifted'] as const;
export type Stand = (typeof stands)[number];

export const dropType = (v: MotionValues): DropType => (v.bodyDropType === 'stock' ? 'stock-floor' : 'channeled');

const lowered = (v: MotionValues, stand: Stand): { suspensionFront: number; suspensionRear: number } => {
  const [f, r] = [v.suspensionDropFront, v.suspensionDropRear];
  if (stand === 'before') return { suspensionFront: 0, suspensionRear: 0 };
  if (stand === 'aired out') return { suspensionFront: f - v.airedOutFront, suspensionRear: r - v.airedOutRear };
  if (stand === 'lifted') return { suspensionFront: f - v.liftedFront, suspensionRear: r - v.liftedRear };
  return { suspensionFront: f, suspensionRear: r };
};

/** Stations count from the front axle line, heights from the level line through the frame mark. */
export function motionOf(v: MotionValues, stand: Stand): DropMotion {
  const before = stand === 'before';
  return {
    type: dropType(v), dropFront: before ? 0 : v.bodyDropFront, dropRear: before ? 0 : v.bodyDropRear, xFront: v.cabFrontStation, xRear: v.cabRearStation,
    ...lowered(v, stand), xFrontAxle: 0, xRearAxle: -v.wheelbase,
  };
}

/** What keeps these numbers from being a truck, or undefined. */
export function noSuchDrop(v: MotionValues): Refusal | undefined {
  const span = Math.abs(v.cabFrontStation - v.cabRearStation);
  if (span < 1e-3) return { refused: () => 'The front and the rear cab mount stand at the same place fore and aft. Two different places are needed to see the cab’s rake.' };
  const body = Math.abs(v.bodyDropRear - v.bodyDropFront) - span;
  if (body > 0) return { refused: (say) => `The two body drops differ by ${say(body, 'length')} more than the cab mounts are apart. No rigid cab does that: check the drops and the stations.` };
  for (const stand of stands) {
    const { suspensionFront, suspensionRear } = lowered(v, stand);
    const frame = Math.abs(suspensionRear - suspensionFront) - v.wheelbase;
    if (frame > 0) return { refused: (say) => `At “${stand}” the frame’s ends differ in height by ${say(frame, 'length')} more than the wheelbase. Check the suspension drops and ride heights.` };
  }
  return undefined;
}

/** Both points of a pair, y left out: a side view. Throws where `noSuchDrop` would have refused. */
export function pairOf(v: DropValues, a: { x: number; z: number; on: Attached }, b: { x: number; z: number; on: Attached }) {
  const r = pairChange({ ...motionOf(v, 'drive height'), a: { x: a.x, y: 0, z: a.z, attached: a.on }, b: { x: b.x, y: 0, z: b.z, attached: b.on } });
  if (isImpossible(r)) throw new RangeError(`drop: expected numbers that noSuchDrop lets pass, found ${r.impossible}`);
  return r;
}

export const readersPair = (v: DropValues) => pairOf(v, { x: v.framePointStation, z: v.framePointHeight, on: 'frame' }, { x: v.bodyPointStation, z: v.bodyPointHeight, on: 'body' });

/** A point in frame axes and above the road. */
export function pointAt(v: MotionValues, stand: Stand, point: { x: number; z: number; on: Attached }): { x: number; z: number; overRoad: number } {
  const r = movePoint({ ...motionOf(v, stand), point: { x: point.x, y: 0, z: point.z, attached: point.on } });
  if (isImpossible(r)) throw new RangeError(`drop: expected numbers that noSuchDrop lets pass, found ${r.impossible}`);
  return { x: r.x, z: r.z, overRoad: v.frameMarkHeight + point.z + r.heightChange };
}

export function pitchesAt(v: MotionValues, stand: Stand): { pitch: number; framePitch: number } {
  const r = dropPitch(motionOf(v, stand));
  if (isImpossible(r)) throw new RangeError(`drop: expected numbers that noSuchDrop lets pass, found ${r.impossible}`);
  return r;
}
