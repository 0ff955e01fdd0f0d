import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { foot, lb, lbf, mm, mph } from '../../units/si.ts';

const fahrenheit = (degrees: number): number => (degrees + 459.67) * (5 / 9);
const celsius = (degrees: number): number => degrees + 273.15;
const rotorWall = {
  dimension: 'length',
  usual: { min: 3.5 * mm, max: 13 * mm, source: commonPractice },
  hard: { min: 0.5 * mm, max: 60 * mm, reason: 'a rotor’s wall is between 0.5 and 60 mm' },
  measure: 'Calipers: one cheek of a vented rotor, half the thickness of a solid one.', tolerance: { absolute: 0.2 * mm },
} as const;
const rotorMass = {
  dimension: 'mass',
  usual: { min: 2.5, max: 10, source: commonPractice },
  hard: { min: 0.2 * lb, max: 150 * lb, reason: 'a rotor weighs between 0.2 and 150 lb' },
  tolerance: { relative: 0.03 },
} as const;
const fraction = { dimension: 'share' } as const;

/** What a stop and a hill make of rotors, pads and fluid. */
export const heat = {
  stops: {
    name: 'number of stops in a row', symbol: 'n_s', dimension: 'count',
    hard: { min: 1, max: 100, reason: 'the series has between 1 and 100 stops' },
    measure: 'Your choice: one for a stop in traffic, ten for a hard run.',
  },
  stopInterval: {
    name: 'time from one stop to the next', symbol: 'τ_s', dimension: 'time',
    usual: { min: 20, max: 300, source: commonPractice },
    hard: { min: 5, max: 7200, reason: 'one stop follows another after between 5 s and 2 hours' },
    measure: 'Your choice, or a watch.', tolerance: { relative: 0.05 },
  },
  coolingTime: {
    name: 'cooling time of a rotor', symbol: 'τ_c', dimension: 'time',
    usual: { min: 150, max: 400, source: commonPractice + ': the lower end at road speed, the upper standing or behind closed wheels' },
    hard: { min: 20, max: 3600, reason: 'a rotor loses most of its heat within 20 s to an hour' },
    measure: 'Infrared thermometer on the rotor’s face after some hard stops: the time at your pace until its excess over the air has fallen to 37 %. Half the excess takes 0.69 of it.', tolerance: { relative: 0.25 },
  },
  ambient: {
    name: 'temperature of the air', symbol: 'T_a', dimension: 'temperature',
    usual: { min: fahrenheit(14), max: fahrenheit(113), source: commonPractice },
    hard: { min: fahrenheit(-60), max: fahrenheit(140), reason: 'air is between −60 and 140 °F' },
    measure: 'Thermometer in the shade.', tolerance: { absolute: 2 },
  },
  frontRotorMass: { name: 'mass of one front rotor', symbol: 'm_Rf', measure: 'Kitchen scale. A worn rotor weighs less: weigh yours, not a new one.', ...rotorMass },
  rearRotorMass: { name: 'mass of one rear rotor', symbol: 'm_Rr', measure: 'Kitchen scale. A hat that holds a parking drum warms minutes late: for quick stops leave its part out.', ...rotorMass },
  frontRotorWall: { name: 'front rotor’s heated wall', symbol: 'w_R', ...rotorWall },
  rearRotorWall: { name: 'rear rotor’s heated wall', symbol: 'w_Rr', ...rotorWall },
  rotorFraction: {
    ...fraction, name: 'part of the heat that goes into the rotor', symbol: 'x_q',
    usual: { min: 0.9, max: 0.95, source: commonPractice + '; the brake pads take the rest' },
    hard: { min: 0.05, max: 1, reason: 'between 5 and 100 % of the heat goes into the rotor' },
    measure: 'Not measured at home. 93 % for a cast-iron rotor and organic or semi-metallic brake pads.', tolerance: { absolute: 0.02 },
  },
  rotatingFraction: {
    ...fraction, name: 'extra for wheels and drivetrain that spin', symbol: 'ε_w',
    usual: { min: 0.03, max: 0.06, source: commonPractice },
    hard: { min: 0, max: 0.5, reason: 'spinning parts add between nothing and half' },
    measure: 'Not measured. 4 % with the clutch down.', tolerance: { absolute: 0.01 },
  },
  rotorSpecificHeat: {
    name: 'specific heat of the rotor', symbol: 'c_R', dimension: 'specificHeat',
    usual: { min: 460, max: 550, source: commonPractice + ': cast iron, rising with heat' },
    hard: { min: 100, max: 2000, reason: 'metals hold between 100 and 2,000 J per kg and degree' },
    measure: 'Not measured: 480 J/kg·K for cast iron.', tolerance: { relative: 0.04 },
  },
  rotorConductivity: {
    name: 'thermal conductivity of the rotor', symbol: 'λ_R', dimension: 'conductivity',
    usual: { min: 45, max: 55, source: commonPractice + ': gray cast iron' },
    hard: { min: 5, max: 500, reason: 'metals conduct between 5 and 500 W per m and degree' },
    measure: 'Not measured: 50 W/m·K for gray cast iron.', tolerance: { relative: 0.08 },
  },
  rotorDensity: {
    name: 'density of the rotor', symbol: 'ρ_R', dimension: 'density',
    usual: { min: 7000, max: 7400, source: commonPractice + ': cast iron' },
    hard: { min: 1000, max: 20000, reason: 'metals weigh between 1 and 20 times as much as water' },
    measure: 'Not measured: 7,200 kg/m³ for cast iron.', tolerance: { relative: 0.01 },
  },
  padFadeTemperature: {
    name: 'rotor temperature at which the brake pad fades', symbol: 'T_fade', dimension: 'temperature',
    usual: { min: celsius(300), max: celsius(400), source: commonPractice + ' for street brake pads' },
    hard: { min: celsius(100), max: celsius(1000), reason: 'brake pads fade between 100 and 1,000 °C' },
    measure: 'The brake pad maker’s sheet. No sheet: 300 °C (572 °F).', tolerance: { absolute: 30 },
  },
  fluidGrade: {
    name: 'brake fluid', options: { dot3: 'DOT 3', dot4: 'DOT 4', dot51: 'DOT 5.1 (or silicone DOT 5)' },
    measure: 'The bottle that went in. What the reservoir cap names is what belongs in.',
  },
  soakFraction: {
    ...fraction, name: 'part of the rotor’s excess that reaches the fluid', symbol: 's_q',
    usual: { min: 0.2, max: 0.7, source: 'no source; 100 % is the bound no fluid passes' },
    hard: { min: 0.01, max: 1, reason: 'fluid gets between 1 and 100 % as far above the air as the rotor' },
    measure: 'Thermometer on the bleeder 5, 10 and 15 min after a hard run, truck parked: its highest excess over the air, divided by the rotor’s excess as you stopped.', tolerance: { absolute: 0.1 },
  },
  descentGrade: {
    name: 'grade of the descent', symbol: 'q_d', dimension: 'grade',
    usual: { min: 0.03, max: 0.16, source: commonPractice },
    hard: { min: 0.005, max: 0.6, reason: 'the descent falls between 0.5 and 60 %' },
    measure: 'Road sign, or height over road length from a map.', tolerance: { absolute: 0.005 },
  },
  descentDrop: {
    name: 'height lost on the descent', symbol: 'H_d', dimension: 'distance',
    usual: { min: 200 * foot, max: 5000 * foot, source: commonPractice },
    hard: { min: 1, max: 6000, reason: 'a descent loses between 1 and 6,000 m of height' },
    measure: 'Map or phone: height at the top less height at the bottom.', tolerance: { relative: 0.02 },
  },
  descentSpeed: {
    name: 'speed held down the hill', symbol: 'v_d', dimension: 'speed',
    usual: { min: 10 * mph, max: 65 * mph, source: commonPractice },
    hard: { min: 2 * mph, max: 150 * mph, reason: 'the speed lies between 2 and 150 mph' },
    measure: 'Speedometer, corrected for your tires.', tolerance: { relative: 0.02 },
  },
  gearForce: {
    name: 'what the engine holds back in this gear, at the tires', symbol: 'F_gear', dimension: 'force',
    usual: { min: 0, max: 350 * lbf, source: commonPractice + ': 50 to 100 lbf in top gear, 150 to 300 in second, none in neutral' },
    hard: { min: 0, max: 5000 * lbf, reason: 'an engine holds back with between nothing and 5,000 lbf' },
    measure: 'Level road, this gear and speed, foot off everything: deceleration in g from the phone, less the same in neutral, times the truck’s weight.', tolerance: { relative: 0.15 },
  },
  rollingCoefficient: {
    name: 'rolling resistance of the tires', symbol: 'f_roll', dimension: 'friction',
    usual: { min: 0.01, max: 0.015, source: commonPractice },
    hard: { min: 0, max: 0.1, reason: 'rolling takes between nothing and a tenth of the weight' },
    measure: 'Not measured: 0.012 on asphalt.', tolerance: { relative: 0.15 },
  },
  dragArea: {
    name: 'drag area (drag coefficient times frontal area)', symbol: 'C_dA', dimension: 'area',
    usual: { min: 0.8, max: 1.3, source: commonPractice },
    hard: { min: 0, max: 10, reason: 'the drag area lies between nothing and 10 m²' },
    measure: 'Not measured: height times width times 0.85 times about 0.45 for a pickup.', tolerance: { relative: 0.15 },
  },
  airDensity: {
    name: 'density of the air', symbol: 'ρ_a', dimension: 'density',
    usual: { min: 0.9, max: 1.3, source: 'from memory: 1.2 kg/m³ at sea level, 1.0 at 6,000 ft' },
    hard: { min: 0.3, max: 1.6, reason: 'air weighs between 0.3 and 1.6 kg per cubic meter' },
    measure: 'Not measured: 0.075 lb/ft³ (1.2 kg/m³) near sea level.', tolerance: { relative: 0.04 },
  },
  // results: stops
  stopEnergy: { name: 'energy of one stop', symbol: 'E_s', dimension: 'energy' },
  frontRotorEnergy: { name: 'energy into one front rotor per stop', symbol: 'E_Rf', dimension: 'energy' },
  rearRotorEnergy: { name: 'energy into one rear rotor per stop', symbol: 'E_Rr', dimension: 'energy' },
  frontRise: { name: 'rise of a front rotor in one stop', symbol: 'ΔT_f', dimension: 'temperatureRise' },
  rearRise: { name: 'rise of a rear rotor in one stop', symbol: 'ΔT_r', dimension: 'temperatureRise' },
  keptFraction: { ...fraction, name: 'part of the excess left after a pause', symbol: 'r_q' },
  frontSeriesTemperature: { name: 'front rotor after the last stop', symbol: 'T_f,n', dimension: 'temperature' },
  rearSeriesTemperature: { name: 'rear rotor after the last stop', symbol: 'T_r,n', dimension: 'temperature' },
  frontSeriesLimit: { name: 'front rotor if the stops never end', symbol: 'T_f,lim', dimension: 'temperature' },
  haltTime: { name: 'time the stop takes', symbol: 't_h', dimension: 'time' },
  frontSweptArea: { name: 'swept area of one front face', symbol: 'A_sw', dimension: 'area' },
  rearSweptArea: { name: 'swept area of one rear face', symbol: 'A_swr', dimension: 'area' },
  heatedDepth: { name: 'depth that heat reaches during the stop', symbol: 'd_h', dimension: 'length' },
  thickSkinRise: { name: 'highest rise of the front’s rubbed skin, if the wall were thick', symbol: 'ΔT_th', dimension: 'temperatureRise' },
  thickHaltRise: { name: 'rise of the front’s skin at the halt, if the wall were thick', symbol: 'ΔT_h', dimension: 'temperatureRise' },
  skinRise: { name: 'highest rise of the front’s rubbed skin in one stop', symbol: 'ΔT_sk', dimension: 'temperatureRise' },
  rearSkinRise: { name: 'highest rise of the rear’s rubbed skin in one stop', symbol: 'ΔT_skr', dimension: 'temperatureRise' },
  skinTemperature: { name: 'hottest skin of the front rotor in the last stop', symbol: 'T_sk', dimension: 'temperature' },
  rearSkinTemperature: { name: 'hottest skin of the rear rotor in the last stop', symbol: 'T_skr', dimension: 'temperature' },
  // results: hill
  descentTime: { name: 'time down the hill', symbol: 't_d', dimension: 'time' },
  hillPower: { name: 'power the hill gives', symbol: 'P_hill', dimension: 'power' },
  rollingPower: { name: 'power the tires take', symbol: 'P_roll', dimension: 'power' },
  airPower: { name: 'power the air takes', symbol: 'P_air', dimension: 'power' },
  gearPower: { name: 'power the engine takes', symbol: 'P_gear', dimension: 'power' },
  brakePower: { name: 'power left for the brakes', symbol: 'P_br', dimension: 'power' },
  frontRotorPower: { name: 'power into one front rotor', symbol: 'P_Rf', dimension: 'power' },
  rearRotorPower: { name: 'power into one rear rotor', symbol: 'P_Rr', dimension: 'power' },
  frontBottomTemperature: { name: 'front rotor at the bottom', symbol: 'T_f,b', dimension: 'temperature' },
  rearBottomTemperature: { name: 'rear rotor at the bottom', symbol: 'T_r,b', dimension: 'temperature' },
  frontSettledTemperature: { name: 'front rotor on a hill without end', symbol: 'T_f,s', dimension: 'temperature' },
  rearSettledTemperature: { name: 'rear rotor on a hill without end', symbol: 'T_r,s', dimension: 'temperature' },
  gearForceNeeded: { name: 'engine braking that keeps all rotors below fade on any length of it', symbol: 'F_gear,n', dimension: 'force' },
  // results: fluid
  fluidTemperature: { name: 'fluid in the hotter calipers once the heat has soaked in', symbol: 'T_brf', dimension: 'temperature' },
  dryBoilingPoint: { name: 'boiling point, fresh fluid', symbol: 'T_dry', dimension: 'temperature' },
  wetBoilingPoint: { name: 'boiling point, fluid that has drawn water', symbol: 'T_wet', dimension: 'temperature' },
  dryMargin: { name: 'fresh fluid below its boiling point (− is over)', symbol: 'ΔT_dry', dimension: 'temperatureRise' },
  wetMargin: { name: 'wet fluid below its boiling point (− is over)', symbol: 'ΔT_wet', dimension: 'temperatureRise' },
} as const satisfies Record<string, Entry>;
