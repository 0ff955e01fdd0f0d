import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { deg, inch, lbf, mm, psi } from '../../units/si.ts';

const arm = {
  dimension: 'length',
  usual: { min: 60 * mm, max: 130 * mm, source: commonPractice },
  hard: { min: 20 * mm, max: 400 * mm, reason: 'this length in a drum brake lies between 20 and 400 mm' },
  tolerance: { absolute: 1.5 * mm },
} as const;
const liningAngle = {
  dimension: 'angle',
  hard: { min: 0, max: 180 * deg, reason: 'a lining lies between 0 and 180 degrees from its shoe’s lower end' },
  tolerance: { absolute: 2 * deg },
} as const;
const valveHeight = {
  dimension: 'length',
  usual: { min: 4 * inch, max: 14 * inch, source: commonPractice },
  hard: { min: 0.5 * inch, max: 40 * inch, reason: 'frame and axle stand between 0.5 and 40 in apart' },
  tolerance: { absolute: 3 * mm },
} as const;
const valveKnee = {
  dimension: 'pressure',
  usual: { min: 100 * psi, max: 1500 * psi, source: 'from memory, not checked against a text' },
  hard: { min: 0, max: 4000 * psi, reason: 'a knee lies between 0 and 4,000 psi' },
  tolerance: { relative: 0.05 },
} as const;
const wrap = {
  dimension: 'angle',
  usual: { min: 45 * deg, max: 450 * deg, source: commonPractice },
  hard: { min: 0, max: 1800 * deg, reason: 'the bends of a cable add up to between 0 and 1,800 degrees' },
  tolerance: { absolute: 20 * deg },
} as const;
const gain = {
  dimension: 'ratio',
  hard: { min: 0.2, max: 200, reason: 'a lever at the wheel multiplies by 0.2 to 200' },
  tolerance: { relative: 0.08 },
} as const;
const shoeFactor = {
  dimension: 'ratio',
  usual: { min: 1.5, max: 5, source: commonPractice },
  hard: { min: 0.1, max: 20, reason: 'two shoes give between 0.1 and 20 times the push on a tip' },
  tolerance: { relative: 0.15 },
} as const;

/** The old drum, the disc that takes its place, the valve that reads the ride height, the parking brake. */
export const rear = {
  drumType: {
    name: 'drum type',
    options: { 'leading-trailing': 'leading and trailing (both shoes bear on an anchor at the bottom)', 'duo-servo': 'duo-servo (floating adjuster at the bottom, anchor pin at the top)' },
    measure: 'Drum off. An adjuster screw that floats between the lower shoe ends is a duo-servo. Ends that bear on a block riveted to the backing plate are leading and trailing.',
  },
  wheelCylinderDiameter: {
    name: 'wheel cylinder bore', symbol: 'd_wc', dimension: 'length',
    usual: { min: 5 / 8 * inch, max: inch, source: commonPractice },
    hard: { min: 8 * mm, max: 50 * mm, reason: 'a wheel cylinder is between 8 and 50 mm across' },
    measure: 'Cast on its back, or calipers on the piston.', tolerance: { relative: 0.003 },
  },
  drumRadius: { name: 'drum radius', symbol: 'r_d', ...arm, usual: { min: 100 * mm, max: 150 * mm, source: commonPractice }, measure: 'Half of the inside diameter; the largest allowed diameter is cast on the drum.', tolerance: { absolute: 0.3 * mm } },
  shoePivot: { name: 'drum’s center to the lower shoe ends', symbol: 'd_sp', ...arm, measure: 'Tape from the axle’s center straight down to where the lower shoe ends bear: the anchor block, or the middle of the adjuster of a duo-servo.' },
  shoeHeight: {
    name: 'lower shoe ends to the cylinder’s line', symbol: 'h_s', ...arm, usual: { min: 140 * mm, max: 240 * mm, source: commonPractice },
    hard: { min: 30 * mm, max: 800 * mm, reason: 'a shoe is between 30 and 800 mm tall' }, measure: 'Tape from there straight up to the middle of the wheel cylinder.',
  },
  anchorAbove: {
    name: 'anchor pin above the cylinder’s line', symbol: 'e_s', dimension: 'length',
    usual: { min: 0, max: 30 * mm, source: commonPractice },
    hard: { min: 0, max: 150 * mm, reason: 'the anchor pin stands between 0 and 150 mm above the cylinder' },
    measure: 'Duo-servo only: tape from the cylinder’s middle up to the anchor pin’s middle. Leading and trailing: leave it.', tolerance: { absolute: 1.5 * mm },
  },
  liningStart: { name: 'lining’s lower end', symbol: 'θ_1', ...liningAngle, usual: { min: 10 * deg, max: 50 * deg, source: commonPractice }, measure: 'Cardboard circle on the axle’s center with a protractor on it: from straight down to where the lining begins. Use the longer lining if they differ.' },
  liningEnd: { name: 'lining’s upper end', symbol: 'θ_2', ...liningAngle, usual: { min: 110 * deg, max: 155 * deg, source: commonPractice }, measure: 'The same circle: from straight down to where the lining ends.' },
  liningFriction: {
    name: 'drum lining friction', symbol: 'μ_d', dimension: 'friction',
    usual: { min: 0.25, max: 0.45, source: commonPractice + ' for street linings, cold' },
    hard: { min: 0.05, max: 0.8, reason: 'lining friction lies between 0.05 and 0.8' },
    measure: 'The lining maker’s sheet or edge code, as a range. Plan on 0.35, and look at 0.30 and 0.40.', tolerance: { relative: 0.08 },
  },
  drumPushOut: {
    name: 'push-out pressure of the shoe springs', symbol: 'p_0d', dimension: 'pressure',
    usual: { min: 40 * psi, max: 100 * psi, source: commonPractice },
    hard: { min: 0, max: 600 * psi, reason: 'shoe springs take between 0 and 600 psi' },
    measure: 'Gauge in the line: the pressure at which a wheel turned by hand first drags.', tolerance: { absolute: 10 * psi },
  },
  drumEfficiency: {
    name: 'drum brake efficiency', symbol: 'η_d', dimension: 'share',
    usual: { min: 0.94, max: 0.98, source: commonPractice },
    hard: { min: 0.3, max: 1, reason: 'a drum brake gives back between 30 and 100 %' },
    measure: 'Not measured at home. 96 % with greased shoe pads.', tolerance: { absolute: 0.015 },
  },
  drumGain: {
    name: 'drum axle brake force per line pressure', symbol: 'C_d', dimension: 'brakeGain',
    usual: { min: 0.3 * lbf / psi, max: 3 * lbf / psi, source: commonPractice },
    hard: { min: 0.001 * lbf / psi, max: 200 * lbf / psi, reason: 'a drum axle gives between 0.001 and 200 lbf for each psi' },
    measure: 'From the drum’s sizes (the drum torque calculator), counted above its push-out pressure.', tolerance: { relative: 0.14 },
  },
  matchPressure: {
    name: 'line pressure to match at', symbol: 'p_eq', dimension: 'pressure',
    usual: { min: 200 * psi, max: 900 * psi, source: commonPractice },
    hard: { min: 5 * psi, max: 4000 * psi, reason: 'a match is made between 5 and 4,000 psi' },
    measure: 'Your choice: the rear line pressure of a hard stop, read on a gauge before the drums come off.',
  },
  padGap: {
    name: 'gap at each brake pad', symbol: 'g_p', dimension: 'length',
    usual: { min: 0.1 * mm, max: 0.2 * mm, source: commonPractice },
    hard: { min: 0.005 * mm, max: 5 * mm, reason: 'a brake pad clears its rotor by 0.005 to 5 mm' },
    measure: 'Feeler gauge after a firm push and release.', tolerance: { relative: 0.25 },
  },
  shoeTravel: {
    name: 'travel of one wheel cylinder piston', symbol: 's_wc', dimension: 'length',
    usual: { min: 0.5 * mm, max: 1.5 * mm, source: commonPractice },
    hard: { min: 0.02 * mm, max: 20 * mm, reason: 'a wheel cylinder piston moves between 0.02 and 20 mm' },
    measure: 'Adjusted drum: gap at the middle of the lining (half of drum bore less shoe diameter) times about 2.', tolerance: { relative: 0.25 },
  },
  // the valve that reads the ride height
  valveEmptyHeight: { name: 'height the valve is set at, empty', symbol: 'H_e', ...valveHeight, measure: 'Factory sheet, or tape from the frame to the axle tube at the valve’s link, stock truck empty.' },
  valveLadenHeight: { name: 'height the valve is set at, loaded', symbol: 'H_l', ...valveHeight, measure: 'The same with the load of the factory’s full setting in the bed.' },
  valveEmptyKnee: { name: 'knee pressure at the empty height', symbol: 'p_ke', ...valveKnee, measure: 'Gauges before and after the valve, link at its empty height: the inlet pressure at which they part.' },
  valveLadenKnee: { name: 'knee pressure at the loaded height', symbol: 'p_kl', ...valveKnee, measure: 'The same with the link held at its loaded height.' },
  linkHeight: { name: 'frame to axle at the link before the work', symbol: 'H_v', ...valveHeight, measure: 'Tape, frame to axle tube at the valve’s link, truck at old drive height with the bed as you will drive it.' },
  kneeAfterDrop: { name: 'knee pressure after the work', symbol: 'p_k1', dimension: 'pressure' },
  kneeBeforeDrop: { name: 'knee pressure before the work', symbol: 'p_k0', dimension: 'pressure' },
  kneeRise: { name: 'rise of the knee, same load in the bed', symbol: 'Δp_k', dimension: 'pressure' },
  linkHeightAfter: { name: 'frame to axle at the link after the work', symbol: 'H_v1', dimension: 'length' },
  believedBefore: { name: 'load the valve believed in before (part of its full setting)', symbol: 'λ_v0', dimension: 'share' },
  believedAfter: { name: 'load the valve believes in after (part of its full setting)', symbol: 'λ_v1', dimension: 'share' },
  linkCorrection: { name: 'length to take out of the link (− to add)', symbol: 'ΔH', dimension: 'length' },
  valveOutletBefore: { name: 'rear brake pressure before the work', symbol: 'p_b0', dimension: 'pressure' },
  valveOutletAfter: { name: 'rear brake pressure after the work', symbol: 'p_b1', dimension: 'pressure' },
  // parking
  parkingGrade: {
    name: 'hill to park on', symbol: 'q_p', dimension: 'grade',
    usual: { min: 0.05, max: 0.3, source: commonPractice },
    hard: { min: 0.005, max: 0.6, reason: 'roads to park on climb between 0.5 and 60 %' },
    measure: 'Phone level on the floor of the parked truck, on the steepest place you park.', tolerance: { absolute: 0.005 },
  },
  leverForce: {
    name: 'pull on the parking lever', symbol: 'F_h', dimension: 'force',
    usual: { min: 20 * lbf, max: 90 * lbf, source: commonPractice },
    hard: { min: lbf, max: 500 * lbf, reason: 'a hand or foot gives between 1 and 500 lbf' },
    measure: 'Luggage scale where the hand pulls, at the click you park on.', tolerance: { relative: 0.05 },
  },
  leverRatio: {
    name: 'parking lever ratio', symbol: 'i_h', dimension: 'ratio',
    usual: { min: 5, max: 12, source: commonPractice },
    hard: { min: 0.5, max: 60, reason: 'a parking lever multiplies by 0.5 to 60' },
    measure: 'Travel of the hand over travel of the front cable, two marks and a tape.', tolerance: { relative: 0.05 },
  },
  frontWrap: { name: 'bends of the front cable added up', symbol: 'φ_f', ...wrap, measure: 'Walk the cable with an angle finder: every bend from lever to equalizer, added up whichever way it turns.' },
  rearWrap: { name: 'bends of one rear cable added up', symbol: 'φ_r', ...wrap, measure: 'The same from the equalizer to one wheel. A loop up and over is 180 degrees.' },
  cableFriction: {
    name: 'friction of the cable in its sheath', symbol: 'μ_c', dimension: 'friction',
    usual: { min: 0.1, max: 0.2, source: commonPractice },
    hard: { min: 0, max: 0.8, reason: 'a cable’s friction lies between 0 and 0.8' },
    measure: 'Two luggage scales on a cable bent half around: −ln of (out over in), divided by 3.14. 0.1 new and lined, 0.2 old.', tolerance: { relative: 0.2 },
  },
  equalizerRatio: {
    name: 'lever after the equalizer', symbol: 'i_e', dimension: 'ratio',
    usual: { min: 0.8, max: 3, source: commonPractice },
    hard: { min: 0.1, max: 30, reason: 'an intermediate lever multiplies by 0.1 to 30' },
    measure: 'Long arm over short arm. 1 when there is none.', tolerance: { relative: 0.03 },
  },
  parkingKind: {
    name: 'parking brake at the wheel', options: { caliper: 'a lever on the caliper', shoe: 'shoes in the rotor’s hat' },
    measure: 'Look at the kit before you pay. A caliper with no cable lever on a rotor with no shoes inside is no parking brake.',
  },
  caliperGain: { name: 'caliper lever: brake pad force per cable force', symbol: 'G_c', ...gain, usual: { min: 10, max: 35, source: commonPractice }, measure: 'Lever travel at the cable over brake pad travel with the gap closed: dial gauge on the piston, tape on the lever.' },
  shoeGain: { name: 'hat lever: shoe tip force per cable force', symbol: 'G_s', ...gain, usual: { min: 2.5, max: 7, source: commonPractice }, measure: 'Long arm over short arm of the lever between the shoes.' },
  actuatorEfficiency: {
    name: 'efficiency of the lever at the wheel', symbol: 'η_w', dimension: 'share',
    usual: { min: 0.6, max: 0.9, source: commonPractice },
    hard: { min: 0.1, max: 1, reason: 'the lever at the wheel gives back between 10 and 100 %' },
    measure: 'Not measured at home: 80 % clean, far less with a dry ramp or a rusty pivot.', tolerance: { absolute: 0.07 },
  },
  staticFriction: {
    name: 'brake pad friction standing still', symbol: 'μ_s', dimension: 'friction',
    usual: { min: 0.2, max: 0.4, source: commonPractice + ': 0.30 to 0.40 bedded, 0.2 on new brake pads' },
    hard: { min: 0.05, max: 0.8, reason: 'brake pad friction lies between 0.05 and 0.8' },
    measure: 'The brake pad maker’s sheet; 0.2 until they are bedded.', tolerance: { relative: 0.12 },
  },
  forwardFactor: { name: 'brake factor of the hat shoes, rolling forward', symbol: 'B_fw', ...shoeFactor, measure: 'Pull a loose wheel with a scale on a strap around the tire, a known pull on the cable: torque over shoe tip force and drum radius.' },
  reverseFactor: { name: 'brake factor of the hat shoes, rolling back', symbol: 'B_rv', ...shoeFactor, measure: 'The same the other way around.' },
  hatRadius: { name: 'drum radius inside the rotor’s hat', symbol: 'r_h', ...arm, usual: { min: 70 * mm, max: 110 * mm, source: commonPractice }, measure: 'Half of the hat’s inside diameter.', tolerance: { absolute: 0.5 * mm } },
  coolingLoss: {
    name: 'grip lost as a hot caliper brake cools', symbol: 'δ_c', dimension: 'share',
    usual: { min: 0.1, max: 0.2, source: commonPractice },
    hard: { min: 0, max: 0.9, reason: 'cooling takes between nothing and 90 %' },
    measure: 'Luggage scale on the cable, set after a drive and again an hour later. 15 % if you cannot. Shoes in the hat lose none.', tolerance: { absolute: 0.03 },
  },
  // results: drum
  drumBrakeForce: { name: 'brake force of the drum axle', symbol: 'F_xd', dimension: 'force' },
  drumTorque: { name: 'drum torque per wheel', symbol: 'T_d', dimension: 'torque' },
  firstShoeTorque: { name: 'torque of the leading or primary shoe', symbol: 'T_1', dimension: 'torque' },
  secondShoeTorque: { name: 'torque of the trailing or secondary shoe', symbol: 'T_2', dimension: 'torque' },
  brakeFactor: { name: 'brake factor of both shoes', symbol: 'B', dimension: 'ratio' },
  brakeFactorByRule: { name: 'brake factor by the simple lever rule', symbol: 'B_s', dimension: 'ratio' },
  firstShoeFactor: { name: 'brake factor of the leading or primary shoe', symbol: 'B_1', dimension: 'ratio' },
  secondShoeFactor: { name: 'brake factor of the trailing or secondary shoe', symbol: 'B_2', dimension: 'ratio' },
  linkPush: { name: 'push through the adjuster per push on a tip (0: leading and trailing)', symbol: 'k_P', dimension: 'ratio' },
  frictionSensitivity: { name: 'percent of torque for each percent of friction', symbol: 'ε_μ', dimension: 'ratio' },
  lockFriction: { name: 'friction at which a shoe locks by itself', symbol: 'μ_lk', dimension: 'friction' },
  shoeTipForce: { name: 'push on a shoe tip', symbol: 'F_tip', dimension: 'force' },
  wheelCylinderArea: { name: 'wheel cylinder area', symbol: 'A_wc', dimension: 'area' },
  liningSine: { name: 'mean sine of the lining’s pressure', symbol: 's_θ', dimension: 'ratio' },
  liningCosine: { name: 'mean cosine of the lining’s pressure', symbol: 'm_θ', dimension: 'ratio' },
  // results: a disc to match
  matchPistonDiameter: { name: 'piston diameter that matches the drum', symbol: 'd_eq', dimension: 'length' },
  matchClampArea: { name: 'clamp area that matches the drum, one side', symbol: 'A_eq', dimension: 'area' },
  matchRadius: { name: 'effective radius at which your pistons match', symbol: 'r_eq', dimension: 'length' },
  drumMatchForce: { name: 'brake force of the drum axle at that pressure', symbol: 'F_eq', dimension: 'force' },
  discMatchForce: { name: 'brake force of your disc axle at that pressure', symbol: 'F_yd', dimension: 'force' },
  discOverDrum: { name: 'your disc axle over the drum axle', symbol: 'k_dd', dimension: 'share' },
  drumVolume: { name: 'fluid the drum takes up per wheel', symbol: 'V_dr', dimension: 'volume' },
  discVolume: { name: 'fluid your caliper takes up per wheel', symbol: 'V_di', dimension: 'volume' },
  volumeOverDrum: { name: 'your caliper’s take-up over the drum’s', symbol: 'k_V', dimension: 'share' },
  strokeChange: { name: 'rear master stroke the change of take-up costs, − saves', symbol: 'Δx_r', dimension: 'length' },
  // results: parking
  leverForceNeeded: { name: 'pull needed on the lever, worse way, cold', symbol: 'F_h,n', dimension: 'force' },
  steepestUp: { name: 'steepest hill held nose up', symbol: 'q_up', dimension: 'grade' },
  steepestDown: { name: 'steepest hill held nose down', symbol: 'q_dn', dimension: 'grade' },
  gradeForce: { name: 'pull of the hill, loaded', symbol: 'X_p', dimension: 'force' },
  parkingTorqueNeeded: { name: 'torque needed at each rear wheel, loaded', symbol: 'T_pn', dimension: 'torque' },
  frontCableTension: { name: 'tension after the front cable', symbol: 'F_c1', dimension: 'force' },
  wheelCableTension: { name: 'tension at each wheel', symbol: 'F_c2', dimension: 'force' },
  parkingClamp: { name: 'force at the brake pads or shoe tips', symbol: 'N_p', dimension: 'force' },
  parkingTorqueDown: { name: 'parking torque per wheel, nose down, cold', symbol: 'T_pd', dimension: 'torque' },
  parkingTorqueUp: { name: 'parking torque per wheel, nose up, cold', symbol: 'T_pu', dimension: 'torque' },
  tiresUp: { name: 'hill at which the empty truck slides, nose up', symbol: 'q_tu', dimension: 'grade' },
  tiresDown: { name: 'hill at which the empty truck slides, nose down', symbol: 'q_td', dimension: 'grade' },
  ladenTiresUp: { name: 'hill at which the loaded truck slides, nose up', symbol: 'q_tu,p', dimension: 'grade' },
  ladenTiresDown: { name: 'hill at which the loaded truck slides, nose down', symbol: 'q_td,p', dimension: 'grade' },
} as const satisfies Record<string, Entry>;
