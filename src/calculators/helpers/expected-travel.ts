import { strokeForPressure } from '../../engine/fluid.ts';
import { defineFeed } from '../record.ts';
import { barFeed } from './balance-bar.ts';
import { swellFeed } from './circuit-volume.ts';
import { pressuresAt } from './fluid-ledger.ts';

/** Pedal travel that the parts account for, at a light and at a firm push: the ledger's sum by take-up and swell. */
export const expectedFeed = defineFeed({
  id: 'fluid-ledger',
  title: 'Fluid ledger: where the pedal goes',
  inputs: [
    { title: 'Foot and pedal', of: ['lightForce', 'controlForce', 'pedalRatio', 'linkageEfficiency', 'pushrodFreePlay', 'flangeGive', 'dialTestForce'] },
    { title: 'Bar, masters and valve', of: ['frontShare', 'frontMasterBore', 'rearMasterBore', 'portStroke', 'masterSpring', 'rearValve', 'kneePressure', 'valveSlope'] },
    { title: 'Fluid', of: ['frontTakeUp', 'rearTakeUp', 'frontCompliance', 'rearCompliance'] },
  ],
  feeds: [barFeed, swellFeed],
  outputs: ['lightTravelExpected', 'firmTravelExpected'],
  compute: (v) => {
    const travel = (force: number): number => {
      const p = pressuresAt(v, force);
      const front = strokeForPressure({ pressure: p.frontPressure, takeUpVolume: v.frontTakeUp, compliance: v.frontCompliance, bore: v.frontMasterBore, portStroke: v.portStroke }).stroke;
      const rear = strokeForPressure({ pressure: p.rearPressure, takeUpVolume: v.rearTakeUp, compliance: v.rearCompliance, bore: v.rearMasterBore, portStroke: v.portStroke }).stroke;
      return v.pedalRatio * (v.frontShare * front + (1 - v.frontShare) * rear + v.pushrodFreePlay + (v.flangeGive * force) / v.dialTestForce);
    };
    return { lightTravelExpected: travel(v.lightForce), firmTravelExpected: travel(v.controlForce) };
  },
});
