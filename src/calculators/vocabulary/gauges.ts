import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { lbf, psi } from '../../units/si.ts';

const reading = {
  dimension: 'pressure',
  hard: { min: 0, max: 5000 * psi, reason: 'line pressure lies between 0 and 5,000 psi' },
  tolerance: { relative: 0.02 },
} as const;

/** Two gauges and a scale between foot and pad, on a truck that stands; and what they give away. */
export const gauges = {
  gaugeReadings: {
    name: 'gauge readings', row: 'reading', least: 5, most: 40,
    measure: 'Push to the foot force, hold three seconds, read both gauges, then push on to the next. From the hardest one come up the same way, stopping at the same forces and never pushing on again. Five down and five up at the least, with one each at 50 lbf (222 N).',
    columns: {
      foot: { name: 'foot', options: { down: 'going down', up: 'coming up' }, measure: 'Going down: pushing harder than at the reading before. Coming up: easing off since the hardest one.' },
      force: {
        name: 'foot force', dimension: 'force',
        usual: { min: 10 * lbf, max: 112 * lbf, source: commonPractice },
        hard: { min: 1 * lbf, max: 450 * lbf, reason: 'a reading is taken with between 1 and 450 lbf on the pedal' },
        measure: 'Scale between foot and pad, pushed square to the arm: a push that leans reads too much for what it does.', tolerance: { relative: 0.02 },
      },
      front: { name: 'front pressure', ...reading, measure: 'Gauge in a front bleeder port or a tee of the front line.' },
      rear: { name: 'rear pressure', ...reading, measure: 'Gauge in a rear bleeder port: after the valve, if there is one.' },
    },
  },
  gaugeRange: {
    name: 'highest mark on the smaller gauge', symbol: 'p_full', dimension: 'pressure',
    usual: { min: 1500 * psi, max: 3000 * psi, source: commonPractice },
    hard: { min: 50 * psi, max: 10000 * psi, reason: 'the dial ends between 50 and 10,000 psi' },
    measure: 'Read it off both dials: 2,000 or 3,000 psi for this work. A lower one bursts in the failure test.', tolerance: { relative: 0.02 },
  },
  releasePressure: {
    name: 'pressure left one second after release, the higher of the two', symbol: 'p_left', dimension: 'pressure',
    usual: { min: 0, max: 5 * psi, source: commonPractice },
    hard: { min: 0, max: 5000 * psi, reason: 'line pressure lies between 0 and 5,000 psi' },
    measure: 'Let the pedal up at once and count one. A 3,000 psi dial cannot show 5 psi: type what it shows, spin each wheel by hand, and crack a bleeder. Fluid that jumps is pressure, whatever the dial says.', tolerance: { absolute: 5 * psi },
  },
  // results
  measuredShare: { name: 'front share by the gauges', symbol: 's_g', dimension: 'share' },
  shareError: { name: 'error of that share from the scatter of the readings, ±', symbol: 'δ_s', dimension: 'share' },
  measuredEfficiency: { name: 'linkage efficiency by the gauges', symbol: 'η_g', dimension: 'share' },
  efficiencyError: { name: 'error of that efficiency from the scatter of the readings, ±', symbol: 'δ_η', dimension: 'share' },
  pressureHysteresis: { name: 'largest hysteresis at 50 lbf (222 N), either circuit (0 also where not measured)', symbol: 'h_50', dimension: 'share' },
  barFreedom: {
    name: 'does the bar swing free',
    options: {
      free: 'nothing sticks: within 5 % both ways', bar: 'the bar itself sticks: front and rear part ways', drag: 'the pedal, rods or seals drag: both circuits stay high alike', both: 'more than 5 %, and where it comes from cannot be told',
      noisy: 'cannot tell: the readings scatter too much', unread: 'cannot tell: no readings coming up', bracket: 'cannot tell: no readings on both sides of 50 lbf (222 N)',
    },
  },
  gaugeAgreement: { name: 'does the truck agree with the paper', options: { agrees: 'yes, every reading within 7 %', differs: 'no' } },
  paperDifference: { name: 'gauge less paper, at the reading that differs most', symbol: 'Δp_g', dimension: 'pressure' },
  measuredKnee: { name: 'knee pressure by the gauges (0: no bend seen)', symbol: 'p_k,g', dimension: 'pressure' },
  measuredSlope: { name: 'slope above the knee by the gauges (1: no bend seen)', symbol: 'm_v,g', dimension: 'ratio' },
  paperShare: { name: 'front share from the bar’s turns', symbol: 's_0', dimension: 'share' },
  shareOff: { name: 'front share, gauges less turns', symbol: 'Δs_g', dimension: 'share' },
  frontFootGain: { name: 'push on the front piston for each pound of foot', symbol: 'j_f', dimension: 'ratio' },
  rearFootGain: { name: 'push on the rear piston for each pound of foot', symbol: 'j_r', dimension: 'ratio' },
  frontOffsetForce: { name: 'foot force before the front line rises', symbol: 'F_0f', dimension: 'force' },
  rearOffsetForce: { name: 'foot force before the rear line rises', symbol: 'F_0r', dimension: 'force' },
  oneLinePressure: { name: 'pressure if one line got all of the hardest push read', symbol: 'p_one', dimension: 'pressure' },
} as const satisfies Record<string, Entry>;
