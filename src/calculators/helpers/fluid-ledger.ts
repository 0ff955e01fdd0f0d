import { pedalLedger, pedalTravel } from '../../engine/fluidLedger.ts';
import type { CircuitLedger, CircuitOnMaster, LedgerPedal, PedalLedger } from '../../engine/fluidLedger.ts';
import { linePressure } from '../../engine/pressure.ts';
import { valveOutlet } from '../../engine/valve.ts';
import type { Say, ValuesOf } from '../record.ts';
import type { Tone } from '../show.ts';
import type { TravelPart } from '../scenes/travel.ts';
import { partsOf } from './circuit-volume.ts';
import type { Side, SwellInputs } from './circuit-volume.ts';

type Foot = 'controlForce' | 'pedalRatio' | 'linkageEfficiency' | 'pushrodFreePlay' | 'flangeGive' | 'dialTestForce' | 'floorTravel';
type Bar = 'frontShare' | 'frontMasterBore' | 'rearMasterBore' | 'frontMasterStroke' | 'rearMasterStroke' | 'portStroke' | 'masterSpring' | 'rearValve' | 'kneePressure' | 'valveSlope';
export type Ledger = ValuesOf<Foot | Bar | SwellInputs>;

export interface LedgerAt extends PedalLedger {
  readonly rodForce: number;
  readonly frontPressure: number;
  readonly rearPressure: number;
  readonly frontArea: number;
  readonly rearArea: number;
}

/** Pressures of a foot force, the rear's behind its valve. */
export function pressuresAt(v: ValuesOf<Exclude<Foot, 'flangeGive' | 'dialTestForce' | 'floorTravel' | 'pushrodFreePlay'> | 'frontShare' | 'frontMasterBore' | 'rearMasterBore' | 'masterSpring' | 'rearValve' | 'kneePressure' | 'valveSlope'>, controlForce: number) {
  const line = linePressure({
    controlForce, pedalRatio: v.pedalRatio, efficiency: v.linkageEfficiency, frontShare: v.frontShare, frontBore: v.frontMasterBore, rearBore: v.rearMasterBore, springForce: v.masterSpring,
  });
  return v.rearValve === 'fitted' ? { ...line, rearPressure: valveOutlet({ inlet: line.rearPressure, knee: v.kneePressure, slope: v.valveSlope }).outlet } : line;
}

function pedalOf(v: Ledger, controlForce: number, line: ReturnType<typeof pressuresAt>): LedgerPedal {
  const front: CircuitOnMaster = { ...partsOf(v, 'front'), pressure: line.frontPressure, bore: v.frontMasterBore, portStroke: v.portStroke, masterStroke: v.frontMasterStroke };
  const rear: CircuitOnMaster = { ...partsOf(v, 'rear'), pressure: line.rearPressure, bore: v.rearMasterBore, portStroke: v.portStroke, masterStroke: v.rearMasterStroke };
  return { front, rear, frontShare: v.frontShare, pedalRatio: v.pedalRatio, freePlay: v.pushrodFreePlay, flex: v.flangeGive, flexForce: v.dialTestForce, controlForce, floorTravel: v.floorTravel };
}

export function ledgerAt(v: Ledger, controlForce: number): LedgerAt {
  const line = pressuresAt(v, controlForce);
  return { ...line, ...pedalLedger(pedalOf(v, controlForce, line)) };
}

/** The whole travel without its parts. */
export const travelAt = (v: Ledger, controlForce: number): number => pedalTravel(pedalOf(v, controlForce, pressuresAt(v, controlForce))).padTravel;

export const itemOf = (circuit: CircuitLedger, item: string): number => circuit.lines.find((line) => line.item === item)!.padTravel;

/** Item names as they read beside a row. */
export const itemNames = { port: 'closing the port', gaps: 'brake pad gaps', knockBack: 'knock-back', hoses: 'hoses', calipers: 'calipers', pads: 'brake pads', fluid: 'fluid', air: 'air' } as const;

/** Rows of the picture: the whole pedal, or one master's stroke. */
export function ledgerRows(v: Ledger, which: 'pedal' | Side, say: Say): { parts: TravelPart[]; end: number; endName: string } {
  const l = ledgerAt(v, v.controlForce);
  const row = (name: string, length: number, tone: Tone): TravelPart => ({ name, length, tone, label: say(length, 'length') });
  if (which === 'pedal') {
    const circuit = (side: Side): number => l[side].padTravel - itemOf(l[side], 'port');
    const used = [row('free play', l.freePlayTravel, 'plain'), row('closing ports', v.pedalRatio * v.portStroke, 'plain'), row('mounting gives', l.flexTravel, 'plain'), row('front fluid', circuit('front'), 'front'), row('rear fluid', circuit('rear'), 'rear')];
    return { parts: l.padReserve > 0 ? [...used, row('left', l.padReserve, 'ghost')] : used, end: v.floorTravel, endName: 'carpet' };
  }
  const circuit = l[which];
  const used = circuit.lines.map((line) => row(itemNames[line.item], line.stroke, which));
  return { parts: circuit.strokeReserve > 0 ? [...used, row('left', circuit.strokeReserve, 'ghost')] : used, end: v[`${which}MasterStroke`], endName: 'bottom' };
}
