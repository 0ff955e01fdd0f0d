import type { Equation, Values } from '../record.ts';
import type { QuantityKey } from '../vocabulary/index.ts';
import { other } from './failed-pedal.ts';
import type { Side } from './failed-pedal.ts';

const derived = 'derived: free body of the bar';
const moved = 'derived: rigid bar';
const fluid = 'derived: volume kept';
const found = 'Found by walking the pedal’s path from corner to corner; this is the condition that holds there.';

/** The steps that both failures share. */
export const commonEquations: readonly Equation[] = [
  { result: 'rodForce', expression: 'controlForce * pedalRatio * linkageEfficiency', words: 'The push on the bar is foot force times the lever, less what the linkage eats.', source: 'derived: moment balance about the pedal pivot' },
  { result: 'frontShare', expression: '1 / 2 + barOffset / barSpacing', words: 'The ordinary share of the front, both circuits alive: the clevis nearer the pivot gets more.', source: derived },
  { result: 'frontMasterArea', expression: 'pi * frontMasterBore^2 / 4', words: 'The front piston’s face is a circle.', source: 'derived' },
  { result: 'rearMasterArea', expression: 'pi * rearMasterBore^2 / 4', words: 'The same for the rear.', source: 'derived' },
  { result: 'barLead', expression: 'barSpacing * sin(barStopAngle)', words: 'How far one clevis stands ahead of the other when the bar meets its stop.', source: moved, when: (v) => v['barStop'] === 'fitted' },
  { result: 'barLead', expression: 'barSpacing', words: 'With no stop only the bar’s own length ends the lead.', source: moved, when: (v) => v['barStop'] === 'none' },
  { result: 'mass', expression: 'frontAxleLoad + rearAxleLoad', words: 'Both scales added.', source: 'derived' },
  { result: 'rearLoadFraction', expression: 'rearAxleLoad / mass', words: 'What the rear tires carry standing still.', source: 'derived' },
  { result: 'heightRatio', expression: 'cgHeight / wheelbase', words: 'How much braking moves from axle to axle.', source: 'derived: statics' },
];

/** The steps of one failure, in order. Each is shown only where it holds. */
export function failedEquations(dead: Side): readonly Equation[] {
  const live = other(dead);
  const Dead = dead === 'front' ? 'Front' : 'Rear';
  const key = (stem: string) => `${stem}${Dead}Dead` as QuantityKey;
  const [state, pressure, ceiling, liveStroke, deadStroke, travel, slip] = ['state', 'pressure', 'ceiling', `${live}Stroke`, `${dead}Stroke`, 'travel', 'slipLimit'].map(key) as [QuantityKey, QuantityKey, QuantityKey, QuantityKey, QuantityKey, QuantityKey, QuantityKey];
  // From where the bar stands at rest to the stop that the dead side runs to, and to the other one.
  const [lead, otherLead] = dead === 'front' ? ['(barLead - barRestLead)', '(barLead + barRestLead)'] : ['(barLead + barRestLead)', '(barLead - barRestLead)'];
  const moves = '(floorTravel / pedalRatio - pushrodFreePlay)';
  const [area, takeUp, swell, liveMax, deadMax] = [`${live}MasterArea`, `${live}TakeUp`, `${live}Compliance`, `${live}MasterStroke`, `${dead}MasterStroke`];
  const share = live === 'front' ? 'frontShare' : '(1 - frontShare)';
  const deadShare = dead === 'front' ? 'frontShare' : '(1 - frontShare)';
  const inState = (...names: string[]) => (v: Values) => names.includes(v[state] as string);
  const squeezed = inState('good-bottomed', 'on-opposite-stop', 'on-floor');
  const flat = (v: Values) => (v[key('flatTo')] as number) > 0;

  return [
    { result: ceiling, expression: `max(0, ${area} * (${deadMax} - ${lead} - portStroke) - ${takeUp}) / ${swell}`, words: `The dead ${dead} master bottoms when the ${live} has used the dead one’s stroke less the lead. This is the ${live} pressure there.`, source: fluid },
    { result: pressure, expression: `rodForce / ${area}`, words: `On its stop the bar is one piece with the pedal, so the ${live} gets all of the push.`, source: derived, when: inState('on-bar-stop') },
    { result: pressure, expression: ceiling, words: `In the flat spot the pressure stays where it was when the dead ${dead} master bottomed.`, source: derived, when: inState('flat-spot') },
    { result: pressure, expression: `${share} * rodForce / ${area}`, words: `With the dead master bottomed its clevis is the fulcrum, and the ${live} gets its ordinary share only.`, source: derived, when: inState('on-dead-master') },
    { result: pressure, expression: `max(0, ${area} * (${liveStroke} - portStroke) - ${takeUp}) / ${swell}`, words: `No foot force raises the pressure above what this stroke of the ${live} master makes.`, source: fluid, found, when: squeezed },
    { result: liveStroke, expression: `(${takeUp} + ${swell} * ${pressure}) / ${area} + portStroke`, words: `The stroke that the ${live} circuit swallows for this pressure.`, source: fluid, when: inState('on-bar-stop', 'flat-spot', 'on-dead-master') },
    { result: liveStroke, expression: `min(${liveMax}, ${deadMax} + ${otherLead})`, words: `The ${live} piston stands at the end of its bore, or the bar on its other stop, whichever comes first.`, source: moved, when: inState('good-bottomed', 'on-opposite-stop') },
    { result: liveStroke, expression: `max(0, ${moves} - ${deadShare} * ${lead}, (${moves} - ${deadShare} * ${deadMax}) / ${share})`, words: `What is left for the ${live} master when the pedal stands on the carpet: nothing, or with the bar on its stop, or with the dead master bottomed.`, source: moved, found, when: inState('on-floor') },
    { result: deadStroke, expression: `min(${liveStroke} + ${lead}, ${deadMax})`, words: `The dead ${dead} piston runs ahead by the lead, as far as its bore goes.`, source: moved, when: (v) => !inState('on-floor')(v) },
    { result: deadStroke, expression: `min(${liveStroke} + ${lead}, ${deadMax}, ${moves} / ${deadShare})`, words: `The dead ${dead} piston runs ahead by the lead, as far as its bore or the carpet lets it.`, source: moved, when: inState('on-floor') },
    { result: travel, expression: `pedalRatio * (pushrodFreePlay + ${deadShare} * ${deadStroke} + ${share} * ${liveStroke})`, words: 'The pivot lies on the line between the clevises; the pedal pad moves the pedal ratio times as far.', source: moved },
    { result: key('floorMargin'), expression: `floorTravel - ${travel}`, words: 'What is left between pedal and carpet.', source: 'derived' },
    ...slipEquations(live, slip),
    { result: key('rate'), expression: `min(${live}BrakeGain * max(0, ${pressure} - pushOutPressure) / (mass * g), ${slip})`, words: `Brake force of the ${live} axle, from the pressure beyond what only moves its pistons, over the weight of the truck; and never more than its tires hold.`, source: 'Newton’s second law' },
    { result: key('flatFrom'), expression: `${ceiling} * ${area} / (pedalRatio * linkageEfficiency)`, words: `The flat spot starts where all of the push makes the pressure at which the dead ${dead} master bottoms.`, source: derived, when: flat },
    { result: key('flatTo'), expression: `${ceiling} * ${area} / (${share} * pedalRatio * linkageEfficiency)`, words: `It ends where the ${live}’s ordinary share of the push makes the same pressure.`, source: derived, when: flat },
  ];
}

function slipEquations(live: Side, slip: QuantityKey): readonly Equation[] {
  const lifts = (v: Values) => (v['grip'] as number) * (v['heightRatio'] as number) > (v['rearLoadFraction'] as number);
  return live === 'rear'
    ? [{ result: slip, expression: 'grip * rearLoadFraction / (1 + grip * heightRatio)', words: 'Rear tires alone: braking takes load off the very axle that brakes.', source: 'derived: statics' }]
    : [
      { result: slip, expression: 'grip * (1 - rearLoadFraction) / (1 - grip * heightRatio)', words: 'Front tires alone: braking puts load on the axle that brakes.', source: 'derived: statics', when: (v) => !lifts(v) },
      { result: slip, expression: 'rearLoadFraction / heightRatio', words: 'Front tires alone: the rear wheels leave the road before the front tires slide.', source: 'derived: statics', when: lifts },
    ];
}
