import { standardGravity } from './constants.ts';
import { between, failurePath, isEvent } from './failurePath.ts';
import type { FailedPedal, FailureCorner, FailureEventKind, FailureRegime } from './failurePath.ts';
import { isImpossible } from './outcome.ts';
import type { Impossible } from './outcome.ts';
import { requireNonNegative, requirePositive } from './require.ts';
import { singleAxleSlip } from './singleAxleSlip.ts';

/**
 * One circuit dead: what is left of the brakes, where the pedal goes, and which stop is met first.
 *
 *   p from failurePath.ts      rateByPressure = C_g max(0, p − p_0)/(M g)      rate = min(rateByPressure, slipLimit)
 *   With neither floor nor bottom in the way:  p = max(s_g P, min(P, p_lim)),  P = F i η/A_g
 *
 * Beside the pedal of failurePath.ts: controlForce F (N, 0–2000); frontGain, rearGain C (N/Pa above push-out,
 * as from discAxle); pushOut p_0 (Pa, 0): pressure that only moves the live axle's pistons or shoes; mass M (kg); rearLoadFraction ψ, cgHeight h (m), wheelbase L (m), grip μ as in singleAxleSlip.ts;
 * searchForce (N, 1500): how far the list of events looks.
 *
 * At F the foot rests with the free run used up, also at F = 0: a pedal without fluid behind it drops that far at a touch.
 * tilt (rad): positive with the dead clevis ahead. floorMargin (m): pad to carpet, 0 on it. travelWithoutFloor (m): where
 * the pad would stand were there no floor; more than floorTravel by what is missing. flatSpot: foot forces between which
 * pushing harder adds nothing. 'axle-slides' comes where the pressure asks for slipLimit. firstStop: what ends the free run.
 * ultimatePressure (Pa): what no foot can raise it above, as the pedal is solid there.
 *
 * Neglected: as in the two files, and the loss of grip once a wheel locks. A slow push; a stab is worse.
 * Impossible as failurePath. @throws RangeError as the functions used, or on a negative force.
 * Source: derived. Worked value: reference truck A at 500 N, rear dead: 65.8 bar, 0.615 g by pressure, pad 151 mm;
 * front dead: 77.0 bar inside a flat spot from 363 to 955 N, 0.372 g by pressure, pad 142 mm.
 */
export interface CircuitFailure extends FailedPedal {
  readonly frontGain: number;
  readonly rearGain: number;
  readonly pushOut?: number;
  readonly mass: number;
  readonly rearLoadFraction: number;
  readonly cgHeight: number;
  readonly wheelbase: number;
  readonly grip: number;
}

export interface FailureState {
  readonly controlForce: number;
  readonly padTravel: number;
  readonly pressure: number;
  readonly goodStroke: number;
  readonly deadStroke: number;
  readonly tilt: number;
  readonly regime: FailureRegime;
  readonly rate: number;
  readonly rateByPressure: number;
  readonly slipLimit: number;
  readonly slipLimited: boolean;
}

export interface FailureEvent {
  readonly kind: FailureEventKind | 'axle-slides';
  readonly controlForce: number;
  readonly padTravel: number;
  readonly pressure: number;
}

export function circuitFailure(truck: CircuitFailure & {
  readonly controlForce: number;
  readonly searchForce?: number;
}):
  | (FailureState & {
      readonly floorMargin: number;
      readonly travelWithoutFloor: number;
      readonly ultimatePressure: number;
      readonly events: readonly FailureEvent[];
      readonly flatSpot: { readonly from: number; readonly to: number } | undefined;
      readonly firstStop: FailureEventKind;
    })
  | Impossible {
  const { controlForce, searchForce = 1500 } = truck;
  requireNonNegative({ controlForce, searchForce });
  const path = failurePath(truck);
  if (isImpossible(path)) return path;
  const noFloor = failurePath({ ...truck, floorTravel: Number.MAX_VALUE }) as readonly FailureCorner[];
  const state = stateAt(truck, alongForce(path, controlForce));
  const flat = path.findIndex((c) => c.regime === 'flat-spot');
  return {
    ...state,
    floorMargin: Math.max(0, truck.floorTravel - state.padTravel),
    travelWithoutFloor: alongForce(noFloor, controlForce).padTravel,
    ultimatePressure: (path[path.length - 1] as FailureCorner).pressure,
    events: eventsOn(truck, path).filter((e) => e.controlForce <= searchForce),
    flatSpot: flat < 0 ? undefined : { from: path[flat]!.controlForce, to: path[flat + 1]!.controlForce },
    firstStop: path.map((c) => c.kind).find(isEvent) as FailureEventKind,
  };
}

/** The state at a foot force, for a chart against force. */
export function failureAtForce(truck: CircuitFailure & { readonly controlForce: number }): FailureState | Impossible {
  const { controlForce } = truck;
  requireNonNegative({ controlForce });
  const path = failurePath(truck);
  return isImpossible(path) ? path : stateAt(truck, alongForce(path, controlForce));
}

/** The state at a pad travel, for a drawing that starts at rest. In a flat spot it gives the least force; past the end, the end. */
export function failureAtTravel(truck: CircuitFailure & { readonly padTravel: number }): FailureState | Impossible {
  const { padTravel } = truck;
  requireNonNegative({ padTravel });
  const path = failurePath(truck);
  return isImpossible(path) ? path : stateAt(truck, alongTravel(path, padTravel));
}

type Place = Omit<FailureCorner, 'kind'>;

function alongForce(path: readonly FailureCorner[], force: number): Place {
  const next = path.findIndex((c) => c.controlForce > force);
  if (next < 0) return { ...(path[path.length - 1] as FailureCorner), controlForce: force };
  const a = path[next - 1] as FailureCorner;
  const b = path[next] as FailureCorner;
  return { regime: a.regime, ...between(a, b, (force - a.controlForce) / (b.controlForce - a.controlForce)) };
}

function alongTravel(path: readonly FailureCorner[], travel: number): Place {
  const next = path.findIndex((c, k) => k > 0 && c.padTravel >= travel);
  if (next < 0) return path[path.length - 1] as FailureCorner;
  const a = path[next - 1] as FailureCorner;
  const b = path[next] as FailureCorner;
  if (b.padTravel === travel) return b;
  return { regime: a.regime, ...between(a, b, (travel - a.padTravel) / (b.padTravel - a.padTravel)) };
}

function stateAt(truck: CircuitFailure, place: Place): FailureState {
  const { controlForce, padTravel, pressure, goodStroke, deadStroke, regime } = place;
  const { slipLimit, perPascal, pushOut } = grippingAxle(truck);
  const rateByPressure = perPascal * Math.max(0, pressure - pushOut);
  const ahead = (truck.dead === 'front' ? 1 : -1) * (truck.frontLead ?? 0) + deadStroke - goodStroke;
  const tilt = Math.asin(Math.max(-1, Math.min(1, ahead / truck.barSpacing)));
  return {
    controlForce, padTravel, pressure, goodStroke, deadStroke, tilt, regime,
    rate: Math.min(rateByPressure, slipLimit),
    rateByPressure,
    slipLimit,
    slipLimited: rateByPressure > slipLimit,
  };
}

function grippingAxle(truck: CircuitFailure): { readonly slipLimit: number; readonly perPascal: number; readonly pushOut: number } {
  const { dead, frontGain, rearGain, pushOut = 0, mass, grip, rearLoadFraction, cgHeight, wheelbase } = truck;
  requireNonNegative({ frontGain, rearGain, pushOut });
  requirePositive({ mass });
  const axle = dead === 'front' ? 'rear' : 'front';
  return {
    slipLimit: singleAxleSlip({ axle, grip, rearLoadFraction, cgHeight, wheelbase }).rate,
    pushOut,
    perPascal: (axle === 'front' ? frontGain : rearGain) / (mass * standardGravity),
  };
}

function eventsOn(truck: CircuitFailure, path: readonly FailureCorner[]): readonly FailureEvent[] {
  const { slipLimit, perPascal, pushOut } = grippingAxle(truck);
  const sliding = pushOut + slipLimit / perPascal;
  const events: FailureEvent[] = [];
  path.forEach((c, k) => {
    const before = path[k - 1];
    if (before !== undefined && before.pressure < sliding && c.pressure >= sliding) {
      const at = between(before, c, (sliding - before.pressure) / (c.pressure - before.pressure));
      events.push({ kind: 'axle-slides', controlForce: at.controlForce, padTravel: at.padTravel, pressure: at.pressure });
    }
    if (isEvent(c.kind)) {
      events.push({ kind: c.kind, controlForce: c.controlForce, padTravel: c.padTravel, pressure: c.pressure });
    }
  });
  return events;
}
