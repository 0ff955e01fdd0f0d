import { isImpossible } from '../../engine/outcome.ts';
import { stoppingDistance } from '../../engine/stopping.ts';
import { foot, mph, standardGravity } from '../../units/si.ts';
import { defineCalculator } from '../record.ts';
import type { ValuesOf } from '../record.ts';
import { stopScene } from '../scenes/stop.ts';

type Inputs = 'speed' | 'brakingRate' | 'reactionTime' | 'buildUpTime' | 'grade';

function stop(v: ValuesOf<Inputs>) {
  return stoppingDistance({ speed: v.speed, rate: v.brakingRate, reactionTime: v.reactionTime, buildUpTime: v.buildUpTime, grade: v.grade });
}

/** 100 km/h to standstill within 70 m is what the light-vehicle test asks. */
const yardstick = { speed: 100 / 3.6, distance: 70 };
function yardstickDistance(v: ValuesOf<Inputs>): number {
  const r = stop({ ...v, speed: yardstick.speed, grade: 0 });
  return isImpossible(r) ? Infinity : r.brakingDistance;
}

export default defineCalculator({
  id: 'stopping-distance',
  version: 1,
  title: 'Stopping distance',
  purpose: 'How much road a braking rate needs, with the driver’s reaction and without.',
  inputs: [
    { title: 'Truck and road', of: ['speed', 'brakingRate', 'grade'] },
    { title: 'Driver and brakes', of: ['reactionTime', 'buildUpTime'] },
  ],
  outputs: ['stoppingDistance', 'brakingDistance', 'reactionDistance', 'riseDistance', 'rateOnGrade', 'speedAfterRise', 'riseTime', 'brakingTime', 'stoppingTime'],
  compute: (v) => {
    const r = stop(v);
    if (isImpossible(r)) {
      const short = (r.by ?? 0) / standardGravity;
      return { refused: (say) => `On this grade the hill pulls ${short < 0.0005 ? 'just as hard as the brakes hold' : `${say(short, 'brakingRate')} harder than the brakes hold`}. The truck never stops.` };
    }
    const slope = Math.hypot(1, v.grade);
    const left = v.speed - (standardGravity * (v.grade + v.brakingRate / 2) * v.buildUpTime) / slope;
    const speedAfterRise = Math.max(0, left);
    const brakingTime = r.time - v.reactionTime;
    const riseTime = left >= 0 ? v.buildUpTime : brakingTime;
    // Over a rise the mean speed of a parabola through both ends, less what the grade bends it.
    const riseDistance = (riseTime * (2 * v.speed + speedAfterRise)) / 3 - (standardGravity * v.grade * riseTime ** 2) / (6 * slope);
    return {
      stoppingDistance: r.stoppingDistance, brakingDistance: r.brakingDistance, reactionDistance: r.reactionDistance, riseDistance, rateOnGrade: (v.brakingRate + v.grade) / slope,
      speedAfterRise, riseTime, brakingTime, stoppingTime: r.time,
    };
  },
  summary: (v, say) => `From ${say(v.speed, 'speed')} at ${say(v.brakingRate, 'brakingRate')} the truck stops in ${say(v.stoppingDistance, 'distance')}: ${say(v.reactionDistance, 'distance')} while the driver reacts, then ${say(v.brakingDistance, 'distance')} of braking.`,
  equations: [
    { result: 'reactionDistance', expression: 'speed * reactionTime', words: 'Until the foot moves the truck rolls on at full speed.', source: 'derived' },
    { result: 'rateOnGrade', expression: '(brakingRate + grade) / sqrt(1 + grade^2)', words: 'Uphill the grade helps, downhill it drags. On the flat it is the braking rate.', source: 'derived: forces along the road' },
    { result: 'speedAfterRise', expression: 'max(0, speed - g * (grade + brakingRate / 2) * buildUpTime / sqrt(1 + grade^2))', words: 'While the brakes rise in a straight line they work at half strength on average.', source: 'derived by integration' },
    { result: 'riseTime', expression: 'min(buildUpTime, (sqrt((grade * buildUpTime)^2 + 2 * brakingRate * speed * buildUpTime * sqrt(1 + grade^2) / g) - grade * buildUpTime) / brakingRate)', words: 'The whole build-up time, unless the truck halts before the brakes are fully on.', source: 'derived by integration' },
    { result: 'riseDistance', expression: 'riseTime * (2 * speed + speedAfterRise) / 3 - g * grade * riseTime^2 / (6 * sqrt(1 + grade^2))', words: 'Little speed is lost while the brakes rise, so that time costs road.', source: 'derived by integration' },
    { result: 'brakingTime', expression: 'riseTime + speedAfterRise / (g * rateOnGrade)', words: 'The rise, then a steady loss of speed.', source: 'derived' },
    { result: 'brakingDistance', expression: 'riseDistance + speedAfterRise^2 / (2 * g * rateOnGrade)', words: 'Road used during the rise, then speed squared over twice the deceleration. Twice the speed is four times the road.', source: 'derived by integration' },
    { result: 'stoppingDistance', expression: 'reactionDistance + brakingDistance', words: 'Stopping distance has the driver in it, braking distance has not. Say which one you quote.', source: 'defined: the words of ISO 611' },
    { result: 'stoppingTime', expression: 'reactionTime + brakingTime', words: 'From the moment there is something to see until the wheels stand.', source: 'derived' },
  ],
  cautions: [
    {
      id: 'tires-decide', level: 'warning',
      words: 'The braking rate is what you typed. Tires and the axle that locks first decide what the truck reaches, and a wet road gives about six tenths of a dry one (common practice, no source).',
      todo: 'Take the rate from the braking rate calculator, check which axle locks first, and leave the gap for a wet road.',
    },
    {
      id: 'rate-beyond-tires', level: 'warning', when: (v) => v.brakingRate > 0.9,
      words: (v, say) => `Street tires on a good dry road give 0.8 to 1.0 g at best (common practice, no source). ${say(v.brakingRate, 'brakingRate')} with all wheels turning is hard to reach, and this distance is on the short side.`,
      todo: 'Plan with 0.8 g dry and 0.5 g wet.',
      fires: { brakingRate: 0.95 }, silent: {},
    },
    {
      id: 'longer-than-yardstick', level: 'warning', when: (v) => yardstickDistance(v) > yardstick.distance,
      words: (v, say) => `From ${say(yardstick.speed, 'speed')} on the flat this truck would need ${say(yardstickDistance(v), 'distance')} of braking. The light-vehicle brake test asks for ${say(yardstick.distance, 'distance')}, and traffic around you is built to it.`,
      todo: 'Find what holds the rate down: foot force, pressure, brake pads or tires. Until then leave more room.',
      fires: { brakingRate: 0.5 }, silent: {},
    },
    {
      id: 'downhill', level: 'warning', when: (v) => v.grade <= -0.05,
      words: (v, say) => `This grade alone takes ${say(-v.grade / Math.hypot(1, v.grade), 'brakingRate')} of the brakes. On a long descent heat takes more: brake pads fade first, fluid boils later.`,
      todo: 'Gear down first. A stop from speed at the foot of a long hill takes longer than this number.',
      fires: { grade: -0.08 }, silent: {},
    },
    {
      id: 'quick-driver', level: 'caution', when: (v) => v.reactionTime < 1,
      words: (v, say) => `${say(v.reactionTime, 'time')} is a driver who is waiting for it. Taken by surprise, most need about ${say(1.5, 'time')} (common practice, no source).`,
      todo: 'Use 1.5 s to judge a following distance.',
      fires: { reactionTime: 0.7 }, silent: {},
    },
  ],
  picture: {
    title: 'The road this stop takes, to scale',
    describe: (v, say) => `A strip of road from the moment there is something to see. ${say(v.reactionDistance, 'distance')} of it pass before the brakes bite, ${say(v.brakingDistance, 'distance')} under braking; the whole is ${say(v.stoppingDistance, 'distance')}.`,
    scene: (v, _at, say) => stopScene({ reaction: v.reactionDistance, braking: v.brakingDistance, labels: { reaction: say(v.reactionDistance, 'distance'), braking: say(v.brakingDistance, 'distance'), whole: say(v.stoppingDistance, 'distance') } }),
  },
  charts: [{
    title: 'Distance against speed',
    x: { label: 'speed', dimension: 'speed' },
    y: { label: 'distance', dimension: 'distance' },
    series: (v) => {
      const last = Math.max(80 * mph, 1.15 * v.speed);
      const curve = (of: 'stoppingDistance' | 'brakingDistance') => Array.from({ length: 33 }, (_, k) => {
        const speed = (last * k) / 32;
        const r = stop({ ...v, speed });
        return [speed, isImpossible(r) ? NaN : r[of]] as const;
      });
      return [
        { label: 'stopping, with reaction', tone: 'accent', points: curve('stoppingDistance') },
        { label: 'braking alone', tone: 'ghost', points: curve('brakingDistance') },
      ];
    },
    marks: (v) => [{ at: [v.speed, v.stoppingDistance], label: 'you' }, { at: [v.speed, v.brakingDistance], label: '' }],
    describe: (v, say) => {
      const half = stop({ ...v, speed: v.speed / 2 });
      return `Both curves bend upward.${isImpossible(half) ? '' : ` At half the speed, ${say(v.speed / 2, 'speed')}, braking takes ${say(half.brakingDistance, 'distance')} instead of ${say(v.brakingDistance, 'distance')}.`}`;
    },
  }],
  tables: [{
    caption: 'The same speed at other braking rates',
    head: ['Braking rate', 'Braking', 'With reaction'],
    rows: (v, say) => [0.3, 0.5, 0.6, 0.7, 0.8, 0.9].map((brakingRate) => {
      const r = stop({ ...v, brakingRate });
      return [{ value: brakingRate, dimension: 'brakingRate' }, ...(isImpossible(r) ? ['never stops', '–'] : [say(r.brakingDistance, 'distance'), say(r.stoppingDistance, 'distance')])];
    }),
  }],
  paper: {
    assumptions: ['The rate is constant once the brakes are fully on.', 'The brakes rise in a straight line over the build-up time.', 'Full speed is held until the brakes begin to bite.', 'On a grade the tires press on the road by the cosine less, and so do the brakes.'],
    leftOut: ['Air drag, rolling drag and engine braking, which shorten the stop a little.', 'Fade, wet brake pads, and a wheel that locks.', 'A driver who presses slowly or lets go.'],
    sources: [
      { of: 'speed squared over twice the deceleration', kind: 'published', id: 'openstax', note: 'section 2.5, stopping distances of a car' },
      { of: 'reaction 1.5 s, build-up 0.3 s, wet at six tenths', kind: 'common practice' },
      { of: '100 km/h within 70 m', kind: 'published', id: 'fmvss-135', note: 'S7.5, for new light vehicles; a yardstick only' },
      { of: 'stopping distance and braking distance as words', kind: 'defined', id: 'iso-611' },
    ],
    examples: [
      ...([[7, 64.3, 0.001], [5, 90, 0.001]] as const).map(([deceleration, value, within]) => ({
        source: `College Physics 2e, section 2.5 (read in the text): 30.0 m/s at ${deceleration}.00 m/s², reaction 0.500 s`,
        inputs: { speed: 30, brakingRate: deceleration / standardGravity, reactionTime: 0.5, buildUpTime: 0, grade: 0 },
        results: { brakingDistance: { value, within }, stoppingDistance: { value: value + 15, within } },
      })),
      ...([[0.6, 201], [0.7, 172], [0.8, 150], [0.9, 134]] as const).map(([brakingRate, feet]) => ({
        source: `Worked by hand: 60 mph at ${brakingRate} g without build-up, reaction 1.5 s`,
        inputs: { speed: 60 * mph, brakingRate, reactionTime: 1.5, buildUpTime: 0, grade: 0 },
        results: { brakingDistance: { value: feet * foot, within: 0.5 / feet }, reactionDistance: { value: 132 * foot, within: 0.001 } },
      })),
    ],
    related: ['manual-or-boosted', 'braking-rate', 'adhesion', 'lock-order'],
  },
});
