import { defineFeed } from '../record.ts';
import { barFeed } from './balance-bar.ts';
import { swellFeed } from './circuit-volume.ts';
import { discFeed } from './disc-torque.ts';
import { chain, refusal } from './foot-to-road.ts';

export const brakingFeed = defineFeed({
  id: 'braking-rate',
  title: 'Braking rate, from foot to road',
  inputs: [
    { title: 'Foot and pedal', of: ['controlForce', 'pedalRatio', 'linkageEfficiency', 'pushrodFreePlay', 'floorTravel'] },
    { title: 'Bar and masters', of: ['frontShare', 'barSpacing', 'barRestLead', 'barStopAngle', 'frontMasterBore', 'rearMasterBore', 'frontMasterStroke', 'rearMasterStroke', 'portStroke', 'masterSpring'] },
    { title: 'Fluid and valve', of: ['frontTakeUp', 'rearTakeUp', 'frontCompliance', 'rearCompliance', 'rearValve', 'kneePressure', 'valveSlope'] },
    { title: 'Brakes', of: ['frontBrakeGain', 'rearBrakeGain', 'pushOutPressure'] },
    { title: 'Truck and road', of: ['frontAxleLoad', 'rearAxleLoad', 'wheelbase', 'cgHeight', 'grip'] },
  ],
  feeds: [barFeed, discFeed, swellFeed],
  outputs: [
    'brakingRateReached', 'padTravelNormal', 'padReserve', 'padTravelUsed', 'frontStrokeUsed', 'rearStrokeUsed', 'frontBrakeForce', 'rearBrakeForce', 'rearBrakeFraction', 'frontPressure', 'rearPressure', 'rearPressureAfterValve',
    'frontStroke', 'rearStroke', 'barTilt', 'tiltOfStop', 'rodForce', 'frontMasterArea', 'rearMasterArea',
  ],
  compute: (v) => {
    const s = chain(v, v.controlForce);
    const refused = refusal(v, s);
    if (refused) return refused;
    const tilt = Math.asin((v.barRestLead + s.frontStroke - s.rearStroke) / v.barSpacing);
    return {
      brakingRateReached: s.rate, padTravelNormal: s.padTravel, padReserve: v.floorTravel - s.padTravel, padTravelUsed: s.padTravel / v.floorTravel, frontStrokeUsed: s.frontStroke / v.frontMasterStroke, rearStrokeUsed: s.rearStroke / v.rearMasterStroke,
      frontBrakeForce: s.frontForce, rearBrakeForce: s.rearForce, rearBrakeFraction: s.rearFraction as number, frontPressure: s.frontPressure, rearPressure: s.rearPressure, rearPressureAfterValve: s.rearOutlet,
      frontStroke: s.frontStroke, rearStroke: s.rearStroke, barTilt: tilt, tiltOfStop: Math.abs(tilt) / v.barStopAngle, rodForce: s.rodForce, frontMasterArea: s.frontArea, rearMasterArea: s.rearArea,
    };
  },
});
