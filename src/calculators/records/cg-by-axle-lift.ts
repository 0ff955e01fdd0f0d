import { cgByAxleLift } from '../../engine/cgHeight.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { deg, inch, lb, mm } from '../../units/si.ts';
import { defineCalculator } from '../record.ts';
import type { Refusal, ValuesOf } from '../record.ts';
import { axleLiftScene } from '../scenes/axle-lift.ts';

type Inputs = 'frontAxleLoad' | 'rearAxleLoad' | 'wheelbase' | 'loadedRadius' | 'lift1' | 'liftReading1' | 'lift2' | 'liftReading2' | 'lift3' | 'liftReading3' | 'scaleError';
type V = ValuesOf<Inputs>;

const names = ['first', 'second', 'third'] as const;
const lifts = (v: V) => [{ lift: v.lift1, frontReading: v.liftReading1 }, { lift: v.lift2, frontReading: v.liftReading2 }, { lift: v.lift3, frontReading: v.liftReading3 }] as const;
const steepest = (v: V): number => Math.max(v.lift1, v.lift2, v.lift3);

/** With no angle error every lift weighs alike, so that the fit can be followed by hand; a tape reading is that good. */
const solve = (v: V) => cgByAxleLift({
  frontLoad: v.frontAxleLoad, rearLoad: v.rearAxleLoad, wheelbase: v.wheelbase, loadedRadius: v.loadedRadius, lifts: lifts(v),
  scaleError: v.scaleError, angleError: 0, radiusError: v.loadedRadius / 100,
});

function refuse(code: string, by: number): Refusal {
  return {
    refused: (say) => ({
      'lift-not-below-wheelbase': `A lift is ${say(by, 'length')} over what the wheelbase allows: the tail of a truck that stands on its nose is one wheelbase up. Check both.`,
      'reading-above-total': `A front reading is ${say(by, 'mass')} more than the whole truck weighs on the level. Check the readings.`,
      'cg-not-above-ground': `These readings put the center of gravity ${say(by, 'length')} under the road. The front must read more, not less, as the tail goes up: check the readings and the lifts.`,
    })[code] ?? 'These readings fit no truck.',
  };
}

export default defineCalculator({
  id: 'cg-by-axle-lift',
  version: 1,
  title: 'Height of the center of gravity by axle lift',
  purpose: 'How high the center of gravity is, from what the front scales gain as the rear axle goes up.',
  inputs: [
    { title: 'Level', of: ['frontAxleLoad', 'rearAxleLoad', 'wheelbase', 'loadedRadius', 'scaleError'] },
    { title: 'First lift', of: ['lift1', 'liftReading1'] },
    { title: 'Second lift', of: ['lift2', 'liftReading2'] },
    { title: 'Third lift', of: ['lift3', 'liftReading3'] },
  ],
  outputs: ['measuredCgHeight', 'cgSpread', 'gainSlope', 'fitScatter', 'liftTangent1', 'liftTangent2', 'liftTangent3', 'mass', 'rearLoadFraction'],
  compute: (v) => {
    const r = solve(v);
    if (isImpossible(r)) return refuse(r.impossible, r.by ?? 0);
    const [first, second, third] = r.perLift.map((lift) => lift.tangent) as [number, number, number];
    const mass = v.frontAxleLoad + v.rearAxleLoad;
    return {
      measuredCgHeight: r.cgHeight, cgSpread: r.spread, gainSlope: r.slope, fitScatter: r.residual ?? 0,
      liftTangent1: first, liftTangent2: second, liftTangent3: third, mass, rearLoadFraction: v.rearAxleLoad / mass,
    };
  },
  howSure: { errorOf: { scaleError: ['frontAxleLoad', 'rearAxleLoad', 'liftReading1', 'liftReading2', 'liftReading3'] } },
  summary: (v, say) => `The center of gravity is ${say(v.measuredCgHeight, 'length')} above the road, give or take ${say(v.cgSpread, 'length', 2)} (two times in three) from the scale error and 1 % of tire radius. The three gains lie within about ${say(v.fitScatter, 'mass', 2)} of one line.`,
  equations: [
    { result: 'mass', expression: 'frontAxleLoad + rearAxleLoad', words: 'The level readings, added.', source: 'derived' },
    { result: 'rearLoadFraction', expression: 'rearAxleLoad / mass', words: 'The rear’s part of it.', source: 'derived' },
    ...([1, 2, 3] as const).map((k) => ({ result: `liftTangent${k}` as const, expression: `lift${k} / sqrt(wheelbase^2 - lift${k}^2)`, words: 'Rise over level length: the wheelbase is the long side of the triangle.', source: 'derived: right triangle' })),
    {
      result: 'gainSlope',
      expression: '((liftReading1 - frontAxleLoad) * liftTangent1 + (liftReading2 - frontAxleLoad) * liftTangent2 + (liftReading3 - frontAxleLoad) * liftTangent3) / (liftTangent1^2 + liftTangent2^2 + liftTangent3^2)',
      words: 'The straight line through zero that comes nearest to the three gains: no lift, no gain.', source: 'derived: least squares; load against the tangent as in ISO 10392:2011, 6.2',
    },
    { result: 'measuredCgHeight', expression: 'loadedRadius + gainSlope * wheelbase / mass', words: 'The gain tells how far the center stands above the axles; the tires hold the axles up by their radius.', source: 'derived: moments about the lifted axle' },
    {
      result: 'fitScatter',
      expression: 'sqrt(((liftReading1 - frontAxleLoad - gainSlope * liftTangent1)^2 + (liftReading2 - frontAxleLoad - gainSlope * liftTangent2)^2 + (liftReading3 - frontAxleLoad - gainSlope * liftTangent3)^2) / 2)',
      words: 'How far the gains stray from that line.', source: 'derived: three gains less the one slope taken from them',
    },
    {
      result: 'cgSpread',
      expression: 'sqrt((wheelbase * scaleError / mass)^2 * (1 / (liftTangent1^2 + liftTangent2^2 + liftTangent3^2) + ((liftTangent1 + liftTangent2 + liftTangent3) / (liftTangent1^2 + liftTangent2^2 + liftTangent3^2))^2) + (loadedRadius / 100)^2)',
      words: 'Each lifted reading is off by its own scale error. The level reading’s error is in all three gains, so more lifts do not thin it out. The radius adds 1 % of itself.', source: 'derived: errors taken as independent',
    },
  ],
  cautions: [
    {
      id: 'nobody-under', level: 'danger',
      words: 'A truck with its tail up, brakes off and out of gear rolls or slips off its support, and kills whoever is under it or in its way.',
      todo: 'Level concrete, stands rated for the axle, nobody under or in the truck. Chock the front wheels both ways a finger clear, so that they catch the truck but push on nothing while you read. Lower it before you fetch a tool from below.',
    },
    {
      id: 'suspension-locked', level: 'notice',
      words: 'Soft springs, dragging brakes, a gear left in or fuel that runs forward each move the front reading by more than the height does, and the answer is fiction.',
      todo: 'Block the suspension solid at ride height, front and rear. Brakes off, out of gear, tank full or empty, tires hard, driver replaced by sandbags in the seat.',
    },
    {
      id: 'reads-backward', level: 'warning', when: (v) => v.gainSlope <= 0,
      words: (v, say) => `The front reads less as the tail goes up, which would put the center of gravity below the axles, at ${say(v.measuredCgHeight, 'length')}. No pickup is like that, and brakes set by it would lock the rear.`,
      todo: 'Look for dragging brakes, tight chocks, loose suspension blocks or swapped readings, and repeat.',
      fires: { liftReading1: 1705 * lb, liftReading2: 1700 * lb, liftReading3: 1695 * lb }, silent: {},
    },
    {
      id: 'not-on-a-line', level: 'caution', when: (v) => v.fitScatter > 2 * v.scaleError,
      words: (v, say) => `The gains stray ${say(v.fitScatter, 'mass', 2)} from a line, more than twice the scale error of ${say(v.scaleError, 'mass')}. Something moved or dragged, and the spread above does not cover it.`,
      todo: 'Check blocks, brakes and scale zero. Repeat the lift that stands out in the table.',
      fires: { liftReading2: 1785 * lb }, silent: {},
    },
    {
      id: 'spread-wide', level: 'caution', when: (v) => v.cgSpread > 1 * inch,
      words: (v, say) => `A spread of ${say(v.cgSpread, 'length', 2)} either way is too wide to set brakes by.`,
      todo: 'Lift higher, or use better scales. The error shrinks in step with the lift.',
      fires: { scaleError: 8 * lb }, silent: { scaleError: 1 * lb },
    },
    {
      id: 'lifts-small', level: 'notice', when: (v) => steepest(v) < 0.15 * v.wheelbase,
      words: (v, say) => `The highest lift is ${say(steepest(v) / v.wheelbase, 'share')} of the wheelbase. The gain drowns in the scale error.`,
      todo: 'Take at least one lift between 15 and 25 % of the wheelbase.',
      fires: { lift1: 8 * inch, lift2: 10 * inch, lift3: 12 * inch }, silent: {},
    },
    {
      id: 'lifts-steep', level: 'warning', when: (v) => steepest(v) > 0.25 * v.wheelbase,
      words: (v, say) => `At ${say(Math.asin(steepest(v) / v.wheelbase), 'angle')} nose down the truck pushes hard on its chocks, fuel and oil run forward and the front tires squash.`,
      todo: 'Stay at or below a quarter of the wheelbase.',
      fires: { lift3: 30 * inch }, silent: {},
    },
    {
      id: 'outside-pickups', level: 'notice', when: (v) => v.measuredCgHeight > 0.75 || v.measuredCgHeight < 0.4,
      words: (v, say) => `${say(v.measuredCgHeight, 'length')} is outside what light pickups measure: stock ones ${say(0.514, 'length')} to ${say(0.705, 'length')}, lowered ones somewhat less.`,
      todo: 'Check the lifts: they are rises of the axle’s center, not heights above the floor.',
      fires: { liftReading1: 1775 * lb, liftReading2: 1808 * lb, liftReading3: 1840 * lb }, silent: {},
    },
  ],
  picture: {
    title: 'The truck on the scale, tail up',
    describe: (v, say, at) => {
      const { lift, frontReading } = lifts(v)[at] ?? lifts(v)[0];
      return `A pickup, front on the left, front wheels on a scale that reads ${say(frontReading, 'mass', 4)}, rear axle on a stand ${say(lift, 'length')} above level, nose down ${say(Math.asin(lift / v.wheelbase), 'angle')}. The center of gravity stands ${say(v.measuredCgHeight - v.loadedRadius, 'length')} off the line between the axles, so the plumb line through it has moved toward the front. Chocks stand clear of the front tires. Outline invented; wheelbase, tire radius, lift and center of gravity to scale.`;
    },
    states: { label: 'Lift', names: names.map((name) => `${name} lift`), start: 2 },
    scene: (v, at, say) => {
      const { lift, frontReading } = lifts(v)[at] ?? lifts(v)[0];
      return axleLiftScene({
        wheelbase: v.wheelbase, loadedRadius: v.loadedRadius, cgHeight: v.measuredCgHeight, rearFraction: v.rearLoadFraction, lift,
        labels: { lift: say(lift, 'length'), reading: `scale ${say(frontReading, 'mass', 4)}` },
      });
    },
  },
  charts: [{
    title: 'Gain of the front scale against the tilt',
    x: { label: 'tangent of the tilt', dimension: 'ratio' },
    y: { label: 'gain', dimension: 'mass' },
    series: (v) => {
      const end = 1.1 * Math.max(v.liftTangent1, v.liftTangent2, v.liftTangent3);
      return [{ label: 'line that fits best', tone: 'accent', points: [[0, 0], [end, v.gainSlope * end]] }];
    },
    marks: (v) => lifts(v).map(({ frontReading }, k) => ({ at: [[v.liftTangent1, v.liftTangent2, v.liftTangent3][k] as number, frontReading - v.frontAxleLoad] as const, label: String(k + 1) })),
    describe: (v, say) => `Gains of ${lifts(v).map(({ frontReading }) => say(frontReading - v.frontAxleLoad, 'mass')).join(', ')} against tangents of ${[v.liftTangent1, v.liftTangent2, v.liftTangent3].map((t) => say(t, 'ratio')).join(', ')}, and the line through zero that fits them: ${say(v.gainSlope, 'mass')} per unit of tangent.`,
  }],
  tables: [{
    caption: 'What each lift says alone',
    head: ['Lift', 'Tilt', 'Gain', 'Off the line', 'Height'],
    rows: (v, say) => {
      const r = solve(v);
      return isImpossible(r) ? [] : r.perLift.map((each, k) => [
        say(lifts(v)[k]?.lift ?? 0, 'length'), say(each.angle, 'angle'), say(each.gain, 'mass'), say(each.gain - r.slope * each.tangent, 'mass', 2), say(each.cgHeight, 'length'),
      ]);
    },
  }],
  paper: {
    assumptions: ['Suspension locked solid, wheels free to roll, front tires on the scales.', 'All tires have the same loaded radius. Where they differ, put in the mean weighted by load: the front’s radius counts with the front share of the load.', 'Each lift is the rise of the rear axle’s center above where it stands level.'],
    leftOut: [
      'Errors of the lifts. A tape good to 1/8 in (3 mm) moves a gain by 0.3 lb (0.15 kg) on the demo truck, well under the scale error.', 'Front tires squashed more than rear ones, and fuel that runs forward.',
      'A rear scale. Lifting the front as well, as the standard asks, checks the whole of it.',
    ],
    sources: [
      { of: 'three or more lifts, load plotted against the tangent', kind: 'published', id: 'iso-10392', note: 'clauses 6.2.2 to 6.2.6' },
      { of: 'laboratories differ from each other on this height', kind: 'published', id: 'umtri-91-4', note: 'so carry the answer as a band' },
      { of: 'range of stock pickups', kind: 'published', id: 'pickup-inertia' },
      { of: 'lifts of 10 to 25 % of the wheelbase, a finger between chock and tire', kind: 'common practice' },
    ],
    examples: [
      {
        source: 'Reference truck worked by hand: 1340 kg, 2.743 m, radius 0.300 m, gain 30.66 kg at 0.600 m, the same truth at two more lifts',
        inputs: {
          frontAxleLoad: 777.2, rearAxleLoad: 562.8, wheelbase: 2.743, loadedRadius: 0.3, scaleError: 0, lift1: 0.6, liftReading1: 777.2 + 30.66,
          lift2: 2.743 * Math.sin(6.4 * deg), liftReading2: 777.2 + ((1340 * 0.28) / 2.743) * Math.tan(6.4 * deg), lift3: 2.743 * Math.sin(9.6 * deg), liftReading3: 777.2 + ((1340 * 0.28) / 2.743) * Math.tan(9.6 * deg),
        },
        results: { measuredCgHeight: { value: 0.58, within: 0.0005 }, cgSpread: { value: 3 * mm, within: 1e-9 } },
      },
    ],
    related: ['bias', 'cg-after-drop', 'load-transfer', 'ideal-distribution'],
  },
});
