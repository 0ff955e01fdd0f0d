import { dropPitch, movePoint } from '../../engine/bodyDrop.ts';
import type { Point } from '../../engine/capsule.ts';
import type { Impossible } from '../../engine/outcome.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { axisAngles, pitchedAxis, shaftAxis } from '../../engine/shaftAxis.ts';
import { shaftLine } from '../../engine/shaftLine.ts';
import type { ShaftLine } from '../../engine/shaftLine.ts';
import { slipLeft } from '../../engine/shaftSlip.ts';
import { deg, inch, mm } from '../../units/si.ts';
import { defineFeed } from '../record.ts';
import type { Refusal, ValuesOf } from '../record.ts';

export type EndKeys =
  | 'angleReading' | 'columnEndX' | 'columnEndY' | 'columnEndZ' | 'columnFall' | 'columnPlan' | 'boxFall' | 'boxPlan' | 'bodyDropFront' | 'bodyDropRear' | 'cabFrontStation' | 'cabRearStation';
export type LineKeys = EndKeys | 'shaftJoints' | 'boxInputX' | 'boxInputY' | 'boxInputZ' | 'bearingX' | 'bearingY' | 'bearingZ' | 'jointLength';
type Ends = ValuesOf<EndKeys>;
type Line = ValuesOf<LineKeys>;

/** No tape or angle finder is this far wrong: beyond it a single joint cannot be put together. */
export const greatestMiss = 1 * inch;

export interface ShaftEnd {
  readonly at: Point;
  readonly axis: Point;
}

/** The column's end and the box's direction, before and after the drop. */
export function shaftEnds(v: Ends): { before: ShaftEnd; after: ShaftEnd; columnSlope: number; boxAxis: Point; boxSlope: number; pitch: number } | Refusal {
  const drop = { type: 'channeled', dropFront: v.bodyDropFront, dropRear: v.bodyDropRear, xFront: v.cabFrontStation, xRear: v.cabRearStation, suspensionFront: 0, suspensionRear: 0, xFrontAxle: 0, xRearAxle: -1 } as const;
  if (Math.abs(v.cabFrontStation - v.cabRearStation) < 1e-3) return { refused: () => 'The front and the rear cab mount stand at the same place fore and aft. Two different places are needed to see the cab’s rake.' };
  const at = { x: v.columnEndX, y: v.columnEndY, z: v.columnEndZ };
  const moved = movePoint({ ...drop, point: { ...at, attached: 'body' } });
  const turn = dropPitch(drop);
  if (isImpossible(moved) || isImpossible(turn)) {
    const by = (isImpossible(moved) ? moved.by : 0) ?? 0;
    return { refused: (say) => `The two body drops differ by ${say(by, 'length')} more than the cab mounts are apart. No rigid cab does that: check the drops and the stations.` };
  }
  const column = shaftAxis({ reading: v.angleReading, fall: v.columnFall, plan: v.columnPlan });
  const box = shaftAxis({ reading: v.angleReading, fall: v.boxFall, plan: v.boxPlan });
  return {
    before: { at, axis: column.axis }, after: { at: { x: moved.x, y: moved.y, z: moved.z }, axis: pitchedAxis({ axis: column.axis, pitch: turn.pitch }).axis },
    columnSlope: column.slope, boxAxis: box.axis, boxSlope: box.slope, pitch: turn.pitch,
  };
}

export const jointsOf = (v: { readonly shaftJoints: 'one' | 'two' | 'three' }): 1 | 2 | 3 => ({ one: 1, two: 2, three: 3 } as const)[v.shaftJoints];
export const boxPoint = (v: Line): Point => ({ x: v.boxInputX, y: v.boxInputY, z: v.boxInputZ });
export const middlePoint = (v: Line): Point => ({ x: v.bearingX, y: v.bearingY, z: v.bearingZ });

/** The whole line before and after the drop. */
export function solveLine(v: Line) {
  const ends = shaftEnds(v);
  if ('refused' in ends) return ends;
  const of = (column: ShaftEnd): ShaftLine | Impossible => shaftLine({ column, box: { at: boxPoint(v), axis: ends.boxAxis }, joints: jointsOf(v), middle: middlePoint(v), jointLength: v.jointLength });
  const [before, after] = [of(ends.before), of(ends.after)];
  if (isImpossible(after)) return tooShort(v, after, 'After');
  if (isImpossible(before)) return tooShort(v, before, 'Before');
  if (v.shaftJoints === 'one' && after.miss > greatestMiss) {
    return { refused: (say) => `One joint needs the column’s center line to meet the box joint. It passes by ${say(after.miss, 'length')}, ${say(after.miss - greatestMiss, 'length')} more than tape and angle finder can be wrong. Two joints take up an offset.` } satisfies Refusal;
  }
  return { ends, before, after };
}

function tooShort(v: Line, { impossible, by = 0 }: Impossible, when: 'Before' | 'After'): Refusal {
  const which = impossible === 'lower-shaft-too-short' ? 'middle joint and the box joint' : v.shaftJoints === 'three' ? 'column joint and the middle joint' : 'column joint and the box joint';
  return {
    refused: (say) => (by > v.jointLength - 1e-6
      ? `${when} the drop the ${which} are at one and the same point. They must be at least the length of one joint apart, ${say(v.jointLength, 'length')}.`
      : `${when} the drop the ${which} stand ${say(v.jointLength - by, 'length')} apart. Half of each joint lies between, so the shaft is ${say(by, 'length')} shorter than its joints.`),
  };
}

/** The angles to read on a piece of shaft: along the column for a single joint. */
export const directions = (line: ShaftLine): { slope: number; plan: number }[] => line.axes.map((axis) => axisAngles({ axis }));

/** Common practice, no source. */
export const stopAngle = 30 * deg;
export const watchAngle = 20 * deg;
export const stopSlip = 40 * mm;
export const watchSlip = 50 * mm;
export const leastOverlap = 38 * mm; // twice a 3/4 in shaft

export type Shown = ValuesOf<
  LineKeys | 'supportBearing' | 'jointLimit' | 'slipIn' | 'slipOverlap' | 'mountMovement' | 'collapseAfter' | 'collapseLeast' | 'overlapLeast' | 'largestJointAngle' | 'bendFromMounts' | 'axisMiss' | 'shaftLengthBefore' | 'shaftLengthAfter'>;
export const noBearing = (v: Shown): boolean => v.shaftJoints === 'three' && v.supportBearing === 'none';
export const oneJointOffset = (v: Shown): boolean => v.shaftJoints === 'one' && v.axisMiss > 3 * mm;
export const bottoms = (v: Shown): boolean => v.collapseLeast <= 0;
export const collapseShort = (v: Shown): boolean => v.collapseAfter < stopSlip;
/** 50 mm at rest leaves 40 mm to a crash with mounts of 10 mm; with softer ones it does not. */
export const collapseNear = (v: Shown): boolean => v.collapseAfter >= stopSlip && (v.collapseAfter < watchSlip || v.collapseLeast < stopSlip);
export const overlapShort = (v: Shown): boolean => v.overlapLeast < leastOverlap;
export const longer = (v: Shown): boolean => v.shaftLengthAfter > v.shaftLengthBefore + 1 * mm;
export const jointSteep = (v: Shown): boolean => v.largestJointAngle > stopAngle;
export const limitOnMounts = (v: Shown): boolean => v.largestJointAngle + v.bendFromMounts > v.jointLimit;

export const bends = (line: ShaftLine) => ({ upper: line.upperAngle, middle: line.middleAngle, lower: line.lowerAngle });
export const where = { upper: 'column joint', middle: 'middle joint', lower: 'box joint' } as const;

function beyond(line: ShaftLine, limit: number): Refusal | undefined {
  const [name, most] = (Object.entries(bends(line)) as [keyof typeof where, number][]).reduce((a, b) => (b[1] > a[1] ? b : a));
  return most > limit ? { refused: (say) => `After the drop the ${where[name]} would bend ${say(most, 'angle')}, ${say(most - limit, 'angle', 2)} more than it is rated for. Check the angles’ signs; if they are right, this line cannot be built.` } : undefined;
}
const slipRefused = ({ impossible, by = 0 }: Impossible): Refusal => ({
  refused: (say) => ({
    'slip-bottoms': `The shaft would have to be ${say(by, 'length')} shorter than it can go. It would push on column and box before the body is down: a smaller drop, or a shaft with more slide.`,
    'slip-parts': `The shaft’s halves would come apart by ${say(by, 'length')}. Check the overlap and the points.`,
    'mount-exceeds-shaft': `The mounts would move the body ${say(by, 'length')} farther than the shaft is long. Check the mount movement.`,
  })[impossible] ?? 'This shaft cannot slide like that.',
});

export const shaftLineFeed = defineFeed({
  id: 'shaft-line',
  title: 'Steering shaft line',
  inputs: [
    { title: 'Shaft', of: ['shaftJoints', 'supportBearing', 'jointLength', 'jointLimit', 'slipIn', 'slipOverlap', 'mountMovement'] },
    { title: 'Column, before the drop', of: ['angleReading', 'columnEndX', 'columnEndY', 'columnEndZ', 'columnFall', 'columnPlan'] },
    { title: 'Steering box', of: ['boxInputX', 'boxInputY', 'boxInputZ', 'boxFall', 'boxPlan'] },
    { title: 'Middle joint, if there is one', of: ['bearingX', 'bearingY', 'bearingZ'] },
    { title: 'Drop', of: ['bodyDropFront', 'bodyDropRear', 'cabFrontStation', 'cabRearStation'] },
  ],
  outputs: [
    'collapseAfter', 'upperJointAngle', 'middleJointAngle', 'lowerJointAngle', 'shaftLengthAfter', 'shaftLengthBefore', 'collapseLeast', 'overlapLeast',
    'largestJointAngle', 'bendFromMounts', 'bendTwistUpper', 'bendTwistLower', 'lowerShaftLength', 'shaftSlope', 'shaftPlan', 'lowerShaftSlope', 'lowerShaftPlan', 'axisMiss',
    'columnSlope', 'boxSlope', 'columnSlopeAfter', 'columnPlanAfter', 'columnEndXAfter', 'columnEndZAfter', 'bodyPitch',
  ],
  alarms: [
    { caution: 'no-bearing', level: 'danger', when: noBearing, first: 'three joints have no support bearing.' },
    { caution: 'one-joint-offset', level: 'danger', when: oneJointOffset, first: 'one joint cannot take up the column’s offset.' },
    { caution: 'bottoms', level: 'danger', when: bottoms, first: 'on its mounts the body drives the shaft to the end of its slide.' },
    { caution: 'collapse-short', level: 'danger', when: collapseShort, first: 'too little collapse is left in the steering shaft.' },
    { caution: 'collapse-near', level: 'warning', when: collapseNear, first: 'little collapse is left in the steering shaft.' },
    { caution: 'overlap-short', level: 'danger', when: overlapShort, first: 'the halves of the shaft hold each other over too little.' },
    { caution: 'longer', level: 'warning', when: longer, first: 'the drop pulls the halves of the shaft apart.' },
    { caution: 'joint-steep', level: 'danger', when: jointSteep, first: 'a steering joint bends more than 30 degrees.' },
    { caution: 'joint-limit-on-mounts', level: 'danger', when: limitOnMounts, first: 'on its mounts the body bends a joint past its rating.' },
  ],
  compute: (v) => {
    const r = solveLine(v);
    if ('refused' in r) return r;
    const { before, after, ends } = r;
    const tooSteep = beyond(after, v.jointLimit);
    if (tooSteep) return tooSteep;
    const slip = slipLeft({ lengthBefore: before.upperLength, lengthAfter: after.upperLength, collapseBefore: v.slipIn, overlapBefore: v.slipOverlap, mountMovement: v.mountMovement });
    if (isImpossible(slip)) return slipRefused(slip);
    const ways = directions(after);
    const way = (k: number): { slope: number; plan: number } => ways[k] ?? { slope: 0, plan: 0 };
    const [column, upper, lower] = [way(0), way(jointsOf(v) === 1 ? 0 : 1), jointsOf(v) === 3 ? way(2) : { slope: 0, plan: 0 }];
    return {
      collapseAfter: slip.collapse, upperJointAngle: after.upperAngle, middleJointAngle: after.middleAngle, lowerJointAngle: after.lowerAngle,
      shaftLengthAfter: after.upperLength, shaftLengthBefore: before.upperLength, collapseLeast: slip.collapseLeast, overlapLeast: slip.overlapLeast,
      largestJointAngle: Math.max(after.upperAngle, after.middleAngle, after.lowerAngle), bendFromMounts: slip.bendMore, bendTwistUpper: after.upperTwist, bendTwistLower: after.lowerTwist,
      lowerShaftLength: after.lowerLength, shaftSlope: upper.slope, shaftPlan: upper.plan, lowerShaftSlope: lower.slope, lowerShaftPlan: lower.plan, axisMiss: after.miss,
      columnSlope: ends.columnSlope, boxSlope: ends.boxSlope, columnSlopeAfter: column.slope, columnPlanAfter: column.plan, columnEndXAfter: ends.after.at.x, columnEndZAfter: ends.after.at.z, bodyPitch: ends.pitch,
    };
  },
});
