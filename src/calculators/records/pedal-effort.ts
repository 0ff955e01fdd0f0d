import { boosterForce, pedalEffort } from '../../engine/booster.ts';
import { inch, kPa, lbf } from '../../units/si.ts';
import { defineCalculator } from '../record.ts';
import type { ValuesOf } from '../record.ts';

type Inputs = 'controlForce' | 'pedalRatio' | 'stockPedalRatio' | 'linkageEfficiency' | 'boosterDiameter' | 'boosterDiaphragms' | 'boosterVacuum' | 'boostGain' | 'cutInForce' | 'boosterSpring';

/** What hub, rod and return spring leave of vacuum times area: common practice, no source. */
const areaFactor = 0.9;
/** 500 N: what the light-vehicle brake standard lets its test driver push. */
const testLimit = 500;

function booster(v: ValuesOf<Inputs>) {
  return { boostGain: v.boostGain, cutInForce: v.cutInForce, diameter: v.boosterDiameter, diaphragms: v.boosterDiaphragms, vacuum: v.boosterVacuum, areaFactor };
}

function efforts(v: ValuesOf<Inputs>) {
  return pedalEffort({ ...booster(v), controlForce: v.controlForce, manualRatio: v.pedalRatio, boostedRatio: v.stockPedalRatio, efficiency: v.linkageEfficiency, springForce: v.boosterSpring });
}

export default defineCalculator({
  id: 'pedal-effort',
  version: 1,
  title: 'Pedal effort',
  purpose: 'What the leg feels with the booster, without it, and on the day it fails.',
  inputs: [
    { title: 'Foot and levers', of: ['controlForce', 'pedalRatio', 'stockPedalRatio', 'linkageEfficiency'] },
    { title: 'Booster that is there now', of: ['boosterDiameter', 'boosterDiaphragms', 'boosterVacuum', 'boostGain', 'cutInForce', 'boosterSpring'] },
  ],
  outputs: ['effortMultiplier', 'manualRodForce', 'boostedRodForce', 'failedRodForce', 'equivalentManualForce', 'failedEquivalentForce', 'runOutControlForce', 'boosterRodForce', 'boosterHelp', 'boosterLargestHelp'],
  compute: (v) => {
    if (!(v.boostGain > 1)) return { refused: () => 'A booster with a gain of 1 gives back what it gets: it never helps and never runs out. Type a gain above 1.' };
    const r = efforts(v);
    const rodForce = v.controlForce * v.stockPedalRatio * v.linkageEfficiency;
    const b = boosterForce({ ...booster(v), rodForce });
    return {
      effortMultiplier: r.effortMultiplier, manualRodForce: r.manualRodForce, boostedRodForce: r.boostedRodForce, failedRodForce: r.failedRodForce, equivalentManualForce: r.equivalentManualForce,
      failedEquivalentForce: r.failedEquivalentForce, runOutControlForce: r.runOutControlForce, boosterRodForce: rodForce, boosterHelp: b.assist, boosterLargestHelp: b.runOutAssist,
    };
  },
  summary: (v, say) => `${say(v.controlForce, 'force')} on the boosted pedal puts ${say(v.boostedRodForce, 'force')} on the rod. The manual pedal needs ${say(v.equivalentManualForce, 'force')} for that, ${say(v.effortMultiplier, 'ratio')} times the foot force; the boosted one with its booster dead needs ${say(v.failedEquivalentForce, 'force')}.`,
  equations: [
    { result: 'manualRodForce', expression: 'controlForce * pedalRatio * linkageEfficiency', words: 'On a manual pedal the lever is all there is.', source: 'derived: moment balance about the pedal pivot' },
    { result: 'boosterRodForce', expression: 'controlForce * stockPedalRatio * linkageEfficiency', words: 'The boosted pedal has a shorter lever, so less reaches its rod.', source: 'derived: moment balance about the pedal pivot' },
    { result: 'boosterLargestHelp', expression: '0.9 * boosterDiaphragms * boosterVacuum * pi * boosterDiameter^2 / 4', words: 'Outside air on one face, vacuum on the other: the most it can give is that difference times the area, less a tenth for hub, rod and return spring.', source: 'derived: free body of the diaphragm; the 0.9 is common practice, no source' },
    { result: 'boosterHelp', expression: 'min((boostGain - 1) * max(0, boosterRodForce - cutInForce), boosterLargestHelp)', words: 'Past cut-in each pound in brings the gain out, until the help is spent.', source: 'derived: the valve meters air so that output follows input' },
    { result: 'boostedRodForce', expression: 'boosterRodForce + boosterHelp', words: 'Foot and booster push on the same rod.', source: 'derived' },
    { result: 'failedRodForce', expression: 'max(0, boosterRodForce - boosterSpring)', words: 'A dead booster still has its return spring, and that now works against the foot.', source: 'derived' },
    { result: 'equivalentManualForce', expression: 'boostedRodForce / (pedalRatio * linkageEfficiency)', words: 'The foot force the manual pedal asks for the same push.', source: 'derived' },
    { result: 'failedEquivalentForce', expression: '(boostedRodForce + boosterSpring) / (stockPedalRatio * linkageEfficiency)', words: 'The foot force the dead booster asks for the same push.', source: 'derived' },
    { result: 'effortMultiplier', expression: 'equivalentManualForce / controlForce', words: 'How many times harder the leg works. With no foot at all there is no help, and only the two levers compare.', source: 'derived', when: (v) => (v['controlForce'] as number) > 0 },
    { result: 'runOutControlForce', expression: '(cutInForce + boosterLargestHelp / (boostGain - 1)) / (stockPedalRatio * linkageEfficiency)', words: 'Where the help is spent. From there a pound more is a pound more.', source: 'derived' },
  ],
  cautions: [
    {
      id: 'bores-were-for-the-booster', level: 'warning',
      words: 'A master sized for a booster expects the booster’s push. Behind a manual pedal it makes too little pressure, and the truck may not stop in time.',
      todo: 'Take pressure to the road with the braking rate calculator before you buy a bore, then check pedal travel. Prove the new brakes below 20 mph on empty ground first.',
    },
    {
      id: 'more-than-a-leg', level: 'warning', when: (v) => v.equivalentManualForce > testLimit,
      words: (v, say) => `The manual pedal would need ${say(v.equivalentManualForce, 'force')} for what the booster does at ${say(v.controlForce, 'force')}. The light-vehicle brake test allows its driver ${say(testLimit, 'force')}, and a small driver may have only ${say(70 * lbf, 'force')} to ${say(90 * lbf, 'force')} (from memory, not checked against the text).`,
      todo: 'The lever cannot make it up alone. Smaller bores, better brake pads or larger calipers must, or keep a booster. Measure your weakest driver’s push with a bathroom scale.',
      fires: {}, silent: { controlForce: 30 * lbf },
    },
    {
      id: 'dead-booster', level: 'warning', when: (v) => v.failedEquivalentForce > 150 * lbf,
      words: (v, say) => `With the engine dead and its vacuum used up, this stop needs ${say(v.failedEquivalentForce, 'force')} on the boosted pedal. Few drivers have that.`,
      todo: 'This is the truck as it stands, so know it. If a booster stays, check its hose and check valve, and pump it empty once with the truck parked to learn the feel.',
      fires: {}, silent: { controlForce: 20 * lbf },
    },
    {
      id: 'ran-out', level: 'caution', when: (v) => v.controlForce >= v.runOutControlForce,
      words: (v, say) => `The booster has run out at ${say(v.runOutControlForce, 'force')}. Above that the comparison flatters the manual pedal: in everyday stops the difference is larger.`,
      todo: 'Compare at 30 to 45 lbf (130 to 200 N) as well, where most stops are made.',
      fires: {}, silent: { controlForce: 30 * lbf },
    },
    {
      id: 'vacuum-low', level: 'caution', when: (v) => v.boosterVacuum < 50 * kPa,
      words: (v, say) => `${say(v.boosterVacuum, 'vacuum')} is little vacuum. A healthy engine idles at 15 to 22 inHg near sea level (common practice, no source); a hot cam, a leak or high ground takes some away.`,
      todo: 'Look for a leak before you blame the booster.',
      fires: { boosterVacuum: 34 * kPa }, silent: {},
    },
    {
      id: 'lever-too-long', level: 'caution', when: (v) => v.pedalRatio > 7,
      words: (v, say) => `A ratio of ${say(v.pedalRatio, 'ratio')} buys push with travel: the pedal pad moves ${say(v.pedalRatio, 'ratio')} in for each inch of rod, and the floor is not far.`,
      todo: 'Check pedal travel at the foot force you need, and with one circuit dead.',
      fires: { pedalRatio: 7.5 }, silent: {},
    },
    {
      id: 'law', level: 'notice',
      words: 'Some places do not let you take a booster out, or want an engineer’s letter for it.',
      todo: 'Ask your inspection office before you cut, in writing.',
    },
  ],
  charts: [{
    title: 'Push on the rod against foot force',
    x: { label: 'foot force', dimension: 'force' },
    y: { label: 'rod force', dimension: 'force' },
    series: (v) => {
      const last = Math.max(130 * lbf, 1.15 * v.controlForce);
      const cutIn = v.cutInForce / (v.stockPedalRatio * v.linkageEfficiency);
      const spring = v.boosterSpring / (v.stockPedalRatio * v.linkageEfficiency);
      const feet = [0, cutIn, spring, v.runOutControlForce, last].filter((f) => f <= last).sort((a, b) => a - b);
      const line = (of: 'manualRodForce' | 'boostedRodForce' | 'failedRodForce') => feet.map((f) => [f, efforts({ ...v, controlForce: f })[of]] as const);
      return [
        { label: 'with booster', tone: 'frame', points: line('boostedRodForce') },
        { label: 'manual', tone: 'accent', points: line('manualRodForce') },
        { label: 'booster dead', tone: 'ghost', points: line('failedRodForce') },
      ];
    },
    marks: (v) => {
      const last = Math.max(130 * lbf, 1.15 * v.controlForce);
      const runOut = v.runOutControlForce <= last ? [{ at: [v.runOutControlForce, efforts({ ...v, controlForce: v.runOutControlForce }).boostedRodForce] as const, label: 'run-out' }] : [];
      return [...runOut, { at: [v.controlForce, v.manualRodForce], label: 'you' }];
    },
    describe: (v, say) => {
      const even = efforts(v).breakEvenForce;
      return `With the booster the push climbs ${say(v.boostGain, 'ratio')} times as steeply as with the booster dead, up to run-out at ${say(v.runOutControlForce, 'force')}; from there it climbs no faster than the dead one. The manual line is straight${even === undefined ? '' : ` and would catch up at ${say(even, 'force')}`}.`;
    },
  }],
  tables: [{
    caption: 'Rod force at four foot forces',
    head: ['Foot force', 'Boosted', 'Manual', 'Booster dead'],
    rows: (v) => [25, 50, 75, 100].map((pounds) => {
      const r = efforts({ ...v, controlForce: pounds * lbf });
      return [{ value: pounds * lbf, dimension: 'force' }, { value: r.boostedRodForce, dimension: 'force' }, { value: r.manualRodForce, dimension: 'force' }, { value: r.failedRodForce, dimension: 'force' }];
    }),
  }],
  paper: {
    assumptions: ['A steady push.', 'One linkage efficiency for all three pedals.', 'Hub, rod and return spring leave 90 % of vacuum times area.', 'The vacuum stays what the gauge reads.'],
    leftOut: ['The jump at cut-in and the lag on a fast stab.', 'Vacuum used up by the stroke: after the engine stops, one to three helped stops are left (common practice, no source).', 'Bores. Rod forces alone are compared; smaller masters make up the rest and cost travel.'],
    sources: [
      { of: 'booster: pressure difference times area', kind: 'derived', note: 'no published worked example was found' },
      { of: '0.9 of the area', kind: 'common practice' },
      { of: 'gain 2.5 to 6, vacuum 15 to 22 inHg', kind: 'common practice' },
      { of: 'foot force of 500 N', kind: 'published', id: 'fmvss-135', note: 'S7.5, the most its test driver may use; a yardstick, not a target' },
      { of: 'small driver 70 to 90 lbf', kind: 'from memory' },
    ],
    examples: [
      {
        source: 'Worked by hand: 200 N, ratios 6.2 and 3.6, gain 4, cut-in 50 N, one 9 in diaphragm at 60 kPa',
        inputs: { controlForce: 200, pedalRatio: 6.2, stockPedalRatio: 3.6, linkageEfficiency: 0.85, boostGain: 4, cutInForce: 50, boosterDiameter: 9 * inch, boosterDiaphragms: 1, boosterVacuum: 60 * kPa, boosterSpring: 67 },
        results: { boosterRodForce: { value: 612, within: 1e-9 }, boostedRodForce: { value: 612 + 3 * 562, within: 1e-9 }, manualRodForce: { value: 1054, within: 1e-9 }, failedRodForce: { value: 545, within: 1e-9 }, effortMultiplier: { value: 2298 / 1054, within: 1e-9 }, boosterLargestHelp: { value: 2216.4, within: 1e-4 } },
      },
      {
        source: 'Statics: 500 mmHg (66.66 kPa) on one 254 mm diaphragm is 3,378 N gross, nine tenths of it here',
        inputs: { boosterDiameter: 0.254, boosterDiaphragms: 1, boosterVacuum: 66.66 * kPa },
        results: { boosterLargestHelp: { value: 0.9 * 3378, within: 0.0005 } },
      },
    ],
    related: ['manual-or-boosted', 'pedal-ratio', 'line-pressure', 'braking-rate'],
  },
});
