import { inch, mm } from '../../units/si.ts';
import { pitchesAt } from '../helpers/body-drop-motion.ts';
import { dropPointCautions } from '../helpers/drop-pair-cautions.ts';
import { pairsTable, slackTable } from '../helpers/drop-pair-tables.ts';
import { bentTooTight, gapCloses, pairName, pairsFound, pairsOf, tooShort, unseen, worstOf } from '../helpers/drop-pairs.ts';
import { defineCalculator } from '../record.ts';
import { describePoints, dropPointsScene, pointStates } from '../scenes/drop-points.ts';

const count = <T>(list: readonly T[], holds: (one: T) => boolean): number => list.filter(holds).length;

export default defineCalculator({
  id: 'drop-points',
  version: 1,
  title: 'Points before and after the drop',
  purpose: 'Your own list of points on body, frame and axles, and what the drop does to everything that spans them: what gets shorter, closes, goes slack or is pulled tight.',
  inputs: [
    { title: 'Points, before the drop', of: ['truckPoints'] },
    { title: 'What spans them', of: ['pointPairs'] },
    { title: 'Drop', of: ['bodyDropType', 'bodyDropFront', 'bodyDropRear', 'cabFrontStation', 'cabRearStation'] },
    { title: 'Frame over the road', of: ['frameMarkHeight', 'suspensionDropFront', 'suspensionDropRear', 'wheelbase', 'airedOutFront', 'airedOutRear', 'liftedFront', 'liftedRear'] },
  ],
  outputs: ['worstShortening', 'worstBefore', 'worstAfter', 'pairsCloser', 'gapsClosed', 'partsTooShort', 'bendsTooTight', 'bodyPitch'],
  compute: (v) => {
    const found = pairsFound(v);
    if ('refused' in found) return found;
    const worst = worstOf(found);
    return {
      worstShortening: worst.loss, worstBefore: worst.before, worstAfter: worst.before - worst.loss,
      pairsCloser: count(found, ({ loss }) => loss > unseen), gapsClosed: count(found, gapCloses), partsTooShort: count(found, tooShort), bendsTooTight: count(found, bentTooTight),
      bodyPitch: pitchesAt(v, 'drive height').pitch,
    };
  },
  howSure: { draws: 500 },
  summary: (v, say) => {
    const found = pairsOf(v);
    const worst = worstOf(found);
    const total = found.length === 1 ? 'the only pair' : `${v.pairsCloser} of ${found.length} pairs`;
    return worst.loss <= unseen ? 'No pair comes closer in this drop, at any of the three heights.' : `From ${pairName(worst.pair)} goes most: ${say(worst.before, 'length')} before, ${say(worst.before - worst.loss, 'length')} after, at ${worst.least}. ${total[0]?.toUpperCase()}${total.slice(1)} ${found.length > 1 && v.pairsCloser !== 1 ? 'come' : 'comes'} closer.`;
  },
  equations: [
    { result: 'bodyPitch', expression: 'asin((bodyDropRear - bodyDropFront) / (cabFrontStation - cabRearStation))', words: 'If one mount comes down more than the other, the cab turns by the difference over the distance between them, and carries its points along.', source: 'derived: rigid cab' },
    { result: 'worstShortening', expression: 'worstBefore - worstAfter', words: 'What the drop takes from the pair that loses most.', found: 'Worked out for every pair at drive height, aired out and lifted: the distance is the long side of the box between the two points, √(x² + y² + z²), once with the points where they were and once where they are. For a gap it is what is left along the line that joined the two points at first, so that it can reach zero.', source: 'derived: plane motion of rigid bodies' },
  ],
  methods: [
    { result: 'gapsClosed', words: 'Each gap is compared, at the height where it is least, with the 3/8 in (10 mm) that rubber mounts move.', source: 'common practice, no source' },
    { result: 'partsTooShort', words: 'The slack is the part’s own length less the distance between its ends. Below zero it cannot reach.', source: 'derived' },
    { result: 'bendsTooTight', words: 'No curve of a given length between two ends bends more gently than the circular arc. Its radius R follows from sin u / u = distance / length and R = length / (2u), by halving an interval; below five outside diameters some place must bend tighter than that.', source: 'derived; five diameters are common practice, no source' },
  ],
  cautions: dropPointCautions,
  picture: {
    title: 'Your points, before and after',
    describe: describePoints,
    states: { label: 'The truck', names: pointStates, start: 1 },
    scene: dropPointsScene,
  },
  tables: [pairsTable, slackTable],
  paper: {
    assumptions: [
      'Cab and frame are rigid. A point rides with what you say it rides with.', 'All points are taken before the drop from one mark on the frame at the front axle line: x forward, y left of the truck’s center line, z up from a level line through the mark.',
      'Aired out and lifted are counted from the new drive height. Ride height moves axle points against the frame, never the body against the frame.', 'A gap is what is left along the line that joined its two points before the drop: put them where the parts face each other.',
    ],
    leftOut: [
      'Steering: a hose at a turned wheel is a point somewhere else. There is a calculator for it.', 'Left and right corners that drop differently; twist of the cab. The frame is not turned against axle points when front and rear suspension differ.',
      'Movement of the rubber mounts: allow 3/8 in (10 mm) either way.', 'The way a line really takes over its clips: one pair for each stretch. Fittings that point the wrong way bend it tighter than the arc here.', 'Size of what is at the points. The clearance calculator takes radii.',
    ],
    sources: [
      { of: 'rigid motion, slack, gentlest arc', kind: 'derived' },
      { of: 'the circular arc as the gentlest curve between two ends (Schur’s comparison theorem)', kind: 'from memory' },
      { of: 'movement of rubber mounts, five diameters of bend', kind: 'common practice' },
      { of: 'axes', kind: 'published', id: 'iso-8855', note: 'x forward, y left, z up' },
      { of: 'the points and pairs shown at first', kind: 'defined', note: 'invented, in content/demo-rows.json' },
    ],
    examples: [
      {
        source: 'Worked by hand: a body point 0.3 m behind and 0.4 m above a frame point, 75 mm drop: a 3-4-5 triangle becomes 0.3 by 0.325',
        inputs: {
          bodyDropFront: 75 * mm, bodyDropRear: 75 * mm,
          truckPoints: [{ name: 'a', on: 'body', x: -0.5, y: 0.2, z: 0.6 }, { name: 'b', on: 'frame', x: -0.2, y: 0.2, z: 0.2 }],
          pointPairs: [{ from: 'a', to: 'b', kind: 'shaft' }],
        },
        results: { worstBefore: { value: 0.5, within: 1e-9 }, worstAfter: { value: 0.4423, within: 1e-4 } },
      },
      {
        source: 'Worked by hand: a hose from the frame straight down 8 in to the rear axle, suspension 2 in lower: 6 in at drive height, 2 in aired out by 4 in more',
        inputs: {
          suspensionDropFront: 2 * inch, suspensionDropRear: 2 * inch, airedOutFront: -4 * inch, airedOutRear: -4 * inch,
          truckPoints: [{ name: 'top', on: 'frame', x: -2.6, y: 0, z: 0.3 }, { name: 'end', on: 'rearAxle', x: -2.6, y: 0, z: 0.3 - 8 * inch }],
          pointPairs: [{ from: 'top', to: 'end', kind: 'hose', length: 10 * inch }],
        },
        results: { worstBefore: { value: 8 * inch, within: 1e-9 }, worstAfter: { value: 2 * inch, within: 1e-9 }, partsTooShort: { value: 0, within: 1e-9 } },
      },
    ],
    related: ['every-state', 'body-drop-clearance', 'body-drop', 'hose-slack', 'clearance', 'cg-after-drop'],
  },
});
