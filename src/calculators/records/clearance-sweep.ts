import { deg, inch, mm } from '../../units/si.ts';
import { shaftLineFeed } from '../helpers/shaft-line.ts';
import { heldSweep, nameOf, nearEngine, pairsSwept, pairWords, placeWords, stateWords, sweepFound, toWatch, tooNear } from '../helpers/sweep.ts';
import { sweepCautions } from '../helpers/sweep-cautions.ts';
import { defineCalculator } from '../record.ts';
import { describeSweep, sweepScene, sweepViews } from '../scenes/sweep.ts';

const nothingMoves = { engineRoll: 0, mountMovement: 0, mountSideways: 0, mountForeAft: 0, pedalSwing: 0, airedOutFront: 0, liftedFront: 0, airedOutRear: 0, liftedRear: 0, positionError: 0 };

export default defineCalculator({
  id: 'clearance-sweep',
  version: 2,
  // The first version kept the body where it was, fore and aft.
  upgrade: { 1: (link) => new Map([['mount-fore-aft', '0in'], ...link]) },
  // The headline has paid the tape already; what the tape does is seen in the gap itself.
  howSure: { of: 'sweepGap', draws: 500, held: { words: 'With every pair held where it came nearest', compute: heldSweep }, errorOf: { positionError: ['sweepParts.x1', 'sweepParts.y1', 'sweepParts.z1', 'sweepParts.x2', 'sweepParts.y2', 'sweepParts.z2'] } },
  oneWay: true,
  title: 'Clearance through every movement',
  purpose: 'Your own list of parts, moved through every ride height, steering angle, pedal position, engine roll and mount movement at once: which two come closest, where, and in which state.',
  inputs: [
    { title: 'Parts, after the drop, at drive height', of: ['sweepParts'] },
    { title: 'Engine', of: ['engineRoll', 'rollLineSide', 'rollLineHeight'] },
    { title: 'Body on its mounts', of: ['mountMovement', 'mountSideways', 'mountForeAft'] },
    { title: 'Steering shaft, from joint to joint', of: ['columnEndXAfter', 'columnEndY', 'columnEndZAfter', 'boxInputX', 'boxInputY', 'boxInputZ'] },
    { title: 'Pedal', of: ['pivotStation', 'pivotHeight', 'pedalSwing'] },
    { title: 'Ride heights', of: ['airedOutFront', 'liftedFront', 'airedOutRear', 'liftedRear'] },
    { title: 'Tape', of: ['positionError'] },
  ],
  feeds: [shaftLineFeed],
  outputs: ['sweepLeast', 'sweepGap', 'sweepGapError', 'sweepFloor', 'pairsTooNear', 'pairsToWatch', 'pairsNearEngine', 'pairsSwept', 'statesSwept'],
  compute: (v) => {
    const found = sweepFound(v);
    if ('refused' in found) return found;
    const { pairs, states } = found;
    const worst = pairs[0] as (typeof pairs)[number];
    return {
      sweepLeast: worst.gapLessError, sweepGap: worst.gap, sweepGapError: worst.gapError, sweepFloor: worst.floor,
      pairsTooNear: pairs.filter(tooNear).length, pairsToWatch: pairs.filter(toWatch).length, pairsNearEngine: pairs.filter((pair) => nearEngine(v, pair)).length,
      pairsSwept: pairs.length, statesSwept: states,
    };
  },
  summary: (v, say) => {
    const worst = pairsSwept(v)[0] as ReturnType<typeof pairsSwept>[number];
    const when = stateWords(v, worst, say);
    const crossing = v.sweepGap + (v.sweepParts[worst.a]?.radius ?? 0) + (v.sweepParts[worst.b]?.radius ?? 0) < 1e-6;
    if (v.sweepGap < 0) return `${nameOf(v, worst.a)} and ${nameOf(v, worst.b)} meet (${when}): they overlap by ${say(-v.sweepGap, 'length')}${crossing ? ' or more, their center lines crossing' : ''}, and by ${say(-v.sweepLeast, 'length')} with twice the measuring error.`;
    return `The closest two are ${pairWords(v, worst)}: ${say(v.sweepGap, 'length')} apart, ${when}${worst.dependsOn.length === 0 ? ' whatever moves' : ''}. ${v.sweepLeast > 0 ? `With twice the measuring error taken off, ${say(v.sweepLeast, 'length')} is left` : 'With twice the measuring error taken off, nothing is left'}.`;
  },
  equations: [
    {
      result: 'sweepLeast', expression: 'sweepGap - 2 * sweepGapError', words: 'Pay the tape twice over, then see what is left.', source: 'derived; twice is common practice',
      found: 'Worked out for every pair; this is the least of them.',
    },
  ],
  methods: [
    { result: 'sweepGap', words: 'Each pair is tried at all places of what moves its two parts: 3 ride heights, 13 angles of the steering over a full turn, 11 places of the pedal, 5 angles of engine roll, 3 by 3 by 3 places on the mounts. Gap: distance between the center lines less both radii. From the closest state, and from other low ones, the search goes on between the steps by golden section, one movement after the other.', source: 'derived: rigid motion' },
    { result: 'sweepGapError', words: 'Each end of the two parts is wrong on its own by the measuring error; the nearest place has its part of the error of both ends.', source: 'derived: errors taken as independent' },
    { result: 'sweepFloor', words: 'Between two steps no point moves farther from the nearer one than its reach times half the step. So the least gap at the steps less those distances is a floor. It is gloomy: the search between the steps has found nothing below the gap shown. Where parts only shift straight, the search is exact and the floor is the gap.', source: 'derived' },
    { result: 'pairsTooNear', words: 'Pairs whose worst gap, less twice its error, is under 6 mm.', source: 'common practice, no source' },
    { result: 'pairsToWatch', words: 'Pairs from 6 mm to under 12 mm.', source: 'common practice, no source' },
    { result: 'pairsNearEngine', words: 'Pairs of which one rides with the engine and the other does not, under 25 mm.', source: 'common practice, no source' },
    { result: 'pairsSwept', words: 'Every two parts, but for those meant to touch and those that ride together and touch the same part.', source: 'defined' },
    { result: 'statesSwept', words: 'The numbers of places of all movements, multiplied. A pair is tried only in those that its own two parts can tell apart: the result is the same.', source: 'derived' },
  ],
  cautions: sweepCautions,
  picture: {
    title: 'The closest two, in their worst state',
    describe: describeSweep,
    states: { label: 'View', names: sweepViews, start: 0 },
    scene: sweepScene,
  },
  tables: [
    {
      caption: 'The twelve closest pairs, each in its own worst state',
      head: ['Parts', 'Left', 'Worst state'],
      rows: (v, say) => pairsSwept(v).slice(0, 12).map((pair) => [`${pairWords(v, pair)}${tooNear(pair) ? ': stop' : toWatch(pair) || nearEngine(v, pair) ? ': watch' : ''}`, { value: pair.gapLessError, dimension: 'length' }, stateWords(v, pair, say)]),
    },
    {
      caption: 'Their gaps before the error is taken off, and how far along each part they lie',
      head: ['Parts', 'Gap', 'On the first', 'On the second'],
      rows: (v, say) => pairsSwept(v).slice(0, 12).map((pair) => [pairWords(v, pair), { value: pair.gap, dimension: 'length' }, placeWords(pair.s, say), placeWords(pair.t, say)]),
    },
  ],
  paper: {
    assumptions: [
      'Every part is straight and round, with round ends. It rides with what you say it rides with, and everything is rigid.',
      'All points after the drop, from one mark on the frame: x forward, y left, z up; drive height, steering straight, pedal up, engine still.',
      'The engine rolls about a level line along the truck. The pedal turns about a level line across it. The steering turns about the line from column joint to box joint, and tilts when the column’s end shifts with the body.',
      'A pushrod’s start goes with the pedal; its end stays at the mouth of its master. Axle parts go straight up and down.',
      'Any state can meet any other: full roll at any lock, height and pedal. That is stricter than the road.',
    ],
    leftOut: [
      'Steered wheels: type the part again as it stands at each lock. For a hose there is a calculator of its own.', 'Two pedals that swing apart: sweep the clutch pedal with the brake pedal typed as riding on the body, up and then down, and the other way around.',
      'Bent parts: several pieces. Flat ends: the round end reaches farther by the radius, which is the safe side.', 'Errors of the pivots and lines that parts turn about, of the radii, and of the movements themselves: type each movement as large as you have ever seen it.',
      'The engine moving forward and back on its mounts: add what a stop and a start move it to what you keep clear ahead and behind. Tilting of the cab on its mounts.', 'The arc of the suspension, twist of cab and frame, heat.',
    ],
    sources: [
      { of: 'least distance of two straight pieces, rigid motion, floor between the steps', kind: 'derived', note: 'checked against brute force over every state with an independent geometry library' },
      { of: 'stop under 6 mm, watch under 12 mm, 25 mm to engine and exhaust, twice the error, movement of mounts', kind: 'common practice' },
      { of: 'axes', kind: 'published', id: 'iso-8855', note: 'x forward, y left, z up' },
      { of: 'the parts shown at first', kind: 'defined', note: 'invented, in content/demo-rows.json' },
    ],
    examples: [
      {
        source: 'Brute force and an independent geometry library: two pieces in space, 15.651394495590 apart, radii 4 and 5, in millimeters, nothing moving',
        inputs: {
          ...nothingMoves,
          sweepParts: [
            { name: 'a', on: 'frame', x1: 27.83 * mm, y1: 31.74 * mm, z1: -26.6 * mm, x2: 13.43 * mm, y2: 21.77 * mm, z2: 46.81 * mm, radius: 4 * mm },
            { name: 'b', on: 'body', x1: 77.54 * mm, y1: 7.53 * mm, z1: 6.22 * mm, x2: 26.99 * mm, y2: 12.39 * mm, z2: 11.18 * mm, radius: 5 * mm },
          ],
        },
        results: { sweepGap: { value: 6.65139449559 * mm, within: 1e-9 }, sweepLeast: { value: 6.65139449559 * mm, within: 1e-9 } },
      },
      {
        source: 'Worked by hand: an ear 1 in off a level shaft along the truck, radius 1/4 in, and a rod along the truck 2 in above the shaft, radius 1/4 in: 1/2 in is left when the ear is on top, whichever way it was typed',
        inputs: {
          ...nothingMoves, columnEndXAfter: -0.5, columnEndY: 0.3, columnEndZAfter: 0.3, boxInputX: 0, boxInputY: 0.3, boxInputZ: 0.3,
          sweepParts: [
            { name: 'ear', on: 'steering', x1: -0.4, y1: 0.3 + inch * Math.cos(40 * deg), z1: 0.3 + inch * Math.sin(40 * deg), x2: -0.38, y2: 0.3 + inch * Math.cos(40 * deg), z2: 0.3 + inch * Math.sin(40 * deg), radius: inch / 4 },
            { name: 'rod', on: 'frame', x1: -0.6, y1: 0.3, z1: 0.3 + 2 * inch, x2: 0, y2: 0.3, z2: 0.3 + 2 * inch, radius: inch / 4 },
          ],
        },
        results: { sweepGap: { value: inch / 2, within: 1e-5 } },
      },
      {
        source: 'Worked by hand: a tie rod 150 mm under a rail’s center line, radii 10 and 50 mm, aired out by 80 mm: 150 − 80 − 60 = 10 mm',
        inputs: {
          ...nothingMoves, airedOutFront: -80 * mm, liftedFront: 60 * mm,
          sweepParts: [
            { name: 'tie rod', on: 'frontAxle', x1: 0, y1: 0.2, z1: 0, x2: 0, y2: 0.6, z2: 0, radius: 10 * mm },
            { name: 'rail', on: 'frame', x1: -1, y1: 0.4, z1: 0.15, x2: 1, y2: 0.4, z2: 0.15, radius: 50 * mm },
          ],
        },
        results: { sweepGap: { value: 10 * mm, within: 1e-9 }, sweepFloor: { value: 10 * mm, within: 1e-9 } },
      },
    ],
    related: ['every-state', 'body-drop-clearance', 'clearance', 'drop-points', 'shaft-line', 'hose-slack', 'pad-floor'],
  },
});
