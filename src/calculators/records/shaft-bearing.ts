import type { Point } from '../../engine/capsule.ts';
import { chainRipple, leastRipple } from '../../engine/clocking.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { bestBearing } from '../../engine/shaftBearing.ts';
import { axisAngles } from '../../engine/shaftAxis.ts';
import { shaftLine } from '../../engine/shaftLine.ts';
import type { ShaftLine } from '../../engine/shaftLine.ts';
import { deg, inch } from '../../units/si.ts';
import { endEquations } from '../helpers/shaft-equations.ts';
import { shaftEnds, stopAngle, watchAngle } from '../helpers/shaft-line.ts';
import type { EndKeys } from '../helpers/shaft-line.ts';
import { defineCalculator } from '../record.ts';
import type { ValuesOf } from '../record.ts';
import { shaftScene } from '../scenes/shaft.ts';

type Keys =
  | EndKeys | 'boxInputX' | 'boxInputY' | 'boxInputZ' | 'jointLength' | 'jointLimit'
  | 'bearingX' | 'bearingY' | 'bearingZ' | 'bearingRearmost' | 'bearingForemost' | 'bearingRightmost' | 'bearingLeftmost' | 'bearingLowest' | 'bearingHighest';
type V = ValuesOf<Keys>;

/** Throws where compute refuses first. */
function ends(v: V) {
  const solved = shaftEnds(v);
  if ('refused' in solved) throw new RangeError('bearing: expected numbers that compute lets pass, found a refusal');
  return { column: solved.after, box: { at: { x: v.boxInputX, y: v.boxInputY, z: v.boxInputZ }, axis: solved.boxAxis }, jointLength: v.jointLength };
}
/** Two limits typed the wrong way around mean the same space. */
const region = (v: V): readonly [Point, Point] => {
  const [x, y, z] = ([[v.bearingRearmost, v.bearingForemost], [v.bearingRightmost, v.bearingLeftmost], [v.bearingLowest, v.bearingHighest]] as const).map((pair) => [Math.min(...pair), Math.max(...pair)]) as [[number, number], [number, number], [number, number]];
  return [{ x: x[0], y: y[0], z: z[0] }, { x: x[1], y: y[1], z: z[1] }];
};
const yours = (v: V): Point => ({ x: v.bearingX, y: v.bearingY, z: v.bearingZ });
const lineThrough = (v: V, middle: Point) => shaftLine({ ...ends(v), joints: 3, middle });
const bends = (line: ShaftLine) => [line.upperAngle, line.middleAngle, line.lowerAngle] as const;

const best = { x: 'bestBearingX', y: 'bestBearingY', z: 'bestBearingZ' } as const;
const runUp = [`${best.x} - columnEndXAfter`, `${best.y} - columnEndY`, `${best.z} - columnEndZAfter`];
const runDown = [`boxInputX - ${best.x}`, `boxInputY - ${best.y}`, `boxInputZ - ${best.z}`];
const size = (run: readonly string[]): string => `sqrt(${run.map((part) => `(${part})^2`).join(' + ')})`;
const onAxis = (run: readonly string[], slope: string, plan: string): string => `(cos(${slope}) * cos(${plan}) * (${run[0]}) + cos(${slope}) * sin(${plan}) * (${run[1]}) - sin(${slope}) * (${run[2]}))`;
const search = 'derived; the place is found by search';

export default defineCalculator({
  id: 'shaft-bearing',
  version: 1,
  oneWay: true,
  title: 'Middle joint: the best place for its bearing',
  purpose: 'Where, inside the space you can bolt a support bearing in, the middle joint of a three-joint shaft bends all three joints least.',
  inputs: [
    { title: 'Where it can go', of: ['bearingRearmost', 'bearingForemost', 'bearingRightmost', 'bearingLeftmost', 'bearingLowest', 'bearingHighest'] },
    { title: 'Your place, to compare', of: ['bearingX', 'bearingY', 'bearingZ'] },
    { title: 'Joint', of: ['jointLength', 'jointLimit'] },
    { title: 'Column, before the drop', of: ['angleReading', 'columnEndX', 'columnEndY', 'columnEndZ', 'columnFall', 'columnPlan'] },
    { title: 'Steering box', of: ['boxInputX', 'boxInputY', 'boxInputZ', 'boxFall', 'boxPlan'] },
    { title: 'Drop', of: ['bodyDropFront', 'bodyDropRear', 'cabFrontStation', 'cabRearStation'] },
  ],
  outputs: ['bestLargestAngle', 'bestBearingX', 'bestBearingY', 'bestBearingZ', 'bestUpperAngle', 'bestMiddleAngle', 'bestLowerAngle', 'bestUpperLength', 'bestLowerLength', 'columnEndXAfter', 'columnEndZAfter', 'columnSlopeAfter', 'columnPlanAfter', 'columnSlope', 'boxSlope', 'bodyPitch'],
  compute: (v) => {
    const solved = shaftEnds(v);
    if ('refused' in solved) return solved;
    const [low, high] = region(v);
    const found = bestBearing({ ...ends(v), low, high });
    if (isImpossible(found)) return { refused: (say) => `Nowhere in this space is there room for a shaft: even at the best place one is ${say(found.by ?? 0, 'length')} shorter than its joints. Move the space away from the column joint and the box joint.` };
    if (found.largest > v.jointLimit) return { refused: (say) => `Even at the best place in this space a joint bends ${say(found.largest, 'angle')}, ${say(found.largest - v.jointLimit, 'angle', 2)} more than it is rated for. A wider space, or another place for column or box.` };
    const { line, at } = found;
    const column = axisAngles({ axis: solved.after.axis });
    return {
      bestLargestAngle: found.largest, bestBearingX: at.x, bestBearingY: at.y, bestBearingZ: at.z, bestUpperAngle: line.upperAngle, bestMiddleAngle: line.middleAngle, bestLowerAngle: line.lowerAngle,
      bestUpperLength: line.upperLength, bestLowerLength: line.lowerLength, columnEndXAfter: solved.after.at.x, columnEndZAfter: solved.after.at.z, columnSlopeAfter: column.slope, columnPlanAfter: column.plan,
      columnSlope: solved.columnSlope, boxSlope: solved.boxSlope, bodyPitch: solved.pitch,
    };
  },
  howSure: { draws: 500 },
  summary: (v, say) => {
    const own = lineThrough(v, yours(v));
    return `With the middle joint ${say(Math.abs(v.bestBearingX), 'length')} ${v.bestBearingX >= 0 ? 'ahead of' : 'behind'} the mark, ${say(v.bestBearingY, 'length')} left of the center line and ${say(v.bestBearingZ, 'length')} up, no joint bends more than ${say(v.bestLargestAngle, 'angle')}. ${isImpossible(own) ? 'Your own place leaves a shaft shorter than its joints.' : `At your own place the largest bend is ${say(Math.max(...bends(own)), 'angle')}.`}`;
  },
  equations: [
    {
      result: 'bestLargestAngle', expression: 'max(bestUpperAngle, bestMiddleAngle, bestLowerAngle)', words: 'The joint that bends most decides.', source: search,
      found: 'The place is the one in your space that makes this least. It has one valley only: what can still be best is cut in half again and again, on the side the slope points to.',
    },
    ...endEquations,
    { result: 'bestUpperLength', expression: size(runUp), words: 'From the column joint to the middle joint.', source: 'derived' },
    { result: 'bestLowerLength', expression: size(runDown), words: 'From the middle joint to the box joint.', source: 'derived' },
    { result: 'bestUpperAngle', expression: `acos(${onAxis(runUp, 'columnSlopeAfter', 'columnPlanAfter')} / bestUpperLength)`, words: 'How much of the upper shaft lies along the column.', source: 'derived: scalar product', when: (v) => Number(v.bestUpperAngle) > 1e-3 },
    { result: 'bestMiddleAngle', expression: `acos((${runUp.map((part, k) => `(${part}) * (${runDown[k]})`).join(' + ')}) / (bestUpperLength * bestLowerLength))`, words: 'How much of the lower shaft lies along the upper one.', source: 'derived: scalar product', when: (v) => Number(v.bestMiddleAngle) > 1e-3 },
    { result: 'bestLowerAngle', expression: `acos(${onAxis(runDown, 'boxSlope', 'boxPlan')} / bestLowerLength)`, words: 'How much of the lower shaft lies along the box’s input.', source: 'derived: scalar product', when: (v) => Number(v.bestLowerAngle) > 1e-3 },
  ],
  cautions: [
    {
      id: 'bearing-must-hold', level: 'danger',
      words: 'The bearing is part of the steering. If its bracket bends, cracks or comes loose, the middle joint moves when you turn the wheel and the wheels do not, or not by as much.',
      todo: 'Bracket on the frame, bolted through with locked nuts, stiff enough that no hand moves it. It must not stop the upper shaft from sliding together in a crash: the collars and the slide stay clear of it. Have it approved with the rest of the steering by someone licensed for it.',
    },
    {
      id: 'look-for-yourself', level: 'warning',
      words: 'This space is empty only as far as you measured it. Engine roll, a header or a joint’s ears can fill it.',
      todo: 'Put both shafts into the clearance calculator with the exhaust and the engine rolled toward them. Tie up a cardboard tube in the place and turn the wheels from lock to lock at all three heights.',
    },
    {
      id: 'still-steep', level: 'danger', when: (v) => v.bestLargestAngle > stopAngle,
      words: (v, say) => `Even the best place bends a joint ${say(v.bestLargestAngle, 'angle')}, over ${say(stopAngle, 'angle')} (common practice, no source).`,
      todo: 'Stop. Another joint, or another place for the box or the column’s end, decided with someone licensed for steering work.',
      fires: { boxPlan: 76 * deg, boxFall: 30 * deg, jointLimit: 50 * deg }, silent: {},
    },
    {
      id: 'still-watch', level: 'caution', when: (v) => v.bestLargestAngle > watchAngle && v.bestLargestAngle <= stopAngle,
      words: (v, say) => `The best place still bends a joint ${say(v.bestLargestAngle, 'angle')}, over ${say(watchAngle, 'angle')} (common practice, no source).`,
      todo: 'With three bends this close to equal the ripple can be clocked away. Do so, and prove it with two paper dials.',
      fires: { boxPlan: 48 * deg }, silent: {},
    },
    {
      id: 'at-the-edge', level: 'notice', when: (v) => v.bestLargestAngle > 5 * deg && region(v).some((corner) => Math.abs(corner.x - v.bestBearingX) < 1e-4 || Math.abs(corner.y - v.bestBearingY) < 1e-4 || Math.abs(corner.z - v.bestBearingZ) < 1e-4),
      words: 'The best place is at the edge of your space. It would bend less a little outside.',
      todo: 'Look whether the space can grow that way.',
      fires: { bearingLowest: 14 * inch }, silent: { bearingRearmost: -15 * inch, bearingForemost: -1 * inch, bearingRightmost: 10 * inch, bearingLeftmost: 20 * inch, bearingLowest: 5 * inch, bearingHighest: 20 * inch },
    },
  ],
  picture: {
    title: 'The best line through your space, to scale',
    describe: (v, say, at) => `${at === 0 ? 'From the truck’s left side' : 'From above, the truck’s left side down'}, front on the left. The dashed box is the space you gave, the small square the bearing at the best place. The shaft goes through it with bends of ${say(v.bestUpperAngle, 'angle')}, ${say(v.bestMiddleAngle, 'angle')} and ${say(v.bestLowerAngle, 'angle')} from the column down. Dashed line: through your own place.`,
    states: { label: 'Seen', names: ['from the side', 'from above'] },
    scene: (v, at, say) => {
      const { column, box } = ends(v);
      const middle = { x: v.bestBearingX, y: v.bestBearingY, z: v.bestBearingZ };
      const joints = [column.at, middle, box.at].map((place, k) => ({ at: place, label: say([v.bestUpperAngle, v.bestMiddleAngle, v.bestLowerAngle][k] as number, 'angle') }));
      return shaftScene({
        view: at === 0 ? 'side' : 'above', now: { column, box, joints }, old: { column, box, joints: [{ at: yours(v), label: '' }] }, region: region(v), bearing: middle, length: '', title: at === 0 ? 'from the left side' : 'from above, left side down',
      });
    },
  },
  tables: [{
    caption: 'Your place and the best one',
    head: ['', 'Yours', 'Best'],
    rows: (v, say) => {
      const [own, found] = [lineThrough(v, yours(v)), lineThrough(v, { x: v.bestBearingX, y: v.bestBearingY, z: v.bestBearingZ })];
      const cell = (line: typeof own, of: (line: ShaftLine) => number, dimension: 'angle' | 'share'): string => (isImpossible(line) ? '–' : say(of(line), dimension, dimension === 'share' ? 2 : 3));
      const inLine = (line: ShaftLine): number => chainRipple({ bends: bends(line), errors: [-line.upperTwist, -line.lowerTwist] }).ripple;
      const row = (name: string, of: (line: ShaftLine) => number, dimension: 'angle' | 'share' = 'angle') => [name, cell(own, of, dimension), cell(found, of, dimension)];
      return [
        row('column joint', (line) => line.upperAngle), row('middle joint', (line) => line.middleAngle), row('box joint', (line) => line.lowerAngle),
        ...(isImpossible(own) || Math.max(...bends(own)) < 89 * deg ? [row('ripple, forks in line, ±', inLine, 'share'), row('ripple, best clocking, ±', (line) => leastRipple({ bends: bends(line) }).ripple, 'share')] : []),
      ];
    },
  }],
  paper: {
    assumptions: ['The bearing holds the middle joint’s cross where it is found. In truth it sits on one of the shafts, as close to the joint as it goes.', 'The space is a box along the truck’s axes.', 'The column as measured before the drop and moved by it; the space after the drop; both from marks on the frame.'],
    leftOut: ['What is in the way inside the space.', 'Room for the slide: keep the upper shaft long enough for it.', 'Strength of bracket and bearing.', 'The ripple: with three joints and two clockings it can be canceled at nearly every place, so it does not choose one.'],
    sources: [
      { of: 'the place that makes the largest bend least', kind: 'derived', note: 'checked against thousands of random places' },
      { of: 'stop over 30°, watch over 20°, a bearing with three joints', kind: 'common practice' },
    ],
    examples: [
      {
        source: 'Worked by hand: a level column and a box falling at 70° share the bend equally in a space that is wide enough, 23.33° each',
        inputs: {
          columnEndX: 0, columnEndY: 0, columnEndZ: 0.3, columnFall: 0, columnPlan: 0, boxInputX: 0.4, boxInputY: 0, boxInputZ: 0, boxFall: 70 * deg, boxPlan: 0, bodyDropFront: 0, bodyDropRear: 0,
          bearingRearmost: 0, bearingForemost: 0.4, bearingRightmost: -0.2, bearingLeftmost: 0.2, bearingLowest: -0.05, bearingHighest: 0.4,
        },
        results: { bestLargestAngle: { value: (70 / 3) * deg, within: 1e-4 } },
      },
    ],
    related: ['shaft-line', 'shaft-ripple', 'clearance', 'steering-shaft'],
  },
});
