import { lbf, psi } from '../../units/si.ts';
import { efficiencyDoubtful, gaugeCautions, shareChanges, shareDoubtful } from '../helpers/gauge-cautions.ts';
import { backwards, gaugeResults } from '../helpers/gauge-fit.ts';
import { gaugeCharts, gaugeSummary, gaugeTables } from '../helpers/gauge-show.ts';
import { defineCalculator } from '../record.ts';

/** Pressures of a truck worked by hand: 6.2 × 0.85 on two 0.70 in masters, 62 % in front. */
const area = (Math.PI / 4) * 0.01778 ** 2;
const byHand = ([['down', [25, 50, 75, 100, 110]], ['up', [100, 75, 50, 25, 15]]] as const).flatMap(([foot, forces]) => forces.map((pounds) => ({
  foot, force: pounds * lbf, front: (pounds * lbf * 6.2 * 0.85 * 0.62) / area, rear: (pounds * lbf * 6.2 * 0.85 * 0.38) / area,
})));
const bent = Array.from({ length: 10 }, (_, k) => {
  const inlet = (k + 1) * 80 * psi;
  return { foot: 'down' as const, force: (k + 1) * 10 * lbf, front: (k + 1) * 100 * psi, rear: inlet > 400 * psi ? 400 * psi + 0.4 * (inlet - 400 * psi) : inlet };
});

export default defineCalculator({
  id: 'gauge-fit',
  version: 1,
  title: 'What the gauges say',
  purpose: 'Two pressure gauges and a scale on the standing truck: the real share of the bar, the real efficiency of the linkage, whether anything sticks, and whether the truck is the one on paper.',
  inputs: [
    { title: 'Readings', of: ['gaugeReadings'] },
    { title: 'Gauges and release', of: ['gaugeRange', 'releasePressure'] },
    { title: 'The paper: pedal, bar and masters', of: ['pedalRatio', 'linkageEfficiency', 'barOffset', 'barSpacing', 'frontMasterBore', 'rearMasterBore', 'masterSpring'] },
    { title: 'The paper: rear valve', of: ['rearValve', 'kneePressure', 'valveSlope'] },
  ],
  outputs: [
    'measuredShare', 'shareError', 'measuredEfficiency', 'barFreedom', 'pressureHysteresis', 'gaugeAgreement', 'measuredKnee', 'measuredSlope',
    'efficiencyError', 'paperShare', 'shareOff', 'frontFootGain', 'rearFootGain', 'frontOffsetForce', 'rearOffsetForce', 'paperDifference', 'oneLinePressure',
  ],
  howSure: { draws: 1000 },
  carries: [
    { to: 'frontShare', from: 'measuredShare', refuses: (v) => (shareChanges(v) ? 'Above the bend the truck has another share: find out what the bar meets first.' : shareDoubtful(v) ? 'It is too far from the bar’s turns: find out why first.' : efficiencyDoubtful(v) ? 'The efficiency says that a measurement is wrong: find it first.' : undefined) },
    { to: 'linkageEfficiency', from: 'measuredEfficiency', refuses: (v) => (backwards(v) ? 'The two ways look exchanged: sort the readings first.' : efficiencyDoubtful(v) ? 'No linkage is like that: find the wrong number first.' : undefined) },
    { to: 'kneePressure', from: 'measuredKnee', when: (v) => v.rearValve === 'fitted', refuses: (v) => (v.measuredKnee === 0 ? 'No bend was seen.' : undefined) },
    { to: 'valveSlope', from: 'measuredSlope', when: (v) => v.rearValve === 'fitted', refuses: (v) => (v.measuredKnee === 0 ? 'No bend was seen.' : undefined) },
  ],
  compute: gaugeResults,
  summary: gaugeSummary,
  equations: [
    { result: 'paperShare', expression: '1 / 2 + barOffset / barSpacing', words: 'What the bar’s turns promise: the clevis nearer the pivot gets the larger share.', source: 'derived: free body of the bar' },
    { result: 'measuredShare', expression: 'frontFootGain / (frontFootGain + rearFootGain)', words: 'Slopes, not single readings: a spring or a scale that is not at zero moves the lines and leaves their slopes.', source: 'derived: free body of the bar' },
    { result: 'measuredEfficiency', expression: '(frontFootGain + rearFootGain) / pedalRatio', words: 'What arrives at both pistons for each pound of foot, over what a lever without loss would give.', source: 'derived: moment balance about the pedal pivot' },
    { result: 'shareOff', expression: 'measuredShare - paperShare', words: 'More than three points apart: suspect a bar that binds (common practice, no source).', source: 'defined' },
  ],
  methods: [
    { result: 'frontFootGain', words: 'The straight line that misses the readings going down least, by squares of pressure; its slope times the master’s area.', source: 'derived: least squares' },
    { result: 'rearFootGain', words: 'The same for the rear. If the line bends, only readings below the bend are used: above it the slope is the valve’s.', source: 'derived: least squares' },
    { result: 'frontOffsetForce', words: 'Where that line meets zero pressure: return springs, or a scale that was not at zero.', source: 'derived' },
    { result: 'rearOffsetForce', words: 'The same for the rear.', source: 'derived' },
    { result: 'shareError', words: 'One standard deviation, from how far the readings lie off their lines. A gauge that is wrong by a fixed part does not show in it: two percent of one gauge is half a point of share.', source: 'derived: errors of the two slopes, with what they have in common' },
    { result: 'efficiencyError', words: 'From the same scatter. A scale read wrong moves both gauges alike: that cancels in the share and not here.', source: 'derived' },
    { result: 'pressureHysteresis', words: 'At 50 lbf, between the two nearest readings of each way: pressure coming up less pressure going down, over their sum.', source: 'derived; 5 % as the limit is common practice, no source' },
    { result: 'measuredKnee', words: 'Two lines that meet, through rear against front pressure going down, wherever they miss least. It counts as a bend if chance would make it in fewer than one case of twenty, the slope drops below 0.8 of what it was, and one line misses by more than 0.2 % of the highest rear pressure. A bend upward, to more than 1.4 times the slope, is no valve: if chance would make it in fewer than one case of a hundred, only readings below it are used, in both lines.', source: 'derived: least squares, F test' },
    { result: 'measuredSlope', words: 'The slope after the bend over the slope before it.', source: 'derived' },
    { result: 'paperDifference', words: 'Every reading going down against the pressure that ratio, efficiency, turns, bores, springs and valve promise; the one that is off by the largest part.', source: 'derived; 7 % as the limit is common practice, no source' },
    { result: 'oneLinePressure', words: 'All of the push of the hardest reading on the smaller master: what the failure test can put on a gauge.', source: 'derived' },
  ],
  cautions: gaugeCautions,
  charts: gaugeCharts,
  tables: gaugeTables,
  paper: {
    assumptions: [
      'The truck stands, both circuits bled. Each push is held three seconds before it is read.', 'The foot pushes square to the arm, through the scale.', 'The pedal ratio is the one where the pedal stands while you read.',
      'Going down means never easing off between readings; coming up means never pushing on.', 'The paper’s share comes from the bar’s turns, also when you have taken the measured one over; its efficiency is the one in use.',
    ],
    leftOut: [
      'A gauge that reads wrong by a fixed part (one that is wrong by fixed psi moves a line and not its slope): swap the two and read again; the share must not move.', 'Errors of bores and pedal ratio: they go into the efficiency whole.', 'A ratio that changes through the travel: the line is then a little curved.',
      'The share above the hardest reading: a bar may meet its stop there. Read as far as the hardest push you plan.', 'Readings of zero pressure: they say only that the push was below the spring.', 'Coming up, a line above its bend: a valve lags there.',
    ],
    sources: [
      { of: 'share, efficiency and offsets from slopes; bend; hysteresis', kind: 'derived', note: 'least squares, checked against two published data sets' },
      { of: '7 % against paper, 5 % of hysteresis, 3 points of share, 0.70 and 0.97 of efficiency, 5 psi left', kind: 'common practice' },
      { of: 'efficiency of 0.80 to 0.90 with a bar', kind: 'common practice' },
      { of: 'the readings shown at first', kind: 'defined', note: 'invented, in content/demo-rows.json' },
    ],
    examples: [
      {
        source: 'Reference truck worked by hand: its own pressures, both ways alike',
        inputs: { gaugeReadings: byHand, pedalRatio: 6.2, linkageEfficiency: 0.85, barOffset: 0.00762, barSpacing: 0.0635, frontMasterBore: 0.01778, rearMasterBore: 0.01778, masterSpring: 0, rearValve: 'none' },
        results: { measuredShare: { value: 0.62, within: 1e-9 }, measuredEfficiency: { value: 0.85, within: 1e-9 }, frontFootGain: { value: 3.2674, within: 1e-4 }, oneLinePressure: { value: 110 * lbf * 5.27 / area, within: 1e-9 } },
      },
      {
        source: 'Worked by hand: ten readings, rear 0.8 of the front up to 400 psi, then 0.4 of that',
        inputs: { gaugeReadings: bent, rearValve: 'fitted', frontMasterBore: 0.01778, rearMasterBore: 0.01778 },
        results: { measuredKnee: { value: 400 * psi, within: 1e-6 }, measuredSlope: { value: 0.4, within: 1e-6 }, measuredShare: { value: 1 / 1.8, within: 1e-9 } },
      },
    ],
    related: ['first-drive', 'line-pressure', 'balance-bar', 'rear-valve', 'lock-order'],
  },
});
