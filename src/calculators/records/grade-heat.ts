import { downGrade } from '../../engine/heat.ts';
import { standardGravity } from '../../engine/constants.ts';
import { lbf } from '../../units/si.ts';
import { brakingFeed } from '../helpers/braking-rate.ts';
import { fluidBehind, fluidCautions, fluidEquations, fluidGroup, fluidWords } from '../helpers/fluid-heat.ts';
import type { FluidInputs } from '../helpers/fluid-heat.ts';
import { defineCalculator } from '../record.ts';
import type { ValuesOf } from '../record.ts';
import type { At } from '../show.ts';

type Inputs =
  | FluidInputs | 'frontAxleLoad' | 'rearAxleLoad' | 'payload' | 'rearBrakeFraction' | 'descentGrade' | 'descentDrop' | 'descentSpeed' | 'gearForce' | 'rollingCoefficient' | 'dragArea' | 'airDensity'
  | 'frontRotorMass' | 'rearRotorMass' | 'coolingTime' | 'rotorFraction' | 'rotorSpecificHeat' | 'padFadeTemperature';
type V = ValuesOf<Inputs>;
type Axle = 'front' | 'rear';

const massOf = (v: V): number => v.frontAxleLoad + v.rearAxleLoad + v.payload;

function hill(v: V, axle: Axle, gearForce = v.gearForce) {
  const rotorMass = axle === 'front' ? v.frontRotorMass : v.rearRotorMass;
  return downGrade({
    mass: massOf(v), grade: v.descentGrade, speed: v.descentSpeed, rollingCoefficient: v.rollingCoefficient, dragArea: v.dragArea, airDensity: v.airDensity, engineForce: gearForce,
    axleShare: axle === 'front' ? 1 - v.rearBrakeFraction : v.rearBrakeFraction, rotorFraction: v.rotorFraction, rotorMass, specificHeat: v.rotorSpecificHeat,
    conductance: (rotorMass * v.rotorSpecificHeat) / v.coolingTime, ambient: v.ambient, limitTemperature: v.padFadeTemperature,
  });
}

const timeDown = (v: V): number => (v.descentDrop * Math.hypot(1, v.descentGrade)) / (v.descentGrade * v.descentSpeed);

/** The rotor after so many seconds of the hill. */
const after = (v: V, axle: Axle, time: number, gearForce = v.gearForce): number =>
  v.ambient + (hill(v, axle, gearForce).steadyTemperature - v.ambient) * -Math.expm1(-time / v.coolingTime);

const curve = (v: V, axle: Axle, gearForce?: number): At[] =>
  Array.from({ length: 31 }, (_, k) => {
    const time = (timeDown(v) * k) / 30;
    return [time, after(v, axle, time, gearForce)] as const;
  });

const slope = 'sqrt(1 + descentGrade^2)';
const kept = 'derived: power balance at constant speed';
const rotor = 'derived: heat in equals heat out';
const settled = (axle: Axle) => `ambient + ${axle}RotorPower * coolingTime / (${axle}RotorMass * rotorSpecificHeat)`;
const bottom = (axle: Axle) => `ambient + (${axle}SettledTemperature - ambient) * (1 - exp(-descentTime / coolingTime))`;

export default defineCalculator({
  id: 'grade-heat',
  version: 1,
  title: 'Rotor heat down a long hill',
  purpose: 'How hot the rotors get on a descent at steady speed, what the gear takes off them, and what happens to the fluid when you park at the bottom.',
  inputs: [
    { title: 'Hill', of: ['descentGrade', 'descentDrop', 'descentSpeed', 'gearForce'] },
    { title: 'Truck', of: ['frontAxleLoad', 'rearAxleLoad', 'payload', 'rearBrakeFraction', 'rollingCoefficient', 'dragArea'] },
    { title: 'Rotors', of: ['frontRotorMass', 'rearRotorMass', 'rotorFraction', 'rotorSpecificHeat', 'padFadeTemperature'] },
    { title: 'Air and cooling', of: ['ambient', 'airDensity', 'coolingTime'] },
    fluidGroup,
  ],
  feeds: [brakingFeed],
  outputs: [
    'frontBottomTemperature', 'rearBottomTemperature', 'frontSettledTemperature', 'rearSettledTemperature', 'gearForceNeeded', 'fluidTemperature', 'wetMargin', 'dryMargin', 'descentTime',
    'hillPower', 'rollingPower', 'airPower', 'gearPower', 'brakePower', 'frontRotorPower', 'rearRotorPower', 'wetBoilingPoint', 'dryBoilingPoint', 'ladenMass',
  ],
  compute: (v) => {
    const [front, rear] = [hill(v, 'front'), hill(v, 'rear')];
    const cos = 1 / Math.hypot(1, v.descentGrade);
    const weight = massOf(v) * standardGravity;
    const force = { hill: weight * v.descentGrade * cos, rolling: weight * v.rollingCoefficient * cos, air: (v.airDensity / 2) * v.dragArea * v.descentSpeed ** 2 };
    // The brake force at which the first axle settles just at fade, and what the gear must then take.
    const ironPerShare = Math.min(v.frontRotorMass / (1 - v.rearBrakeFraction), v.rearRotorMass / v.rearBrakeFraction);
    const bearable = (2 * ironPerShare * v.rotorSpecificHeat * Math.max(0, v.padFadeTemperature - v.ambient)) / (v.coolingTime * v.rotorFraction * v.descentSpeed);
    const time = timeDown(v);
    const [frontBottomTemperature, rearBottomTemperature] = [after(v, 'front', time), after(v, 'rear', time)];
    return {
      frontBottomTemperature, rearBottomTemperature, frontSettledTemperature: front.steadyTemperature, rearSettledTemperature: rear.steadyTemperature,
      gearForceNeeded: Math.max(0, force.hill - force.rolling - force.air - bearable), descentTime: time,
      hillPower: force.hill * v.descentSpeed, rollingPower: force.rolling * v.descentSpeed, airPower: force.air * v.descentSpeed, gearPower: v.gearForce * v.descentSpeed,
      brakePower: front.brakePower, frontRotorPower: front.rotorPower, rearRotorPower: rear.rotorPower, ladenMass: massOf(v), ...fluidBehind(v, Math.max(frontBottomTemperature, rearBottomTemperature)),
    };
  },
  howSure: { quick: (v) => ({ frontBottomTemperature: after(v, 'front', timeDown(v)) }) },
  summary: (v, say) => (v.brakePower === 0
    ? `At ${say(v.descentSpeed, 'speed')} tires, air and this gear hold back more than the hill pulls. The brakes have nothing to do.`
    : `The hill leaves ${say(v.brakePower, 'power')} for the brakes. After ${say(v.descentTime / 60, 'count')} min the fronts are at ${say(v.frontBottomTemperature, 'temperature')}${v.gearForce > 0 ? ` (out of gear ${say(after(v, 'front', v.descentTime, 0), 'temperature')})` : ''}; ${fluidWords(v, say)}.`),
  equations: [
    { result: 'ladenMass', expression: 'frontAxleLoad + rearAxleLoad + payload', words: 'Truck and load.', source: 'derived' },
    { result: 'descentTime', expression: `descentDrop * ${slope} / (descentGrade * descentSpeed)`, words: 'Road length over speed; the road is longer than the height by one over the sine.', source: 'derived' },
    { result: 'hillPower', expression: `ladenMass * g * descentGrade / ${slope} * descentSpeed`, words: 'Weight times the height lost each second.', source: kept },
    { result: 'rollingPower', expression: `ladenMass * g * rollingCoefficient / ${slope} * descentSpeed`, words: 'Tires take a small, steady part of the weight.', source: kept },
    { result: 'airPower', expression: 'airDensity / 2 * dragArea * descentSpeed^3', words: 'Air takes force with the square of speed, power with its cube.', source: kept },
    { result: 'gearPower', expression: 'gearForce * descentSpeed', words: 'What the engine takes.', source: kept },
    { result: 'brakePower', expression: 'max(0, hillPower - rollingPower - airPower - gearPower)', words: 'The brakes get what is left.', source: kept },
    { result: 'frontRotorPower', expression: 'brakePower * rotorFraction * (1 - rearBrakeFraction) / 2', words: 'The front’s share of the brake force, over two rotors.', source: kept },
    { result: 'rearRotorPower', expression: 'brakePower * rotorFraction * rearBrakeFraction / 2', words: 'And the rear’s.', source: kept },
    { result: 'frontSettledTemperature', expression: settled('front'), words: 'A rotor warms until it gives off what it gets. What it gives off per degree is its heat over its cooling time.', source: rotor },
    { result: 'rearSettledTemperature', expression: settled('rear'), words: 'The same for the rear.', source: rotor },
    { result: 'frontBottomTemperature', expression: bottom('front'), words: 'It approaches that as it would cool: two thirds of the way after one cooling time, 95 % after three.', source: rotor },
    { result: 'rearBottomTemperature', expression: bottom('rear'), words: 'The same for the rear.', source: rotor },
    { result: 'gearForceNeeded', expression: 'max(0, (hillPower - rollingPower - airPower) / descentSpeed - 2 * min(frontRotorMass / (1 - rearBrakeFraction), rearRotorMass / rearBrakeFraction) * rotorSpecificHeat * max(0, padFadeTemperature - ambient) / (coolingTime * rotorFraction * descentSpeed))', words: 'The brake force at which one axle’s rotors, those with less iron for their share, would settle just at fade, taken from what the hill pulls.', source: rotor },
    ...fluidEquations('Bottom'),
  ],
  cautions: [
    {
      id: 'gear-first', level: 'warning',
      words: 'A long descent belongs to the engine. Brakes that hold the truck all the way down have nothing left for the stop at the bottom.',
      todo: 'Shift down before the top, into the gear that holds the speed with short, firm brakings and not a steady drag. Never coast out of gear. Heat smell or a longer pedal: stop at the next safe place, in gear, and wait half an hour.',
    },
    {
      id: 'pad-fades', level: 'danger', when: (v) => Math.max(v.frontBottomTemperature, v.rearBottomTemperature) > v.padFadeTemperature,
      words: (v, say) => {
        const axle = v.frontBottomTemperature >= v.rearBottomTemperature ? 'front' : 'rear';
        const { timeToLimit } = hill(v, axle);
        return `The ${axle} rotors pass ${say(v.padFadeTemperature, 'temperature')}, where this brake pad fades,${timeToLimit ? ` after ${say(timeToLimit / 60, 'count', 2)} min,` : ''} and reach ${say(Math.max(v.frontBottomTemperature, v.rearBottomTemperature), 'temperature')}. From there the pedal must be pushed harder and harder to hold the speed.`;
      },
      todo: 'A lower gear, less speed, less load. The brakes alone do not take this truck down this hill.',
      fires: { gearForce: 0, descentGrade: 0.1 }, silent: {},
    },
    {
      id: 'fades-if-longer', level: 'caution', when: (v) => v.gearForce < v.gearForceNeeded && Math.max(v.frontBottomTemperature, v.rearBottomTemperature) <= v.padFadeTemperature,
      words: (v, say) => `Only the end of the hill saves the ${v.frontSettledTemperature >= v.rearSettledTemperature ? 'fronts' : 'rears'}: they are on their way to ${say(Math.max(v.frontSettledTemperature, v.rearSettledTemperature), 'temperature')}, past fade. A gear that holds ${say(v.gearForceNeeded, 'force')} would keep them below it on any length.`,
      todo: 'One gear lower.',
      fires: { gearForce: 0, descentDrop: 300 }, silent: {},
    },
    {
      id: 'out-of-range', level: 'notice', when: (v) => Math.max(v.frontBottomTemperature, v.rearBottomTemperature) > 673.15,
      words: (v, say) => `Above ${say(673.15, 'temperature')} a rotor glows away heat that this sum leaves out. The true figure is lower than ${say(Math.max(v.frontBottomTemperature, v.rearBottomTemperature), 'temperature')}, and too hot all the same.`,
      todo: 'Take it as “far too hot”, not as a temperature.',
      fires: { gearForce: 0, descentGrade: 0.12 }, silent: {},
    },
    ...fluidCautions<ValuesOf<Inputs | 'frontBottomTemperature' | 'rearBottomTemperature' | 'fluidTemperature' | 'wetMargin' | 'dryMargin' | 'wetBoilingPoint' | 'dryBoilingPoint'>>((v) => Math.max(v.frontBottomTemperature, v.rearBottomTemperature), { gearForce: 0 }, { gearForce: 200 * lbf }),
  ],
  charts: [{
    title: 'Front rotors on the way down',
    x: { label: 'time', dimension: 'time' },
    y: { label: 'rotor', dimension: 'temperature' },
    series: (v) => {
      const level = (t: number) => [[0, t], [timeDown(v), t]] as const;
      return [
        { label: 'front, this gear', tone: 'front', points: curve(v, 'front') }, { label: 'rear, this gear', tone: 'rear', points: curve(v, 'rear') },
        { label: 'front, out of gear', tone: 'plain', points: curve(v, 'front', 0) }, { label: 'brake pad fades', tone: 'alert', points: level(v.padFadeTemperature) },
      ];
    },
    describe: (v, say) => `${v.brakePower === 0
      ? `The fronts stay at the air’s ${say(v.ambient, 'temperature')}.`
      : `The fronts rise steeply at first and then ever more slowly, to ${say(v.frontBottomTemperature, 'temperature')} at the bottom; a hill without end would bring them to ${say(v.frontSettledTemperature, 'temperature')}.`} Out of gear they would reach ${say(after(v, 'front', v.descentTime, 0), 'temperature')}. The brake pad fades from ${say(v.padFadeTemperature, 'temperature')}.`,
  }],
  tables: [{
    caption: 'What the gear does on this hill',
    head: ['Engine holds', 'Brakes get', 'Fronts at the bottom', 'Fluid after parking'],
    rows: (v) => [0, 50, 100, 150, 200, 250].map((pounds) => {
      const gearForce = pounds * lbf;
      const front = after(v, 'front', timeDown(v), gearForce);
      return [{ value: gearForce, dimension: 'force' }, { value: hill(v, 'front', gearForce).brakePower, dimension: 'power' }, { value: front, dimension: 'temperature' }, { value: fluidBehind(v, Math.max(front, after(v, 'rear', timeDown(v), gearForce))).fluidTemperature, dimension: 'temperature' }];
    }),
  }],
  paper: {
    assumptions: [
      'Grade, speed and gear stay the same all the way, and the brakes drag just enough to hold the speed. The same heat comes from short brakings, with a hotter skin.',
      'The rotors start at the temperature of the air.',
      'Cooling follows the excess over the air, with the cooling time you typed, at both axles.',
      'Heat divides between the axles as the brake force does at the foot force of the demo truck, or yours.',
    ],
    leftOut: ['Radiation, a help above 400 °C.', 'Brake pads and hubs that warm through in ten minutes and then take less or more of the heat.', 'Fade: a fading front leaves the rear more.', 'Wind and curves.'],
    sources: [
      { of: 'power balance and settled temperature', kind: 'derived' },
      { of: 'boiling points of DOT 3, 4 and 5.1', kind: 'published', id: 'fmvss-116', note: 'read in texts that quote the standard' },
      { of: 'fade of street brake pads from 300 to 400 °C, cooling time, engine braking by gear, drag area', kind: 'common practice' },
    ],
    examples: [{
      source: 'Worked by hand: 1340 kg, 8 %, 20 m/s, 200 N of engine, 76 % on the front, 10 W/K from each 6 kg rotor: 9.01 kW braked, 612 K settled',
      inputs: { frontAxleLoad: 780, rearAxleLoad: 560, payload: 0, rearBrakeFraction: 0.24, descentGrade: 0.08, descentSpeed: 20, gearForce: 200, rollingCoefficient: 0.012, dragArea: 1, airDensity: 1.2, rotorFraction: 0.93, frontRotorMass: 6, rotorSpecificHeat: 480, coolingTime: 288, ambient: 293 },
      results: { brakePower: { value: 9015, within: 0.0005 }, frontSettledTemperature: { value: 612, within: 0.001 } },
    }],
    related: ['heat-and-tires', 'rotor-heat', 'braking-rate'],
  },
});
