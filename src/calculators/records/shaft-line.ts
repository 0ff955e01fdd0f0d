import type { ShaftLine } from '../../engine/shaftLine.ts';
import { deg, inch, mm } from '../../units/si.ts';
import { lineCautions } from '../helpers/shaft-cautions.ts';
import { lineEquations } from '../helpers/shaft-equations.ts';
import { bends, boxPoint, middlePoint, shaftLineFeed, solveLine, where } from '../helpers/shaft-line.ts';
import type { LineKeys } from '../helpers/shaft-line.ts';
import { defineCalculator } from '../record.ts';
import type { Say, ValuesOf } from '../record.ts';
import { shaftScene } from '../scenes/shaft.ts';
import type { DrawnLine } from '../scenes/shaft.ts';

type V = ValuesOf<LineKeys>;

function solved(v: V) {
  const r = solveLine(v);
  if ('refused' in r) throw new RangeError('shaft line: expected numbers that compute lets pass, found a refusal');
  return r;
}
const present = (v: V) => ({ one: ['lower'], two: ['upper', 'lower'], three: ['upper', 'middle', 'lower'] } as const)[v.shaftJoints];

const drawn = (v: V, column: DrawnLine['column'], line: ShaftLine, say: Say): DrawnLine => ({
  column, box: { at: boxPoint(v), axis: line.axes[line.axes.length - 1] as DrawnLine['box']['axis'] },
  joints: present(v).map((name) => ({ at: name === 'upper' ? column.at : name === 'middle' ? middlePoint(v) : boxPoint(v), label: say(bends(line)[name], 'angle') })),
});

export default defineCalculator({
  ...shaftLineFeed,
  version: 1,
  purpose: 'How far each joint of the steering shaft bends, how long the shaft is, and how much of its collapse the drop has eaten.',
  howSure: { draws: 4000 },
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
