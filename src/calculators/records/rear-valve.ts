import { idealCurve } from '../../engine/distribution.ts';
import { valveOutlet } from '../../engine/valve.ts';
import { bar, psi } from '../../units/si.ts';
import { barFeed } from '../helpers/balance-bar.ts';
import { discFeed } from '../helpers/disc-torque.ts';
import { pressureFeed } from '../helpers/line-pressure.ts';
import { forces, parts, rates, rearShareAt, results, rodForceAt, steps } from '../helpers/rear-valve.ts';
import { defineCalculator } from '../record.ts';

export default defineCalculator({
  id: 'rear-valve',
  version: 1,
  title: 'Rear proportioning valve',
  purpose: 'What the valve leaves of the rear’s pressure, and where its knee must be so that the rear never gets ahead.',
  inputs: [
    { title: 'Valve', of: ['rearPressure', 'kneePressure', 'valveSlope'] },
    { title: 'What it is for', of: ['shareMargin', 'rateLimit'] },
    { title: 'Bar, masters and brakes', of: ['frontShare', 'frontMasterBore', 'rearMasterBore', 'frontBrakeGain', 'rearBrakeGain'] },
    { title: 'Truck, empty', of: ['frontAxleLoad', 'rearAxleLoad', 'wheelbase', 'cgHeight'] },
  ],
  feeds: [pressureFeed, barFeed, discFeed],
  outputs: ['rearPressureAfterValve', 'kneeForMargin', 'marginKept', 'kneeRate', 'openValvePressure', 'rearBrakeFraction', 'rearShareAboveKnee', 'mass', 'rearLoadFraction', 'heightRatio', 'valveNeed'],
  compute: results,
  // A gauge tells the pressure; whether the rear stays behind is what has to be known.
  howSure: {
    of: 'marginKept', samePads: true,
    happens: { when: (v) => v.marginKept < 0, words: (v, say) => `the rear gets ahead of the front, empty, somewhere up to ${say(v.rateLimit, 'brakingRate')}` },
  },
  summary: (v, say) => {
    const need = {
      set: `To stay ${say(v.shareMargin, 'share')} of the brake force below the ideal up to ${say(v.rateLimit, 'brakingRate')}, the knee may be no higher than ${say(v.kneeForMargin, 'pressure')}; yours is at ${say(v.kneePressure, 'pressure')}.`,
      nothing: `The bar alone stays ${say(v.shareMargin, 'share')} of the brake force below the ideal up to ${say(v.rateLimit, 'brakingRate')}: no valve is needed.`,
      beyond: `No knee keeps the rear ${say(v.shareMargin, 'share')} of the brake force below the ideal up to ${say(v.rateLimit, 'brakingRate')}: move the bar toward the front first.`,
    }[v.valveNeed];
    return `Of ${say(v.rearPressure, 'pressure')} in the rear line the valve passes ${say(v.rearPressureAfterValve, 'pressure')}. ${need}`;
  },
  equations: [
    { result: 'rearPressureAfterValve', expression: 'kneePressure + valveSlope * (rearPressure - kneePressure)', words: 'Above the knee only a part of each extra psi gets through.', source: 'derived: balance of the stepped piston', when: (v) => (v['rearPressure'] as number) > (v['kneePressure'] as number) },
    { result: 'rearPressureAfterValve', expression: 'rearPressure', words: 'Below the knee the valve takes nothing off.', source: 'derived: balance of the stepped piston', when: (v) => (v['rearPressure'] as number) <= (v['kneePressure'] as number) },
    { result: 'mass', expression: 'frontAxleLoad + rearAxleLoad', words: 'Both scales added.', source: 'derived' },
    { result: 'rearLoadFraction', expression: 'rearAxleLoad / mass', words: 'What the rear tires carry standing still.', source: 'derived' },
    { result: 'heightRatio', expression: 'cgHeight / wheelbase', words: 'How much braking moves from axle to axle.', source: 'derived: statics' },
    { result: 'rearBrakeFraction', expression: '(1 - frontShare) * rearBrakeGain / rearMasterBore^2 / (frontShare * frontBrakeGain / frontMasterBore^2 + (1 - frontShare) * rearBrakeGain / rearMasterBore^2)', words: 'Below the knee bar, bores and brakes fix the rear’s share.', source: 'derived: statics' },
    { result: 'rearShareAboveKnee', expression: 'valveSlope * rearBrakeFraction / (1 - rearBrakeFraction + valveSlope * rearBrakeFraction)', words: 'Above it the rear gets this part of whatever is added.', source: 'derived: statics' },
    { result: 'kneeRate', expression: 'rearBrakeGain * kneePressure / (rearBrakeFraction * mass * g)', words: 'At the knee the rear force is gain times pressure; divided by its share it is the whole brake force.', source: 'derived: statics' },
    { result: 'openValvePressure', expression: 'max(0, rearLoadFraction - shareMargin - rearBrakeFraction) / heightRatio * rearBrakeFraction * mass * g / rearBrakeGain', words: 'The bar alone keeps the margin up to the rate at which its level line meets the falling one. This is the rear pressure there.', source: 'derived: statics' },
    {
      result: 'kneeForMargin', expression: 'min(openValvePressure, ((rearLoadFraction - shareMargin - rearShareAboveKnee) * rateLimit - heightRatio * rateLimit^2) * mass * g / ((1 - rearShareAboveKnee) * (1 - valveSlope) * rearBrakeGain))',
      words: 'Two places can come too close: the knee itself and the highest rate. The lower of their two limits counts.', source: 'derived: statics', when: (v) => v['valveNeed'] === 'set',
    },
    { result: 'kneeForMargin', expression: 'openValvePressure', words: 'The bar keeps its margin past the highest rate by itself.', source: 'derived: statics', when: (v) => v['valveNeed'] === 'nothing' },
    {
      result: 'marginKept', expression: 'min(rearLoadFraction - heightRatio * kneeRate - rearBrakeFraction, rearLoadFraction - heightRatio * rateLimit - rearShareAboveKnee - (1 - rearShareAboveKnee) * (1 - valveSlope) * rearBrakeGain * kneePressure / (mass * g * rateLimit))',
      words: 'Ideal share less the installed one, at the knee and at the highest rate: the smaller.', source: 'derived: statics', when: (v) => (v['kneeRate'] as number) < (v['rateLimit'] as number),
    },
    { result: 'marginKept', expression: 'rearLoadFraction - heightRatio * rateLimit - rearBrakeFraction', words: 'The knee comes after the highest rate, so only the bar counts.', source: 'derived: statics', when: (v) => (v['kneeRate'] as number) >= (v['rateLimit'] as number) },
  ],
  cautions: [
    {
      id: 'rear-leads', level: 'danger', when: (v) => v.marginKept < 0,
      words: (v, say) => `With this knee the rear tires work harder than the fronts somewhere below ${say(v.rateLimit, 'brakingRate')}. On a road that lets go there the rear locks first, and an empty pickup turns around.`,
      todo: 'Lower the knee, or move the bar toward the front. Then check the lock order on every grip.',
      fires: { kneePressure: 800 * psi, rateLimit: 1 }, silent: { kneePressure: 200 * psi },
    },
    {
      id: 'margin-thin', level: 'warning', when: (v) => v.marginKept >= 0 && v.marginKept < v.shareMargin,
      words: (v, say) => `The rear stays below the ideal, but by only ${say(v.marginKept, 'share', 2)} of the brake force at its closest. Brake pads, bar friction and a wrong center of gravity can use that up.`,
      todo: 'Lower the knee to the figure above, or accept less rear from the bar.',
      fires: { kneePressure: 400 * psi }, silent: { kneePressure: 250 * psi },
    },
    {
      id: 'no-knee-helps', level: 'warning', when: (v) => v.valveNeed === 'beyond',
      words: 'The bar gives the rear too much before any knee can act, or the valve’s slope is too steep for the top. The knob cannot cure that: it moves the knee, never the slope.',
      todo: 'Move the bar’s share to the front, or change a bore or caliper. Then set the valve.',
      fires: { frontShare: 0.35 }, silent: {},
    },
    {
      id: 'leave-it-out', level: 'notice', when: (v) => v.valveNeed === 'nothing',
      words: 'The bar keeps its margin by itself. A valve would only make the loaded truck’s rear do less.',
      todo: 'Leave the valve out, or wind it fully open and lock it.',
      fires: { frontShare: 0.78 }, silent: {},
    },
    {
      id: 'one-at-a-time', level: 'warning',
      words: 'Bar and valve both set by feel can pass one test and fail on the next road: many pairs of settings lock the same on dry pavement and differently in the wet.',
      todo: 'Open the valve fully, set the bar, then bring down the knee alone, with a gauge before and one after the valve. Prove the lock order on a closed lot, empty, dry and wet.',
    },
  ],
  charts: [
    {
      title: 'Rear share of the brake force against braking rate',
      x: { label: 'braking rate', dimension: 'brakingRate' },
      y: { label: 'rear share', dimension: 'share' },
      series: (v) => {
        const ideal = (z: number): number => v.rearLoadFraction - v.heightRatio * z;
        return [
          { label: 'ideal, empty', tone: 'body', points: steps(v.rateLimit).map((z) => [z, Math.max(0, ideal(z))] as const) },
          { label: 'ideal less the margin', tone: 'ghost', points: steps(v.rateLimit).map((z) => [z, Math.max(0, ideal(z) - v.shareMargin)] as const) },
          { label: 'bar and valve', tone: 'rear', points: rates(v, v.kneeRate).map((z) => [z, rearShareAt(v, z)] as const) },
        ];
      },
      marks: (v) => (v.kneeRate < v.rateLimit ? [{ at: [v.kneeRate, v.rearBrakeFraction], label: 'knee', tone: 'rear' }] : []),
      describe: (v, say) => `The ideal rear share falls from ${say(v.rearLoadFraction, 'share')} at rest to ${say(Math.max(0, v.rearLoadFraction - v.heightRatio * v.rateLimit), 'share')} at ${say(v.rateLimit, 'brakingRate')}. Yours is ${say(v.rearBrakeFraction, 'share')} up to the knee at ${say(v.kneeRate, 'brakingRate')}${v.kneeRate < v.rateLimit ? ` and ${say(rearShareAt(v, v.rateLimit), 'share')} at the end` : ''}; at its closest it is ${say(Math.abs(v.marginKept), 'share', 2)} ${v.marginKept < 0 ? 'above' : 'below'} the ideal.`,
    },
    {
      title: 'Rear brake force against front brake force',
      x: { label: 'front brake force', dimension: 'force' },
      y: { label: 'rear brake force', dimension: 'force' },
      series: (v) => {
        const { weight, loads } = parts(v);
        return [
          { label: 'ideal, empty', tone: 'body', points: idealCurve({ ...loads, weight, upTo: v.rateLimit, steps: 40 }).points.map((p) => [p.frontForce, p.rearForce] as const) },
          { label: 'bar and valve', tone: 'rear', points: [0, ...rates(v, v.kneeRate)].map((z) => forces(v, rodForceAt(v, z))) },
        ];
      },
      marks: (v) => (v.kneeRate < v.rateLimit ? [{ at: forces(v, rodForceAt(v, v.kneeRate)), label: 'knee', tone: 'rear' }] : []),
      describe: (v, say) => `Both start at zero. The ideal rises, flattens and turns down. Bar and valve rise in a straight line to the knee at ${say(v.kneeRate, 'brakingRate')} and then less steeply. Where they lie under the ideal the front locks first.`,
    },
  ],
  tables: [{
    caption: 'Gauge before and gauge after the valve',
    head: ['Before', 'After', 'Held back'],
    rows: (v) => [200, 400, 600, 800, 1000].map((pounds) => {
      const inlet = pounds * psi;
      const { outlet } = valveOutlet({ inlet, knee: v.kneePressure, slope: v.valveSlope });
      const held = inlet - outlet < 1 ? 0 : inlet - outlet; // a pascal is rounding, no gauge shows it
      return [{ value: inlet, dimension: 'pressure', digits: 4 }, { value: outlet, dimension: 'pressure' }, { value: held, dimension: 'pressure' }];
    }),
  }],
  paper: {
    assumptions: ['The pedal is going down, slowly.', 'The slope is the valve’s own and stays the same wherever the knob sets the knee.', 'The share of the bar and the gains of the brakes are the same at every pressure.', 'Loads are those of the empty truck: it is the one whose rear locks. A knee set for it holds the rear back with a load on too, and the loaded truck stops longer than it could. Leave it so: set for the load, the truck would spin when empty.'],
    leftOut: ['Hysteresis: on release the outlet lags and stays high for a moment.', 'Return springs and push-out pressure, about 15 psi together.', 'A stab of the pedal, which can carry a valve past its knee.', 'Valves that sense load or height.'],
    sources: [
      { of: 'outlet pressure, knee for a margin', kind: 'derived', note: 'statics' },
      { of: 'the proportioning example that the axle forces are tested against', kind: 'from memory', id: 'gillespie', note: 'chapter 3' },
      { of: 'slope 0.25 to 0.60, knee 100 to 1,000 psi', kind: 'from memory' },
      { of: 'margin of 4 to 5 points', kind: 'common practice' },
    ],
    examples: [
      {
        source: 'Worked by hand: 60 bar in, knee 40 bar, slope 0.43',
        inputs: { rearPressure: 60 * bar, kneePressure: 40 * bar, valveSlope: 0.43 },
        results: { rearPressureAfterValve: { value: 48.6 * bar, within: 1e-9 } },
      },
      {
        source: 'Reference truck worked by hand: slope 0.43, four points up to 1.0 g',
        inputs: {
          rearPressure: 40.3 * bar, kneePressure: 20.2 * bar, valveSlope: 0.43, shareMargin: 0.04, rateLimit: 1, frontShare: 0.62, frontMasterBore: 0.01778, rearMasterBore: 0.01778,
          frontBrakeGain: 122.84 / bar, rearBrakeGain: 63.4 / bar, frontAxleLoad: 777.2, rearAxleLoad: 562.8, wheelbase: 2.743, cgHeight: 0.58,
        },
        results: { kneeForMargin: { value: 20.2 * bar, within: 0.003 }, kneeRate: { value: 0.405, within: 0.002 }, rearBrakeFraction: { value: 0.2403, within: 0.001 }, rearPressureAfterValve: { value: 28.84 * bar, within: 0.001 } },
      },
    ],
    related: ['bias', 'lock-order', 'line-pressure', 'balance-bar', 'height-valve'],
  },
});
