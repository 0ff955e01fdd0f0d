import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { inch, lb, mm, mph } from '../../units/si.ts';

const measuredPickups = '49 stock light pickups in US government inertia measurements: 0.514 to 0.705 m; none of them lowered';
const drop = {
  dimension: 'length',
  usual: { min: 0, max: 5 * inch, source: commonPractice },
  hard: { min: -12 * inch, max: 24 * inch, reason: 'a drop lies between 12 in up and 24 in down' },
  measure: 'Tape, frame to ground at each axle, before and after.', tolerance: { absolute: 3 * mm },
} as const;
const axleReading = {
  dimension: 'mass',
  usual: { min: 600 * lb, max: 2600 * lb, source: commonPractice },
  hard: { min: 50 * lb, max: 20000 * lb, reason: 'an axle of a pickup carries between 50 and 20,000 lb' },
  tolerance: { relative: 0.004 },
} as const;
const lift = {
  dimension: 'length',
  usual: { min: 9 * inch, max: 27 * inch, source: commonPractice },
  hard: { min: 0.5 * inch, max: 60 * inch, reason: 'the rear axle is lifted between 0.5 and 60 in' },
  measure: 'Height of the rear axle’s center less that of the front axle’s center, both from the floor, front wheels on their scales. Level readings: all four wheels at one height. Brakes off, out of gear, front wheels free to roll, suspension locked with blocks.', tolerance: { absolute: 3 * mm },
} as const;

/** Loads, heights, wheelbase, tires, road, speed. */
export const truck = {
  frontAxleLoad: { name: 'static front axle load', symbol: 'm_f', measure: 'Scales under both front wheels, level, driver in, half a tank.', ...axleReading },
  rearAxleLoad: { name: 'static rear axle load', symbol: 'm_r', measure: 'Scales under both rear wheels, level, driver in, half a tank.', ...axleReading },
  wheelbase: {
    name: 'wheelbase', symbol: 'L', dimension: 'length',
    usual: { min: 95 * inch, max: 130 * inch, source: commonPractice },
    hard: { min: 30 * inch, max: 300 * inch, reason: 'the wheelbase lies between 30 and 300 in' },
    measure: 'Plumb bob from both axle centers to the floor, tape between the marks, both sides.', tolerance: { absolute: 3 * mm },
  },
  cgHeight: {
    name: 'height of the center of gravity', symbol: 'h', dimension: 'length',
    usual: { min: 0.45, max: 0.75, source: measuredPickups },
    hard: { min: 4 * inch, max: 80 * inch, reason: 'the center of gravity lies between 4 and 80 in above the road' },
    measure: 'Axle lift with the suspension locked (calculator), or 0.375 of roof height as a first guess on a stock truck.', tolerance: { absolute: 30 * mm },
  },
  stockCgHeight: {
    name: 'height of the center of gravity before the drop', symbol: 'h_0', dimension: 'length',
    usual: { min: 0.45, max: 0.75, source: measuredPickups },
    hard: { min: 4 * inch, max: 80 * inch, reason: 'the center of gravity lies between 4 and 80 in above the road' },
    measure: 'Axle lift on the whole truck before anything is cut.', tolerance: { absolute: 25 * mm },
  },
  loadedRadius: {
    name: 'loaded tire radius', symbol: 'R', dimension: 'length',
    usual: { min: 10 * inch, max: 16 * inch, source: commonPractice },
    hard: { min: 4 * inch, max: 40 * inch, reason: 'a tire stands between 4 and 40 in from axle to ground' },
    measure: 'Tape, axle center to ground, driver in, tires at road pressure.', tolerance: { relative: 0.01 },
  },
  payload: {
    name: 'load in the bed', symbol: 'm_p', dimension: 'mass',
    usual: { min: 0, max: 1500 * lb, source: commonPractice },
    hard: { min: 0, max: 20000 * lb, reason: 'the load is between nothing and 20,000 lb' },
    measure: 'Scale, or sacks of known weight.', tolerance: { relative: 0.02 },
  },
  payloadAhead: {
    name: 'load’s center ahead of the rear axle', symbol: 'x_p', dimension: 'length',
    usual: { min: -20 * inch, max: 40 * inch, source: commonPractice },
    hard: { min: -150 * inch, max: 150 * inch, reason: 'the load sits within 150 in of the rear axle' },
    measure: 'Tape from the axle line; minus when it sits behind.', tolerance: { absolute: 25 * mm },
  },
  payloadHeight: {
    name: 'load’s center above the road', symbol: 'h_p', dimension: 'length',
    usual: { min: 18 * inch, max: 50 * inch, source: commonPractice },
    hard: { min: 0, max: 150 * inch, reason: 'the load sits between 0 and 150 in above the road' },
    measure: 'Tape, bed floor height plus half the load’s height.', tolerance: { absolute: 25 * mm },
  },
  grip: {
    name: 'grip of tire on road', symbol: 'μ_t', dimension: 'friction',
    usual: { min: 0.2, max: 1.1, source: commonPractice + ': dry 0.8 to 1.0, wet 0.5 to 0.7, ice 0.1 to 0.2' },
    hard: { min: 0.02, max: 1.5, reason: 'street tires grip between 0.02 and 1.5' },
    measure: 'Not measured at home: use 0.9 dry, 0.6 wet.', tolerance: { relative: 0.07 },
  },
  brakingRate: {
    name: 'braking rate (deceleration in g)', symbol: 'z', dimension: 'brakingRate',
    usual: { min: 0.1, max: 1, source: commonPractice },
    hard: { min: 0.001, max: 1.2, reason: 'street tires stop at no more than about 1.2 g' },
    measure: 'Phone accelerometer fixed level to the floor, or this site’s chain from foot to road.', tolerance: { relative: 0.03 },
  },
  speed: {
    name: 'speed at the start of the stop', symbol: 'v', dimension: 'speed',
    usual: { min: 5 * mph, max: 90 * mph, source: commonPractice },
    hard: { min: 0, max: 250 * mph, reason: 'the speed lies between 0 and 250 mph' },
    measure: 'Satellite speed on the phone; new tires upset the dash.', tolerance: { relative: 0.01 },
  },
  reactionTime: {
    name: 'driver’s reaction time', symbol: 't_r', dimension: 'time',
    usual: { min: 0.75, max: 2.5, source: commonPractice },
    hard: { min: 0, max: 10, reason: 'reaction takes between 0 and 10 s' },
    measure: 'Not measured: 1.5 s for a driver who is not expecting it.', tolerance: { relative: 0.2 },
  },
  buildUpTime: {
    name: 'brake build-up time', symbol: 't_b', dimension: 'time',
    usual: { min: 0.1, max: 0.4, source: commonPractice },
    hard: { min: 0, max: 3, reason: 'brakes build up within 0 to 3 s' },
    measure: 'Not measured: 0.3 s is usual.', tolerance: { relative: 0.2 },
  },
  grade: {
    name: 'grade, + uphill', symbol: 'q', dimension: 'grade',
    usual: { min: -0.2, max: 0.2, source: commonPractice },
    hard: { min: -0.6, max: 0.6, reason: 'roads climb and fall by no more than 60 %' },
    measure: 'Phone level on the floor of the parked truck.', tolerance: { absolute: 0.005 },
  },
  bodyMass: {
    name: 'mass that moves with the body', symbol: 'm_b', dimension: 'mass',
    usual: { min: 350, max: 520, source: commonPractice },
    hard: { min: 0, max: 20000 * lb, reason: 'the body weighs between nothing and 20,000 lb' },
    measure: 'Estimate what comes down: cab, front sheet metal, doors, glass; the bed only if it is dropped. With a channeled floor leave out floor, seats and driver. Scale readings before and after lifting it off are better.', tolerance: { relative: 0.1 },
  },
  sprungMass: {
    name: 'sprung mass', symbol: 'm_s', dimension: 'mass',
    usual: { min: 900, max: 1600, source: commonPractice },
    hard: { min: 0, max: 20000 * lb, reason: 'the sprung mass is between nothing and 20,000 lb' },
    measure: 'Whole truck less wheels, tires, axle and half the links: about 0.88 of the total.', tolerance: { relative: 0.03 },
  },
  bodyDrop: { name: 'body drop over the frame', symbol: 'D', ...drop },
  bodyDropFront: { name: 'body drop at the front of the cab', symbol: 'D_f', ...drop },
  bodyDropRear: { name: 'body drop at the rear of the cab', symbol: 'D_r', ...drop },
  suspensionDropFront: { name: 'suspension drop at the front axle', symbol: 'S_f', ...drop },
  suspensionDropRear: { name: 'suspension drop at the rear axle', symbol: 'S_r', ...drop },
  lift1: { name: 'first lift of the rear axle', symbol: 'H_1', ...lift },
  lift2: { name: 'second lift of the rear axle', symbol: 'H_2', ...lift },
  lift3: { name: 'third lift of the rear axle', symbol: 'H_3', ...lift },
  liftReading1: { name: 'front scale reading at the first lift', symbol: 'm_f1', measure: 'Both front scales added.', ...axleReading },
  liftReading2: { name: 'front scale reading at the second lift', symbol: 'm_f2', measure: 'Both front scales added.', ...axleReading },
  liftReading3: { name: 'front scale reading at the third lift', symbol: 'm_f3', measure: 'Both front scales added.', ...axleReading },
  scaleError: {
    name: 'scale error', symbol: 'δ_m', dimension: 'mass',
    usual: { min: 0.5 * lb, max: 15 * lb, source: commonPractice },
    hard: { min: 0, max: 500 * lb, reason: 'the scale error lies between 0 and 500 lb' },
    measure: 'Drive off and on three times; half the spread of the readings.',
  },
  // results
  mass: { name: 'mass with driver', symbol: 'M', dimension: 'mass' },
  rearLoadFraction: { name: 'static rear load fraction', symbol: 'ψ', dimension: 'share' },
  heightRatio: { name: 'center of gravity height over wheelbase', symbol: 'χ', dimension: 'ratio' },
  // results: load transfer
  loadTransferForce: { name: 'load that moves to the front axle', symbol: 'ΔN', dimension: 'force' },
  frontDynamicLoad: { name: 'dynamic front axle load, empty', symbol: 'N_f', dimension: 'force' },
  rearDynamicLoad: { name: 'dynamic rear axle load, empty', symbol: 'N_r', dimension: 'force' },
  rearDynamicFraction: { name: 'dynamic rear load fraction, empty', symbol: 'ψ_z', dimension: 'share' },
  rearLiftRate: { name: 'braking rate at which the rear wheels lift, empty', symbol: 'z_up', dimension: 'brakingRate' },
  ladenFrontDynamicLoad: { name: 'dynamic front axle load, loaded', symbol: 'N_f,p', dimension: 'force' },
  ladenRearDynamicLoad: { name: 'dynamic rear axle load, loaded', symbol: 'N_r,p', dimension: 'force' },
  ladenRearDynamicFraction: { name: 'dynamic rear load fraction, loaded', symbol: 'ψ_z,p', dimension: 'share' },
  ladenRearLiftRate: { name: 'braking rate at which the rear wheels lift, loaded', symbol: 'z_up,p', dimension: 'brakingRate' },
  // results: height of the center of gravity
  measuredCgHeight: { name: 'measured height of the center of gravity', symbol: 'h_m', dimension: 'length' },
  cgSpread: { name: 'spread of the measured height (two times in three)', symbol: 'σ_h', dimension: 'length' },
  gainSlope: { name: 'slope of the front scale’s gain against the tangent', symbol: 'k_N', dimension: 'mass' },
  fitScatter: { name: 'scatter of the gains about the line', symbol: 's_N', dimension: 'mass' },
  liftTangent1: { name: 'tangent of the truck’s tilt at the first lift', symbol: 'τ_1', dimension: 'ratio' },
  liftTangent2: { name: 'tangent of the truck’s tilt at the second lift', symbol: 'τ_2', dimension: 'ratio' },
  liftTangent3: { name: 'tangent of the truck’s tilt at the third lift', symbol: 'τ_3', dimension: 'ratio' },
  cgHeightAfterDrop: { name: 'height of the center of gravity after the drop', symbol: 'h_1', dimension: 'length' },
  cgHeightChange: { name: 'change of the center of gravity’s height, − is down', symbol: 'Δh', dimension: 'length' },
  cgChangeByBody: { name: 'change of the center of gravity’s height by the body drop', symbol: 'Δh_b', dimension: 'length' },
  cgChangeBySuspension: { name: 'change of the center of gravity’s height by the suspension', symbol: 'Δh_s', dimension: 'length' },
  // results: ideal distribution
  idealRearShare: { name: 'ideal rear share of the brake force, empty', symbol: 'Φ_i', dimension: 'share' },
  idealFrontForce: { name: 'ideal front axle brake force, empty', symbol: 'F_fi', dimension: 'force' },
  idealRearForce: { name: 'ideal rear axle brake force, empty', symbol: 'F_ri', dimension: 'force' },
  idealFrontPressure: { name: 'front line pressure for the ideal, empty', symbol: 'p_fi', dimension: 'pressure' },
  idealRearPressure: { name: 'rear line pressure for the ideal, empty', symbol: 'p_ri', dimension: 'pressure' },
  rearShareToSpare: { name: 'rear share below the ideal, − is above it', symbol: 'Δ_Φ', dimension: 'share' },
  fixedShareCriticalRate: { name: 'braking rate at which this rear share is ideal, empty (− : none)', symbol: 'z_Φ', dimension: 'brakingRate' },
  peakRearRate: { name: 'braking rate at which the ideal rear force is largest, empty', symbol: 'z_top', dimension: 'brakingRate' },
  ladenIdealRearShare: { name: 'ideal rear share of the brake force, loaded', symbol: 'Φ_i,p', dimension: 'share' },
  ladenFixedShareCriticalRate: { name: 'braking rate at which this rear share is ideal, loaded (− : none)', symbol: 'z_Φ,p', dimension: 'brakingRate' },
} as const satisfies Record<string, Entry>;
