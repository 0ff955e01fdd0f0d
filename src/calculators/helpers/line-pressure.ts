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

type Pressures = ValuesOf<'controlForce' | 'frontPressure' | 'rearPressure'>;
export const pressureHigh = (v: Pressures): boolean => Math.max(v.frontPressure, v.rearPressure) > 100e5;
export const pressureLow = (v: Pressures): boolean => v.controlForce >= 400 && v.frontPressure < 40e5;

export const pressureFeed = defineFeed({
  id: 'line-pressure',
  title: 'Line pressure',
  inputs: [
    { title: 'Foot and pedal', of: ['controlForce', 'pedalRatio', 'linkageEfficiency'] },
    { title: 'Bar and masters', of: ['frontShare', 'frontMasterBore', 'rearMasterBore', 'masterSpring'] },
  ],
  feeds: [barFeed],
  outputs: ['frontPressure', 'rearPressure', 'rodForce', 'frontMasterArea', 'rearMasterArea'],
  alarms: [
    { caution: 'pressure-high', level: 'warning', when: pressureHigh, first: 'the pressure is a lot for this foot force.' },
    { caution: 'pressure-low', level: 'warning', when: pressureLow, first: 'a hard push makes little pressure in front.' },
  ],
  compute: (v) => {
    const r = linePressures(v);
    return { frontPressure: r.frontPressure, rearPressure: r.rearPressure, rodForce: r.rodForce, frontMasterArea: r.frontArea, rearMasterArea: r.rearArea };
  },
});
