import type { AnyCalculator } from './record.ts';
import adhesion from './records/adhesion.ts';
import airFromTravel from './records/air-from-travel.ts';
import balanceBar from './records/balance-bar.ts';
import bodyDrop from './records/body-drop.ts';
import boreFinder from './records/bore-finder.ts';
import boreWindow from './records/bore-window.ts';
import brakingRate from './records/braking-rate.ts';
import cgAfterDrop from './records/cg-after-drop.ts';
import cgByAxleLift from './records/cg-by-axle-lift.ts';
import circuitFailure from './records/circuit-failure.ts';
import circuitVolume from './records/circuit-volume.ts';
import clearance from './records/clearance.ts';
import clearanceSweep from './records/clearance-sweep.ts';
import clutchTravel from './records/clutch-travel.ts';
import discToMatch from './records/disc-to-match.ts';
import discTorque from './records/disc-torque.ts';
import dropPoints from './records/drop-points.ts';
import drumTorque from './records/drum-torque.ts';
import firewallBrace from './records/firewall-brace.ts';
import firewallPlate from './records/firewall-plate.ts';
import fluidHead from './records/fluid-head.ts';
import fluidLedger from './records/fluid-ledger.ts';
import gaugeFit from './records/gauge-fit.ts';
import gradeHeat from './records/grade-heat.ts';
import heightValve from './records/height-valve.ts';
import hoseSlack from './records/hose-slack.ts';
import idealDistribution from './records/ideal-distribution.ts';
import lampWire from './records/lamp-wire.ts';
import legAngles from './records/leg-angles.ts';
import linePressure from './records/line-pressure.ts';
import lineStrength from './records/line-strength.ts';
import loadTransfer from './records/load-transfer.ts';
import lockOrder from './records/lock-order.ts';
import padFloor from './records/pad-floor.ts';
import padPlace from './records/pad-place.ts';
import parkingBrake from './records/parking-brake.ts';
import pedalCut from './records/pedal-cut.ts';
import pedalEffort from './records/pedal-effort.ts';
import pedalRatio from './records/pedal-ratio.ts';
import pedalSpacing from './records/pedal-spacing.ts';
import rearValve from './records/rear-valve.ts';
import reservoirVolume from './records/reservoir-volume.ts';
import rotorHeat from './records/rotor-heat.ts';
import shaftBearing from './records/shaft-bearing.ts';
import shaftLine from './records/shaft-line.ts';
import shaftRipple from './records/shaft-ripple.ts';
import stopLamp from './records/stop-lamp.ts';
import stoppingDistance from './records/stopping-distance.ts';
import tireRadius from './records/tire-radius.ts';

/** The table of contents, in the order of the catalogue. One line per calculator. */
export const contents: readonly { readonly title: string; readonly calculators: readonly AnyCalculator[] }[] = [
  { title: 'Pedal and pressure', calculators: [
    pedalEffort,
    pedalRatio,
    linePressure,
    balanceBar,
    boreWindow,
    boreFinder,
  ] },
  { title: 'Fluid, lines and lamps', calculators: [
    circuitVolume,
    fluidLedger,
    airFromTravel,
    lineStrength,
    reservoirVolume,
    fluidHead,
    stopLamp,
    lampWire,
  ] },
  { title: 'Brakes and stopping', calculators: [
    discTorque,
    drumTorque,
    discToMatch,
    brakingRate,
    stoppingDistance,
    parkingBrake,
  ] },
  { title: 'Weight', calculators: [
    loadTransfer,
    cgByAxleLift,
    cgAfterDrop,
  ] },
  { title: 'Front and rear', calculators: [
    idealDistribution,
    rearValve,
    heightValve,
    lockOrder,
    adhesion,
  ] },
  { title: 'When a circuit dies', calculators: [
    circuitFailure,
  ] },
  { title: 'Clutch', calculators: [
    clutchTravel,
  ] },
  { title: 'Heat and tires', calculators: [
    rotorHeat,
    gradeHeat,
    tireRadius,
  ] },
  { title: 'Body drop and clearance', calculators: [
    bodyDrop,
    dropPoints,
    clearance,
    clearanceSweep,
    hoseSlack,
  ] },
  { title: 'Steering shaft', calculators: [
    shaftLine,
    shaftRipple,
    shaftBearing,
  ] },
  { title: 'Where the pedals are', calculators: [
    padPlace,
    padFloor,
    pedalSpacing,
    legAngles,
    pedalCut,
  ] },
  { title: 'Firewall', calculators: [
    firewallPlate,
    firewallBrace,
  ] },
  { title: 'Tests before driving', calculators: [
    gaugeFit,
  ] },
];

export const calculators: readonly AnyCalculator[] = contents.flatMap((group) => group.calculators);

/** @throws RangeError for an id that no record has */
export function calculatorById(id: string): AnyCalculator {
  const record = calculators.find((c) => c.id === id);
  if (!record) throw new RangeError(`calculator: expected one of ${calculators.map((c) => c.id).join(', ')}, found ${id}`);
  return record;
}

export { entryOf, evaluate, hardProblem } from './evaluate.ts';
export { inputKeys, isRefusal } from './record.ts';
export type { AnyCalculator, Calculator, Values } from './record.ts';
export { vocabulary } from './vocabulary/index.ts';
