import type { Equation } from '../record.ts';

const line = 'derived: balance of forces on the piston';
const volume = 'derived: volume kept';

/** The chain of the braking rate record, in order of computation. */
export const footToRoadEquations: readonly Equation[] = [
  { result: 'rodForce', expression: 'controlForce * pedalRatio * linkageEfficiency', words: 'The push on the bar is foot force times the lever, less what the linkage eats.', source: 'derived: moment balance about the pedal pivot' },
  { result: 'frontMasterArea', expression: 'pi * frontMasterBore^2 / 4', words: 'The piston’s face is a circle.', source: 'derived' },
  { result: 'rearMasterArea', expression: 'pi * rearMasterBore^2 / 4', words: 'The same for the rear.', source: 'derived' },
  { result: 'frontPressure', expression: 'max(0, frontShare * rodForce - masterSpring) / frontMasterArea', words: 'The front’s share of the push, less the return spring, over the bore’s area.', source: line },
  { result: 'rearPressure', expression: 'max(0, (1 - frontShare) * rodForce - masterSpring) / rearMasterArea', words: 'The rear gets what the front leaves.', source: line },
  { result: 'rearPressureAfterValve', expression: 'rearPressure', words: 'Without a valve the rear calipers see the whole rear pressure.', source: 'defined', when: (v) => v['rearValve'] === 'none' },
  { result: 'rearPressureAfterValve', expression: 'min(rearPressure, kneePressure + valveSlope * (rearPressure - kneePressure))', words: 'Above its knee the valve passes only a part of each extra psi.', source: 'derived: balance of the stepped piston', when: (v) => v['rearValve'] === 'fitted' },
  { result: 'frontBrakeForce', expression: 'frontBrakeGain * max(0, frontPressure - pushOutPressure)', words: 'Pressure beyond what only moves the pistons, times what the axle gives for it.', source: 'derived: see disc brake torque' },
  { result: 'rearBrakeForce', expression: 'rearBrakeGain * max(0, rearPressureAfterValve - pushOutPressure)', words: 'The same for the rear.', source: 'derived: see disc brake torque' },
  { result: 'brakingRateReached', expression: '(frontBrakeForce + rearBrakeForce) / ((frontAxleLoad + rearAxleLoad) * g)', words: 'Both brake forces over the truck’s weight. It is what the brakes ask for; the tires may hold less.', source: 'derived: Newton’s second law' },
  { result: 'rearBrakeFraction', expression: 'rearBrakeForce / (frontBrakeForce + rearBrakeForce)', words: 'The rear’s part of the brake force, which is neither its part of the pressure nor of the push.', source: 'defined' },
  { result: 'frontStroke', expression: '(frontTakeUp + frontCompliance * frontPressure) / frontMasterArea + portStroke', words: 'The fluid the front swallows, over the bore’s area, after the port is closed. A smaller bore moves farther for it.', source: volume },
  { result: 'rearStroke', expression: '(rearTakeUp + rearCompliance * rearPressureAfterValve) / rearMasterArea + portStroke', words: 'The same for the rear, with the pressure that reaches its hoses and calipers.', source: volume },
  { result: 'padTravelNormal', expression: 'pedalRatio * (frontShare * frontStroke + (1 - frontShare) * rearStroke + pushrodFreePlay)', words: 'The bar’s pivot moves by both strokes, each weighted by its share of the push; the lever multiplies that and the free play.', source: 'derived: the pivot lies on the line between the clevises' },
  { result: 'padReserve', expression: 'floorTravel - padTravelNormal', words: 'What is left above the carpet.', source: 'defined' },
  { result: 'padTravelUsed', expression: 'padTravelNormal / floorTravel', words: 'The part of the travel that is gone.', source: 'defined' },
  { result: 'frontStrokeUsed', expression: 'frontStroke / frontMasterStroke', words: 'The part of the front master that is gone.', source: 'defined' },
  { result: 'rearStrokeUsed', expression: 'rearStroke / rearMasterStroke', words: 'The part of the rear master that is gone.', source: 'defined' },
  { result: 'barTilt', expression: 'asin((barRestLead + frontStroke - rearStroke) / barSpacing)', words: 'Unlike strokes tilt the bar.', source: 'derived: rigid bar' },
  { result: 'tiltOfStop', expression: 'abs(barTilt) / barStopAngle', words: 'How much of the bar’s swing is gone.', source: 'defined' },
  ];
