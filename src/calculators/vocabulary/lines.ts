import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { inch, lbf, mm, psi } from '../../units/si.ts';

const memory = 'from memory, not checked against a text';
const strength = {
  dimension: 'stress',
  hard: { min: 1000 * psi, max: 400_000 * psi, reason: 'metal tube has a strength between 1,000 and 400,000 psi' },
  tolerance: { relative: 0.05 },
} as const;
const hoseFigure = {
  dimension: 'pressure',
  hard: { min: 100 * psi, max: 50_000 * psi, reason: 'a brake hose figure lies between 100 and 50,000 psi' },
} as const;

/** Strength of lines and hoses; stop lamps, their switches and wire. */
export const lines = {
  tubeDiameter: {
    name: 'outside diameter of the tube', symbol: 'D_t', dimension: 'length',
    usual: { min: 3 / 16 * inch, max: 1 / 4 * inch, source: commonPractice },
    hard: { min: 1 * mm, max: 30 * mm, reason: 'brake tube is between 1 and 30 mm across' },
    measure: 'Calipers on bare tube.', tolerance: { absolute: 0.05 * mm },
  },
  tubeWall: {
    name: 'wall of the tube, new', symbol: 't_w', dimension: 'length',
    usual: { min: 0.025 * inch, max: 0.040 * inch, source: commonPractice },
    hard: { min: 0, max: 15 * mm, reason: 'the wall is between 0 and 15 mm' },
    measure: 'The supplier’s sheet; or calipers on a cut piece: outside less bore, halved.', tolerance: { absolute: 0.03 * mm },
  },
  pitDepth: {
    name: 'depth of the worst pit in the tube', symbol: 'w_pit', dimension: 'length',
    usual: { min: 0, max: 0.4 * mm, source: commonPractice },
    hard: { min: 0, max: 15 * mm, reason: 'a pit is between 0 and 15 mm deep' },
    measure: 'Zero on new tube. On old tube clean the worst place with a wire brush, then the tip of a depth gauge; better, replace it.', tolerance: { absolute: 0.02 * mm },
  },
  tubeTensile: { name: 'tensile strength of the tube', symbol: 'σ_tu', ...strength, usual: { min: 200e6, max: 450e6, source: 'SAE J527 steel tube: at least 290 MPa, read in a text that quotes it' }, measure: 'The supplier’s sheet. Steel brake tube: 290 MPa, 42,000 psi.' },
  tubeYield: { name: 'yield strength of the tube', symbol: 'σ_ty', ...strength, usual: { min: 90e6, max: 300e6, source: 'SAE J527 steel tube: at least 170 MPa, read in a text that quotes it' }, measure: 'The supplier’s sheet. Steel brake tube: 170 MPa, 24,700 psi.' },
  hoseProof: { name: 'pressure every hose of the kind has held', symbol: 'p_hp', ...hoseFigure, usual: { min: 3000 * psi, max: 5000 * psi, source: 'FMVSS 106 S5.3.2, older text, as an agency letter quotes it: 4,000 psi held 2 min' }, measure: 'The maker’s sheet. 4,000 psi if nothing else is known.' },
  hoseBurst: { name: 'pressure a sample of the hose must reach before it bursts', symbol: 'p_hb', ...hoseFigure, usual: { min: 5000 * psi, max: 12_000 * psi, source: 'FMVSS 106 S5.3.2, older text, as an agency letter quotes it: 5,000 psi; the present text asks 7,000 psi up to 1/8 in bore (from memory, not checked)' }, measure: 'The maker’s sheet. 5,000 psi if nothing else is known.' },
  lampSwitch: {
    name: 'stop lamp switch', options: { pedal: 'on the pedal', front: 'one pressure switch, front line', rear: 'one pressure switch, rear line', both: 'two pressure switches, one in each line' },
    measure: 'Trace the two wires from the lamp fuse.',
  },
  switchPressure: {
    name: 'pressure at which the switch makes', symbol: 'p_sw', dimension: 'pressure',
    usual: { min: 60 * psi, max: 120 * psi, source: memory },
    hard: { min: 0.1 * psi, max: 3000 * psi, reason: 'a stop lamp switch makes at between 0.1 and 3,000 psi' },
    measure: 'Gauge teed beside it, meter across it, helper on the pedal, slowly.', tolerance: { relative: 0.15 },
  },
  switchTravel: {
    name: 'pedal travel at which the pedal switch makes', symbol: 'T_sw', dimension: 'length',
    usual: { min: 5 * mm, max: 10 * mm, source: commonPractice },
    hard: { min: 0.1 * mm, max: 10 * inch, reason: 'the switch makes between 0.1 mm and 10 in of travel' },
    measure: 'Rule beside the pedal pad, meter across the switch.', tolerance: { absolute: 1 * mm },
  },
  padSpring: {
    name: 'return spring of the pedal, at its pad', symbol: 'F_sp', dimension: 'force',
    usual: { min: 0, max: 6 * lbf, source: commonPractice },
    hard: { min: 0, max: 100 * lbf, reason: 'the pedal’s spring is between 0 and 100 lbf at the pad' },
    measure: 'Luggage scale on the pad, rods off, halfway through the switch’s travel.', tolerance: { absolute: 0.5 * lbf },
  },
  lampCurrent: {
    name: 'current of the stop lamps', symbol: 'I_la', dimension: 'current',
    usual: { min: 0.3, max: 8, source: memory + ': two filament lamps of 21 to 27 W and a third take 4 to 6 A' },
    hard: { min: 0, max: 100, reason: 'stop lamps take between 0 and 100 A' },
    measure: 'Meter in place of the fuse, lamps on. Lamps of 21 W take about 1.6 A each.', tolerance: { relative: 0.1 },
  },
  wireLength: {
    name: 'wire from battery to the farthest lamp, one way', symbol: 'ℓ_la', dimension: 'distance',
    usual: { min: 3, max: 9, source: commonPractice },
    hard: { min: 0.01, max: 100, reason: 'the wire is between 1 cm and 100 m long' },
    measure: 'Tape along the route: battery, fuse, switch, back to the tail.', tolerance: { relative: 0.05 },
  },
  wireArea: {
    name: 'copper area of the wire', symbol: 'A_w', dimension: 'area',
    usual: { min: 0.5 * mm * mm, max: 4 * mm * mm, source: commonPractice },
    hard: { min: 0.01 * mm * mm, max: 100 * mm * mm, reason: 'a wire has between 0.01 and 100 mm² of copper' },
    measure: 'By the gauge printed on it: 18 AWG 0.82 mm², 16 AWG 1.31 mm², 14 AWG 2.08 mm² (from memory, agrees with the gauge’s formula).', tolerance: { relative: 0.03 },
  },
  wireReturn: { name: 'way back to the battery', options: { wire: 'a ground wire of the same size', frame: 'through the frame' }, measure: 'Follow the lamp’s ground.' },
  supplyVoltage: {
    name: 'voltage at the battery', symbol: 'U_b', dimension: 'voltage',
    usual: { min: 11.5, max: 14.6, source: commonPractice },
    hard: { min: 1, max: 60, reason: 'a battery has between 1 and 60 V' },
    measure: 'Meter on the posts, lamps on.', tolerance: { absolute: 0.1 },
  },
  // results: strength of lines
  worstPressure: { name: 'most line pressure of the hardest push, all of it on one master', symbol: 'p_wst', dimension: 'pressure' },
  hardStopPressure: { name: 'higher line pressure of a hard stop, both circuits alive', symbol: 'p_hs', dimension: 'pressure' },
  wallLeft: { name: 'wall that is left', symbol: 't_lw', dimension: 'length' },
  tubeBore: { name: 'bore of the tube', symbol: 'd_t', dimension: 'length' },
  boreFormulaRatio: { name: 'wall stress per pressure, thin wall on the bore', symbol: 'k_bo', dimension: 'ratio' },
  thickWallRatio: { name: 'wall stress per pressure, thick wall at the bore', symbol: 'k_L', dimension: 'ratio' },
  outsideFormulaRatio: { name: 'wall stress per pressure, thin wall on the outside', symbol: 'k_o', dimension: 'ratio' },
  tubeBurst: { name: 'burst pressure of the tube, thick wall', symbol: 'p_bu', dimension: 'pressure' },
  tubeYieldPressure: { name: 'pressure at which the tube’s bore yields', symbol: 'p_y', dimension: 'pressure' },
  wallYieldPressure: { name: 'pressure at which the tube’s whole wall yields', symbol: 'p_yw', dimension: 'pressure' },
  wallYieldFactor: { name: 'pressure at which the whole wall yields over the worst line pressure', symbol: 'S_yw', dimension: 'ratio' },
  yieldedPart: { name: 'part of the wall, from the bore out, that the worst pressure makes yield', symbol: 'q_yw', dimension: 'share' },
  burstFactorWorst: { name: 'burst pressure over the worst line pressure', symbol: 'S_u', dimension: 'ratio' },
  yieldFactorWorst: { name: 'pressure at which the bore yields over the worst line pressure', symbol: 'S_y', dimension: 'ratio' },
  burstFactorStop: { name: 'burst pressure over that of a hard stop', symbol: 'S_hs', dimension: 'ratio' },
  hoseProofFactor: { name: 'what the hose has held over the worst line pressure', symbol: 'S_hp', dimension: 'ratio' },
  hoseBurstFactor: { name: 'what the hose must reach over the worst line pressure', symbol: 'S_hb', dimension: 'ratio' },
  // results: stop lamp
  lampForce: { name: 'foot force at which the stop lamps light', symbol: 'F_on', dimension: 'force' },
  lampRate: { name: 'braking rate when the stop lamps light', symbol: 'z_on', dimension: 'brakingRate' },
  lampTravel: { name: 'pedal travel when the stop lamps light', symbol: 'T_on', dimension: 'length' },
  frontSwitchForce: { name: 'foot force that makes a switch in the front line', symbol: 'F_swf', dimension: 'force' },
  rearSwitchForce: { name: 'foot force that makes a switch in the rear line', symbol: 'F_swr', dimension: 'force' },
  frontSwitchRate: { name: 'braking rate when a switch in the front line makes', symbol: 'z_swf', dimension: 'brakingRate' },
  rearSwitchRate: { name: 'braking rate when a switch in the rear line makes', symbol: 'z_swr', dimension: 'brakingRate' },
  lampForceFrontDead: { name: 'foot force that lights them with the front dead (0 if dark)', symbol: 'F_on,fd', dimension: 'force' },
  lampForceRearDead: { name: 'foot force that lights them with the rear dead (0 if dark)', symbol: 'F_on,rd', dimension: 'force' },
  lampRateFrontDead: { name: 'braking rate then, front dead', symbol: 'z_on,fd', dimension: 'brakingRate' },
  lampRateRearDead: { name: 'braking rate then, rear dead', symbol: 'z_on,rd', dimension: 'brakingRate' },
  lampTravelFrontDead: { name: 'pedal travel then, front dead', symbol: 'T_on,fd', dimension: 'length' },
  lampTravelRearDead: { name: 'pedal travel then, rear dead', symbol: 'T_on,rd', dimension: 'length' },
  lampFrontDead: { name: 'stop lamps with the front circuit dead', options: { lit: 'light', dark: 'stay dark' } },
  lampRearDead: { name: 'stop lamps with the rear circuit dead', options: { lit: 'light', dark: 'stay dark' } },
  // results: lamp wire
  wireDrop: { name: 'voltage lost in the wire', symbol: 'ΔU', dimension: 'voltage' },
  lampVoltage: { name: 'voltage left at the lamp', symbol: 'U_l', dimension: 'voltage' },
  wireDropShare: { name: 'part of the voltage lost', symbol: 'q_U', dimension: 'share' },
  copperResistivity: { name: 'resistivity of copper', symbol: 'ρ_Cu', dimension: 'resistivity' },
} as const satisfies Record<string, Entry>;
