import { isImpossible } from '../../engine/outcome.ts';
import { bar } from '../../units/si.ts';
import { barFeed } from '../helpers/balance-bar.ts';
import { discFeed } from '../helpers/disc-torque.ts';
import { defineCalculator, isRefusal } from '../record.ts';
import type { Refusal, Say, Values, ValuesOf } from '../record.ts';
import type { Cell, Chart } from '../show.ts';
import { lockEquations } from '../helpers/lock-equations.ts';
import { criticalOf, gripSteps, gripsInWords, lockCurve, locksOn, openSplit, rearFirstGrips, stand, standing } from '../helpers/lock.ts';
import type { Load, LockInputs, Stand } from '../helpers/lock.ts';
import { truckScene } from '../scenes/locked-truck.ts';

type V = ValuesOf<LockInputs>;

const firstWords = { front: 'front first', rear: 'rear first', together: 'both at once' } as const;

function order(v: V, load: Load, say: Say): string {
  const l = locksOn(v, stand(v, load), v.grip);
  if (l.first === 'together') return `both axles lock together at ${say(l.front, 'brakingRate')}`;
  const [sooner, later] = l.first === 'front' ? [l.front, l.rear] : [l.rear, l.front];
  const then = l.first === 'rear' && l.frontNeverLocks ? 'the front never would' : `the ${l.first === 'front' ? 'rear' : 'front'} would lock at ${say(later, 'brakingRate')}`;
  return `the ${l.first} locks first, at ${say(sooner, 'brakingRate')} (${then})`;
}

const lockForce = 'mass * g * pi * frontMasterBore^2 / 4 / (frontBrakeGain * frontShare * pedalRatio * linkageEfficiency)';

function chart(load: Load): Chart<V> {
  return {
    title: load === 'empty' ? 'Empty: where each axle locks, against grip' : 'Loaded: the same',
    x: { label: 'grip of the road', dimension: 'friction' },
    y: { label: 'braking rate at lock', dimension: 'brakingRate' },
    series: (v) => [
      { label: 'front locks', tone: 'front', points: lockCurve(v, stand(v, load), 'front') },
      { label: 'rear locks', tone: 'rear', points: lockCurve(v, stand(v, load), 'rear') },
      { label: 'all the grip used', tone: 'ghost', points: gripSteps.map((grip) => [grip, grip] as const) },
    ],
    marks: (v) => {
      const s = stand(v, load);
      const l = locksOn(v, s, v.grip);
      const { rate } = criticalOf(v, s);
      return [
        ...(v.grip >= 0.2 && v.grip <= 1.1 ? [{ at: [v.grip, Math.min(l.front, l.rear)], label: 'you', tone: l.first === 'front' ? 'front' : 'alert' } as const] : []),
        ...(rate >= 0.2 && rate <= 1.1 && Math.abs(rate - v.grip) > 0.15 ? [{ at: [rate, rate], label: 'critical' } as const] : []),
      ];
    },
    describe: (v, say) => {
      const bad = rearFirstGrips(v, stand(v, load));
      return `The lower curve locks first. ${load === 'empty' ? 'Empty' : 'Loaded'}, on grip ${say(v.grip, 'friction')}, ${order(v, load, say)}. ${bad ? `The rear is first ${gripsInWords(bad, say)}.` : 'The front is first on every grip up to 0.9.'}`;
    },
  };
}

/** Where the empty truck locks, and what the rest is computed from. */
function solve(v: V) {
  const laden = standing(v, 'laden');
  if (isImpossible(laden)) {
    return { refused: (say) => `This load lifts the ${laden.impossible === 'front-axle-lifts' ? 'front' : 'rear'} wheels off the road: ${say(laden.by ?? 0, 'mass')} are missing on that axle. Move the load, or make it lighter.` } satisfies Refusal;
  }
  const [empty, split] = [stand(v, 'empty'), openSplit(v)];
  // A rear that leads from the start does so above 0 g: less is no braking rate.
  const critical = (s: Stand): number => Math.max(0, criticalOf(v, s, split).rate);
  return { laden, empty, split, locks: locksOn(v, empty, v.grip, split), criticalRate: critical(empty), critical };
}

const loads = ['empty', 'laden'] as const;
const bedNames = ['empty', 'loaded'] as const;

/** Where the rear wheels leave the road first, both rates are that one and no force belongs to a lock. */
const frontFirstOnTheGround = (v: Values): boolean => {
  const [front, rear, psi, chi] = [v['frontLockRate'], v['rearLockRate'], v['rearLoadFraction'], v['heightRatio']] as [number, number, number, number];
  return front <= rear && front < psi / chi;
};

export default defineCalculator({
  id: 'lock-order',
  version: 1,
  title: 'Which axle locks first',
  purpose: 'Which axle’s tires let go first, empty and loaded, on any road, and at what braking rate.',
  inputs: [
    { title: 'Road', of: ['grip'] },
    { title: 'Truck, empty', of: ['frontAxleLoad', 'rearAxleLoad', 'wheelbase', 'cgHeight'] },
    { title: 'Load', of: ['payload', 'payloadAhead', 'payloadHeight'] },
    { title: 'Bar, masters and brakes', of: ['frontShare', 'frontMasterBore', 'rearMasterBore', 'frontBrakeGain', 'rearBrakeGain'] },
    { title: 'Rear valve', of: ['rearValve', 'kneePressure', 'valveSlope'] },
    { title: 'Pedal', of: ['pedalRatio', 'linkageEfficiency'] },
  ],
  feeds: [barFeed, discFeed],
  outputs: [
    'criticalRate', 'frontLockRate', 'rearLockRate', 'lockMargin', 'lockControlForce', 'ladenCriticalRate', 'ladenFrontLockRate', 'ladenRearLockRate', 'rearBrakeFraction',
    'mass', 'rearLoadFraction', 'heightRatio', 'ladenMass', 'ladenRearLoadFraction', 'ladenHeightRatio',
  ],
  compute: (v) => {
    const solved = solve(v);
    if (isRefusal(solved)) return solved;
    const { laden, empty, split, locks: e, criticalRate, critical } = solved;
    const l = locksOn(v, laden, v.grip, split);
    return {
      criticalRate, frontLockRate: e.front, rearLockRate: e.rear, lockMargin: criticalRate - v.grip, lockControlForce: e.rodForce / (v.pedalRatio * v.linkageEfficiency),
      ladenCriticalRate: critical(laden), ladenFrontLockRate: l.front, ladenRearLockRate: l.rear, rearBrakeFraction: split.rearBrakeFraction,
      mass: empty.mass, rearLoadFraction: empty.rearFraction, heightRatio: empty.heightRatio, ladenMass: laden.mass, ladenRearLoadFraction: laden.rearFraction, ladenHeightRatio: laden.heightRatio,
    };
  },
  howSure: {
    given: ['grip'], samePads: true,
    quick: (v) => {
      const solved = solve(v);
      return isRefusal(solved) ? solved : { criticalRate: solved.criticalRate, frontLockRate: solved.locks.front, rearLockRate: solved.locks.rear };
    },
    happens: { when: (v) => v.rearLockRate < v.frontLockRate, words: (v, say) => `the rear locks first, empty, on a road with a grip of ${say(v.grip, 'friction')}` },
  },
  summary: (v, say) => `Empty, on grip ${say(v.grip, 'friction')}, ${order(v, 'empty', say)}; the rear leads ${v.criticalRate > 0 ? `wherever a road allows more than ${say(v.criticalRate, 'brakingRate')}` : 'on every road, however gently you brake'}. With ${say(v.payload, 'mass')} aboard ${order(v, 'laden', say)}.`,
  equations: [
    { result: 'mass', expression: 'frontAxleLoad + rearAxleLoad', words: 'Both scales added.', source: 'derived' },
    { result: 'rearLoadFraction', expression: 'rearAxleLoad / mass', words: 'What the rear tires carry standing still.', source: 'derived' },
    { result: 'heightRatio', expression: 'cgHeight / wheelbase', words: 'How much braking moves from axle to axle.', source: 'derived: statics' },
    { result: 'rearBrakeFraction', expression: '(1 - frontShare) * rearBrakeGain / rearMasterBore^2 / (frontShare * frontBrakeGain / frontMasterBore^2 + (1 - frontShare) * rearBrakeGain / rearMasterBore^2)', words: 'The rear’s share of the brake force, as bar, bores and brakes fix it (below the knee, with a valve).', source: 'derived: statics' },
    ...lockEquations('empty'),
    { result: 'lockMargin', expression: 'criticalRate - grip', words: 'How far the critical rate stands above this road.', source: 'derived' },
    { result: 'lockControlForce', expression: `grip * (1 - rearLoadFraction + heightRatio * frontLockRate) * ${lockForce}`, words: 'The front’s force at its lock, back through brake, bore, bar and lever to the foot.', source: 'derived: statics', when: frontFirstOnTheGround },
    { result: 'lockControlForce', expression: `(rearLockRate - grip * (rearLoadFraction - heightRatio * rearLockRate)) * ${lockForce}`, words: 'The front’s force when the rear locks, back through brake, bore, bar and lever to the foot.', source: 'derived: statics', when: (v) => (v['frontLockRate'] as number) > (v['rearLockRate'] as number) },
    { result: 'ladenMass', expression: 'mass + payload', words: 'Truck and load.', source: 'derived' },
    { result: 'ladenRearLoadFraction', expression: '(rearAxleLoad + payload * (1 - payloadAhead / wheelbase)) / ladenMass', words: 'A load over the rear axle goes to it whole; ahead of it, a part goes to the front.', source: 'derived: moments about the front axle' },
    { result: 'ladenHeightRatio', expression: '(cgHeight * mass + payloadHeight * payload) / (ladenMass * wheelbase)', words: 'Truck and load have one center of gravity between them.', source: 'derived' },
    ...lockEquations('laden'),
  ],
  cautions: [
    {
      id: 'rear-first', level: 'danger', when: (v) => rearFirstGrips(v, stand(v, 'empty')) !== undefined,
      words: (v, say) => {
        const bad = rearFirstGrips(v, stand(v, 'empty'));
        return `Empty, the rear locks first${bad ? ` ${gripsInWords(bad, say)}` : ''}. ${v.criticalRate > 0 ? '' : `Its rear brakes do ${say(v.rearBrakeFraction, 'share')} of the braking, and its rear tires carry only ${say(v.rearLoadFraction, 'share')} of it standing still: at least ${say(v.rearBrakeFraction - v.rearLoadFraction, 'share', 2)} too much before any braking takes load off them. `}A truck whose rear wheels lock turns around, and braking harder makes it worse.`;
      },
      todo: 'Do not drive it on the road like this. Move the bar toward the front, fit a larger rear bore or a valve, until the front is first on every grip, empty.',
      fires: {}, silent: { frontShare: 0.66 },
    },
    {
      id: 'rear-first-laden', level: 'danger', when: (v) => v.payload > 0 && rearFirstGrips(v, stand(v, 'laden')) !== undefined,
      words: 'With this load too the rear locks first on some road with a grip of 0.9 or less.',
      todo: 'Do not carry it like this. Move the split toward the front, and check where the load sits.',
      fires: { frontShare: 0.35 }, silent: {},
    },
    {
      id: 'margin-thin', level: 'warning', when: (v) => v.criticalRate >= 0.9 && v.criticalRate < 1,
      words: (v, say) => `The front is first on every usual road, but the critical rate of ${say(v.criticalRate, 'brakingRate', 2)} leaves little for brake pads, bar friction and the center of gravity. Among trucks built like this some lock the rear first.`,
      todo: 'Aim for 1.0 g or more as calculated, empty.',
      fires: { frontShare: 0.645 }, silent: { frontShare: 0.72 },
    },
    {
      id: 'rear-idle', level: 'caution', when: (v) => Math.min(v.frontLockRate, v.rearLockRate) < 0.8 * v.grip && v.frontLockRate < v.rearLockRate,
      words: (v, say) => `The front locks at ${say(v.frontLockRate, 'brakingRate')} on a road that has ${say(v.grip, 'friction')} to give: the rear brakes do little, and every stop is longer.`,
      todo: 'Some share may be there to give back to the rear, as long as the empty truck stays front first with margin.',
      fires: { frontShare: 0.92 }, silent: {},
    },
    {
      id: 'prove-it', level: 'danger',
      words: 'Paper does not know your brake pads, and in a bend the inner rear wheel is lighter and locks sooner than here. A truck that locks its rear first can spin into oncoming traffic on its first hard stop.',
      todo: 'Prove it on a closed lot before the road: empty bed, straight, from 25 to 30 mph, dry and then wet, someone filming both axles. Start with too much front, and keep another 0.05 to 0.10 g in hand for bends (common practice, no source).',
    },
  ],
  picture: {
    title: 'The truck as it starts to lock',
    describe: (v, say, at) => `From the side, nose to the left, ${bedNames[at]}. On grip ${say(v.grip, 'friction')}, ${order(v, loads[at] ?? 'empty', say)}.`,
    states: { label: 'Bed', names: bedNames },
    scene: (v, at, say) => {
      const load = loads[at] ?? 'empty';
      const s = stand(v, load);
      const l = locksOn(v, s, v.grip);
      return truckScene({
        wheelbase: v.wheelbase, cgAhead: v.wheelbase * (1 - s.rearFraction), cgHeight: s.heightRatio * v.wheelbase,
        ...(load === 'laden' && v.payload > 0 ? { load: { ahead: v.payloadAhead, height: v.payloadHeight } } : {}),
        locked: l.first,
        labels: {
          front: l.first !== 'rear' ? `at ${say(l.front, 'brakingRate')}` : l.frontNeverLocks ? 'never would lock' : `would lock at ${say(l.front, 'brakingRate')}`,
          rear: l.first !== 'front' ? `at ${say(l.rear, 'brakingRate')}` : `would lock at ${say(l.rear, 'brakingRate')}`,
        },
      });
    },
  },
  charts: [chart('empty'), chart('laden')],
  tables: [{
    caption: 'First to lock, and the hardest stop with every wheel rolling',
    head: ['Grip', 'Empty', 'at', 'Loaded', 'at'],
    rows: (v) => [0.3, 0.6, 0.9, 1.1].map((grip): readonly Cell[] => [{ value: grip, dimension: 'friction' }, ...loads.flatMap((load): Cell[] => {
      const l = locksOn(v, stand(v, load), grip);
      return [firstWords[l.first], { value: Math.min(l.front, l.rear), dimension: 'brakingRate' }];
    })]),
  }],
  paper: {
    assumptions: ['A straight line on the level, front and rear tires on the same road.', 'The brakes are cold and the share of the bar is what it is square.', 'With the valve open the split is the same at every pressure.', 'The rate of the axle that locks second is where it would lock if the first had not.'],
    leftOut: ['Drag of the engine: off the throttle in a low gear it brakes the rear tires, which on ice can be enough.', 'Grip that changes with load, and the loss of grip of a locked wheel.', 'A bend.', 'Springs and push-out of masters and calipers.'],
    sources: [
      { of: 'lock rates and critical rate', kind: 'derived', note: 'statics' },
      { of: 'an order that flips with grip', kind: 'from memory', id: 'wong', note: 'example 3.3, which carries rolling resistance in other terms' },
      { of: 'rear not before front for braking rates from 0.15 to 0.80', kind: 'published', id: 'fmvss-135', note: 'S7.2, in texts that quote it; a yardstick for new vehicles' },
      { of: 'a critical rate of 1.0 g or more, and 0.05 to 0.10 g more for bends', kind: 'common practice' },
    ],
    examples: [{
      source: 'Reference truck worked by hand: grip 0.7, gains 122.84 and 63.40 N/bar, front share 0.62',
      inputs: {
        grip: 0.7, frontShare: 0.62, frontMasterBore: 0.01778, rearMasterBore: 0.01778, frontBrakeGain: 122.84 / bar, rearBrakeGain: 63.4 / bar, rearValve: 'none', pedalRatio: 6.2, linkageEfficiency: 0.85,
        frontAxleLoad: 777.2, rearAxleLoad: 562.8, wheelbase: 2.743, cgHeight: 0.58, payload: 350, payloadAhead: 0.25, payloadHeight: 0.75,
      },
      results: {
        criticalRate: { value: 0.85, within: 0.002 }, frontLockRate: { value: 0.6637, within: 0.001 }, rearLockRate: { value: 0.7571, within: 0.001 },
        ladenRearLoadFraction: { value: 0.521, within: 0.001 }, ladenHeightRatio: { value: 0.2243, within: 0.002 }, ladenCriticalRate: { value: 1.252, within: 0.003 },
      },
    }],
    related: ['bias', 'adhesion', 'rear-valve', 'balance-bar', 'load-transfer'],
  },
});
