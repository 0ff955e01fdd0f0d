import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { inch, lbf, mm } from '../../units/si.ts';

const bearing = {
  dimension: 'length',
  hard: { min: 0.5 * mm, max: 40 * mm, reason: 'a release bearing moves between 0.5 and 40 mm' },
  tolerance: { absolute: 0.3 * mm },
} as const;
const ring = {
  dimension: 'length',
  hard: { min: 10 * mm, max: 150 * mm, reason: 'a ring-shaped slave is between 10 and 150 mm across' },
  tolerance: { absolute: 0.1 * mm },
} as const;

/** Clutch pedal, its master, the slave, fork and release bearing. */
export const clutch = {
  clutchPadTravel: {
    name: 'clutch pedal travel, rest to its stop', symbol: 'T_c', dimension: 'length',
    usual: { min: 4 * inch, max: 7 * inch, source: commonPractice },
    hard: { min: 0, max: 15 * inch, reason: 'a clutch pedal travels between nothing and 15 in' },
    measure: 'Tape along the path of the pedal pad, from rest to the pedal stop. No stop yet: to the carpet.', tolerance: { absolute: 3 * mm },
  },
  clutchFloorTravel: {
    name: 'clutch pedal travel available to the carpet', symbol: 'T_cf', dimension: 'length',
    usual: { min: 4 * inch, max: 8 * inch, source: commonPractice },
    hard: { min: 0.5 * inch, max: 20 * inch, reason: 'a pedal has between 0.5 and 20 in to the carpet' },
    measure: 'Tape along the path of the pedal pad from rest to the finished carpet, mat in place, master off its rod.', tolerance: { absolute: 4 * mm },
  },
  clutchPedalRatio: {
    name: 'clutch pedal ratio', symbol: 'i_c', dimension: 'ratio',
    usual: { min: 5, max: 6.5, source: commonPractice },
    hard: { min: 1, max: 15, reason: 'a pedal that multiplies the foot has a ratio above 1, and above 15 it has no travel left' },
    measure: 'Tape from pivot center to the center of the pedal pad, divided by pivot center to clevis pin center.', tolerance: { relative: 0.01 },
  },
  clutchFreePlay: {
    name: 'free play at the clutch pedal pad', symbol: 'g_c', dimension: 'length',
    usual: { min: 5 * mm, max: 15 * mm, source: commonPractice },
    hard: { min: 0, max: 80 * mm, reason: 'free play is zero or more, and 80 mm would eat half the travel' },
    measure: 'Tape at the pad: push with one finger from rest until the rod meets the piston.', tolerance: { absolute: 1 * mm },
  },
  clutchEfficiency: {
    name: 'efficiency of the clutch linkage', symbol: 'η_cl', dimension: 'share',
    usual: { min: 0.75, max: 0.92, source: commonPractice + ': 80 to 90 %' },
    hard: { min: 0.2, max: 1, reason: 'a linkage gives back no more than it gets, and below 20 % it is seized' },
    measure: 'Not measured before it is built. Afterward: pull at the pad with a luggage scale, compare with this page.', tolerance: { relative: 0.03 },
  },
  clutchMasterBore: {
    name: 'clutch master cylinder bore', symbol: 'd_mc', dimension: 'length', standard: 'bores',
    usual: { min: 5 / 8 * inch, max: 7 / 8 * inch, source: commonPractice },
    hard: { min: 12 * mm, max: 30 * mm, reason: 'master cylinder bores lie between 12 and 30 mm' },
    measure: 'Cast or stamped on the body; to be sure, the piston under calipers.', tolerance: { relative: 0.002 },
  },
  clutchMasterStroke: {
    name: 'clutch master stroke, rest to bottom', symbol: 'x_maxc', dimension: 'length',
    usual: { min: 25 * mm, max: 38 * mm, source: commonPractice },
    hard: { min: 3 * mm, max: 100 * mm, reason: 'a master strokes between 3 and 100 mm' },
    measure: 'Depth gauge on the bare master: rest to bottom.', tolerance: { absolute: 0.5 * mm },
  },
  clutchPortStroke: {
    name: 'stroke that closes the clutch master’s port', symbol: 'x_0c', dimension: 'length',
    usual: { min: 0.5 * mm, max: 1.5 * mm, source: commonPractice },
    hard: { min: 0, max: 15 * mm, reason: 'the port closes within the first 15 mm' },
    measure: 'Rod movement until the reservoir stops spurting.', tolerance: { absolute: 0.2 * mm },
  },
  volumetricEfficiency: {
    name: 'part of the fluid that reaches the slave', symbol: 'η_v', dimension: 'share',
    usual: { min: 0.9, max: 0.97, source: commonPractice },
    hard: { min: 0.3, max: 1, reason: 'hose and seals swallow some of the fluid: between 30 and 100 % arrives' },
    measure: 'After bleeding: slave stroke times slave area, over master stroke past its port times master area. Until then 93 %.', tolerance: { absolute: 0.02 },
  },
  slaveType: {
    name: 'kind of slave', options: { fork: 'plain slave that pushes a fork', ring: 'ring-shaped slave around the shaft (concentric)' },
    measure: 'A fork sticks out of the bell housing; a ring-shaped slave shows only its line and bleeder.',
  },
  slaveBore: {
    name: 'slave bore', symbol: 'd_sl', dimension: 'length',
    usual: { min: 17 * mm, max: 26 * mm, source: commonPractice },
    hard: { min: 10 * mm, max: 60 * mm, reason: 'slave bores lie between 10 and 60 mm' },
    measure: 'Cast on the body, or the piston under calipers.', tolerance: { relative: 0.002 },
  },
  ringOuter: { name: 'ring-shaped slave, outer diameter of its piston', symbol: 'D_s', measure: 'Calipers on the ring piston, or the maker’s sheet. Used only with a ring-shaped slave.', usual: { min: 35 * mm, max: 75 * mm, source: commonPractice }, ...ring },
  ringInner: { name: 'ring-shaped slave, inner diameter of its piston', symbol: 'D_i', measure: 'Calipers on the sleeve the piston slides on. Used only with a ring-shaped slave.', usual: { min: 25 * mm, max: 60 * mm, source: commonPractice }, ...ring },
  slaveStrokeLimit: {
    name: 'stroke the slave has, from where it rests', symbol: 'x_s,max', dimension: 'length',
    usual: { min: 10 * mm, max: 35 * mm, source: commonPractice },
    hard: { min: 1 * mm, max: 120 * mm, reason: 'a slave strokes between 1 and 120 mm' },
    measure: 'The maker’s sheet. Or depth gauge on the bare slave, bottom to snap ring or bore end, less how deep its piston rests when fitted.', tolerance: { absolute: 0.5 * mm },
  },
  slavePlay: {
    name: 'play between slave and diaphragm, at the slave', symbol: 'g_s', dimension: 'length',
    usual: { min: 0, max: 3 * mm, source: commonPractice + ': 1 to 3 mm with a fork set loose, none with constant contact' },
    hard: { min: 0, max: 30 * mm, reason: 'play is zero or more, and 30 mm would eat all the stroke' },
    measure: 'Fork: push it by hand until the bearing touches, calipers at the slave’s rod. Ring-shaped slave: feeler between bearing and fingers.', tolerance: { absolute: 0.3 * mm },
  },
  forkRatio: {
    name: 'fork ratio (slave travel over bearing travel)', symbol: 'i_fk', dimension: 'ratio',
    usual: { min: 1.3, max: 2.2, source: commonPractice },
    hard: { min: 0.3, max: 6, reason: 'a fork multiplies by between 0.3 and 6' },
    measure: 'Fork on the bench or through the window: its pivot to the slave’s rod, divided by its pivot to the bearing. Used only with a fork.', tolerance: { relative: 0.02 },
  },
  bearingForce: {
    name: 'force at the release bearing', symbol: 'F_br', dimension: 'force',
    usual: { min: 800, max: 2500, source: commonPractice },
    hard: { min: 10 * lbf, max: 3000 * lbf, reason: 'a diaphragm asks between 10 and 3,000 lbf of its bearing' },
    measure: 'The clutch maker’s sheet. Or before stripping: luggage scale at the pad of the old pedal, read as it lets go, times the old pedal’s ratio, the bores’ and the fork’s, times 0.85. At the fork itself 150 to 300 lbf wait, more than a luggage scale shows.', tolerance: { relative: 0.08 },
  },
  bearingTravelNeeded: { name: 'bearing travel the clutch needs to let go', symbol: 'b_n', measure: 'The clutch maker’s sheet. Or before stripping: travel of the fork at the slave, from touch to release, divided by the fork ratio.', usual: { min: 7 * mm, max: 10 * mm, source: commonPractice }, ...bearing },
  bearingTravelAllowed: { name: 'bearing travel the diaphragm bears', symbol: 'b_max', measure: 'The clutch maker’s sheet. No sheet: what it needs plus 0.5 mm (common practice, no source).', usual: { min: 7.5 * mm, max: 14 * mm, source: commonPractice }, ...bearing },
  stopReserve: {
    name: 'reserve of bearing travel at the pedal stop', symbol: 'q_s', dimension: 'share',
    usual: { min: 0.1, max: 0.15, source: commonPractice },
    hard: { min: 0, max: 1, reason: 'a reserve lies between nothing and all of the travel over again' },
    measure: 'Your choice: 10 to 15 % past release covers warm fluid, worn pins and a cold morning.',
  },
  // results
  clutchTravelUsed: { name: 'clutch pedal travel the pedal really has', symbol: 'T_u', dimension: 'length' },
  clutchMasterStrokeUsed: { name: 'clutch master stroke used', symbol: 'x_mc', dimension: 'length' },
  clutchMasterArea: { name: 'clutch master area', symbol: 'A_mc', dimension: 'area' },
  slaveArea: { name: 'slave area', symbol: 'A_s', dimension: 'area' },
  forkRatioUsed: { name: 'slave travel over bearing travel, as fitted', symbol: 'f_k', dimension: 'ratio' },
  slaveStroke: { name: 'slave stroke at full pedal', symbol: 'x_s', dimension: 'length' },
  bearingTravel: { name: 'release bearing travel at full pedal', symbol: 'x_b', dimension: 'length' },
  wornBearingTravel: { name: 'release bearing travel once wear has eaten the play', symbol: 'x_b,w', dimension: 'length' },
  bearingLimit: { name: 'bearing travel that diaphragm and slave allow', symbol: 'b_lim', dimension: 'length' },
  releaseTravel: { name: 'pedal travel at which the clutch lets go', symbol: 'T_rel', dimension: 'length' },
  limitTravel: { name: 'pedal travel at which diaphragm or slave is at its limit', symbol: 'T_lim', dimension: 'length' },
  clutchStopTravel: { name: 'pedal travel at which the pedal stop belongs', symbol: 'T_stop', dimension: 'length' },
  releaseAboveFloor: { name: 'release point above the carpet (− is under it)', symbol: 'c_rel', dimension: 'length' },
  clutchPressure: { name: 'clutch line pressure', symbol: 'p_c', dimension: 'pressure' },
  clutchControlForce: { name: 'clutch pedal effort', symbol: 'F_cl', dimension: 'force' },
  clutchTotalRatio: { name: 'pedal pad travel over bearing travel, by the ratios', symbol: 'i_tot', dimension: 'ratio' },
} as const satisfies Record<string, Entry>;
