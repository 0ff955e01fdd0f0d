import type { AnyCalculator } from './record.ts';
import adhesion from './records/adhesion.ts';
import balanceBar from './records/balance-bar.ts';
import bodyDrop from './records/body-drop.ts';
import brakingRate from './records/braking-rate.ts';
import cgAfterDrop from './records/cg-after-drop.ts';
import cgByAxleLift from './records/cg-by-axle-lift.ts';
import circuitFailure from './records/circuit-failure.ts';
import clearance from './records/clearance.ts';
import discTorque from './records/disc-torque.ts';
import firewallBrace from './records/firewall-brace.ts';
import firewallPlate from './records/firewall-plate.ts';
import dropPoints from './records/drop-points.ts';
import idealDistribution from './records/ideal-distribution.ts';
import linePressure from './records/line-pressure.ts';
import loadTransfer from './records/load-transfer.ts';
import lockOrder from './records/lock-order.ts';
import pedalEffort from './records/pedal-effort.ts';
import pedalRatio from './records/pedal-ratio.ts';
import rearValve from './records/rear-valve.ts';
import stoppingDistance from './records/stopping-distance.ts';

/** The table of contents, in the order of the catalogue. One line per calculator. */
export const contents: readonly { readonly title: string; readonly calculators: readonly AnyCalculator[] }[] = [
  { title: 'Pedal and pressure', calculators: [
    pedalEffort,
    pedalRatio,
    linePressure,
    balanceBar,
  ] },
  { title: 'Brakes and stopping', calculators: [
    discTorque,
    brakingRate,
    stoppingDistance,
  ] },
  { title: 'Weight', calculators: [
    loadTransfer,
    cgByAxleLift,
    cgAfterDrop,
  ] },
  { title: 'Front and rear', calculators: [
    idealDistribution,
    rearValve,
    lockOrder,
    adhesion,
  ] },
  { title: 'When a circuit dies', calculators: [
    circuitFailure,
  ] },
  { title: 'Body drop and clearance', calculators: [
    bodyDrop,
    dropPoints,
    clearance,
  ] },
  { title: 'Firewall', calculators: [
    firewallPlate,
    firewallBrace,
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
