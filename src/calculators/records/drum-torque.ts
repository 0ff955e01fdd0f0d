import { isImpossible } from '../../engine/outcome.ts';
import { psi } from '../../units/si.ts';
import { drumFeed, factorOf, forceOf, frictionMovesMore, nearLocking, ruleOf } from '../helpers/drum-torque.ts';
import type { DrumValues } from '../helpers/drum-torque.ts';
import { defineCalculator } from '../record.ts';
import type { Values } from '../record.ts';
import type { At } from '../show.ts';
import { drumScene } from '../scenes/drum.ts';

const servo = (v: Values | DrumValues): boolean => v['drumType'] === 'duo-servo';
const plain = (v: Values): boolean => !servo(v);
const shoes = (v: DrumValues) => (servo(v) ? (['primary', 'secondary'] as const) : (['leading', 'trailing'] as const));

/** Brake factor against friction up to a little short of locking, or to twice what the drum has, so that a chart keeps its scale. */
function curve(v: DrumValues, type: DrumValues['drumType'], most: number): At[] {
  return Array.from({ length: 41 }, (_, k) => 0.1 + k * 0.01).flatMap((friction) => {
    const b = factorOf(v, friction, type);
    return isImpossible(b) || b.brakeFactor > most ? [] : [[friction, b.brakeFactor] as const];
  });
}

/** Brake force with another lining, or undefined where it locks. */
function withLining(v: DrumValues, friction: number): number | undefined {
  const b = factorOf(v, friction);
  return isImpossible(b) ? undefined : forceOf(v, b.brakeFactor).axleForce;
}

export default defineCalculator({
  ...drumFeed,
  version: 1,
  purpose: 'What the stock rear drums gave, shoe by shoe, and how far that moves when the lining’s friction does.',
  summary: (v, say) => `At ${say(v.rearPressure, 'pressure')} the drums brake the axle with ${say(v.drumBrakeForce, 'force')}, ${say(v.drumTorque, 'torque')} at each wheel; the ${shoes(v)[servo(v) ? 1 : 0]} shoe does ${say(Math.max(v.firstShoeFactor, v.secondShoeFactor) / v.brakeFactor, 'share')} of it. One percent of lining friction is worth ${say(v.frictionSensitivity, 'ratio')} % of torque here; with a disc it is 1 %.`,
  equations: [
    { result: 'wheelCylinderArea', expression: 'pi * wheelCylinderDiameter^2 / 4', words: 'One piston’s face. Its twin pushes the other shoe just as hard.', source: 'derived' },
    { result: 'shoeTipForce', expression: 'max(0, rearPressure - drumPushOut) * wheelCylinderArea', words: 'The shoe springs take the first pressure; the rest pushes.', source: 'derived: pressure times area' },
    { result: 'liningSine', expression: '((liningEnd - liningStart) / 2 - (sin(2 * liningEnd) - sin(2 * liningStart)) / 4) / (cos(liningStart) - cos(liningEnd))', words: 'A rigid shoe turned about its lower end presses as the sine of the angle. This is where that pressure sits, on average.', source: 'derived: integral over the lining' },
    { result: 'liningCosine', expression: '(sin(liningEnd)^2 - sin(liningStart)^2) / (2 * (cos(liningStart) - cos(liningEnd)))', words: 'How far below center it sits: 0 for a lining in the middle.', source: 'derived: integral over the lining' },
    { result: 'firstShoeFactor', expression: 'liningFriction * shoeHeight / (shoePivot * liningSine - liningFriction * (drumRadius - shoePivot * liningCosine))', words: 'Moments about the lower end: the drum drags this shoe into itself, so its friction stands with a minus below the line.', source: 'derived: free body of the shoe' },
    { result: 'secondShoeFactor', expression: 'liningFriction * shoeHeight / (shoePivot * liningSine + liningFriction * (drumRadius - shoePivot * liningCosine))', words: 'The trailing shoe is pushed away by the drum: a plus.', source: 'derived: free body of the shoe', when: plain },
    { result: 'linkPush', expression: 'firstShoeFactor * ((shoeHeight - shoePivot) * liningSine / liningFriction + drumRadius + (shoeHeight - shoePivot) * liningCosine) / shoeHeight', words: 'Moments of the primary about the cylinder’s line: what it hands on through the adjuster.', source: 'derived: free body of the primary shoe', when: servo },
    {
      result: 'secondShoeFactor', expression: 'liningFriction * (linkPush * (shoeHeight + anchorAbove) + anchorAbove) / ((shoeHeight - shoePivot + anchorAbove) * liningSine - liningFriction * (drumRadius + (shoeHeight - shoePivot + anchorAbove) * liningCosine))',
      words: 'The secondary is pushed by the adjuster, turns about the anchor pin and is dragged in as well.', source: 'derived: free body of the secondary shoe', when: servo,
    },
    { result: 'brakeFactor', expression: 'firstShoeFactor + secondShoeFactor', words: 'Both shoes together.', source: 'derived' },
    { result: 'drumTorque', expression: 'shoeTipForce * brakeFactor * drumRadius * drumEfficiency', words: 'Push on a tip, times what the shoes make of it, at the drum’s radius.', source: 'derived: friction at the drum’s radius' },
    { result: 'firstShoeTorque', expression: 'drumTorque * firstShoeFactor / brakeFactor', words: 'Its part. This lining wears first.', source: 'derived', when: plain },
    { result: 'firstShoeTorque', expression: 'drumTorque * firstShoeFactor / brakeFactor', words: 'The primary’s part.', source: 'derived', when: servo },
    { result: 'secondShoeTorque', expression: 'drumTorque - firstShoeTorque', words: 'The rest.', source: 'derived' },
    { result: 'drumBrakeForce', expression: '2 * drumTorque / loadedRadius', words: 'Two wheels, each torque over the tire’s radius.', source: 'derived: torque over tire radius' },
    { result: 'drumGain', expression: '2 * wheelCylinderArea * brakeFactor * drumRadius * drumEfficiency / loadedRadius', words: 'Force at the road for each unit of pressure above push-out.', source: 'derived' },
    { result: 'lockFriction', expression: 'shoePivot * liningSine / (drumRadius - shoePivot * liningCosine)', words: 'Where the lower line of the leading shoe reaches zero, it needs no push any more.', source: 'derived', when: plain },
    { result: 'lockFriction', expression: 'min(shoePivot * liningSine / (drumRadius - shoePivot * liningCosine), (shoeHeight - shoePivot + anchorAbove) * liningSine / (drumRadius + (shoeHeight - shoePivot + anchorAbove) * liningCosine))', words: 'The first of the two shoes to get there.', source: 'derived', when: servo },
    { result: 'frictionSensitivity', expression: '(lockFriction^2 + liningFriction^2) / (lockFriction^2 - liningFriction^2)', words: 'The slope of the logarithms: how much faster torque moves than friction.', source: 'derived: d ln B/d ln μ', when: plain },
    {
      result: 'frictionSensitivity',
      expression: '1 + (firstShoeFactor^2 * (drumRadius - shoePivot * liningCosine) / shoeHeight + liningFriction * ((linkPush * firstShoeFactor * (drumRadius - shoePivot * liningCosine) / shoeHeight + firstShoeFactor * (drumRadius + (shoeHeight - shoePivot) * liningCosine) / shoeHeight) * (shoeHeight + anchorAbove) + secondShoeFactor * (drumRadius + (shoeHeight - shoePivot + anchorAbove) * liningCosine)) / ((shoeHeight - shoePivot + anchorAbove) * liningSine - liningFriction * (drumRadius + (shoeHeight - shoePivot + anchorAbove) * liningCosine))) / brakeFactor',
      words: 'The slope of the logarithms; the friction counts in both shoes and in what one hands to the other.', source: 'derived: d ln B/d ln μ', when: servo,
    },
    { result: 'brakeFactorByRule', expression: '2 * liningFriction * shoeHeight * shoePivot / (shoePivot^2 - liningFriction^2 * drumRadius^2)', words: 'The simple lever rule: each lining is one block, level with the axle, rubbing at the drum’s radius.', source: 'derived: free body with a short block', when: plain },
    { result: 'brakeFactorByRule', expression: '2 * liningFriction * shoeHeight * shoePivot / (shoePivot - liningFriction * drumRadius)^2', words: 'The same rule for two shoes that both lead, with their ends equally far from the axle.', source: 'derived: free body with a short block', when: servo },
  ],
  cautions: [
    {
      id: 'near-locking', level: 'danger', when: nearLocking,
      words: (v, say) => `These shoes lock by themselves at friction ${say(v.lockFriction, 'friction')}, and the lining has ${say(v.liningFriction, 'friction')}. So close to it, damp morning rust or a touch of grease is a locked rear wheel, and the numbers here are no guess of the brake.`,
      todo: 'Check the measurements. If they hold, another lining, and no driving on this one.',
      fires: { liningFriction: 0.6 }, silent: {},
    },
    {
      id: 'friction-moves-more', level: 'warning', when: frictionMovesMore,
      words: (v, say) => `Torque moves ${say(v.frictionSensitivity, 'ratio')} times as fast as friction. A lining that grips 10 % more on a cold morning gives about ${say(v.frictionSensitivity * 0.1, 'share', 2)} more at the rear axle, where an empty pickup has no load to hold it.`,
      todo: 'With drums kept, set the balance with the grippiest lining you might fit, or fit discs.',
      fires: { drumType: 'duo-servo' }, silent: {},
    },
    {
      id: 'shoes-that-slide', level: 'warning',
      words: (v) => `This takes each shoe as turning about its end. ${servo(v) ? 'The adjuster of a duo-servo cannot hold a shoe from creeping along' : 'Many leading shoes slide on a flat anchor block instead'}, and then the drum gives less: ${servo(v) ? '6 to 20' : '8 to 22'} % less for linings of 110 degrees at friction 0.30 to 0.40 (derived). A disc matched to a drum that was reckoned too strong brakes the rear too hard.`,
      todo: 'Take the gauge and decelerometer readings of the whole truck before the drums come off; they beat this page.',
    },
    {
      id: 'water', level: 'warning',
      words: 'A drum holds water. After a ford or a car wash it has a fraction of its friction, seldom the same left and right, and takes several stops to dry; a disc throws it off in about one (common practice, no source).',
      todo: 'With drums: drag the brakes lightly after deep water until the pedal feels as before.',
    },
    {
      id: 'lining-dust', level: 'warning',
      words: 'Old drum dust may hold asbestos. Blown or brushed dry, it goes into your lungs and your family’s laundry.',
      todo: 'Wet it down and wipe it up; no compressed air. Bag the rags.',
    },
    {
      id: 'springs-hold', level: 'caution', when: (v) => v.rearPressure <= v.drumPushOut,
      words: (v, say) => `At ${say(v.rearPressure, 'pressure')} the shoe springs still hold the shoes off: nothing rubs below ${say(v.drumPushOut, 'pressure')}.`,
      todo: 'Type the pressure of a real stop.',
      fires: { rearPressure: 60 * psi }, silent: {},
    },
  ],
  picture: {
    title: 'The left drum from outside, front of the truck on the left, to scale',
    describe: (v, say) => `The cylinder, ${say(v.shoeHeight, 'length')} above the lower shoe ends, pushes each shoe out with ${say(v.shoeTipForce, 'force')}. Rolling forward the drum turns against the clock. The front shoe, ${shoes(v)[0]}, gives ${say(v.firstShoeTorque, 'torque')}; the rear one, ${shoes(v)[1]}, ${say(v.secondShoeTorque, 'torque')}. The linings run from ${say(v.liningStart, 'angle')} to ${say(v.liningEnd, 'angle')}, counted from straight down.`,
    scene: (v, _at, say) => drumScene({
      radius: v.drumRadius, pivot: v.shoePivot, cylinder: v.shoeHeight - v.shoePivot, anchor: servo(v) ? v.shoeHeight - v.shoePivot + v.anchorAbove : undefined, cylinderRadius: Math.min(v.wheelCylinderDiameter / 2, v.drumRadius * 0.2), lining: [v.liningStart, v.liningEnd],
      labels: { push: `${say(v.shoeTipForce, 'force')} each way`, first: [shoes(v)[0], say(v.firstShoeTorque, 'torque')], second: [shoes(v)[1], say(v.secondShoeTorque, 'torque')] },
    }),
  },
  charts: [{
    title: 'Brake factor against friction: these shoes both ways, and a disc',
    x: { label: 'friction', dimension: 'friction' },
    y: { label: 'brake factor', dimension: 'ratio' },
    series: (v) => {
      const most = Math.max(6, 2 * v.brakeFactor);
      return [
        { label: 'as a duo-servo', tone: 'rear', points: curve(v, 'duo-servo', most) },
        { label: 'leading and trailing', tone: 'front', points: curve(v, 'leading-trailing', most) },
        { label: 'disc, two faces', tone: 'plain', points: [[0.1, 0.2], [0.5, 1]] },
      ];
    },
    marks: (v) => [{ at: [v.liningFriction, v.brakeFactor], label: 'yours', tone: 'alert' }],
    describe: (v, say) => `A disc’s factor is twice its friction, a straight line. Yours is ${say(v.brakeFactor, 'ratio')} at friction ${say(v.liningFriction, 'friction')} and bends upward, without limit at ${say(v.lockFriction, 'friction')}, where a shoe locks by itself. The same shoes as a duo-servo lie highest and bend most.`,
  }],
  tables: [
    {
      caption: 'The simple lever rule against the full integral: brake factor of each shoe',
      head: ['Shoe', 'Lever rule', 'Integral', 'Torque'],
      rows: (v) => {
        const rule = ruleOf(v);
        const [one, two] = isImpossible(rule) ? [0, 0] : [rule.firstFactor, rule.secondFactor];
        return [
          [shoes(v)[0], { value: one, dimension: 'ratio' }, { value: v.firstShoeFactor, dimension: 'ratio' }, { value: v.firstShoeTorque, dimension: 'torque' }],
          [shoes(v)[1], { value: two, dimension: 'ratio' }, { value: v.secondShoeFactor, dimension: 'ratio' }, { value: v.secondShoeTorque, dimension: 'torque' }],
          ['both', { value: v.brakeFactorByRule, dimension: 'ratio' }, { value: v.brakeFactor, dimension: 'ratio' }, { value: v.drumTorque, dimension: 'torque' }],
        ];
      },
    },
    {
      caption: 'Other linings, and a disc that equals the drum at yours',
      head: ['Friction', 'This drum', 'Such a disc'],
      rows: (v) => [0.25, 0.3, 0.35, 0.4, 0.45].map((friction) => {
        const force = withLining(v, friction);
        return [{ value: friction, dimension: 'friction' }, force === undefined ? 'locks' : { value: force, dimension: 'force' }, { value: (v.drumBrakeForce * friction) / v.liningFriction, dimension: 'force' }];
      }),
    },
  ],
  paper: {
    assumptions: [
      'The shoe is rigid, bedded to the drum, and turns about its lower end (the secondary of a duo-servo about the anchor pin), so pressure goes as the sine of the angle from that end.', 'Both shoes have the same lining. One cylinder with two equal pistons per wheel.',
      'The lower shoe ends, the axle’s center and the cylinder stand on one upright line.', 'Rolling forward. In reverse the shoes change roles and the sum stays.', 'The brake factor is the friction of both shoes over the push on one tip; a disc’s, counted the same way, is twice its friction.',
    ],
    leftOut: ['Shoes that slide or creep along their ends: the caution beside the result says what that takes.', 'Bending of shoe and drum, a drum worn out of round, friction in the anchor.', 'A drum grown by heat: the shoes follow it with more fluid and fit it worse.', 'Wear between adjustments, which lengthens the pedal and not the brake.'],
    sources: [
      { of: 'brake factor of a pinned shoe', kind: 'from memory', id: 'shigley', note: 'method of chapter 16; derived here again from the free body and cut in strips by a test' },
      { of: 'duo-servo from two free bodies', kind: 'derived', note: 'no published worked answer was found' },
      { of: 'sizes, friction, spring pressure', kind: 'common practice' },
    ],
    examples: [
      {
        source: 'Worked by hand: shoe 200 mm tall, end 100 mm from center, rubbing at 100 mm, friction 0.38: the lever rule gives 1.78',
        inputs: { drumType: 'leading-trailing', shoeHeight: 0.2, shoePivot: 0.1, drumRadius: 0.1000001, liningFriction: 0.38 },
        results: { brakeFactorByRule: { value: 1.78, within: 0.003 } },
      },
      {
        source: 'The same shoe at friction 0.45: 2.26',
        inputs: { drumType: 'leading-trailing', shoeHeight: 0.2, shoePivot: 0.1, drumRadius: 0.1000001, liningFriction: 0.45 },
        results: { brakeFactorByRule: { value: 2.26, within: 0.003 } },
      },
      {
        source: 'Shigley, example 16-2 (from memory): drum 300 mm, lining to 126 degrees, friction 0.32, 2.28 kN on each shoe: 366 and 162 N·m',
        inputs: { drumType: 'leading-trailing', drumRadius: 0.15, shoePivot: Math.hypot(0.112, 0.05), shoeHeight: 0.212, liningStart: 0, liningEnd: (126 * Math.PI) / 180, liningFriction: 0.32, drumPushOut: 0, drumEfficiency: 1, wheelCylinderDiameter: 0.02, rearPressure: 2280 / (Math.PI * 1e-4) },
        results: { firstShoeTorque: { value: 366, within: 0.0015 }, secondShoeTorque: { value: 162, within: 0.003 }, drumTorque: { value: 528, within: 0.001 } },
      },
    ],
    related: ['rear-discs', 'disc-to-match', 'disc-torque', 'bias'],
  },
});
