import { dropPitch, movePoint } from '../../engine/bodyDrop.ts';
import type { Point } from '../../engine/capsule.ts';
import type { Impossible } from '../../engine/outcome.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { axisAngles, pitchedAxis, shaftAxis } from '../../engine/shaftAxis.ts';
import { shaftLine } from '../../engine/shaftLine.ts';
import type { ShaftLine } from '../../engine/shaftLine.ts';
import { inch } from '../../units/si.ts';
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
    refused: (say) => (by >= v.jointLength
      ? `${when} the drop the ${which} are at one and the same point. They must be at least the length of one joint apart, ${say(v.jointLength, 'length')}.`
      : `${when} the drop the ${which} stand ${say(v.jointLength - by, 'length')} apart. Half of each joint lies between, so the shaft is ${say(by, 'length')} shorter than its joints.`),
  };
}

/** The angles to read on a piece of shaft: along the column for a single joint. */
export const directions = (line: ShaftLine): { slope: number; plan: number }[] => line.axes.map((axis) => axisAngles({ axis }));

/** Where the column's end and the two directions are after the drop. */
export const shaftEndsFeed = defineFeed({
  id: 'shaft-line',
  title: 'Steering shaft line',
  inputs: [
    { title: 'Column, before the drop', of: ['columnEndX', 'columnEndY', 'columnEndZ', 'columnFall', 'columnPlan'] },
    { title: 'Box', of: ['boxFall', 'boxPlan', 'angleReading'] },
    { title: 'Drop', of: ['bodyDropFront', 'bodyDropRear', 'cabFrontStation', 'cabRearStation'] },
  ],
  outputs: ['columnEndXAfter', 'columnEndZAfter', 'columnSlopeAfter', 'columnPlanAfter', 'boxSlope'],
  compute: (v) => {
    const ends = shaftEnds(v);
    if ('refused' in ends) return ends;
    const { slope, plan } = axisAngles({ axis: ends.after.axis });
    return { columnEndXAfter: ends.after.at.x, columnEndZAfter: ends.after.at.z, columnSlopeAfter: slope, columnPlanAfter: plan, boxSlope: ends.boxSlope };
  },
});

/** The bends after the drop, for what only turns. */
export const shaftBendsFeed = defineFeed({
  id: 'shaft-line',
  title: 'Steering shaft line',
  inputs: [
    { title: 'Shaft', of: ['shaftJoints', 'jointLength'] },
    { title: 'Column, before the drop', of: ['columnEndX', 'columnEndY', 'columnEndZ', 'columnFall', 'columnPlan', 'angleReading'] },
    { title: 'Steering box', of: ['boxInputX', 'boxInputY', 'boxInputZ', 'boxFall', 'boxPlan'] },
    { title: 'Middle joint', of: ['bearingX', 'bearingY', 'bearingZ'] },
    { title: 'Drop', of: ['bodyDropFront', 'bodyDropRear', 'cabFrontStation', 'cabRearStation'] },
  ],
  outputs: ['upperJointAngle', 'middleJointAngle', 'lowerJointAngle', 'bendTwistUpper', 'bendTwistLower'],
  compute: (v) => {
    const r = solveLine(v);
    if ('refused' in r) return r;
    return { upperJointAngle: r.after.upperAngle, middleJointAngle: r.after.middleAngle, lowerJointAngle: r.after.lowerAngle, bendTwistUpper: r.after.upperTwist, bendTwistLower: r.after.lowerTwist };
  },
});
