import { defineFeed } from '../record.ts';
import type { ValuesOf } from '../record.ts';
import { barAtStop, barFeed } from './balance-bar.ts';
import { swellFeed } from './circuit-volume.ts';
import { discFeed } from './disc-torque.ts';
import { chain, pedalOf, refusal, sliding } from './foot-to-road.ts';
import type { FootToRoad } from './foot-to-road.ts';
import { footForTarget, legLimit, padKeep, strokePlan } from './run-out.ts';

export const rearSlides = (v: FootToRoad): boolean => sliding(v)?.id === 'rear-tires';
export const frontSlides = (v: FootToRoad): boolean => sliding(v)?.id === 'front-tires';
export const padNearCarpet = (v: ValuesOf<'padReserve' | 'padTravelUsed'>): boolean => v.padReserve < padKeep || v.padTravelUsed > 0.8;
export const strokeSpent = (v: ValuesOf<'frontStrokeUsed' | 'rearStrokeUsed'>): boolean => Math.max(v.frontStrokeUsed, v.rearStrokeUsed) > strokePlan;
export const effortTooHigh = (v: FootToRoad): boolean => (footForTarget(pedalOf(v)) ?? Infinity) > legLimit;

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
  alarms: [
    { caution: 'bar-at-stop', level: 'danger', when: barAtStop, first: 'at this foot force the bar is at its stop or close to it.' },
    { caution: 'rear-slides', level: 'danger', when: rearSlides, first: 'the rear tires slide before this foot force.' },
    { caution: 'front-slides', level: 'warning', when: frontSlides, first: 'the front tires slide before this foot force.' },
    { caution: 'pad-near-carpet', level: 'warning', when: padNearCarpet, first: 'the pedal comes close to the carpet.' },
    { caution: 'stroke-spent', level: 'warning', when: strokeSpent, first: 'a master has little stroke left.' },
    { caution: 'effort-target', level: 'warning', when: effortTooHigh, first: 'a hard stop asks more of the leg than it has.' },
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
