import { isImpossible } from '../../engine/outcome.ts';
import type { Impossible } from '../../engine/outcome.ts';
import type { ShaftLine } from '../../engine/shaftLine.ts';
import { slipLeft } from '../../engine/shaftSlip.ts';
import { deg, inch, mm } from '../../units/si.ts';
import { lineCautions } from '../helpers/shaft-cautions.ts';
import { lineEquations } from '../helpers/shaft-equations.ts';
import { boxPoint, directions, jointsOf, middlePoint, solveLine } from '../helpers/shaft-line.ts';
import type { LineKeys } from '../helpers/shaft-line.ts';
import { defineCalculator } from '../record.ts';
import type { Refusal, Say, ValuesOf } from '../record.ts';
import { shaftScene } from '../scenes/shaft.ts';
import type { DrawnLine } from '../scenes/shaft.ts';

type V = ValuesOf<LineKeys>;
const where = { upper: 'column joint', middle: 'middle joint', lower: 'box joint' } as const;

function solved(v: V) {
  const r = solveLine(v);
  if ('refused' in r) throw new RangeError('shaft line: expected numbers that compute lets pass, found a refusal');
  return r;
}
const bends = (line: ShaftLine) => ({ upper: line.upperAngle, middle: line.middleAngle, lower: line.lowerAngle });
const present = (v: V) => ({ one: ['lower'], two: ['upper', 'lower'], three: ['upper', 'middle', 'lower'] } as const)[v.shaftJoints];

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

const drawn = (v: V, column: DrawnLine['column'], line: ShaftLine, say: Say): DrawnLine => ({
  column, box: { at: boxPoint(v), axis: line.axes[line.axes.length - 1] as DrawnLine['box']['axis'] },
  joints: present(v).map((name) => ({ at: name === 'upper' ? column.at : name === 'middle' ? middlePoint(v) : boxPoint(v), label: say(bends(line)[name], 'angle') })),
});

export default defineCalculator({
  id: 'shaft-line',
  version: 1,
  title: 'Steering shaft line',
  purpose: 'How far each joint of the steering shaft bends, how long the shaft is, and how much of its collapse the drop has eaten.',
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
  summary: (v, say) => {
    const names = present(v).map((name) => `${say({ upper: v.upperJointAngle, middle: v.middleJointAngle, lower: v.lowerJointAngle }[name], 'angle')} at the ${where[name]}`);
    const change = v.shaftLengthBefore - v.shaftLengthAfter;
    return `After the drop the shaft is ${say(Math.abs(change), 'length')} ${change >= 0 ? 'shorter' : 'longer'}, and ${say(v.collapseAfter, 'length')} of its collapse is left. It bends ${names.join(', ')}.`;
  },
  equations: lineEquations,
  cautions: lineCautions,
  picture: {
    title: 'The shaft’s line, to scale',
    describe: (v, say, at) => {
      const list = present(v).map((name) => `${where[name]} ${say({ upper: v.upperJointAngle, middle: v.middleJointAngle, lower: v.lowerJointAngle }[name], 'angle')}`).join(', ');
      return `${at === 0 ? 'From the truck’s left side' : 'From above, the truck’s left side down'}, front on the left. Thin: the column. Heavy: the box’s input. Between them the shaft, ${say(v.shaftLengthAfter, 'length')} from cross to cross, with a dot at each joint and its true bend: ${list}. No single view shows a bend in its true size. Dashed: before the drop.`;
    },
    states: { label: 'Seen', names: ['from the side', 'from above'] },
    scene: (v, at, say) => {
      const { before, after, ends } = solved(v);
      return shaftScene({
        view: at === 0 ? 'side' : 'above', now: drawn(v, ends.after, after, say), old: drawn(v, ends.before, before, say), length: say(v.shaftLengthAfter, 'length'),
        bearing: v.shaftJoints === 'three' && v.supportBearing === 'fitted' ? middlePoint(v) : undefined, title: at === 0 ? 'from the left side' : 'from above, left side down',
      });
    },
  },
  tables: [{
    caption: 'Before and after the drop',
    head: ['', 'Before', 'After'],
    rows: (v, say) => {
      const { before, after } = solved(v);
      const row = (name: string, of: (line: ShaftLine) => number, dimension: 'angle' | 'length') => [name, say(of(before), dimension), say(of(after), dimension)];
      return [
        ...present(v).map((name) => row(where[name], (line) => bends(line)[name], 'angle')),
        row('shaft, cross to cross', (line) => line.upperLength, 'length'),
        ['slides together by', say(v.slipIn, 'length'), say(v.collapseAfter, 'length')],
        ...(v.shaftJoints === 'one' ? [] : [row('turn between bends', (line) => line.upperTwist, 'angle')]),
        row('column’s line passes the box by', (line) => line.miss, 'length'),
      ];
    },
  }],
  paper: {
    assumptions: [
      'Column and box keep their places on a rigid body and a rigid frame. Stations and heights count from marks on the frame, before the drop. Type 0 for the drops if you measure after it.', 'Angles are zeroed on the rail, not on the floor.',
      'The sliding part lies between the column joint and the next one. The middle joint is on the frame.', 'The column’s end moves on its mounts within a ball: every direction is as bad as the worst.',
    ],
    leftOut: ['Strength, wear, free play and crash behavior.', 'Collapse inside the column itself: what this computes is the shaft’s.', 'A joint with two crosses in one housing.', 'What the ears sweep, and what is in the way: the clearance calculator.', 'Rocking of the cab, engine-mounted boxes, box brackets that flex.'],
    sources: [
      { of: 'directions, bends, lengths, slide', kind: 'derived', note: 'checked against an independent geometry library' },
      { of: 'stop over 30°, watch over 20°, bearing with three joints', kind: 'common practice' }, { of: 'collapse of 40 to 50 mm, overlap of twice the shaft', kind: 'common practice' },
      { of: 'axes', kind: 'published', id: 'iso-8855', note: 'x forward, y left, z up; slopes are counted + falling forward here' },
    ],
    examples: [
      {
        source: 'Worked by hand: column and box level, box 400 mm ahead and 300 mm below: a 3-4-5 triangle, 36.87° at both joints, brought to 28.07° by dropping the column 86.67 mm',
        inputs: {
          shaftJoints: 'two', columnEndX: 0, columnEndY: 0, columnEndZ: 0.3, columnFall: 0, columnPlan: 0, boxInputX: 0.4, boxInputY: 0, boxInputZ: 0, boxFall: 0, boxPlan: 0, bodyDropFront: 86.6666667 * mm, bodyDropRear: 86.6666667 * mm, jointLimit: 40 * deg,
        },
        results: { shaftLengthBefore: { value: 0.5, within: 1e-9 }, shaftLengthAfter: { value: 0.4533, within: 1e-3 }, upperJointAngle: { value: 28.07 * deg, within: 1e-3 }, lowerJointAngle: { value: 28.07 * deg, within: 1e-3 }, collapseAfter: { value: 3.25 * inch - 46.66 * mm, within: 0.01 } },
      },
      {
        source: 'Worked by hand: read 40° in side view at 20° of plan is 38.26° along the shaft',
        inputs: { angleReading: 'side', columnFall: 40 * deg, columnPlan: 20 * deg },
        results: { columnSlope: { value: 38.2556 * deg, within: 1e-5 } },
      },
    ],
    related: ['shaft-ripple', 'shaft-bearing', 'clearance', 'body-drop', 'steering-shaft'],
  },
});
