import { circleArea } from '../../engine/circle.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { lbf, mm, psi } from '../../units/si.ts';
import { swellFeed } from '../helpers/circuit-volume.ts';
import { discFeed } from '../helpers/disc-torque.ts';
import { fits, lampAlive, lampDead, share } from '../helpers/stop-lamp.ts';
import type { Lamp } from '../helpers/stop-lamp.ts';
import { defineCalculator, isRefusal } from '../record.ts';
import type { Equation, Refusal } from '../record.ts';
import type { LampPoint } from '../../engine/stopLamp.ts';

function refuse(v: Lamp): Refusal | undefined {
  const outside = Math.abs(v.barOffset) - v.barSpacing / 2;
  if (outside >= 0) return { refused: (say) => `The pivot stands ${say(outside, 'length')} outside a clevis. It must lie between them: a smaller offset or a wider bar.` };
  if (!(v.frontCompliance > 0 && v.rearCompliance > 0)) return { refused: () => 'A circuit that swells by nothing has no pressure that belongs to a stroke. Type a little swell, such as 0.01 cm³/bar.' };
  const leaning = Math.abs(v.barRestLead) - (v.barStop === 'none' ? v.barSpacing : v.barSpacing * Math.sin(v.barStopAngle));
  if (leaning > 0) return { refused: (say) => `At rest the bar leans ${say(leaning, 'length')} beyond its stop. Check the two rod lengths.` };
  return undefined;
}

/** Both circuits alive: the switch asked about, and one in each line. */
function alive(v: Lamp): { lamp: LampPoint; front: LampPoint; rear: LampPoint } | Refusal {
  const no = refuse(v);
  if (no) return no;
  const [front, rear] = [lampAlive(v, 'front'), lampAlive(v, 'rear')];
  const lamp = v.lampSwitch === 'front' ? front : v.lampSwitch === 'rear' ? rear : lampAlive(v, v.lampSwitch);
  if (lamp && front && rear) return { lamp, front, rear };
  return { refused: (say) => `${say(4000, 'force')} on the pedal does not make ${lamp ? 'a pressure switch in one of the lines' : 'this switch'}: the lamps would never light.` };
}

const dead = (v: Lamp, fit: Lamp['lampSwitch'], side: 'front' | 'rear'): LampPoint | undefined => {
  const at = lampDead(v, fit, side);
  return at !== undefined && isImpossible(at) ? undefined : at;
};

const lit = (p: LampPoint | undefined): 'lit' | 'dark' => (p ? 'lit' : 'dark');

/** Rate that the brakes give when a switch in this line makes: the other line's pressure follows from the same rod. */
function rateEquation(side: 'front' | 'rear'): Equation {
  const [own, other, share, otherShare] = side === 'front' ? ['front', 'rear', 'frontShare', '(1 - frontShare)'] : ['rear', 'front', '(1 - frontShare)', 'frontShare'];
  const there = `max(0, (switchPressure * ${own}MasterArea + masterSpring) * ${otherShare} / ${share} - masterSpring) / ${other}MasterArea`;
  return {
    result: `${side}SwitchRate`, expression: `(${own}BrakeGain * max(0, switchPressure - pushOutPressure) + ${other}BrakeGain * max(0, ${there} - pushOutPressure)) / ((frontAxleLoad + rearAxleLoad) * g)`,
    words: 'Both brakes at that moment over the weight: what a driver behind sees unlit.', source: 'derived: statics'
  };
}

export default defineCalculator({
  id: 'stop-lamp',
  version: 1,
  title: 'When the stop lamps light',
  purpose: 'The foot force and braking rate at which the stop lamps light, for each kind of switch, with both circuits alive and with one dead.',
  inputs: [
    { title: 'Switch', of: ['lampSwitch', 'switchPressure', 'switchTravel'] },
    { title: 'Pedal', of: ['pedalRatio', 'linkageEfficiency', 'pushrodFreePlay', 'padSpring', 'floorTravel'] },
    { title: 'Bar', of: ['barSpacing', 'barOffset', 'barRestLead', 'barStop', 'barStopAngle'] },
    { title: 'Masters', of: ['frontMasterBore', 'rearMasterBore', 'frontMasterStroke', 'rearMasterStroke', 'portStroke', 'masterSpring'] },
    { title: 'Fluid', of: ['frontTakeUp', 'rearTakeUp', 'frontCompliance', 'rearCompliance'] },
    { title: 'Brakes and truck', of: ['frontBrakeGain', 'rearBrakeGain', 'pushOutPressure', 'frontAxleLoad', 'rearAxleLoad', 'wheelbase', 'cgHeight', 'grip'] },
  ],
  feeds: [discFeed, swellFeed],
  outputs: [
    'lampRate', 'lampForce', 'lampTravel', 'lampFrontDead', 'lampForceFrontDead', 'lampRateFrontDead', 'lampTravelFrontDead', 'lampRearDead', 'lampForceRearDead', 'lampRateRearDead', 'lampTravelRearDead',
    'frontSwitchForce', 'rearSwitchForce', 'frontSwitchRate', 'rearSwitchRate', 'frontShare', 'frontMasterArea', 'rearMasterArea',
  ],
  compute: (v) => {
    const lamps = alive(v);
    if (isRefusal(lamps)) return lamps;
    const { lamp, front, rear } = lamps;
    const [fd, rd] = [dead(v, v.lampSwitch, 'front'), dead(v, v.lampSwitch, 'rear')];
    return {
      lampRate: lamp.rate, lampForce: lamp.controlForce, lampTravel: lamp.padTravel,
      lampFrontDead: lit(fd), lampForceFrontDead: fd?.controlForce ?? 0, lampRateFrontDead: fd?.rate ?? 0, lampTravelFrontDead: fd?.padTravel ?? 0, lampRearDead: lit(rd), lampForceRearDead: rd?.controlForce ?? 0, lampRateRearDead: rd?.rate ?? 0, lampTravelRearDead: rd?.padTravel ?? 0,
      frontSwitchForce: front.controlForce, rearSwitchForce: rear.controlForce, frontSwitchRate: front.rate, rearSwitchRate: rear.rate,
      frontShare: share(v), frontMasterArea: circleArea({ diameter: v.frontMasterBore }).area, rearMasterArea: circleArea({ diameter: v.rearMasterBore }).area,
    };
  },
  howSure: {
    draws: 1400,
    quick: (v) => {
      const lamps = alive(v);
      return isRefusal(lamps) ? lamps : { lampRate: lamps.lamp.rate };
    },
  },
  summary: (v, say) => {
    const one = (side: string, state: string, force: number, rate: number): string => (state === 'lit' ? `with the ${side} dead at ${say(force, 'force')} and ${say(rate, 'brakingRate')}` : `with the ${side} dead they stay dark`);
    return `The stop lamps light at ${say(v.lampForce, 'force')} on the pedal, with the truck braking at ${say(v.lampRate, 'brakingRate')}; ${one('front', v.lampFrontDead, v.lampForceFrontDead, v.lampRateFrontDead)}; ${one('rear', v.lampRearDead, v.lampForceRearDead, v.lampRateRearDead)}.`;
  },
  equations: [
    { result: 'frontShare', expression: '1 / 2 + barOffset / barSpacing', words: 'The clevis nearer the pivot gets the larger share.', source: 'derived: free body of the bar' },
    { result: 'frontMasterArea', expression: 'pi * frontMasterBore^2 / 4', words: 'The piston’s face is a circle.', source: 'derived' },
    { result: 'rearMasterArea', expression: 'pi * rearMasterBore^2 / 4', words: 'The same for the rear.', source: 'derived' },
    { result: 'frontSwitchForce', expression: '(switchPressure * frontMasterArea + masterSpring) / (frontShare * pedalRatio * linkageEfficiency) + padSpring', words: 'Pressure on the piston and its return spring, back through bar and lever; the pedal’s own spring comes on top.', source: 'derived: balance of forces' },
    { result: 'rearSwitchForce', expression: '(switchPressure * rearMasterArea + masterSpring) / ((1 - frontShare) * pedalRatio * linkageEfficiency) + padSpring', words: 'The rear’s share is smaller, so the foot must push harder for the same pressure.', source: 'derived: balance of forces' },
    rateEquation('front'), rateEquation('rear'),
    { result: 'lampRate', expression: 'frontSwitchRate', words: 'One switch, in the front line.', source: 'defined', when: (v) => v['lampSwitch'] === 'front' },
    { result: 'lampRate', expression: 'rearSwitchRate', words: 'One switch, in the rear line.', source: 'defined', when: (v) => v['lampSwitch'] === 'rear' },
    { result: 'lampRate', expression: 'min(frontSwitchRate, rearSwitchRate)', words: 'Two switches: the earlier one counts.', source: 'defined', when: (v) => v['lampSwitch'] === 'both' },
    { result: 'lampForce', expression: 'min(frontSwitchForce, rearSwitchForce)', words: 'Two switches: the earlier one counts.', source: 'defined', when: (v) => v['lampSwitch'] === 'both' },
    { result: 'lampTravel', expression: 'switchTravel', words: 'A switch on the pedal waits for travel, not for pressure. The force is the least at which the pedal has come so far.', source: 'defined', when: (v) => v['lampSwitch'] === 'pedal' },
  ],
  cautions: [
    {
      id: 'late', level: 'danger', when: (v) => v.lampRate > 0.06,
      words: (v, say) => `The truck brakes at ${say(v.lampRate, 'brakingRate')} before the lamps light. A driver who only slows gently, on a long hill or in traffic, shows no light at all.`,
      todo: 'Fit a switch on the pedal that makes within the first 3/8 in (10 mm).',
      fires: { lampSwitch: 'rear' }, silent: { lampSwitch: 'pedal' },
    },
    {
      id: 'lateish', level: 'warning', when: (v) => v.lampRate > 0.03 && v.lampRate <= 0.06,
      words: (v, say) => `The lamps light at ${say(v.lampRate, 'brakingRate')}. Easy braking goes unseen.`,
      todo: 'Fit a switch on the pedal, beside the pressure switches or instead of them.',
      fires: { lampSwitch: 'front', switchPressure: 50 * psi }, silent: { lampSwitch: 'pedal' },
    },
    {
      id: 'dark-when-dead', level: 'danger', when: (v) => v.lampFrontDead === 'dark' || v.lampRearDead === 'dark',
      words: (v) => `With the ${v.lampFrontDead === 'dark' ? (v.lampRearDead === 'dark' ? 'front or the rear' : 'front') : 'rear'} circuit dead the lamps stay dark, in the stop that takes longest.`,
      todo: 'A switch on the pedal, or one in each line in parallel. Then try it with a bleeder open.',
      fires: { lampSwitch: 'front' }, silent: { lampSwitch: 'pedal' },
    },
    {
      id: 'deep-first', level: 'warning', when: (v) => Math.max(v.lampTravelFrontDead, v.lampTravelRearDead) > 40 * mm,
      words: (v, say) => `With a circuit dead the bar swings before any pressure builds, so the lamps wait until the pedal is ${say(Math.max(v.lampTravelFrontDead, v.lampTravelRearDead), 'length')} down.`,
      todo: 'A switch on the pedal lights before that. It can stand beside the pressure switches.',
      fires: {}, silent: { lampSwitch: 'pedal' },
    },
    {
      id: 'always-on', level: 'warning', when: (v) => v.lampSwitch === 'pedal' && v.switchTravel < 3 * mm,
      words: (v, say) => `A switch that makes at ${say(v.switchTravel, 'length')} may never open again once the pedal’s bumper wears. Lamps that are always on say nothing.`,
      todo: 'Set 3/16 to 3/8 in (5 to 10 mm), and see that the lamps go out when the pedal is let go, hot and cold.',
      fires: { lampSwitch: 'pedal', switchTravel: 1.5 * mm }, silent: {},
    },
    {
      id: 'try-it', level: 'warning',
      words: 'A pressure switch makes anywhere from 60 to 120 psi (from memory), drifts with age and fails without a sign.',
      todo: 'Helper behind the truck, luggage scale on the pedal: the lamps must light at or below 4 to 6 lbf (20 to 25 N) with a pedal switch (common practice, no source). Try again with a front and then a rear bleeder open.',
    },
  ],
  charts: [{
    title: 'How hard the truck brakes unlit, by the switch’s pressure',
    x: { label: 'switch makes at', dimension: 'pressure' },
    y: { label: 'braking rate', dimension: 'brakingRate' },
    series: (v) => {
      const top = Math.max(150 * psi, 1.3 * v.switchPressure);
      return (['front', 'rear'] as const).map((side) => ({
        label: `switch in the ${side} line`, tone: side,
        points: Array.from({ length: 31 }, (_, k) => Math.max(0.001, k / 30) * top).flatMap((switchPressure) => {
          const at = lampAlive({ ...v, switchPressure }, side);
          return at ? [[switchPressure, at.rate] as const] : [];
        }),
      }));
    },
    marks: (v) => [{ at: [v.switchPressure, v.frontSwitchRate], label: 'front', tone: 'front' }, { at: [v.switchPressure, v.rearSwitchRate], label: 'rear', tone: 'rear' }],
    describe: (v, say) => `A switch of ${say(v.switchPressure, 'pressure')} makes at ${say(v.frontSwitchRate, 'brakingRate')} in the front line and at ${say(v.rearSwitchRate, 'brakingRate')} in the rear line. The line with less pressure is the late one.`,
  }],
  tables: [{
    caption: 'Foot force and braking rate at which each kind of switch lights the lamps',
    head: ['Switch', 'Both alive', 'Front dead', 'Rear dead'],
    rows: (v, say) => {
      const cell = (p: LampPoint | undefined): string => (p ? `${say(p.controlForce, 'force', 2)}, ${say(p.rate, 'brakingRate', 2)}` : 'dark');
      return fits.map(([fit, name]) => [name, cell(lampAlive(v, fit)), cell(dead(v, fit, 'front')), cell(dead(v, fit, 'rear'))]);
    },
  }],
  paper: {
    assumptions: ['A slow push.', 'Pressure switches sit between master and any valve.', 'Two switches are wired in parallel: the first to make lights the lamps.', 'With a circuit dead the bar behaves as on the page of the dead circuit, the masters’ springs left out there.'],
    leftOut: ['Hysteresis of the switch.', 'Seal friction beyond the linkage efficiency.', 'A rear valve.', 'The delay of a filament lamp, about a fifth of a second (from memory).'],
    sources: [
      { of: 'force and rate at the switch', kind: 'derived', note: 'statics' },
      { of: 'stop lamps light upon application of the service brakes; no threshold', kind: 'published', id: 'fmvss-108', note: 'agency letters' },
      { of: 'switch makes at 60 to 120 psi', kind: 'from memory' },
      { of: '5 to 10 mm of pedal travel; 0.03 and 0.06 g as limits here', kind: 'common practice' },
    ],
    examples: [
      {
        source: 'Reference truck worked by hand: 60 psi, both masters 0.70 in, no springs',
        inputs: { lampSwitch: 'front', switchPressure: 60 * psi, padSpring: 0, masterSpring: 0, pedalRatio: 6.2, linkageEfficiency: 0.85, barSpacing: 63.5 * mm, barOffset: 7.62 * mm, frontMasterBore: 17.78 * mm, rearMasterBore: 17.78 * mm, frontBrakeGain: 122.84e-5, rearBrakeGain: 63.4e-5, pushOutPressure: 0, frontAxleLoad: 777.2, rearAxleLoad: 562.8 },
        results: { frontSwitchForce: { value: 31.4, within: 0.002 }, rearSwitchForce: { value: 51.3, within: 0.002 }, lampRate: { value: 0.051, within: 0.01 }, rearSwitchRate: { value: 0.083, within: 0.006 } },
      },
      {
        source: 'The same truck, 5 lbf return spring in each master and 2 lbf at the pedal: the spring adds its force through bar and lever',
        inputs: { lampSwitch: 'front', switchPressure: 60 * psi, padSpring: 2 * lbf, masterSpring: 5 * lbf, pedalRatio: 6.2, linkageEfficiency: 0.85, barSpacing: 63.5 * mm, barOffset: 7.62 * mm, frontMasterBore: 17.78 * mm },
        results: { frontSwitchForce: { value: 31.436 + (5 * lbf) / (0.62 * 6.2 * 0.85) + 2 * lbf, within: 0.001 } },
      },
    ],
    related: ['two-circuits', 'circuit-failure', 'lamp-wire', 'plumbing-and-lamps'],
  },
});
