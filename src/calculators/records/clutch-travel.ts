import { defineCalculator } from '../record.ts';
import type { Refusal, Say, ValuesOf } from '../record.ts';
import { standardBores } from '../../units/index.ts';
import { clutchCautions } from '../helpers/clutch-cautions.ts';
import { at, bearingTravelOf, clutchResults, padFor, pedalEnd } from '../helpers/clutch.ts';
import type { ClutchInputs, V } from '../helpers/clutch.ts';
import { clutchScene } from '../scenes/clutch.ts';

const chain = 'derived: fluid is kept, and each lever is a ratio';
const byForce = 'derived: balance of forces at fork, slave and master';

/** Where the pedal lets the clutch go, in words. */
function release(v: ValuesOf<ClutchInputs | 'bearingTravel' | 'releaseTravel' | 'releaseAboveFloor' | 'bearingLimit'>, say: Say): string {
  const missing = v.bearingTravelNeeded - v.bearingTravel;
  if (missing > 0) return `the clutch needs ${say(v.bearingTravelNeeded, 'length')}, so ${say(missing, 'length')} are missing and it never lets go`;
  const where = v.releaseAboveFloor > 0 ? `${say(v.releaseAboveFloor, 'length')} above the carpet` : 'at the carpet';
  return `the clutch lets go at ${say(v.releaseTravel, 'length')} of pedal, ${where}`;
}

const padTo = (bearing: string): string => `clutchFreePlay + clutchPedalRatio * (clutchPortStroke + slaveArea * (forkRatioUsed * ${bearing} + slavePlay) / (clutchMasterArea * volumetricEfficiency))`;

function refuse(v: V): Refusal | undefined {
  if (v.slaveType === 'ring' && v.ringInner >= v.ringOuter) {
    return { refused: (say) => `The ring-shaped slave’s inner diameter is ${v.ringInner > v.ringOuter ? `${say(v.ringInner - v.ringOuter, 'length')} larger than` : 'the same as'} its outer one. No area is left to push with.` };
  }
  if (v.bearingTravelAllowed < v.bearingTravelNeeded) {
    return { refused: (say) => `The diaphragm bears ${say(v.bearingTravelNeeded - v.bearingTravelAllowed, 'length')} less than the clutch needs to let go. One of the two is misread.` };
  }
  return undefined;
}

export default defineCalculator({
  id: 'clutch-travel',
  version: 1,
  title: 'Clutch pedal to release bearing',
  purpose: 'How far the pedal moves the release bearing against what the clutch needs and bears, the effort, and where the pedal stop belongs.',
  inputs: [
    { title: 'Pedal', of: ['clutchPadTravel', 'clutchFloorTravel', 'clutchPedalRatio', 'clutchFreePlay', 'clutchEfficiency'] },
    { title: 'Master and line', of: ['clutchMasterBore', 'clutchMasterStroke', 'clutchPortStroke', 'volumetricEfficiency'] },
    { title: 'Slave', of: ['slaveType', 'slavePlay', 'slaveStrokeLimit'] },
    { title: 'Slave at a fork', of: ['slaveBore', 'forkRatio'] },
    { title: 'Ring-shaped slave', of: ['ringOuter', 'ringInner'] },
    { title: 'Clutch', of: ['bearingForce', 'bearingTravelNeeded', 'bearingTravelAllowed', 'stopReserve'] },
  ],
  outputs: [
    'bearingTravel', 'releaseTravel', 'releaseAboveFloor', 'clutchStopTravel', 'clutchControlForce', 'limitTravel', 'bearingLimit', 'wornBearingTravel', 'slaveStroke', 'clutchTravelUsed',
    'clutchMasterStrokeUsed', 'clutchPressure', 'clutchTotalRatio', 'forkRatioUsed', 'slaveArea', 'clutchMasterArea',
  ],
  compute: (v) => refuse(v) ?? clutchResults(v),
  howSure: { quick: (v) => refuse(v) ?? { bearingTravel: bearingTravelOf(v) } },
  summary: (v, say) => `${say(v.clutchTravelUsed, 'length')} of pedal moves the bearing ${say(v.bearingTravel, 'length')}: ${release(v, say)}. The pedal takes ${say(v.clutchControlForce, 'force')}.`,
  equations: [
    { result: 'clutchMasterArea', expression: 'pi * clutchMasterBore^2 / 4', words: 'The piston’s face is a circle.', source: 'derived' },
    { result: 'slaveArea', expression: 'pi * slaveBore^2 / 4', words: 'So is the slave’s.', source: 'derived', when: (v) => v['slaveType'] === 'fork' },
    { result: 'slaveArea', expression: 'pi * ringOuter^2 / 4 - pi * ringInner^2 / 4', words: 'A ring: the large circle less the small one.', source: 'derived', when: (v) => v['slaveType'] === 'ring' },
    { result: 'forkRatioUsed', expression: 'forkRatio', words: 'The fork turns slave travel into less bearing travel with more force.', source: 'derived', when: (v) => v['slaveType'] === 'fork' },
    { result: 'forkRatioUsed', expression: '1', words: 'A ring-shaped slave carries the bearing itself.', source: 'derived', when: (v) => v['slaveType'] === 'ring' },
    { result: 'clutchTravelUsed', expression: 'min(clutchPadTravel, clutchFloorTravel, clutchFreePlay + clutchPedalRatio * clutchMasterStroke)', words: 'Stop, carpet, or the end of the master’s bore: whichever comes first.', source: 'derived' },
    { result: 'clutchMasterStrokeUsed', expression: 'max(0, clutchTravelUsed - clutchFreePlay) / clutchPedalRatio', words: 'Past the free play the pedal pushes the piston, ratio times less far.', source: chain },
    { result: 'slaveStroke', expression: 'volumetricEfficiency * clutchMasterArea * max(0, clutchMasterStrokeUsed - clutchPortStroke) / slaveArea', words: 'The fluid pushed past the port, less what hose and seals swallow, fills the slave.', source: chain },
    { result: 'bearingTravel', expression: 'max(0, slaveStroke - slavePlay) / forkRatioUsed', words: 'What is left of it after the play, divided by the fork.', source: chain },
    { result: 'wornBearingTravel', expression: 'slaveStroke / forkRatioUsed', words: 'The clutch plate wears and the fingers come to meet the bearing: with the play gone, the bearing goes this far past the touch.', source: chain },
    { result: 'bearingLimit', expression: 'min(bearingTravelAllowed, max(0, slaveStrokeLimit - slavePlay) / forkRatioUsed)', words: 'The diaphragm’s limit, or the end of the slave’s stroke if that comes first.', source: chain },
    { result: 'releaseTravel', expression: padTo('bearingTravelNeeded'), words: 'The same chain read backward, from the travel the clutch needs to the pedal pad.', source: chain },
    { result: 'limitTravel', expression: padTo('bearingLimit'), words: 'And from the limit.', source: chain },
    { result: 'releaseAboveFloor', expression: 'clutchFloorTravel - releaseTravel', words: 'What is left of the pedal’s room at release.', source: 'derived' },
    { result: 'clutchStopTravel', expression: `min(${padTo('(1 + stopReserve) * bearingTravelNeeded')}, limitTravel, clutchFloorTravel, clutchFreePlay + clutchPedalRatio * clutchMasterStroke)`, words: 'Release plus the reserve, but never past the limit, the carpet or the bore’s end.', source: 'derived; the reserve is common practice' },
    { result: 'clutchPressure', expression: 'bearingForce / (forkRatioUsed * slaveArea)', words: 'The bearing’s force, eased by the fork, over the slave’s area.', source: byForce },
    { result: 'clutchControlForce', expression: 'clutchPressure * clutchMasterArea / (clutchPedalRatio * clutchEfficiency)', words: 'That pressure on the master’s area, eased by the pedal.', source: byForce },
    { result: 'clutchTotalRatio', expression: 'clutchPedalRatio * forkRatioUsed * slaveArea / clutchMasterArea', words: 'Three ratios in a row: pedal, bores, fork. It divides the travel and multiplies the force, both by the same number.', source: chain },
  ],
  cautions: clutchCautions,
  picture: {
    title: 'Pedal, master, slave and bearing',
    describe: (v, say, travel) => `Pedal and master from the side, front of the truck to the left. Travels are to scale, those of slave and bearing four times as large. At ${say(travel, 'length')} of pedal the slave has moved ${say(at(v, travel).slaveStroke, 'length')} and the bearing has pushed the diaphragm ${say(at(v, travel).bearingTravel, 'length')}. It lets go at ${say(v.bearingTravelNeeded, 'length')} and is at its limit at ${say(v.bearingLimit, 'length')}.`,
    motion: {
      label: 'pedal travel', dimension: 'length', range: (v) => [0, Math.max(pedalEnd(v), 1e-3)], start: (v) => v.clutchTravelUsed,
      say: (v, travel, say) => `${say(travel, 'length')}, bearing ${say(at(v, travel).bearingTravel, 'length')}`,
    },
    scene: (v, travel, say) => clutchScene({ ...v, ...at(v, travel), padTravel: travel, say }),
  },
  charts: [{
    title: 'Bearing travel against pedal travel',
    x: { label: 'pedal travel', dimension: 'length' },
    y: { label: 'bearing travel', dimension: 'length' },
    series: (v) => {
      const end = pedalEnd(v);
      const level = (bearing: number) => [[0, bearing], [end, bearing]] as const;
      return [
        { label: 'bearing', tone: 'accent', points: bends(v).map((s) => [s, at(v, s).bearingTravel] as const) },
        { label: 'lets go', tone: 'plain', points: level(v.bearingTravelNeeded) },
        { label: 'limit', tone: 'alert', points: level(v.bearingLimit) },
      ];
    },
    marks: (v) => [{ at: [v.clutchTravelUsed, v.bearingTravel], label: 'you', tone: v.bearingTravel < v.bearingTravelNeeded || v.bearingTravel > v.bearingLimit ? 'alert' : 'plain' }],
    describe: (v, say) => `The bearing stands still until free play, port and play are used up at ${say(padFor(v, 0), 'length')} of pedal, then follows in a straight line, 1 for every ${say((v.releaseTravel - padFor(v, 0)) / v.bearingTravelNeeded, 'ratio')} of pedal. ${v.bearingLimit < v.bearingTravelNeeded ? `Its limit of ${say(v.bearingLimit, 'length')} comes before the ${say(v.bearingTravelNeeded, 'length')} it needs: nowhere is the clutch free and unharmed.` : `Between the two level lines, ${say(v.bearingTravelNeeded, 'length')} and ${say(v.bearingLimit, 'length')}, the clutch is free and unharmed.`} You end at ${say(v.bearingTravel, 'length')}.`,
  }],
  tables: [{
    caption: 'What another master bore would do',
    head: ['Bore', 'Lets go at', 'Above carpet', 'Effort'],
    rows: (v) => standardBores.filter(({ si }) => si < 0.023).map(({ label, si }) => {
      const r = clutchResults({ ...v, clutchMasterBore: si });
      return [label, { value: r.releaseTravel, dimension: 'length' }, r.releaseAboveFloor > 0 ? { value: r.releaseAboveFloor, dimension: 'length' } : 'never', { value: r.clutchControlForce, dimension: 'force' }];
    }),
  }],
  paper: {
    assumptions: [
      'The pedal ratio is the same through the swing. The pedal ratio calculator shows how much yours changes.',
      'Fork, pedal and firewall are rigid.',
      'Hose and seals swallow the same part of the fluid at every stroke; in truth it follows the pressure.',
      'The effort is for the force you typed. A diaphragm asks most before it lets go and less after.',
    ],
    leftOut: ['Air in the line, which adds travel before anything moves.', 'Bending of fork and firewall, which eats bearing travel.', 'Return springs and the friction of the fork on its pivot.', 'Expansion of fluid in a hot line.'],
    sources: [
      { of: 'the whole chain', kind: 'derived', note: 'fluid kept, force times travel kept; no published worked example was found' },
      { of: 'bearing travel 7 to 10 mm, stop 10 to 15 % past release, 1 to 3 mm of play at a fork', kind: 'common practice' },
      { of: 'effort 80 to 180 N (18 to 40 lbf), change something above 220 N (50 lbf)', kind: 'common practice' },
      { of: 'no federal rule asks for a start switch on a manual gearbox', kind: 'published', id: 'fmvss-102', note: 'agency letters; refit it anyway' },
    ],
    examples: [{
      source: 'Worked by hand: 130 mm of pad, 12 mm of it free, 6:1, 19.05 on 20.6 mm, fork 1.5, 93 % of the fluid, 1500 N: slave 15.6, bearing 10.4 mm, 168 N',
      inputs: { clutchPadTravel: 0.13, clutchFloorTravel: 0.15, clutchFreePlay: 0.012, clutchPedalRatio: 6, clutchMasterBore: 0.01905, clutchMasterStroke: 0.03, clutchPortStroke: 0, volumetricEfficiency: 0.93, clutchEfficiency: 0.85, slaveType: 'fork', slaveBore: 0.0206, slavePlay: 0, forkRatio: 1.5, bearingForce: 1500, bearingTravelNeeded: 0.009, bearingTravelAllowed: 0.0105, slaveStrokeLimit: 0.03 },
      results: { slaveStroke: { value: 0.0156, within: 0.004 }, bearingTravel: { value: 0.0104, within: 0.005 }, clutchControlForce: { value: 168, within: 0.003 }, releaseTravel: { value: 0.1138, within: 0.001 }, clutchStopTravel: { value: 0.1261, within: 0.001 } },
    }],
    related: ['hydraulic-clutch', 'pedal-ratio'],
  },
});

/** The pedal travels at which the line of the chart bends, and its ends. */
function bends(v: V): number[] {
  const end = pedalEnd(v);
  return [0, Math.min(padFor(v, 0), end), end];
}
