import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { lbf, mm, psi } from '../../units/si.ts';

const pistonDiameter = {
  dimension: 'length',
  usual: { min: 28 * mm, max: 68 * mm, source: commonPractice },
  hard: { min: 8 * mm, max: 150 * mm, reason: 'a caliper piston is between 8 and 150 mm across' },
  measure: 'Calipers on the piston, or bore, of one side.', tolerance: { relative: 0.002 },
} as const;
const pistons = {
  dimension: 'count',
  hard: { min: 1, max: 8, reason: 'one side of a caliper has 1 to 8 pistons' },
  measure: 'Count the pistons on one side of the rotor only.',
} as const;
const caliperType = {
  options: { floating: 'floating (pistons on one side, housing slides)', opposed: 'fixed opposed (pistons on both sides)' },
  measure: 'A housing that slides on pins is floating.',
} as const;
const friction = {
  dimension: 'friction',
  usual: { min: 0.3, max: 0.45, source: commonPractice + ' for street brake pads, cold' },
  hard: { min: 0.1, max: 0.8, reason: 'brake pad friction lies between 0.1 and 0.8' },
  measure: 'The brake pad maker’s sheet, as a range: plan on 0.30 hot and 0.38 nominal.', tolerance: { relative: 0.08 },
} as const;
const trackOuter = {
  dimension: 'length',
  usual: { min: 80 * mm, max: 200 * mm, source: commonPractice },
  hard: { min: 10 * mm, max: 500 * mm, reason: 'the brake pad’s track reaches between 10 and 500 mm from the axle' },
  measure: 'Axle center to the outer edge of the shiny track the brake pad leaves, not to the rim of the rotor.', tolerance: { absolute: 1 * mm },
} as const;
const trackInner = {
  ...trackOuter,
  usual: { min: 50 * mm, max: 150 * mm, source: commonPractice },
  measure: 'Axle center to the inner edge of the shiny track.',
} as const;
const gain = {
  dimension: 'brakeGain',
  usual: { min: 0.5 * lbf / psi, max: 4 * lbf / psi, source: commonPractice },
  hard: { min: 0.001 * lbf / psi, max: 50 * lbf / psi, reason: 'an axle gives between 0.001 and 50 lbf of brake force for each psi' },
  measure: 'The disc torque calculator gives it from the parts; a gauge and a decelerometer measure it.', tolerance: { relative: 0.09 },
} as const;

/** Calipers, pads, rotors, and what an axle gives per unit line pressure. */
export const brakes = {
  frontPistonDiameter: { name: 'front caliper piston diameter', symbol: 'd_pf', ...pistonDiameter },
  rearPistonDiameter: { name: 'rear caliper piston diameter', symbol: 'd_pr', ...pistonDiameter },
  frontPistons: { name: 'front pistons on one side', symbol: 'n_f', ...pistons },
  rearPistons: { name: 'rear pistons on one side', symbol: 'n_r', ...pistons },
  frontCaliperType: { name: 'front caliper type', ...caliperType },
  rearCaliperType: { name: 'rear caliper type', ...caliperType },
  frontPadFriction: { name: 'front brake pad friction', symbol: 'μ_pf', ...friction },
  rearPadFriction: { name: 'rear brake pad friction', symbol: 'μ_pr', ...friction },
  frontTrackOuter: { name: 'front brake pad track, outer radius', symbol: 'r_of', ...trackOuter },
  frontTrackInner: { name: 'front brake pad track, inner radius', symbol: 'r_if', ...trackInner },
  rearTrackOuter: { name: 'rear brake pad track, outer radius', symbol: 'r_or', ...trackOuter },
  rearTrackInner: { name: 'rear brake pad track, inner radius', symbol: 'r_ir', ...trackInner },
  padLaw: {
    name: 'brake pad pressure law', options: { worn: 'worn in (mean radius)', uniform: 'new brake pad (uniform pressure)' },
    measure: 'After a few hundred miles brake pads are worn in.',
  },
  caliperEfficiency: {
    name: 'caliper efficiency', symbol: 'η_c', dimension: 'share',
    usual: { min: 0.95, max: 0.98, source: commonPractice },
    hard: { min: 0.3, max: 1, reason: 'a caliper gives back between 30 and 100 %' },
    measure: 'Not measured at home. 98 % with clean slides.', tolerance: { absolute: 0.01 },
  },
  pushOutPressure: {
    name: 'threshold (push-out) pressure', symbol: 'p_0', dimension: 'pressure',
    usual: { min: 0, max: 10 * psi, source: commonPractice + ' for discs' },
    hard: { min: 0, max: 300 * psi, reason: 'a brake starts to bite between 0 and 300 psi' },
    measure: 'Gauge reading at which a wheel turned by hand first drags. A few psi with discs; some 70 with drums, which takes about 0.02 g from a rear axle that brakes alone (common practice, no source).', tolerance: { absolute: 2 * psi },
  },
  frontBrakeGain: { name: 'front axle brake force per line pressure', symbol: 'C_f', ...gain },
  rearBrakeGain: { name: 'rear axle brake force per line pressure', symbol: 'C_r', ...gain },
  rearBrakeFraction: {
    name: 'rear share of the brake force', symbol: 'Φ', dimension: 'share',
    usual: { min: 0.15, max: 0.4, source: commonPractice },
    hard: { min: 0.001, max: 0.999, reason: 'both axles brake: the rear share lies between 0 and 100 %' },
    measure: 'From pressures and gains of both axles.', tolerance: { absolute: 0.025 },
  },
  // results
  frontEffectiveRadius: { name: 'front effective radius', symbol: 'r_ef', dimension: 'length' },
  rearEffectiveRadius: {
    name: 'rear effective radius', symbol: 'r_er', dimension: 'length',
    usual: { min: 80 * mm, max: 160 * mm, source: commonPractice },
    hard: { min: 5 * mm, max: 500 * mm, reason: 'brake pads rub between 5 and 500 mm from the axle' },
    measure: 'Axle center to the middle of the shiny track the rear brake pad leaves.', tolerance: { absolute: 1 * mm },
  },
  frontClampArea: { name: 'front clamp area, one side', symbol: 'A_cf', dimension: 'area' },
  rearClampArea: { name: 'rear clamp area, one side', symbol: 'A_cr', dimension: 'area' },
  frontClampForce: { name: 'front clamping force per caliper', symbol: 'N_cf', dimension: 'force' },
  rearClampForce: { name: 'rear clamping force per caliper', symbol: 'N_cr', dimension: 'force' },
  frontBrakeTorque: { name: 'front brake torque per wheel', symbol: 'T_f', dimension: 'torque' },
  rearBrakeTorque: { name: 'rear brake torque per wheel', symbol: 'T_r', dimension: 'torque' },
  frontBrakeForce: { name: 'front axle brake force', symbol: 'F_xf', dimension: 'force' },
  rearBrakeForce: { name: 'rear axle brake force', symbol: 'F_xr', dimension: 'force' },
  brakingRateReached: { name: 'braking rate the brakes ask for', symbol: 'z_b', dimension: 'brakingRate' },
} as const satisfies Record<string, Entry>;
