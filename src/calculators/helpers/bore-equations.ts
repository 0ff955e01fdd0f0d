import type { Values } from '../record.ts';
import { defineEquations } from '../record.ts';

const bothBite = (v: Values): boolean => Math.min(v['frontPressure'] as number, v['rearPressure'] as number) > (v['pushOutPressure'] as number);
const frontSlope = 'frontBrakeGain * bestFrontShare / frontMasterArea';
const rearSlope = 'rearBrakeGain * (1 - bestFrontShare) / rearMasterArea';

/** The set found, worked through so that a pocket calculator follows. */
export const finderEquations = defineEquations([
  { result: 'frontMasterArea', expression: 'pi * bestFrontBore^2 / 4', words: 'The piston’s face is a circle.', source: 'derived' },
  { result: 'rearMasterArea', expression: 'pi * bestRearBore^2 / 4', words: 'The same for the rear.', source: 'derived' },
  { result: 'mass', expression: 'frontAxleLoad + rearAxleLoad', words: 'Both scales added.', source: 'derived' },
  { result: 'rodForce', expression: `(brakingRate * mass * g + frontBrakeGain * (pushOutPressure + masterSpring / frontMasterArea) + rearBrakeGain * (pushOutPressure + masterSpring / rearMasterArea)) / (${frontSlope} + ${rearSlope})`, words: 'The push on the bar at which both axles together make the stop, after springs and push-out have had theirs.', source: 'derived: Newton’s second law and balance of forces', when: bothBite },
  { result: 'bestEffort', expression: 'rodForce / (bestPedalRatio * linkageEfficiency)', words: 'Back through the lever to the foot.', source: 'derived: moments about the pedal pivot' },
  { result: 'frontPressure', expression: '(bestFrontShare * rodForce - masterSpring) / frontMasterArea', words: 'The front’s share of the push, less the spring, over the bore’s area.', source: 'derived: balance of forces on the piston' },
  { result: 'rearPressure', expression: '((1 - bestFrontShare) * rodForce - masterSpring) / rearMasterArea', words: 'The rear gets what the front leaves.', source: 'derived' },
  { result: 'bestFrontBore', expression: 'sqrt(4 * (bestFrontShare * rodForce - masterSpring) / (pi * frontPressure))', words: 'The bore that makes this pressure of this push.', source: 'derived', found: 'Found by trying every pair, ratio and bar setting; this is the condition the answer meets.' },
  { result: 'frontStroke', expression: '(frontTakeUp + frontCompliance * frontPressure) / frontMasterArea + portStroke', words: 'The fluid the circuit takes, over the bore’s area, after the port is closed.', source: 'derived: volume kept' },
  { result: 'rearStroke', expression: '(rearTakeUp + rearCompliance * rearPressure) / rearMasterArea + portStroke', words: 'The same for the rear.', source: 'derived: volume kept' },
  { result: 'strokeLead', expression: 'barRestLead + frontStroke - rearStroke', words: 'The bar tilts by how far one clevis runs ahead.', source: 'derived' },
  { result: 'bestPadTravel', expression: 'bestPedalRatio * (bestFrontShare * frontStroke + (1 - bestFrontShare) * rearStroke + pushrodFreePlay)', words: 'The pivot moves by the strokes, weighted by the same lever that splits the force.', source: 'derived: equal work' },
  { result: 'frontBoreLow', expression: 'sqrt(4 * (frontTakeUp + frontCompliance * frontPressure) / (pi * (strokePart * frontMasterStroke - portStroke)))', words: 'The smallest piston that moves this fluid in the stroke it may use.', source: 'derived: volume kept' },
  { result: 'frontBoreHigh', expression: 'sqrt(4 * max(0, bestFrontShare * driverForce * bestPedalRatio * linkageEfficiency - masterSpring) / (pi * frontPressure))', words: 'The largest piston on which the weakest driver still makes the pressure.', source: 'derived: balance of forces on the piston' },
  { result: 'rearBoreLow', expression: 'sqrt(4 * (rearTakeUp + rearCompliance * rearPressure) / (pi * (strokePart * rearMasterStroke - portStroke)))', words: 'The smallest rear piston with the volume.', source: 'derived: volume kept' },
  { result: 'rearBoreHigh', expression: 'sqrt(4 * max(0, (1 - bestFrontShare) * driverForce * bestPedalRatio * linkageEfficiency - masterSpring) / (pi * rearPressure))', words: 'The largest rear piston the driver can serve.', source: 'derived: balance of forces on the piston' },
  { result: 'rearBrakeFraction', expression: `${rearSlope} / (${frontSlope} + ${rearSlope})`, words: 'The rear’s share of the brake force, springs and push-out left out.', source: 'derived' },
  { result: 'rearLoadFraction', expression: 'rearAxleLoad / mass', words: 'What the rear tires carry standing still.', source: 'derived' },
  { result: 'heightRatio', expression: 'cgHeight / wheelbase', words: 'How much braking moves from axle to axle.', source: 'derived: statics' },
  { result: 'criticalRate', expression: 'max(0, (rearLoadFraction - rearBrakeFraction) / heightRatio)', words: 'Up to this rate the front locks first; at 0 it never does.', source: 'derived: statics' },
  { result: 'ladenMass', expression: 'mass + payload', words: 'Truck and load.', source: 'derived' },
  { result: 'ladenRearLoadFraction', expression: '(rearAxleLoad + payload * (1 - payloadAhead / wheelbase)) / ladenMass', words: 'A load over the rear axle goes to it whole; ahead of it, a part goes to the front.', source: 'derived: moments about the front axle' },
  { result: 'ladenHeightRatio', expression: '(cgHeight * mass + payloadHeight * payload) / (ladenMass * wheelbase)', words: 'Truck and load have one center of gravity between them.', source: 'derived' },
  { result: 'ladenCriticalRate', expression: 'max(0, (ladenRearLoadFraction - rearBrakeFraction) / ladenHeightRatio)', words: 'The same with the load.', source: 'derived: statics' },
  { result: 'ladenEffort', expression: `bestEffort + payload * g * brakingRate / ((${frontSlope} + ${rearSlope}) * bestPedalRatio * linkageEfficiency)`, words: 'The load has to be stopped as well, by the same brakes.', source: 'derived: Newton’s second law' },
]);
