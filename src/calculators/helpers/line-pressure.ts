import { linePressure } from '../../engine/pressure.ts';
import { defineFeed } from '../record.ts';
import type { ValuesOf } from '../record.ts';
import { barFeed } from './balance-bar.ts';

type Inputs = 'controlForce' | 'pedalRatio' | 'linkageEfficiency' | 'frontShare' | 'frontMasterBore' | 'rearMasterBore' | 'masterSpring';

export function linePressures(v: ValuesOf<Inputs>) {
  return linePressure({
    controlForce: v.controlForce, pedalRatio: v.pedalRatio, efficiency: v.linkageEfficiency, frontShare: v.frontShare,
    frontBore: v.frontMasterBore, rearBore: v.rearMasterBore, springForce: v.masterSpring,
  });
}

export const pressureFeed = defineFeed({
  id: 'line-pressure',
  title: 'Line pressure',
  inputs: [
    { title: 'Foot and pedal', of: ['controlForce', 'pedalRatio', 'linkageEfficiency'] },
    { title: 'Bar and masters', of: ['frontShare', 'frontMasterBore', 'rearMasterBore', 'masterSpring'] },
  ],
  feeds: [barFeed],
  outputs: ['frontPressure', 'rearPressure', 'rodForce', 'frontMasterArea', 'rearMasterArea'],
  compute: (v) => {
    const r = linePressures(v);
    return { frontPressure: r.frontPressure, rearPressure: r.rearPressure, rodForce: r.rodForce, frontMasterArea: r.frontArea, rearMasterArea: r.rearArea };
  },
});
