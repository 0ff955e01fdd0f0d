import { standardGravity } from '../../engine/constants.ts';
import { inch } from '../../units/si.ts';
import { idealAt, idealCharts, ladenTruck, meets, truckOf } from '../helpers/ideal.ts';
import type { IdealInputs } from '../helpers/ideal.ts';
import { defineCalculator } from '../record.ts';
import type { Say, ValuesOf } from '../record.ts';
import { brakingFeed } from '../helpers/braking-rate.ts';
import { discFeed } from '../helpers/disc-torque.ts';

type V = ValuesOf<IdealInputs>;

const rates = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];

/** A difference of shares: percent would read as a part of the share. */
const points = (share: number, say: Say): string => {
  const number = say(share, 'share').replace(/\s*%$/, '');
  return `${number} ${number === '1' ? 'point' : 'points'}`;
};

const pressure = (v: V, force: number, gain: number): number => v.pushOutPressure + force / gain;

export default defineCalculator({
  id: 'ideal-distribution',
  version: 1,
  title: 'Ideal distribution of brake force',
  purpose: 'What part of the braking the rear should do at each rate, against what yours does.',
  inputs: [
    { title: 'Truck, empty', of: ['frontAxleLoad', 'rearAxleLoad', 'wheelbase', 'cgHeight'] },
    { title: 'Stop', of: ['brakingRate'] },
    { title: 'Brakes fitted', of: ['rearBrakeFraction', 'frontBrakeGain', 'rearBrakeGain', 'pushOutPressure'] },
    { title: 'Load in the bed, for comparison', of: ['payload', 'payloadAhead', 'payloadHeight'] },
  ],
  feeds: [brakingFeed, discFeed],
  outputs: [
    'idealRearShare', 'rearShareToSpare', 'fixedShareCriticalRate', 'idealFrontForce', 'idealRearForce', 'idealFrontPressure', 'idealRearPressure', 'peakRearRate',
    'mass', 'rearLoadFraction', 'heightRatio', 'ladenIdealRearShare', 'ladenFixedShareCriticalRate', 'ladenMass', 'ladenRearLoadFraction', 'ladenHeightRatio',
  ],
  compute: (v) => {
    const truck = truckOf(v);
    const r = idealAt(truck, v.brakingRate);
    if ('refused' in r) return r;
    const laden = ladenTruck(v);
    if ('refused' in laden) return laden;
    const loaded = idealAt(laden, v.brakingRate, 'With the load in the bed the rear wheels');
    if ('refused' in loaded) return loaded;
    return {
      idealRearShare: r.rearShare, rearShareToSpare: r.rearShare - v.rearBrakeFraction, fixedShareCriticalRate: meets(truck, v.rearBrakeFraction),
      idealFrontForce: r.frontForce, idealRearForce: r.rearForce, idealFrontPressure: pressure(v, r.frontForce, v.frontBrakeGain), idealRearPressure: pressure(v, r.rearForce, v.rearBrakeGain),
      peakRearRate: truck.rearFraction / truck.heightRatio / 2, mass: truck.weight / standardGravity, rearLoadFraction: truck.rearFraction, heightRatio: truck.heightRatio,
      ladenIdealRearShare: loaded.rearShare, ladenFixedShareCriticalRate: meets(laden, v.rearBrakeFraction), ladenMass: laden.weight / standardGravity,
      ladenRearLoadFraction: laden.rearFraction, ladenHeightRatio: laden.heightRatio,
    };
  },
  summary: (v, say) => {
    const fixed = v.fixedShareCriticalRate > 0
      ? `Yours, ${say(v.rearBrakeFraction, 'share')}, is right at ${say(v.fixedShareCriticalRate, 'brakingRate')} only: below that the front locks first, above it the rear.`
      : `Yours, ${say(v.rearBrakeFraction, 'share')}, is more than the rear’s part of the parked weight: the rear locks first at every rate.`;
    return `At ${say(v.brakingRate, 'brakingRate')} the empty truck’s rear should do ${say(v.idealRearShare, 'share')} of the braking. ${fixed}`;
  },
  equations: [
    { result: 'mass', expression: 'frontAxleLoad + rearAxleLoad', words: 'Both scales.', source: 'derived' },
    { result: 'rearLoadFraction', expression: 'rearAxleLoad / mass', words: 'The rear’s part of the weight, parked.', source: 'derived' },
    { result: 'heightRatio', expression: 'cgHeight / wheelbase', words: 'How much of it moves for each g.', source: 'derived' },
    { result: 'idealRearShare', expression: 'rearLoadFraction - heightRatio * brakingRate', words: 'A tire brakes in proportion to its load. So the best rear share is the rear’s part of the load at that moment, and it falls as you brake harder.', source: 'derived: same brake force over load at both axles' },
    { result: 'rearShareToSpare', expression: 'idealRearShare - rearBrakeFraction', words: 'What your rear share lies below it. Minus means that the rear does too much.', source: 'derived' },
    { result: 'fixedShareCriticalRate', expression: '(rearLoadFraction - rearBrakeFraction) / heightRatio', words: 'A falling line meets a level one once. Beyond that rate the rear locks first. Lock order leaves out push-out pressure, so it may differ in the third digit.', source: 'derived: ideal share set to yours' },
    { result: 'idealFrontForce', expression: 'brakingRate * mass * g * (1 - idealRearShare)', words: 'The front’s part of the whole brake force.', source: 'derived' },
    { result: 'idealRearForce', expression: 'brakingRate * mass * g * idealRearShare', words: 'The rear’s part.', source: 'derived' },
    { result: 'idealFrontPressure', expression: 'pushOutPressure + idealFrontForce / frontBrakeGain', words: 'The gauge reading that makes that force.', source: 'derived: brake force in proportion to pressure' },
    { result: 'idealRearPressure', expression: 'pushOutPressure + idealRearForce / rearBrakeGain', words: 'The same in the rear line.', source: 'derived: brake force in proportion to pressure' },
    { result: 'peakRearRate', expression: 'rearLoadFraction / (2 * heightRatio)', words: 'Past this rate the rear must brake less, not only a smaller share.', source: 'derived: top of the parabola' },
    { result: 'ladenMass', expression: 'mass + payload', words: 'The truck and what is in its bed.', source: 'derived' },
    { result: 'ladenRearLoadFraction', expression: '(rearAxleLoad + payload * (1 - payloadAhead / wheelbase)) / ladenMass', words: 'The load rests mostly on the rear.', source: 'derived: moments about the front tires’ contact' },
    { result: 'ladenHeightRatio', expression: '(cgHeight * mass + payloadHeight * payload) / (ladenMass * wheelbase)', words: 'The common height, weighted by mass, over the wheelbase.', source: 'derived: first moment of mass' },
    { result: 'ladenIdealRearShare', expression: 'ladenRearLoadFraction - ladenHeightRatio * brakingRate', words: 'As for the empty truck.', source: 'derived' },
    { result: 'ladenFixedShareCriticalRate', expression: '(ladenRearLoadFraction - rearBrakeFraction) / ladenHeightRatio', words: 'As for the empty truck.', source: 'derived' },
  ],
  cautions: [
    {
      id: 'share-at-your-foot', level: 'notice',
      words: 'The fitted rear share is the one at your foot force. With a rear valve the rear does more below the knee and may lead there.',
      todo: 'With a valve fitted, read the lock order.',
    },
    {
      id: 'rear-over-braked', level: 'danger', when: (v) => v.rearShareToSpare < 0,
      words: (v, say) => `At ${say(v.brakingRate, 'brakingRate')} the rear does ${say(v.rearBrakeFraction, 'share')} and should do ${say(v.idealRearShare, 'share')} at most. It locks before the front, and a truck with locked rear wheels turns around. Braking harder makes it worse.`,
      todo: 'Take brake from the rear: a larger rear bore, a smaller rear caliper, the bar toward the front, or a valve. Then look again.',
      fires: { rearBrakeFraction: 0.3 }, silent: { rearBrakeFraction: 0.2 },
    },
    {
      id: 'little-to-spare', level: 'warning', when: (v) => v.rearShareToSpare >= 0 && v.rearShareToSpare < 0.04,
      words: (v, say) => `Only ${points(v.rearShareToSpare, say)} to spare at ${say(v.brakingRate, 'brakingRate')}. Brake pads, bar friction and a guessed center of gravity move the share by more than that, so the rear may lock first on the day.`,
      todo: 'Stay 4 to 5 points below the ideal at the hardest stop the tires allow (common practice, no source).',
      fires: { rearBrakeFraction: 0.23 }, silent: { rearBrakeFraction: 0.18 },
    },
    {
      id: 'prove-it', level: 'warning',
      words: 'A fixed split meets the ideal at one rate only, and paper does not know your brake pads, your tires or your bar’s friction. A truck set by paper alone can lock its rear first and spin.',
      todo: 'Let the two meet beyond the hardest stop the empty truck can make, so that the front locks first at every gentler one. Prove it on a closed lot: empty bed, straight line, dry and then wet, from 25 to 30 mph, someone filming both axles.',
    },
    {
      id: 'rear-idles-laden', level: 'notice', when: (v) => v.payload > 0 && v.ladenIdealRearShare - v.rearBrakeFraction > 0.1,
      words: (v, say) => `With the load the rear could do ${say(v.ladenIdealRearShare, 'share')} and does ${say(v.rearBrakeFraction, 'share')}. The loaded truck stops longer than it could, in a straight line.`,
      todo: 'Leave it. A split set for the load spins the empty truck. Drive the loaded truck with more distance.',
      fires: { rearBrakeFraction: 0.2, payload: 400 }, silent: { payload: 0 },
    },
    {
      id: 'past-the-top', level: 'caution', when: (v) => v.brakingRate > v.peakRearRate,
      words: (v, say) => `Past ${say(v.peakRearRate, 'brakingRate')} every harder push wants less rear brake, and a bar gives more.`,
      todo: 'Only a valve or a low rear share keeps such a truck straight. Check the height of the center of gravity.',
      fires: { cgHeight: 32 * inch }, silent: {},
    },
  ],
  charts: idealCharts,
  tables: [{
    caption: 'Ideal share and gauge readings',
    head: ['Rate', 'Rear share', 'Loaded', 'Front line', 'Rear line'],
    rows: (v, say) => rates.map((rate) => {
      const [r, laden] = [idealAt(truckOf(v), rate), ladenTruck(v)];
      const loaded = 'refused' in laden ? laden : idealAt(laden, rate);
      return [
        say(rate, 'brakingRate'), ...('refused' in r ? ['rear lifts'] : [say(r.rearShare, 'share')]), 'refused' in loaded ? 'rear lifts' : say(loaded.rearShare, 'share'),
        ...('refused' in r ? ['–', '–'] : [say(pressure(v, r.frontForce, v.frontBrakeGain), 'pressure'), say(pressure(v, r.rearForce, v.rearBrakeGain), 'pressure')]),
      ];
    }),
  }],
  paper: {
    assumptions: ['Both axles’ tires grip alike.', 'The rear share stays the same at every pressure: a bar, no valve, brake pads that hold their friction.', 'A steady stop on a level road.'],
    leftOut: ['Lock order leaves out push-out pressure, so it may differ in the third digit.', 'A rear valve bends your line at its knee: it has a calculator of its own.', 'Engine drag, which adds to the driven axle, and rolling resistance.', 'A bend: the inner rear tire is lighter there and locks earlier.'],
    sources: [
      { of: 'ideal distribution', kind: 'derived', note: 'brake force in proportion to the load at that moment' },
      { of: 'the same method in print', kind: 'from memory', id: 'limpert' },
      { of: 'axle positions and heights of the three cars in the examples', kind: 'published', id: 'commonroad', note: 'numbers only; the shares are worked from them' },
      { of: '4 to 5 points below the ideal', kind: 'common practice' },
    ],
    examples: [
      ...([[0.3, 0.357], [0.6, 0.293], [0.8, 0.251], [0.9, 0.23]] as const).map(([brakingRate, value]) => ({
        source: `Reference truck worked by hand: 42 % rear, 0.58 m over 2.743 m, ${brakingRate} g`,
        inputs: { frontAxleLoad: 777.2, rearAxleLoad: 562.8, wheelbase: 2.743, cgHeight: 0.58, brakingRate, rearBrakeFraction: 0.24 },
        results: { idealRearShare: { value, within: 0.003 }, fixedShareCriticalRate: { value: 0.85, within: 0.002 } },
      })),
      ...([[1225.9, 0.8839, 1.5088, 0.5578, 0.817], [1093.3, 1.1562, 1.4227, 0.5749, 0.73], [1478.9, 1.1508, 1.3211, 0.7478, 0.776]] as const).map(([m, a, b, cgHeight, front], k) => ({
        source: `A published parameter set, car ${k + 1}, 0.8 g: ideal front share ${Math.round(1000 * front) / 10} %`,
        inputs: { frontAxleLoad: (m * b) / (a + b), rearAxleLoad: (m * a) / (a + b), wheelbase: a + b, cgHeight, brakingRate: 0.8, payload: 0 },
        results: { idealRearShare: { value: 1 - front, within: 0.003 } },
      })),
    ],
    related: ['bias', 'load-transfer', 'lock-order', 'adhesion', 'rear-valve'],
  },
});
