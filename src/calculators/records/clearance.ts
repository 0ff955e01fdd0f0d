import { capsuleGap } from '../../engine/capsule.ts';
import type { Point } from '../../engine/capsule.ts';
import { inch, mm } from '../../units/si.ts';
import { defineCalculator } from '../record.ts';
import type { Say, Values, ValuesOf } from '../record.ts';
import { clearanceScene } from '../scenes/clearance.ts';

type First = 'firstStartX' | 'firstStartY' | 'firstStartZ' | 'firstEndX' | 'firstEndY' | 'firstEndZ' | 'firstRadius';
type Second = 'secondStartX' | 'secondStartY' | 'secondStartZ' | 'secondEndX' | 'secondEndY' | 'secondEndZ' | 'secondRadius';
type V = ValuesOf<First | Second | 'positionError'>;

/** Common practice, no source: below the first stop, below the second watch. */
const stop = 6 * mm;
const watch = 12 * mm;
/** Common practice, no source: what an engine or exhaust pipe wants around it at rest. */
const hot = 25 * mm;

const ends = (v: V) => ({
  a1: { x: v.firstStartX, y: v.firstStartY, z: v.firstStartZ }, a2: { x: v.firstEndX, y: v.firstEndY, z: v.firstEndZ },
  b1: { x: v.secondStartX, y: v.secondStartY, z: v.secondStartZ }, b2: { x: v.secondEndX, y: v.secondEndY, z: v.secondEndZ },
});
const solve = (v: V) => capsuleGap({ ...ends(v), radiusA: v.firstRadius, radiusB: v.secondRadius, measurementError: v.positionError });

const xyz = (p: Point): readonly [number, number, number] => [p.x, p.y, p.z];
const nearestAt = (part: number, say: Say): string => (part === 0 ? 'at its start' : part === 1 ? 'at its end' : `${say(part, 'share')} of the way along`);
const atEnds = (part: number): boolean => part === 0 || part === 1;

type Part = 'first' | 'second';
const axes = ['X', 'Y', 'Z'] as const;
const lengthOf = (v: Values, part: Part): number => Math.hypot(...axes.map((axis) => Number(v[`${part}End${axis}`]) - Number(v[`${part}Start${axis}`])));
/** The foot of the square line dropped on one part from the nearest place of the other, kept between the ends. */
function foot(on: Part, from: Part): string {
  const along = axes.map((axis) => `(${on}End${axis} - ${on}Start${axis}) * (${from}Start${axis} + ${from}Fraction * (${from}End${axis} - ${from}Start${axis}) - ${on}Start${axis})`);
  return `min(1, max(0, (${along.join(' + ')}) / (${axes.map((axis) => `(${on}End${axis} - ${on}Start${axis})^2`).join(' + ')})))`;
}

/** How far the nearest places of one part and the other are apart in one direction. */
const apart = (axis: 'X' | 'Y' | 'Z'): string => `(firstStart${axis} + firstFraction * (firstEnd${axis} - firstStart${axis}) - secondStart${axis} - secondFraction * (secondEnd${axis} - secondStart${axis}))^2`;

export default defineCalculator({
  id: 'clearance',
  version: 1,
  title: 'Clearance between two round parts',
  purpose: 'How close two straight round parts come, where, and what is left when the tape has been wrong.',
  inputs: [
    { title: 'First part (a shaft)', of: ['firstStartX', 'firstStartY', 'firstStartZ', 'firstEndX', 'firstEndY', 'firstEndZ', 'firstRadius'] },
    { title: 'Second part (an exhaust pipe)', of: ['secondStartX', 'secondStartY', 'secondStartZ', 'secondEndX', 'secondEndY', 'secondEndZ', 'secondRadius'] },
    { title: 'Tape', of: ['positionError'] },
  ],
  outputs: ['leastGap', 'leastGapLessError', 'gapError', 'axisDistance', 'firstFraction', 'secondFraction'],
  compute: (v) => {
    const r = solve(v);
    return { leastGap: r.gap, leastGapLessError: r.gapLessError, gapError: r.gapError, axisDistance: r.distance, firstFraction: r.s, secondFraction: r.t };
  },
  howSure: {
    draws: 4000,
    errorOf: { positionError: ['firstStartX', 'firstStartY', 'firstStartZ', 'firstEndX', 'firstEndY', 'firstEndZ', 'secondStartX', 'secondStartY', 'secondStartZ', 'secondEndX', 'secondEndY', 'secondEndZ'] },
  },
  summary: (v, say) => (v.leastGap < 0
    ? `The two parts would overlap by ${say(-v.leastGap, 'length')}: they cannot both be there.`
    : `The least gap is ${say(v.leastGap, 'length')}, on the first part ${nearestAt(v.firstFraction, say)}, on the second ${nearestAt(v.secondFraction, say)}. Less twice the measuring error ${v.leastGapLessError > 0 ? `${say(v.leastGapLessError, 'length')} is left` : 'nothing is left'}.`),
  equations: [
    {
      result: 'axisDistance', expression: `sqrt(${apart('X')} + ${apart('Y')} + ${apart('Z')})`, words: 'From one center line to the other, at the two places where they come nearest.', source: 'derived: distance in space',
      found: 'The two places are those that make this least: tried between the ends of both parts and at all four ends.',
    },
    ...(['first', 'second'] as const).map((part) => ({
      result: `${part}Fraction` as const, expression: foot(part, part === 'first' ? 'second' : 'first'), words: `Nearest means square: a line from the other part’s nearest place meets the ${part} part at a right angle, unless an end comes first.`, source: 'derived',
      found: 'Both places are found together; each one meets this condition.', when: (v: Values) => lengthOf(v, part) > 0,
    })),
    { result: 'leastGap', expression: 'axisDistance - firstRadius - secondRadius', words: 'Center line to center line, less both radii.', source: 'derived' },
    { result: 'gapError', expression: 'positionError * sqrt((1 - firstFraction)^2 + firstFraction^2 + (1 - secondFraction)^2 + secondFraction^2)', words: 'A misplaced end moves the nearest place by its part of the way. Four ends, each wrong on its own.', source: 'derived: errors taken as independent' },
    { result: 'leastGapLessError', expression: 'leastGap - 2 * gapError', words: 'Pay the tape twice over before you spend the rest on movement.', source: 'derived; twice is common practice' },
  ],
  cautions: [
    {
      id: 'at-rest-only', level: 'danger',
      words: 'This is one pose of a truck that stands still. Engine roll, body mounts, ride height, steering lock and a turning joint are not in it, and a steering shaft or brake line that rubs in one of them jams or is cut through.',
      todo: 'Type in the worst poses one after the other. Then look at the real thing: clay at the spot, lock to lock, at all three heights. Load the engine both ways only after the brakes have passed their standing tests, tires on the ground and chocked, as under engine roll in the guide. If anything touches, do not drive.',
    },
    {
      id: 'overlap', level: 'danger', when: (v) => v.leastGap < 0,
      words: (v, say) => `The parts overlap by ${say(-v.leastGap, 'length')}. Either a coordinate is wrong, or they meet.`,
      todo: 'Tape the distance between the two parts directly and compare. Do not build to these numbers.',
      fires: { secondRadius: 4 * inch }, silent: {},
    },
    {
      id: 'stop', level: 'danger', when: (v) => v.leastGap >= 0 && v.leastGapLessError < stop,
      words: (v, say) => `${v.leastGapLessError > 0 ? `Only ${say(v.leastGapLessError, 'length')} is left` : `Nothing is left of ${say(v.leastGap, 'length')}`} once the tape is paid, under ${say(stop, 'length')} (common practice, no source). On the road these two touch.`,
      todo: 'Stop. Move one of the parts, or measure better and compute again. For steering and brakes let someone licensed look before it moves.',
      fires: { secondRadius: 2.3 * inch }, silent: { secondRadius: 0.2 * inch },
    },
    {
      id: 'watch', level: 'warning', when: (v) => v.leastGapLessError >= stop && v.leastGapLessError < watch,
      words: (v, say) => `${say(v.leastGapLessError, 'length')} is left: enough for nothing but a part that never moves against the other.`,
      todo: `At least 1/2 in (12 mm) to anything fixed, 1 in (25 mm) to engine and exhaust rolled as far as they go (common practice, no source).`,
      fires: { secondRadius: 2 * inch }, silent: { secondRadius: 0.2 * inch },
    },
    {
      id: 'engine-or-exhaust', level: 'caution', when: (v) => v.leastGapLessError >= watch && v.leastGapLessError < hot,
      words: (v, say) => `${say(v.leastGapLessError, 'length')} is left. That does for two parts that keep still, not for an engine, which rolls on its mounts, nor for an exhaust, which swings and cooks hoses, boots and fluid.`,
      todo: 'If one of the two is engine or exhaust, keep 1 in (25 mm) with it rolled as far as it goes, more beside hoses and fluid (common practice, no source).',
      fires: { secondRadius: 1.5 * inch }, silent: { secondRadius: 2.3 * inch },
    },
    {
      id: 'nearest-at-end', level: 'notice', when: (v) => atEnds(v.firstFraction) || atEnds(v.secondFraction),
      words: (v) => `The nearest place is at an end of ${atEnds(v.firstFraction) && atEnds(v.secondFraction) ? 'both parts' : atEnds(v.firstFraction) ? 'the first part' : 'the second part'}. If the real part goes on past it, or ends in a joint or flange, the least gap may be farther along and smaller.`,
      todo: 'Measure a point farther along, or add the next piece as a part of its own.',
      fires: { firstEndX: -11.6 * inch, firstEndY: 15.2 * inch, firstEndZ: 14.6 * inch }, silent: {},
    },
    {
      id: 'perfect-tape', level: 'notice', when: (v) => v.positionError < 1 * mm,
      words: (v, say) => `A measuring error of ${say(v.positionError, 'length')} is better than a tape under a truck can do.`,
      todo: 'Measure one point on three days; half the spread is your error.',
      fires: { positionError: 0 }, silent: {},
    },
  ],
  picture: {
    title: 'Both parts from the side and from above',
    describe: (v, say) => `Two views to one scale, front on the left. The first part, heavy line, and the second, thin line, with their center lines dashed. A red line joins the nearest places: on the first part ${nearestAt(v.firstFraction, say)}, on the second ${nearestAt(v.secondFraction, say)}. ${v.leastGap < 0 ? `They overlap by ${say(-v.leastGap, 'length')}.` : `The gap there is ${say(v.leastGap, 'length')}.`} In one view alone parts can seem to cross that pass clear of each other.`,
    scene: (v, _at, say) => {
      const { a1, a2, b1, b2 } = ends(v);
      const { onA, onB } = solve(v);
      return clearanceScene({
        first: { start: xyz(a1), end: xyz(a2), radius: v.firstRadius }, second: { start: xyz(b1), end: xyz(b2), radius: v.secondRadius },
        near: [xyz(onA), xyz(onB)], label: v.leastGap < 0 ? 'overlap' : say(v.leastGap, 'length'),
      });
    },
  },
  tables: [{
    caption: 'The nearest places, on the center lines',
    head: ['', 'Forward', 'Left', 'Up', 'Along'],
    rows: (v, say) => {
      const { onA, onB } = solve(v);
      const row = (name: string, p: Point, along: string, digits = 3) => [name, ...[p.x, p.y, p.z].map((at) => say(at, 'length', digits)), along];
      return [
        row('first', onA, say(v.firstFraction, 'share', 2)), row('second', onB, say(v.secondFraction, 'share', 2)),
        row('apart', { x: onB.x - onA.x, y: onB.y - onA.y, z: onB.z - onA.z }, '–', 2),
      ];
    },
  }],
  paper: {
    assumptions: ['Both parts are straight and round, with round ends. A joint is a part with the radius its ears sweep.', 'All ends are measured from the same marks on the frame, in the same state of the truck.', 'The four ends are wrong independently, each by the same error in any direction.'],
    leftOut: [
      'Movement: engine roll, mounts, ride heights, steering, pedal travel. Take one pose after the other and keep the least, or sweep a list of parts through all of it.', 'Bent parts: split them into straight pieces.',
      'Flat ends: the round end reaches farther by the radius, which is the safe side.', 'Errors of the radii, and heat: an exhaust needs air around it as well as room.',
    ],
    sources: [
      { of: 'least distance of two straight pieces', kind: 'derived', note: 'checked against brute force and an independent library' },
      { of: 'stop under 6 mm, watch under 12 mm, twice the error', kind: 'common practice' },
      { of: 'axes: x forward, y left, z up', kind: 'published', id: 'iso-8855' },
    ],
    examples: [
      {
        source: 'Brute force and an independent geometry library: two pieces in space, 15.651394495590 apart, radii 4 and 5, in millimeters',
        inputs: {
          firstStartX: 27.83 * mm, firstStartY: 31.74 * mm, firstStartZ: -26.6 * mm, firstEndX: 13.43 * mm, firstEndY: 21.77 * mm, firstEndZ: 46.81 * mm, firstRadius: 4 * mm,
          secondStartX: 77.54 * mm, secondStartY: 7.53 * mm, secondStartZ: 6.22 * mm, secondEndX: 26.99 * mm, secondEndY: 12.39 * mm, secondEndZ: 11.18 * mm, secondRadius: 5 * mm, positionError: 0,
        },
        results: { axisDistance: { value: 15.65139449559 * mm, within: 1e-9 }, leastGap: { value: 6.65139449559 * mm, within: 1e-9 } },
      },
      {
        source: 'Worked by hand: two parts square to each other, 100 mm apart at their middles, radii 10 and 20 mm, error 3 mm: 70 mm less twice 3 mm',
        inputs: {
          firstStartX: -0.2, firstStartY: 0, firstStartZ: 0, firstEndX: 0.2, firstEndY: 0, firstEndZ: 0, firstRadius: 10 * mm,
          secondStartX: 0, secondStartY: -0.3, secondStartZ: 0.1, secondEndX: 0, secondEndY: 0.3, secondEndZ: 0.1, secondRadius: 20 * mm, positionError: 3 * mm,
        },
        results: { leastGap: { value: 70 * mm, within: 1e-9 }, leastGapLessError: { value: 64 * mm, within: 1e-9 }, firstFraction: { value: 0.5, within: 1e-9 } },
      },
    ],
    related: ['body-drop-clearance', 'clearance-sweep', 'body-drop'],
  },
});
