import { circleArea } from './circle.ts';
import { circuitVolume } from './circuitVolume.ts';
import type { CircuitParts, VolumeItem } from './circuitVolume.ts';
import { areNonNegative, arePositive, requireNonNegative, requirePositive } from './require.ts';

/**
 * Where the pedal goes: each part of each circuit as volume, master stroke and pad travel.
 *
 *   stroke = V/A_m (the port: x_port)     padTravel = i w stroke     w = s in front, 1 − s behind
 *   total = sum of both + i (g_0 + δ F/F_δ)
 *
 * The bar weighs strokes with the share by which it splits force: the pivot lies between the clevises.
 *
 * front, rear: CircuitParts and pressure p (of the brakes: behind a valve, its outlet), bore, portStroke x_port, masterStroke
 * (m, to the bottom). frontShare s (between 0 and 1); pedalRatio i; freePlay g_0 (m at the rod); flex δ (m): what the
 * masters' flange gives at the rod under a foot force flexForce F_δ (N); controlForce F (N), the foot force that makes both
 * pressures; floorTravel (m): pad travel to the carpet.
 *
 * strokeReserve, padReserve (m): what is left; below 0 it cannot happen, the master bottoms or the pad is on the carpet first.
 * The port has no volume of its own: what it displaces goes back to the reservoir.
 * Neglected: change of i through the swing, tilt and stop of the bar, bending of the pedal.
 * @throws RangeError as circuitVolume; if s is not between 0 and 1, i, F_δ or a stroke not above 0, g_0 or δ negative
 * Source: derived. Worked value: 1 cm³ wholly squeezed, 19.05 mm bore, i 6, w 1 → 3.5 mm of stroke, 21 mm of pad.
 */
export interface CircuitOnMaster extends CircuitParts {
  readonly pressure: number;
  readonly bore: number;
  readonly portStroke: number;
  readonly masterStroke: number;
}

export interface LedgerPedal {
  readonly front: CircuitOnMaster;
  readonly rear: CircuitOnMaster;
  readonly frontShare: number;
  readonly pedalRatio: number;
  readonly freePlay: number;
  readonly flex: number;
  readonly flexForce: number;
  readonly controlForce: number;
  readonly floorTravel: number;
}

export interface LedgerLine {
  readonly item: VolumeItem | 'port';
  readonly volume: number;
  readonly stroke: number;
  readonly padTravel: number;
}

export interface CircuitLedger {
  readonly lines: readonly LedgerLine[];
  readonly volume: number;
  readonly stroke: number;
  readonly padTravel: number;
  readonly strokeReserve: number;
}

export interface PedalLedger {
  readonly front: CircuitLedger;
  readonly rear: CircuitLedger;
  readonly freePlayTravel: number;
  readonly flexTravel: number;
  readonly padTravel: number;
  readonly padReserve: number;
}

/** The sum alone. */
export function pedalTravel(p: LedgerPedal): { readonly front: MasterStroke; readonly rear: MasterStroke; readonly freePlayTravel: number; readonly flexTravel: number; readonly padTravel: number } {
  const { pedalRatio, frontShare, freePlay, flex, flexForce, controlForce, floorTravel } = p;
  if (!arePositive(pedalRatio, frontShare, 1 - frontShare, flexForce, floorTravel)) requirePositive({ pedalRatio, frontShare, rearShare: 1 - frontShare, flexForce, floorTravel });
  if (!areNonNegative(freePlay, flex, controlForce)) requireNonNegative({ freePlay, flex, controlForce });
  const front = masterStroke({ circuit: p.front, padPerStroke: pedalRatio * frontShare });
  const rear = masterStroke({ circuit: p.rear, padPerStroke: pedalRatio * (1 - frontShare) });
  const freePlayTravel = pedalRatio * freePlay;
  const flexTravel = (pedalRatio * flex * controlForce) / flexForce;
  return { front, rear, freePlayTravel, flexTravel, padTravel: front.padTravel + rear.padTravel + freePlayTravel + flexTravel };
}

export function pedalLedger(p: LedgerPedal): PedalLedger {
  const { front, rear, freePlayTravel, flexTravel, padTravel } = pedalTravel(p);
  return { front: circuitLedger(p.front, front), rear: circuitLedger(p.rear, rear), freePlayTravel, flexTravel, padTravel, padReserve: p.floorTravel - padTravel };
}

interface MasterStroke {
  readonly items: Readonly<Record<VolumeItem, number>>;
  readonly volume: number;
  readonly area: number;
  readonly stroke: number;
  readonly padPerStroke: number;
  readonly padTravel: number;
}

function masterStroke({ circuit, padPerStroke }: { readonly circuit: CircuitOnMaster; readonly padPerStroke: number }): MasterStroke {
  const { bore, portStroke, masterStroke } = circuit;
  if (!areNonNegative(portStroke)) requireNonNegative({ portStroke });
  if (!arePositive(masterStroke)) requirePositive({ masterStroke });
  const { area } = circleArea({ diameter: bore });
  const { items, total } = circuitVolume(circuit);
  const stroke = total / area + portStroke;
  return { items, volume: total, area, stroke, padPerStroke, padTravel: padPerStroke * stroke };
}

function circuitLedger({ portStroke, masterStroke }: CircuitOnMaster, { items, volume, area, stroke, padPerStroke, padTravel }: MasterStroke): CircuitLedger {
  const line = (item: LedgerLine['item'], v: number, moved: number): LedgerLine => ({ item, volume: v, stroke: moved, padTravel: padPerStroke * moved });
  return {
    lines: [line('port', 0, portStroke), ...(Object.entries(items) as [VolumeItem, number][]).map(([item, v]) => line(item, v, v / area))],
    volume,
    stroke,
    padTravel,
    strokeReserve: masterStroke - stroke,
  };
}
