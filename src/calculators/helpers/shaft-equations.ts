import { defineEquations } from '../record.ts';
import type { Equation, Values } from '../record.ts';

const joints = (...names: string[]) => (v: Values): boolean => names.includes(String(v.shaftJoints));
/** With one joint the shaft is the column's own and lies as the column does. */
const between = joints('two', 'three');

type Direction = readonly [slope: string, plan: string];
const column: Direction = ['columnSlopeAfter', 'columnPlanAfter'];
const upper: Direction = ['shaftSlope', 'shaftPlan'];
const lower: Direction = ['lowerShaftSlope', 'lowerShaftPlan'];
const box: Direction = ['boxSlope', 'boxPlan'];

const ends = { o: ['columnEndX', 'columnEndY', 'columnEndZ'], c: ['columnEndXAfter', 'columnEndY', 'columnEndZAfter'], m: ['bearingX', 'bearingY', 'bearingZ'], b: ['boxInputX', 'boxInputY', 'boxInputZ'] } as const;
type End = keyof typeof ends;
const distance = (from: End, to: End): string => `sqrt(${ends[from].map((a, k) => `(${ends[to][k]} - ${a})^2`).join(' + ')})`;
const fall = (from: End, to: End, size: string): string => `asin((${ends[from][2]} - ${ends[to][2]}) / ${size})`;
const sideways = (from: End, to: End): string => `atan((${ends[to][1]} - ${ends[from][1]}) / (${ends[to][0]} - ${ends[from][0]}))`;
const runsForward = (from: End, to: End, names: (v: Values) => boolean) => (v: Values): boolean => names(v) && Number(v[ends[to][0]]) > Number(v[ends[from][0]]);

const offsets = ends.c.map((a, k) => `${ends.b[k]} - ${a}`);

/** Cosine rule on the sphere: slopes are latitudes, angles seen from above longitudes. */
const bend = ([e1, p1]: Direction, [e2, p2]: Direction): string => `acos(sin(${e1}) * sin(${e2}) + cos(${e1}) * cos(${e2}) * cos(${p1} - ${p2}))`;
/** Where a direction points, seen down the shaft: from straight down, clockwise, so toward the left is +. */
const toward = ([e, p]: Direction, [es, ps]: Direction): string => `atan(cos(${e}) * sin(${p} - ${ps}) / (sin(${e}) * cos(${es}) - cos(${e}) * sin(${es}) * cos(${p} - ${ps})))`;
const twist = (before: Direction, shaft: Direction, after: Direction): string => `atan(tan(${toward(after, shaft)} - ${toward(before, shaft)}))`;

const sphere = 'derived: cosine rule on the sphere of directions';
const seenDown = 'The plane of each bend, seen down the shaft as an angle from straight down; the turn is the difference.';
const bent = (v: Values): boolean => Number(v.upperJointAngle) > 1e-3 && Number(v.lowerJointAngle) > 1e-3;
const bentThree = (v: Values): boolean => bent(v) && Number(v.middleJointAngle) > 1e-3;

/** Column and box: where they are and point after the drop. */
export const endEquations: readonly Equation[] = defineEquations([
  { result: 'bodyPitch', expression: 'asin((bodyDropRear - bodyDropFront) / (cabFrontStation - cabRearStation))', words: 'If one cab mount comes down more than the other, the column turns with the cab.', source: 'derived: rigid cab' },
  { result: 'columnEndXAfter', expression: 'cabFrontStation + (columnEndX - cabFrontStation) * cos(bodyPitch) - columnEndZ * sin(bodyPitch)', words: 'Fore and aft the column’s end moves only if the cab is raked.', source: 'derived: plane motion of a rigid body' },
  { result: 'columnEndZAfter', expression: '(columnEndX - cabFrontStation) * sin(bodyPitch) + columnEndZ * cos(bodyPitch) - bodyDropFront', words: 'Down it comes with the body. The box stays.', source: 'derived: plane motion of a rigid body' },
  { result: 'columnSlope', expression: 'columnFall', words: 'A finder laid along the column reads its slope.', source: 'derived', when: (v) => v.angleReading === 'along' },
  { result: 'columnSlope', expression: 'atan(tan(columnFall) * cos(columnPlan))', words: 'A side view shows the shadow of the column, which is steeper than the column if it also runs sideways.', source: 'derived: projection', when: (v) => v.angleReading === 'side' },
  { result: 'boxSlope', expression: 'boxFall', words: 'The same at the box.', source: 'derived', when: (v) => v.angleReading === 'along' },
  { result: 'boxSlope', expression: 'atan(tan(boxFall) * cos(boxPlan))', words: 'The same at the box.', source: 'derived: projection', when: (v) => v.angleReading === 'side' },
  { result: 'columnSlopeAfter', expression: 'asin(sin(columnSlope) * cos(bodyPitch) - cos(columnSlope) * cos(columnPlan) * sin(bodyPitch))', words: 'A cab that goes nose up takes its pitch off the column’s slope.', source: 'derived: plane motion of a rigid body' },
  { result: 'columnPlanAfter', expression: 'atan(cos(columnSlope) * sin(columnPlan) / (cos(columnSlope) * cos(columnPlan) * cos(bodyPitch) + sin(columnSlope) * sin(bodyPitch)))', words: 'Seen from above it changes only a hair.', source: 'derived: plane motion of a rigid body', when: (v) => Math.abs(Number(v.columnPlanAfter)) < 1.5 },
]);

export const lineEquations: readonly Equation[] = defineEquations([
  ...endEquations,
  { result: 'shaftLengthBefore', expression: distance('o', 'b'), words: 'From the cross at the column to the cross at the box, before. Tape it: it checks six readings at once.', source: 'derived', when: joints('one', 'two') },
  { result: 'shaftLengthBefore', expression: distance('o', 'm'), words: 'From the cross at the column, before, to the cross in the middle.', source: 'derived', when: joints('three') },
  { result: 'shaftLengthAfter', expression: distance('c', 'b'), words: 'From the cross at the column to the cross at the box.', source: 'derived', when: joints('one', 'two') },
  { result: 'shaftLengthAfter', expression: distance('c', 'm'), words: 'From the cross at the column to the cross in the middle: with three joints this piece does the sliding.', source: 'derived', when: joints('three') },
  { result: 'lowerShaftLength', expression: distance('m', 'b'), words: 'Middle and box are both on the frame, so the drop leaves this piece alone.', source: 'derived', when: joints('three') },
  { result: 'shaftSlope', expression: fall('c', 'b', 'shaftLengthAfter'), words: 'What an angle finder laid on the new shaft must read.', source: 'derived', when: joints('two') },
  { result: 'shaftPlan', expression: sideways('c', 'b'), words: 'What a string under it must show.', source: 'derived', when: runsForward('c', 'b', joints('two')) },
  { result: 'shaftSlope', expression: fall('c', 'm', 'shaftLengthAfter'), words: 'What an angle finder laid on the new shaft must read.', source: 'derived', when: joints('three') },
  { result: 'shaftPlan', expression: sideways('c', 'm'), words: 'What a string under it must show.', source: 'derived', when: runsForward('c', 'm', joints('three')) },
  { result: 'lowerShaftSlope', expression: fall('m', 'b', 'lowerShaftLength'), words: 'The same for the lower piece.', source: 'derived', when: joints('three') },
  { result: 'lowerShaftPlan', expression: sideways('m', 'b'), words: 'The same for the lower piece.', source: 'derived', when: runsForward('m', 'b', joints('three')) },
  { result: 'upperJointAngle', expression: bend(column, upper), words: 'The angle between two directions, from their slopes and their angles seen from above.', source: sphere, when: between },
  { result: 'middleJointAngle', expression: bend(upper, lower), words: 'The same at the middle joint.', source: sphere, when: joints('three') },
  { result: 'lowerJointAngle', expression: bend(column, box), words: 'One joint takes the whole angle between column and box.', source: sphere, when: joints('one') },
  { result: 'lowerJointAngle', expression: bend(upper, box), words: 'The same at the box.', source: sphere, when: joints('two') },
  { result: 'lowerJointAngle', expression: bend(lower, box), words: 'The same at the box.', source: sphere, when: joints('three') },
  { result: 'axisMiss', expression: `sqrt(${offsets.map((d) => `(${d})^2`).join(' + ')} - (${offsets.map((d, k) => `(${d}) * ${['cos(columnSlopeAfter) * cos(columnPlanAfter)', 'cos(columnSlopeAfter) * sin(columnPlanAfter)', '-sin(columnSlopeAfter)'][k]}`).join(' + ')})^2)`, words: 'The distance from column joint to box joint, less what of it lies along the column. One joint cannot take it up.', source: 'derived: right triangle', when: (v) => Number(v.axisMiss) > 1e-4 },
  { result: 'largestJointAngle', expression: 'max(upperJointAngle, middleJointAngle, lowerJointAngle)', words: 'The joint that decides.', source: 'derived' },
  { result: 'bendFromMounts', expression: 'asin(mountMovement / shaftLengthAfter)', words: 'On its mounts the column’s end moves in a small ball. The shaft to a ball leans over by no more than this.', source: 'derived' },
  { result: 'bendTwistUpper', expression: twist(column, upper, box), words: seenDown, source: 'derived: sphere of directions', when: (v) => v.shaftJoints === 'two' && bent(v) },
  { result: 'bendTwistUpper', expression: twist(column, upper, lower), words: seenDown, source: 'derived: sphere of directions', when: (v) => v.shaftJoints === 'three' && bentThree(v) },
  { result: 'bendTwistLower', expression: twist(upper, lower, box), words: seenDown, source: 'derived: sphere of directions', when: (v) => v.shaftJoints === 'three' && bentThree(v) },
  { result: 'collapseAfter', expression: 'slipIn - (shaftLengthBefore - shaftLengthAfter)', words: 'The drop slides the shaft into itself. What it uses up, a crash cannot.', source: 'derived' },
  { result: 'collapseLeast', expression: 'collapseAfter - mountMovement', words: 'The body on its mounts takes its share along the shaft at worst. In a crash that is the way it goes first: forward.', source: 'derived' },
  { result: 'overlapLeast', expression: 'slipOverlap + (shaftLengthBefore - shaftLengthAfter) - mountMovement', words: 'What slides in on one side holds on the other.', source: 'derived' },
]);
