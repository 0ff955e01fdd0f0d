import { circleArea } from './circle.ts';
import { failureAtForce, failureAtTravel } from './circuitFailure.ts';
import type { CircuitFailure } from './circuitFailure.ts';
import { between, failurePath } from './failurePath.ts';
import { footToRoad, footWhere } from './footToRoad.ts';
import type { FootState, Pedal } from './footToRoad.ts';
import { isImpossible } from './outcome.ts';
import type { Impossible } from './outcome.ts';
import { requireNonNegative, requirePositive } from './require.ts';

/**
 * The foot force, pad travel and braking rate at which the stop lamps light. Switches in parallel: the first to make counts.
 *
 *   pressure switch   F = (p_sw A_m + F_s)/(w i η) + F_pad     w = s in front, 1 − s behind
 *   pedal switch      the least F at which the pad has come as far as the switch
 *   F_pad = preload + springRate × pad travel
 *
 * A pressure switch waits for pressure, and with a small share or a large bore its circuit has little: the truck brakes dark.
 * A pedal switch inside the free play waits for the pedal's own spring only.
 *
 * Travel as the springs allow it: no piston moves until its part of the rod force beats its return spring F_s, so the master with
 * the larger share goes first and the other follows later. (footToRoad starts with both take-ups done.)
 *
 * switches: kind 'pressure' with circuit and makesAt p_sw (Pa; 60–120 psi is 4.1e5–8.3e5, from memory) in the line from the master,
 * before any valve; kind 'pedal' with makesAt (m of pad travel). pedal: see footToRoad.ts. springPreload (N), springRate (N/m):
 * the pedal's own return spring, as felt at the pad.
 *
 * each: per switch in order, undefined where 4000 N or the pad's reach does not make it. lamp: the first of them; lightsAt its index.
 * rate: what the brakes give at that moment, so what a driver behind sees unlit.
 * Neglected: hysteresis of the switch, seal drag beyond η, floor and master bottom, delay of the lamp.
 *
 * @throws RangeError if switches is empty, a makesAt not above 0, a spring negative, or as footToRoad
 * Source: derived. Worked value: reference truck A, switch of 60 psi: 31.4 N and 0.051 in front, 51.3 N and 0.083 behind.
 */
export type LampSwitch =
  | { readonly kind: 'pressure'; readonly circuit: 'front' | 'rear'; readonly makesAt: number }
  | { readonly kind: 'pedal'; readonly makesAt: number };

export interface LampPoint {
  readonly controlForce: number;
  readonly padTravel: number;
  readonly rate: number;
}

export interface StopLamp {
  readonly each: readonly (LampPoint | undefined)[];
  readonly lamp: LampPoint | undefined;
  readonly lightsAt: number | undefined;
}

interface PadSpring {
  readonly springPreload: number;
  readonly springRate: number;
}

export function stopLamp({ switches, pedal, ...spring }: PadSpring & {
  readonly switches: readonly LampSwitch[];
  readonly pedal: Pedal;
}): StopLamp {
  requireSwitches(switches, spring);
  return firstOf(switches.map((sw): LampPoint | undefined => {
    const force = sw.kind === 'pedal'
      ? forceAtTravel({ pedal, padTravel: sw.makesAt })
      : footWhere({ pedal, excess: (state) => (sw.circuit === 'front' ? state.frontPressure : state.rearPressure) - sw.makesAt });
    if (force === undefined) return undefined;
    const state = footToRoad({ ...pedal, controlForce: force });
    const padTravel = sw.kind === 'pedal' ? sw.makesAt : travelOf({ pedal, state });
    return withSpring({ controlForce: force, padTravel, rate: state.rate }, spring);
  }));
}

/** Pad travel with a master still at rest while its spring is the stronger. */
function travelOf({ pedal, state }: { readonly pedal: Pedal; readonly state: FootState }): number {
  const moved = (share: number, stroke: number): number => (share * state.rodForce < pedal.springForce ? 0 : share * stroke);
  return pedal.pedalRatio * (moved(pedal.frontShare, state.frontStroke) + moved(1 - pedal.frontShare, state.rearStroke) + pedal.freePlay);
}

/** Least force at which the pad has come this far: by the master that starts first alone, or by both. */
function forceAtTravel({ pedal, padTravel }: { readonly pedal: Pedal; readonly padTravel: number }): number | undefined {
  const { pedalRatio, efficiency, frontShare, springForce, freePlay } = pedal;
  if (padTravel <= pedalRatio * freePlay) return 0;
  const larger = Math.max(frontShare, 1 - frontShare);
  const starts = (share: number): number => springForce / (share * pedalRatio * efficiency);
  const lead = (state: FootState): number => pedalRatio * (larger * (frontShare === larger ? state.frontStroke : state.rearStroke) + freePlay);
  const alone = footWhere({ pedal, excess: (state) => lead(state) - padTravel }) ?? Infinity;
  const both = footWhere({ pedal, excess: (state) => state.padTravel - padTravel }) ?? Infinity;
  const force = Math.min(Math.max(starts(larger), alone), Math.max(starts(1 - larger), both));
  return force < Infinity ? force : undefined;
}

/**
 * The same with one circuit dead (truck.dead): a switch in it stays dark; one in the other sees more force than usual on the bar's
 * stop, or its usual share late; a pedal switch lights in the free run.
 *
 * truck: see circuitFailure.ts, whose rate keeps within the tires' limit. undefined: the pad is on the floor, or the pedal solid, before it makes.
 * Neglected: as circuitFailure (return springs of the masters among it).
 * Impossible as failurePath. @throws RangeError as stopLamp and circuitFailure
 * Source: derived. Worked value: reference truck A, rear dead, 60 psi in front: 19.5 N instead of 31.4.
 */
export function stopLampWithDeadCircuit({ switches, truck, ...spring }: PadSpring & {
  readonly switches: readonly LampSwitch[];
  readonly truck: CircuitFailure;
}): StopLamp | Impossible {
  requireSwitches(switches, spring);
  const path = failurePath(truck);
  if (isImpossible(path)) return path;
  return firstOf(switches.map((sw): LampPoint | undefined => {
    if (sw.kind === 'pedal') {
      const state = failureAtTravel({ ...truck, padTravel: sw.makesAt });
      const end = path[path.length - 1]!.padTravel;
      return isImpossible(state) || end < sw.makesAt ? undefined : withSpring({ ...state, padTravel: sw.makesAt }, spring);
    }
    const next = path.findIndex((corner) => corner.pressure >= sw.makesAt);
    if (sw.circuit === truck.dead || next < 1) return undefined;
    const [a, b] = [path[next - 1]!, path[next]!];
    const at = between(a, b, (sw.makesAt - a.pressure) / (b.pressure - a.pressure));
    const state = failureAtForce({ ...truck, controlForce: at.controlForce });
    return isImpossible(state) ? undefined : withSpring({ ...at, rate: state.rate }, spring);
  }));
}

function withSpring({ controlForce, padTravel, rate }: LampPoint, { springPreload, springRate }: PadSpring): LampPoint {
  return { controlForce: controlForce + springPreload + springRate * padTravel, padTravel, rate };
}

function firstOf(each: readonly (LampPoint | undefined)[]): StopLamp {
  let lightsAt: number | undefined;
  each.forEach((point, k) => {
    if (point && point.controlForce < (lightsAt === undefined ? Infinity : each[lightsAt]!.controlForce)) lightsAt = k;
  });
  return { each, lamp: lightsAt === undefined ? undefined : each[lightsAt], lightsAt };
}

function requireSwitches(switches: readonly LampSwitch[], spring: PadSpring): void {
  requirePositive({ switches: switches.length });
  for (const { makesAt } of switches) requirePositive({ makesAt });
  requireNonNegative({ ...spring });
}

/**
 * Voltage lost in the wires of the stop lamps.
 *
 *   ΔU = I ρ ℓ/A     ℓ = 2 × length with a ground wire as long, length with the frame as return
 *
 * current I (A; three filament lamps about 4–6); length (m, battery to lamp one way); area A (m², copper; awgArea gives it);
 * returnBy; supply U (V, 12–14). resistivity ρ of copper at 20 °C. dropFraction = ΔU/U.
 * Neglected: switch, fuse, connectors and a rusty ground, which often cost more than the wire; heat (+4 % per 10 K); that a
 * dimmed lamp draws a little less.
 *
 * Impossible 'drop-exceeds-supply', by ΔU − U (V).
 * @throws RangeError if the current is negative or a length, area or supply not above 0
 * Source: Ohm's law; ρ 1.7241e-8 Ω·m for annealed copper, from memory, not checked against the text.
 * Worked value: 5 A, 5 m, 1.0 mm², ground wire → 0.86 V; over the frame 0.43 V.
 */
export function lampWiring({ current, length, area, returnBy, supply }: {
  readonly current: number;
  readonly length: number;
  readonly area: number;
  readonly returnBy: 'wire' | 'frame';
  readonly supply: number;
}): { readonly drop: number; readonly dropFraction: number; readonly atLamp: number } | Impossible {
  requireNonNegative({ current });
  requirePositive({ length, area, supply });
  const drop = (current * copperResistivity * length * (returnBy === 'wire' ? 2 : 1)) / area;
  if (drop > supply) return { impossible: 'drop-exceeds-supply', by: drop - supply };
  return { drop, dropFraction: drop / supply, atLamp: supply - drop };
}

const copperResistivity = 1.7241e-8;

/**
 * Area of an American Wire Gauge conductor: d = 0.127 mm · 92^((36 − n)/39), A = π d²/4.
 *
 * gauge n (0–40). A stranded wire of the same gauge has about this much copper.
 * @throws RangeError if n is not between 0 and 40
 * Source: the gauge's definition, from memory, not checked against the text. Worked value: 16 → 1.31 mm², 18 → 0.823 mm².
 */
export function awgArea({ gauge }: { readonly gauge: number }): { readonly area: number } {
  if (!(gauge >= 0 && gauge <= 40)) throw new RangeError(`gauge: expected 0 to 40, found ${gauge}`);
  return { area: circleArea({ diameter: 0.127e-3 * 92 ** ((36 - gauge) / 39) }).area };
}
