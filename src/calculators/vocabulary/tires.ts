import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { inch, mph } from '../../units/si.ts';

const radius = {
  dimension: 'length',
  usual: { min: 10 * inch, max: 16 * inch, source: commonPractice },
  hard: { min: 4 * inch, max: 40 * inch, reason: 'a tire stands between 4 and 40 in from axle to ground' },
  tolerance: { relative: 0.005 },
} as const;

/** What other tires change. */
export const tires = {
  frontNewRadius: { name: 'loaded radius of the new front tire', symbol: 'R_f', measure: 'Tape, axle center to ground, tire on the truck, driver in, at road pressure. Not on the truck yet: half its unloaded diameter less about 3 % (common practice, no source).', ...radius },
  rearNewRadius: { name: 'loaded radius of the new rear tire', symbol: 'R_r', measure: 'As for the front, with the bed as you drive it.', ...radius },
  indicatedSpeed: {
    name: 'speed the dash shows', symbol: 'v_i', dimension: 'speed',
    usual: { min: 10 * mph, max: 90 * mph, source: commonPractice },
    hard: { min: 0, max: 250 * mph, reason: 'the speed lies between 0 and 250 mph' },
    measure: 'The needle.', tolerance: { relative: 0.02 },
  },
  speedometerAxle: {
    name: 'axle that drives the speedometer', options: { rear: 'rear (gearbox drive, rear-wheel drive)', front: 'front' },
    measure: 'Follow the cable or the sender’s wire. In the tail of the gearbox it counts the driven axle.',
  },
  // results
  newBrakingRate: { name: 'braking rate on the new tires, same foot', symbol: 'z_n', dimension: 'brakingRate' },
  rateFactor: { name: 'brake force, new over old', symbol: 'k_z', dimension: 'share' },
  newControlForce: { name: 'foot force for the old braking rate', symbol: 'F_c,n', dimension: 'force' },
  newRearBrakeFraction: { name: 'rear share of the brake force on the new tires', symbol: 'Φ_n', dimension: 'share' },
  newCgHeight: { name: 'height of the center of gravity on the new tires', symbol: 'h_n', dimension: 'length' },
  newCriticalRate: { name: 'braking rate at which that share is ideal, empty (− : none)', symbol: 'z_Φ,n', dimension: 'brakingRate' },
  frontTorqueFactor: { name: 'front brake torque needed, new over old', symbol: 'k_Tf', dimension: 'share' },
  rearTorqueFactor: { name: 'rear brake torque needed, new over old', symbol: 'k_Tr', dimension: 'share' },
  trueSpeed: { name: 'true speed', symbol: 'v_t', dimension: 'speed' },
} as const satisfies Record<string, Entry>;
