import { circleArea } from './circle.ts';
import { atmosphere } from './constants.ts';
import type { Impossible } from './outcome.ts';
import { requireNonNegative, requirePositive } from './require.ts';

/**
 * The two areas of a caliper: what squeezes the pads, and what swallows fluid.
 *
 *   A_1 = n π d²/4                      clampArea, pistons of one side
 *   V = pistonArea · travelPerGap · g   for a gap (or wear) g at each of the two pads
 *
 * Floating: n pistons, and each closes both gaps, as the housing slides: A_1 · 2g. Opposed: 2n pistons, and each closes
 * its own: 2 A_1 · g. The volume is the same; the clamp counts one side in both, and never this product.
 *
 * pistonDiameter d (m, 0.030–0.060); pistonsPerSide n (1–4).
 * @throws RangeError if d is not above 0 or n is not a whole number of 1 or more
 * Source: derived. Worked value: 54 mm floating, 0.15 mm at each pad → 0.687 cm³ per caliper.
 */
export interface Caliper {
  readonly pistonDiameter: number;
  readonly pistonsPerSide: number;
  readonly type: 'floating' | 'opposed';
}

export function caliperAreas({ pistonDiameter, pistonsPerSide, type }: Caliper): {
  readonly clampArea: number;
  readonly pistonArea: number;
  readonly travelPerGap: number;
} {
  if (!Number.isInteger(pistonsPerSide) || pistonsPerSide < 1) {
    throw new RangeError(`pistonsPerSide: expected a whole number of 1 or more, found ${pistonsPerSide}`);
  }
  const clampArea = pistonsPerSide * circleArea({ diameter: pistonDiameter }).area;
  return type === 'floating' ? { clampArea, pistonArea: clampArea, travelPerGap: 2 } : { clampArea, pistonArea: 2 * clampArea, travelPerGap: 1 };
}

/**
 * What one circuit (one axle, two calipers) swallows at a line pressure, part by part.
 *
 *   gaps      2 · 2 A_1 g            pads      2 · 2 A_1 c p/p_c       hoses   n ℓ e p/p_h
 *   knockBack 2 · A_1 κ              calipers  2 k_c p/p_k             fluid   V_f p/B
 *   air       V_a [1 − (p_0/(p_0 + p))^(1/m)]
 *
 * gapPerPad g (m, 1e-4–2e-4). knockBack κ (m per caliper): what has opened at both its pads together, beyond the gaps.
 * fluidVolume V_f (m³, 1e-4–1.8e-4) from master to calipers, reservoir left out; bulkModulus B (Pa, about 1.6e9 cold, 1.0e9
 * hot: from memory). hoses n, hoseLength ℓ (m each), hoseExpansion e (m³ per m at hosePressure p_h). caliperGive k_c (m³ per
 * caliper at caliperPressure p_k). padGive c (m per pad at padPressure p_c). airVolume V_a (m³ at atmospheric pressure);
 * polytropic m (1 slow, 1.4 fast). pressure p (Pa over p_0, 0–1.5e7).
 *
 * Air is not all gone at once: 5 bar squeezes away 72–83 % of it, 20 bar 88–95 %.
 * Neglected: that pads, hoses and fluid stiffen as they are squeezed; the push-out pressure; swell of steel tube.
 * @throws RangeError if a size is negative, B or a reference pressure is not above 0, m is below 1
 * Source: derived, volume kept. Worked value: 54 mm, 0.15 mm gaps → 1.374 cm³; 120 cm³ at 70 bar → 0.525 cm³.
 */
export interface CircuitParts extends Caliper {
  readonly gapPerPad: number;
  readonly knockBack: number;
  readonly fluidVolume: number;
  readonly bulkModulus: number;
  readonly hoses: number;
  readonly hoseLength: number;
  readonly hoseExpansion: number;
  readonly hosePressure: number;
  readonly caliperGive: number;
  readonly caliperPressure: number;
  readonly padGive: number;
  readonly padPressure: number;
  readonly airVolume: number;
  readonly polytropic: number;
}

export type VolumeItem = 'gaps' | 'knockBack' | 'fluid' | 'hoses' | 'calipers' | 'pads' | 'air';

const calipersPerAxle = 2;

export function circuitVolume({ pressure, ...c }: CircuitParts & { readonly pressure: number }): {
  readonly items: Readonly<Record<VolumeItem, number>>;
  readonly total: number;
} {
  const { gapPerPad, knockBack, fluidVolume, hoses, hoseLength, hoseExpansion, caliperGive, padGive, airVolume } = c;
  requireNonNegative({ pressure, gapPerPad, knockBack, fluidVolume, hoses, hoseLength, hoseExpansion, caliperGive, padGive, airVolume });
  requirePositive({ bulkModulus: c.bulkModulus, hosePressure: c.hosePressure, caliperPressure: c.caliperPressure, padPressure: c.padPressure });
  const { clampArea, pistonArea, travelPerGap } = caliperAreas(c);
  const perGap = calipersPerAxle * pistonArea * travelPerGap;
  const items = {
    gaps: perGap * gapPerPad,
    knockBack: calipersPerAxle * clampArea * knockBack,
    fluid: (fluidVolume * pressure) / c.bulkModulus,
    hoses: (hoses * hoseLength * hoseExpansion * pressure) / c.hosePressure,
    calipers: (calipersPerAxle * caliperGive * pressure) / c.caliperPressure,
    pads: (perGap * padGive * pressure) / c.padPressure,
    air: airVolume * squeezed({ pressure, polytropic: c.polytropic }),
  };
  return { items, total: Object.values(items).reduce((sum, v) => sum + v, 0) };
}

/** Part of the air's volume that is gone at a pressure. */
function squeezed({ pressure, polytropic }: { readonly pressure: number; readonly polytropic: number }): number {
  requirePositive({ polytropic });
  if (polytropic < 1) throw new RangeError(`polytropic: expected 1 or more, found ${polytropic}`);
  return 1 - (atmosphere / (atmosphere + pressure)) ** (1 / polytropic);
}

/**
 * The straight line V0 + k p through the circuit's volume at two pressures, for fluid.ts.
 *
 *   k = (V(high) − V(low))/(high − low)     V0 = V(low) − k low
 *
 * Between the two the true volume is larger, beyond them smaller: only air bends the curve, and it bends it down. So V0
 * holds the gaps, the knock-back and most of the air, and is never below them.
 *
 * Impossible 'pressures-not-rising', by low − high (Pa). @throws RangeError as circuitVolume. Source: derived.
 */
export function equivalentCircuit({ low, high, ...parts }: CircuitParts & { readonly low: number; readonly high: number }):
  | { readonly takeUpVolume: number; readonly compliance: number }
  | Impossible {
  const atLow = circuitVolume({ ...parts, pressure: low }).total;
  const atHigh = circuitVolume({ ...parts, pressure: high }).total;
  if (high <= low) return { impossible: 'pressures-not-rising', by: low - high };
  const compliance = (atHigh - atLow) / (high - low);
  return { takeUpVolume: atLow - compliance * low, compliance };
}

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

export function pedalLedger(p: LedgerPedal): PedalLedger {
  const { pedalRatio, frontShare, freePlay, flex, flexForce, controlForce, floorTravel } = p;
  requirePositive({ pedalRatio, frontShare, rearShare: 1 - frontShare, flexForce, floorTravel });
  requireNonNegative({ freePlay, flex, controlForce });
  const front = circuitLedger({ circuit: p.front, padPerStroke: pedalRatio * frontShare });
  const rear = circuitLedger({ circuit: p.rear, padPerStroke: pedalRatio * (1 - frontShare) });
  const freePlayTravel = pedalRatio * freePlay;
  const flexTravel = (pedalRatio * flex * controlForce) / flexForce;
  const padTravel = front.padTravel + rear.padTravel + freePlayTravel + flexTravel;
  return { front, rear, freePlayTravel, flexTravel, padTravel, padReserve: floorTravel - padTravel };
}

function circuitLedger({ circuit, padPerStroke }: { readonly circuit: CircuitOnMaster; readonly padPerStroke: number }): CircuitLedger {
  const { bore, portStroke, masterStroke } = circuit;
  requireNonNegative({ portStroke });
  requirePositive({ masterStroke });
  const { area } = circleArea({ diameter: bore });
  const { items, total } = circuitVolume(circuit);
  const line = (item: LedgerLine['item'], volume: number, stroke: number): LedgerLine => ({ item, volume, stroke, padTravel: padPerStroke * stroke });
  const stroke = total / area + portStroke;
  return {
    lines: [line('port', 0, portStroke), ...(Object.entries(items) as [VolumeItem, number][]).map(([item, v]) => line(item, v, v / area))],
    volume: total,
    stroke,
    padTravel: padPerStroke * stroke,
    strokeReserve: masterStroke - stroke,
  };
}

/**
 * The reverse: what would explain a pad travel longer than the ledger's, if all of it came from one circuit.
 *
 *   ΔV = A_m (measured − computed)/(i w)     air ΔV/[1 − (p_0/(p_0 + p))^(1/m)]     knock-back ΔV/(2 A_1)
 *
 * measuredTravel (m) at the controlForce and pressures of the ledger; volume needs do not change those. Air in m³ at
 * atmospheric pressure, knock-back in m per caliper, each on top of what the ledger has already.
 * withinStroke: false where the master would have bottomed first, so that this circuit alone cannot be the cause.
 * front, rear undefined where no amount explains it: measured not longer than computed, or no pressure to squeeze air.
 *
 * Read it as candidates, not as a finding: pads, hoses or a flexing firewall out of their assumed range look the same.
 * Impossible 'pad-on-floor', by measured − floorTravel (m): a pad that lies on the carpet no longer tells.
 * @throws RangeError as pedalLedger, or on a negative measuredTravel
 * Source: derived. Worked value: reference truck A, 17.7 mm too long at the front → 1.15 cm³, 0.25 mm in each caliper.
 */
export interface Explanation {
  readonly amount: number;
  readonly volume: number;
  readonly stroke: number;
  readonly withinStroke: boolean;
}

export type Explanations = {
  readonly excess: number;
  readonly front: Explanation | undefined;
  readonly rear: Explanation | undefined;
} | Impossible;

export function airFromTravel(p: LedgerPedal & { readonly measuredTravel: number }): Explanations {
  return explain({ ...p, perVolume: (c) => 1 / squeezed(c) });
}

export function knockBackFromTravel(p: LedgerPedal & { readonly measuredTravel: number }): Explanations {
  return explain({ ...p, perVolume: (c) => 1 / (calipersPerAxle * caliperAreas(c).clampArea) });
}

function explain({ measuredTravel, perVolume, ...pedal }: LedgerPedal & {
  readonly measuredTravel: number;
  readonly perVolume: (circuit: CircuitOnMaster) => number;
}): Explanations {
  requireNonNegative({ measuredTravel });
  const ledger = pedalLedger(pedal);
  if (measuredTravel > pedal.floorTravel) return { impossible: 'pad-on-floor', by: measuredTravel - pedal.floorTravel };
  const excess = measuredTravel - ledger.padTravel;
  const one = (circuit: CircuitOnMaster, { strokeReserve }: CircuitLedger, weight: number): Explanation | undefined => {
    const stroke = excess / (pedal.pedalRatio * weight);
    const volume = stroke * circleArea({ diameter: circuit.bore }).area;
    const amount = volume * perVolume(circuit);
    return excess > 0 && Number.isFinite(amount) ? { amount, volume, stroke, withinStroke: stroke <= strokeReserve } : undefined;
  };
  return { excess, front: one(pedal.front, ledger.front, pedal.frontShare), rear: one(pedal.rear, ledger.rear, 1 - pedal.frontShare) };
}
