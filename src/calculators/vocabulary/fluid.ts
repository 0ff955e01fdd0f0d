import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { cm3, inch, lbf, mm, psi } from '../../units/si.ts';

const memory = 'from memory, not checked against a text';
const padGap = {
  dimension: 'length',
  usual: { min: 0.1 * mm, max: 0.2 * mm, source: commonPractice },
  hard: { min: 0, max: 5 * mm, reason: 'a brake pad stands between 0 and 5 mm off its rotor' },
  measure: 'Push the pedal once, let go, wait a minute. Feelers between brake pad and rotor, both sides added and halved.', tolerance: { absolute: 0.03 * mm },
} as const;
const knockBack = {
  dimension: 'length',
  usual: { min: 0, max: 0.3 * mm, source: commonPractice },
  hard: { min: 0, max: 10 * mm, reason: 'knock-back lies between 0 and 10 mm' },
  measure: 'Dial gauge on the rotor near its edge: turn it, rock the wheel, pull the axle in and out. Half of all that movement is a fair guess.', tolerance: { absolute: 0.03 * mm },
} as const;
const caliperSwell = {
  dimension: 'volume',
  usual: { min: 0.1 * cm3, max: 0.9 * cm3, source: memory + ': 0.3 to 0.6 cm³ for one large floating caliper' },
  hard: { min: 0, max: 50 * cm3, reason: 'a caliper swells by between 0 and 50 cm³' },
  measure: 'Block the caliper’s hose port off and on with a gauge fitted: the extra stroke times bore area, at the reference pressure. Until then the usual range.', tolerance: { relative: 0.25 },
} as const;
const hoses = {
  dimension: 'count',
  hard: { min: 0, max: 20, reason: 'a circuit has between 0 and 20 hoses' },
  measure: 'Count every rubber or braided hose between master and caliper.',
} as const;
const hoseSwell = {
  dimension: 'volume',
  usual: { min: 0.2 * cm3, max: 1.6 * cm3, source: 'FMVSS 106 limits of 0.33 to 0.86 cm³ per foot at 1,000 psi, from memory, not checked against the text' },
  hard: { min: 0, max: 50 * cm3, reason: 'a hose swells by between 0 and 50 cm³' },
  measure: 'Length in feet times the maker’s figure per foot. Limit for 1/8 in bore at 1,000 psi: 0.66 cm³ per foot regular, 0.33 low expansion (FMVSS 106, from memory). So 14 in of regular hose: 0.77 cm³, 0.047 in³.', tolerance: { relative: 0.2 },
} as const;
const circuitFluid = {
  dimension: 'volume',
  usual: { min: 50 * cm3, max: 200 * cm3, source: memory },
  hard: { min: 0, max: 3000 * cm3, reason: 'a circuit holds between 0 and 3 liters' },
  measure: 'Catch and measure what drains out. Or add up: 3/16 in tube holds 0.16 in³ (2.7 cm³) per foot; each caliper, piston area times how far its pistons stand out.', tolerance: { relative: 0.15 },
} as const;
const air = {
  dimension: 'volume',
  usual: { min: 0, max: 0.5 * cm3, source: commonPractice + ': a bled circuit has next to none' },
  hard: { min: 0, max: 200 * cm3, reason: 'trapped air is between 0 and 200 cm³' },
  measure: 'Not measured directly. Zero when bled; type some to see what it costs, or work back from a long pedal.', tolerance: { absolute: 0.03 * cm3 },
} as const;
const travel = {
  dimension: 'length',
  usual: { min: 15 * mm, max: 150 * mm, source: commonPractice },
  hard: { min: 0, max: 20 * inch, reason: 'a pedal travels between 0 and 20 in' },
  tolerance: { absolute: 1.5 * mm },
} as const;

/** Where the fluid goes: what the circuits swallow, the pedal’s ledger, a long pedal explained. */
export const fluid = {
  frontPadGap: { name: 'gap at each front brake pad, released', symbol: 'g_pf', ...padGap },
  rearPadGap: { name: 'gap at each rear brake pad, released', symbol: 'g_pr', ...padGap },
  frontKnockBack: { name: 'knock-back in each front caliper, both brake pads together', symbol: 'κ_f', ...knockBack },
  rearKnockBack: { name: 'knock-back in each rear caliper, both brake pads together', symbol: 'κ_r', ...knockBack },
  frontCaliperSwell: { name: 'swell of one front caliper at the reference pressure', symbol: 'V_cf', ...caliperSwell },
  rearCaliperSwell: { name: 'swell of one rear caliper at the reference pressure', symbol: 'V_cr', ...caliperSwell },
  frontHoses: { name: 'hoses in the front circuit', symbol: 'n_hf', ...hoses },
  rearHoses: { name: 'hoses in the rear circuit', symbol: 'n_hr', ...hoses },
  frontHoseSwell: { name: 'swell of one front hose at the reference pressure', symbol: 'V_hf', ...hoseSwell },
  rearHoseSwell: { name: 'swell of one rear hose at the reference pressure', symbol: 'V_hr', ...hoseSwell },
  frontFluidVolume: { name: 'fluid in the front circuit, reservoir left out', symbol: 'V_bf', ...circuitFluid },
  rearFluidVolume: { name: 'fluid in the rear circuit, reservoir left out', symbol: 'V_br', ...circuitFluid },
  frontAir: { name: 'air in the front circuit, at no pressure', symbol: 'V_af', ...air },
  rearAir: { name: 'air in the rear circuit, at no pressure', symbol: 'V_ar', ...air },
  padSqueeze: {
    name: 'squeeze of one brake pad at the reference pressure', symbol: 'c_p', dimension: 'length',
    usual: { min: 0.03 * mm, max: 0.15 * mm, source: memory + ': 0.10 to 0.20 mm at 100 bar' },
    hard: { min: 0, max: 5 * mm, reason: 'a brake pad is squeezed by between 0 and 5 mm' },
    measure: 'Not measured at home. New brake pads and those with thick shims give more.', tolerance: { relative: 0.3 },
  },
  bulkModulus: {
    name: 'bulk modulus of the fluid', symbol: 'B_fl', dimension: 'pressure',
    usual: { min: 1.0e9, max: 1.8e9, source: memory + ': about 230,000 psi cold, 145,000 hot' },
    hard: { min: 1e7, max: 1e10, reason: 'brake fluid has a bulk modulus between 1,450 and 1,450,000 psi' },
    measure: 'Not measured at home. Cold 230,000 psi, hot 145,000: the spread of a day’s driving.', tolerance: { relative: 0.1 },
  },
  swellPressure: {
    name: 'reference pressure of the swell figures', symbol: 'p_ref', dimension: 'pressure',
    usual: { min: 500 * psi, max: 1500 * psi, source: 'hose figures are given at 1,000 psi (FMVSS 106, from memory, not checked against the text)' },
    hard: { min: 100 * psi, max: 5000 * psi, reason: 'swell is given at between 100 and 5,000 psi' },
    measure: 'As your figures for hoses, calipers and brake pads have it.',
  },
  airExponent: {
    name: 'gas exponent of the air (1 slow, 1.4 fast)', symbol: 'm_a', dimension: 'ratio',
    usual: { min: 1, max: 1.4, source: 'textbook limits for air: constant temperature, and no time for heat to leave' },
    hard: { min: 1, max: 1.67, reason: 'the exponent of a gas lies between 1 and 1.67' },
    measure: 'Not measured. A slow push is near 1, a stab near 1.4.', tolerance: { absolute: 0.1 },
  },
  flangeGive: {
    name: 'give of the masters’ mounting, at the rod', symbol: 'δ_fl', dimension: 'length',
    usual: { min: 0, max: 1 * mm, source: commonPractice + ': 0.5 mm is good, 1.0 mm the limit, at 100 lbf on the pedal' },
    hard: { min: 0, max: 50 * mm, reason: 'the mounting gives between 0 and 50 mm' },
    measure: 'Dial gauge from frame or cowl to the masters’ flange while a helper pushes on a scale.', tolerance: { absolute: 0.1 * mm },
  },
  lightForce: {
    name: 'foot force of the light push', symbol: 'F_lt', dimension: 'force',
    usual: { min: 5 * lbf, max: 20 * lbf, source: commonPractice + ': enough to close the gaps, hardly more' },
    hard: { min: 0, max: 900 * lbf, reason: 'a foot pushes with between nothing and about 900 lbf' },
    measure: 'Luggage scale hooked on the pedal pad, pulled square to the arm until it just holds.', tolerance: { absolute: 1 * lbf },
  },
  lightTravel: { name: 'pedal travel measured at the light push', symbol: 'T_lt', ...travel, measure: 'Tape or rule along the pedal pad’s path from rest, held still. First push after driving, not pumped.' },
  firmTravel: { name: 'pedal travel measured at the firm push', symbol: 'T_fm', ...travel, measure: 'The same rule, at the foot force above, same push carried on.' },
  lightTravelExpected: { name: 'pedal travel to expect at the light push', symbol: 'T_lt0', ...travel, computedTolerance: { absolute: 7 * mm }, measure: 'Best: your own reading on the day the pedal was right. Until then the sum of the parts.' },
  firmTravelExpected: { name: 'pedal travel to expect at the firm push', symbol: 'T_fm0', ...travel, computedTolerance: { absolute: 11 * mm }, measure: 'Best: your own reading on the day the pedal was right. Until then the sum of the parts.' },
  // results: what the circuits swallow
  frontMovingArea: { name: 'area of all pistons in one front caliper', symbol: 'A_pf', dimension: 'area' },
  rearMovingArea: { name: 'area of all pistons in one rear caliper', symbol: 'A_pr', dimension: 'area' },
  frontQuarterVolume: { name: 'front fluid swallowed at a quarter of the reference pressure', symbol: 'V_1f', dimension: 'volume' },
  rearQuarterVolume: { name: 'rear fluid swallowed at a quarter of the reference pressure', symbol: 'V_1r', dimension: 'volume' },
  frontFullVolume: { name: 'front fluid swallowed at the reference pressure', symbol: 'V_2f', dimension: 'volume' },
  rearFullVolume: { name: 'rear fluid swallowed at the reference pressure', symbol: 'V_2r', dimension: 'volume' },
  standardAtmosphere: { name: 'air pressure at sea level', symbol: 'p_atm', dimension: 'pressure' },
  // results: the pedal’s ledger
  portTravel: { name: 'pedal travel that closes the ports', symbol: 'T_po', dimension: 'length' },
  flexTravel: { name: 'pedal travel lost to the masters’ mounting', symbol: 'T_fx', dimension: 'length' },
  frontGapTravel: { name: 'pedal travel for the front gaps', symbol: 'T_gf', dimension: 'length' },
  rearGapTravel: { name: 'pedal travel for the rear gaps', symbol: 'T_gr', dimension: 'length' },
  frontKnockBackTravel: { name: 'pedal travel for front knock-back', symbol: 'T_κf', dimension: 'length' },
  rearKnockBackTravel: { name: 'pedal travel for rear knock-back', symbol: 'T_κr', dimension: 'length' },
  frontHoseTravel: { name: 'pedal travel for the front hoses', symbol: 'T_hf', dimension: 'length' },
  rearHoseTravel: { name: 'pedal travel for the rear hoses', symbol: 'T_hr', dimension: 'length' },
  frontCaliperTravel: { name: 'pedal travel for front caliper swell', symbol: 'T_clf', dimension: 'length' },
  rearCaliperTravel: { name: 'pedal travel for rear caliper swell', symbol: 'T_clr', dimension: 'length' },
  frontPadTravel: { name: 'pedal travel for squeezed front brake pads', symbol: 'T_pf', dimension: 'length' },
  rearPadTravel: { name: 'pedal travel for squeezed rear brake pads', symbol: 'T_pr', dimension: 'length' },
  frontFluidTravel: { name: 'pedal travel for squeezed front fluid', symbol: 'T_bf', dimension: 'length' },
  rearFluidTravel: { name: 'pedal travel for squeezed rear fluid', symbol: 'T_br', dimension: 'length' },
  frontAirTravel: { name: 'pedal travel for air in front', symbol: 'T_af', dimension: 'length' },
  rearAirTravel: { name: 'pedal travel for air in the rear', symbol: 'T_ar', dimension: 'length' },
  largestTravel: { name: 'largest single item', symbol: 'T_max', dimension: 'length' },
  largestItem: {
    name: 'what that item is',
    options: {
      freePlay: 'free play', port: 'closing the ports', flex: 'give of the masters’ mounting', frontGaps: 'gaps at the front brake pads', rearGaps: 'gaps at the rear brake pads', frontKnockBack: 'front knock-back', rearKnockBack: 'rear knock-back',
      frontHoses: 'front hoses', rearHoses: 'rear hoses', frontCalipers: 'swell of the front calipers', rearCalipers: 'swell of the rear calipers', frontPads: 'squeeze of the front brake pads', rearPads: 'squeeze of the rear brake pads',
      frontFluid: 'squeeze of the front fluid', rearFluid: 'squeeze of the rear fluid', frontAir: 'air in the front circuit', rearAir: 'air in the rear circuit',
    },
  },
  // results: a long pedal explained
  firmExcess: { name: 'pedal travel too much at the firm push', symbol: 'e_fm', dimension: 'length' },
  lightExcess: { name: 'pedal travel too much at the light push', symbol: 'e_lt', dimension: 'length' },
  deadExcess: { name: 'of it dead, there from the first touch', symbol: 'e_de', dimension: 'length' },
  softExcess: { name: 'of it soft, growing with the push', symbol: 'e_so', dimension: 'length' },
  frontExcessVolume: { name: 'front fluid that is too much, were it all there', symbol: 'ΔV_f', dimension: 'volume' },
  rearExcessVolume: { name: 'rear fluid that is too much, were it all there', symbol: 'ΔV_r', dimension: 'volume' },
  frontAirFound: { name: 'air that would explain it, all in front', symbol: 'V_xf', dimension: 'volume' },
  frontAirLow: { name: 'that air, if squeezed slowly', symbol: 'V_xf,1', dimension: 'volume' },
  frontAirHigh: { name: 'that air, if squeezed fast', symbol: 'V_xf,2', dimension: 'volume' },
  rearAirFound: { name: 'air that would explain it, all in the rear', symbol: 'V_xr', dimension: 'volume' },
  rearAirLow: { name: 'rear air, if squeezed slowly', symbol: 'V_xr,1', dimension: 'volume' },
  rearAirHigh: { name: 'rear air, if squeezed fast', symbol: 'V_xr,2', dimension: 'volume' },
  frontKnockBackFound: { name: 'knock-back in each front caliper that would explain it', symbol: 'κ_xf', dimension: 'length' },
  rearKnockBackFound: { name: 'knock-back in each rear caliper that would explain it', symbol: 'κ_xr', dimension: 'length' },
  travelReading: {
    name: 'how the excess reads',
    options: { none: 'not longer than expected', dead: 'dead travel: air, knock-back, free play', soft: 'softness: hoses, calipers, flex', both: 'both dead travel and softness' },
  },
} as const satisfies Record<string, Entry>;
