import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { cm3, inch, mm } from '../../units/si.ts';

const memory = 'from memory, not checked against a text';
const wear = {
  dimension: 'length',
  hard: { min: 0, max: 40 * mm, reason: 'brake pad material is between 0 and 40 mm thick' },
  tolerance: { absolute: 0.3 * mm },
} as const;
const discWear = {
  dimension: 'length',
  usual: { min: 0, max: 1.2 * mm, source: commonPractice },
  hard: { min: 0, max: 10 * mm, reason: 'a rotor wears by between 0 and 10 mm on each face' },
  measure: 'Thickness now less the minimum cast into the rotor, halved.', tolerance: { absolute: 0.1 * mm },
} as const;
const cup = {
  dimension: 'volume',
  usual: { min: 40 * cm3, max: 300 * cm3, source: commonPractice },
  hard: { min: 0.1 * cm3, max: 5000 * cm3, reason: 'a reservoir holds between 0.1 cm³ and 5 liters' },
  measure: 'Pour water from a syringe or measuring cup, outlet plugged, up to the full mark. Dry it well afterwards.', tolerance: { relative: 0.05 },
} as const;
const height = {
  dimension: 'length',
  usual: { min: 5 * inch, max: 50 * inch, source: commonPractice },
  hard: { min: 0, max: 120 * inch, reason: 'it stands between 0 and 120 in above the road' },
  tolerance: { absolute: 5 * mm },
} as const;
const station = {
  dimension: 'length',
  usual: { min: -140 * inch, max: 30 * inch, source: commonPractice },
  hard: { min: -400 * inch, max: 400 * inch, reason: 'the point lies within 400 in of the front axle' },
  tolerance: { absolute: 10 * mm },
} as const;

/** Reservoirs and the height of the fluid over the brakes. */
export const reservoirs = {
  frontPadNew: { name: 'front brake pad material, new', symbol: 't_nf', ...wear, usual: { min: 7 * mm, max: 13 * mm, source: commonPractice }, measure: 'Calipers, backing plate left out.' },
  rearPadNew: { name: 'rear brake pad material, new', symbol: 't_nr', ...wear, usual: { min: 6 * mm, max: 13 * mm, source: commonPractice }, measure: 'Calipers, backing plate left out.' },
  frontPadWorn: { name: 'front brake pad material when you change it', symbol: 't_wf', ...wear, usual: { min: 0, max: 4 * mm, source: commonPractice }, measure: 'Your rule. Count on the worst: some are found at the backing plate.' },
  rearPadWorn: { name: 'rear brake pad material when you change it', symbol: 't_wr', ...wear, usual: { min: 0, max: 4 * mm, source: commonPractice }, measure: 'Your rule. Count on the worst: some are found at the backing plate.' },
  frontDiscWear: { name: 'front rotor wear, each face', symbol: 'w_df', ...discWear },
  rearDiscWear: { name: 'rear rotor wear, each face', symbol: 'w_dr', ...discWear },
  frontReservoir: { name: 'front reservoir, outlet to full mark', symbol: 'V_Rf', ...cup },
  rearReservoir: { name: 'rear reservoir, outlet to full mark', symbol: 'V_Rr', ...cup },
  reservoirMinimum: {
    name: 'fluid that must stay in each reservoir', symbol: 'V_min', dimension: 'volume',
    usual: { min: 5 * cm3, max: 40 * cm3, source: commonPractice },
    hard: { min: 0, max: 1000 * cm3, reason: 'the least level holds between 0 and 1 liter' },
    measure: 'Tilt the filled cup 20 degrees each way on the bench: what must be left for the outlet to stay covered.', tolerance: { relative: 0.1 },
  },
  sloshShare: {
    name: 'reserve on top of the wear', symbol: 'σ_s', dimension: 'share',
    usual: { min: 0.1, max: 0.3, source: commonPractice },
    hard: { min: 0, max: 2, reason: 'a reserve is between nothing and twice the wear' },
    measure: 'Your choice. 15 % for uneven wear and slosh.',
  },
  clutchFluidBack: {
    name: 'fluid the clutch slave pushes back as its disc wears', symbol: 'V_cb', dimension: 'volume',
    usual: { min: 0, max: 8 * cm3, source: memory },
    hard: { min: 0, max: 500 * cm3, reason: 'the slave pushes back between 0 and 500 cm³' },
    measure: 'Slave piston area times how far the piston moves back from a new disc to a worn one: disc wear times the lever of the diaphragm, times the fork’s.', tolerance: { relative: 0.2 },
  },
  clutchRoom: {
    name: 'room above the level in the clutch reservoir', symbol: 'V_cu', dimension: 'volume',
    usual: { min: 0, max: 60 * cm3, source: commonPractice },
    hard: { min: 0, max: 2000 * cm3, reason: 'the room is between 0 and 2 liters' },
    measure: 'With a new clutch disc: syringe from the level up to the cap’s seal.', tolerance: { relative: 0.1 },
  },
  reservoirHeight: { name: 'lowest fluid level above the road, at drive height', symbol: 'z_R', ...height, measure: 'Tape from a level floor to the reservoir’s least mark, not to its cap.' },
  reservoirStation: { name: 'reservoir, fore and aft', symbol: 'x_R', ...station, measure: 'Plumb bob to the floor; tape from the front axle line, forward is +.' },
  frontBleederHeight: { name: 'highest front bleeder or piston above the road', symbol: 'z_Bf', ...height, measure: 'Tape from a level floor to the top of the front caliper’s bleeder.' },
  rearBleederHeight: { name: 'highest rear bleeder or piston above the road', symbol: 'z_Br', ...height, measure: 'Tape from a level floor to the top of the rear caliper’s bleeder.' },
  frontBleederStation: { name: 'front caliper, fore and aft', symbol: 'x_Bf', ...station, measure: 'Tape from the front axle line, forward is +.' },
  rearBleederStation: { name: 'rear caliper, fore and aft', symbol: 'x_Br', ...station, measure: 'Tape from the front axle line, forward is +: about minus the wheelbase.' },
  steepestGrade: {
    name: 'steepest grade it will stand on', symbol: 'q_max', dimension: 'grade',
    usual: { min: 0.1, max: 0.3, source: commonPractice },
    hard: { min: 0, max: 1, reason: 'roads climb by no more than 100 %' },
    measure: 'Phone level on the steepest driveway or ramp you use.', tolerance: { absolute: 0.01 },
  },
  jackLift: {
    name: 'lift of one axle on the jack', symbol: 'H_j', dimension: 'length',
    usual: { min: 6 * inch, max: 24 * inch, source: commonPractice },
    hard: { min: 0, max: 60 * inch, reason: 'an axle is jacked up by 0 to 60 in' },
    measure: 'Tape: axle center on the jack less axle center on the floor.', tolerance: { absolute: 10 * mm },
  },
  fluidDensity: {
    name: 'density of the fluid', symbol: 'ρ_fl', dimension: 'density',
    usual: { min: 940, max: 1080, source: memory + ': glycol 1,050 to 1,070 kg/m³, silicone about 960' },
    hard: { min: 500, max: 2000, reason: 'brake fluid weighs between 500 and 2,000 kg/m³' },
    measure: 'Kitchen scale and measuring cup.', tolerance: { relative: 0.02 },
  },
  // results: reservoirs
  frontWearVolume: { name: 'fluid behind the front pistons when all is worn', symbol: 'V_wf', dimension: 'volume' },
  rearWearVolume: { name: 'fluid behind the rear pistons when all is worn', symbol: 'V_wr', dimension: 'volume' },
  frontReservoirNeeded: { name: 'front reservoir needed', symbol: 'V_nf', dimension: 'volume' },
  rearReservoirNeeded: { name: 'rear reservoir needed', symbol: 'V_nr', dimension: 'volume' },
  frontReservoirSpare: { name: 'front reservoir more than needed (− : short)', symbol: 'ΔV_Rf', dimension: 'volume' },
  rearReservoirSpare: { name: 'rear reservoir more than needed (− : short)', symbol: 'ΔV_Rr', dimension: 'volume' },
  frontWornAtMinimum: { name: 'front wear at which its least level is reached', symbol: 'q_wf', dimension: 'share' },
  rearWornAtMinimum: { name: 'rear wear at which its least level is reached', symbol: 'q_wr', dimension: 'share' },
  clutchRoomSpare: { name: 'room left in the clutch reservoir at a worn disc (− : overflows)', symbol: 'ΔV_cu', dimension: 'volume' },
  // results: head
  frontLeastHead: { name: 'least height of fluid over the front brakes', symbol: 'Δh_f', dimension: 'length' },
  rearLeastHead: { name: 'least height of fluid over the rear brakes', symbol: 'Δh_r', dimension: 'length' },
  frontLevelHead: { name: 'least height over the front brakes on level ground', symbol: 'Δh_f0', dimension: 'length' },
  rearLevelHead: { name: 'least height over the rear brakes on level ground', symbol: 'Δh_r0', dimension: 'length' },
  frontHeadPressure: { name: 'pressure of that least height, front', symbol: 'p_hf', dimension: 'pressure' },
  rearHeadPressure: { name: 'pressure of that least height, rear', symbol: 'p_hr', dimension: 'pressure' },
  airedOutHere: { name: 'how the reservoir moves when aired out', symbol: 'a_R', dimension: 'length' },
  liftedHere: { name: 'how the reservoir moves when lifted', symbol: 'l_R', dimension: 'length' },
  frontHeadAdvice: { name: 'front circuit', options: { none: 'no residual valve: the reservoir always stands higher', slope: 'below the brakes on a slope only: raise the reservoir', level: 'below the brakes on level ground: raise the reservoir, or a 2 psi valve' } },
  rearHeadAdvice: { name: 'rear circuit', options: { none: 'no residual valve: the reservoir always stands higher', slope: 'below the brakes on a slope only: raise the reservoir', level: 'below the brakes on level ground: raise the reservoir, or a 2 psi valve' } },
} as const satisfies Record<string, Entry>;
