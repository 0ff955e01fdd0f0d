import { brakingRate } from './brakingRate.ts';
import { strokeForPressure } from './fluid.ts';
import { linePressure } from './pressure.ts';
import { areNonNegative, requireNonNegative } from './require.ts';
import { valveOutlet } from './valve.ts';

/**
 * The whole chain of an intact pedal: what a foot makes of pressure and braking, and what it spends of stroke and travel.
 *
 *   force    F → p_f, p_r → p_ro (valve) → C (p − p_0) → z
 *   volume   p_f, p_ro → x_f, x_r → padTravel = i [s x_f + (1 − s) x_r + g_0]
 *
 * The bar's pivot lies between the clevises at the point that makes the front share s, so it moves s x_f + (1 − s) x_r:
 * one lever law for force and for motion, or the bar would make work out of nothing.
 *
 * controlForce F (N); pedalRatio i; efficiency η; frontShare s (between 0 and 1); bores, springForce F_s: see pressure.ts;
 * take-up, compliance, portStroke: fluid.ts; freePlay g_0 (m, at the rod); frontGain, rearGain C (N/Pa); pushOut p_0
 * (Pa): pressure that only moves the caliper pistons; valve: see valve.ts, left out when there is none; mass (kg).
 *
 * The rear swells with the pressure behind the valve, where its hoses and calipers are. At F = 0 the pad stands where
 * pressure is about to rise. rearFraction is undefined while nothing brakes. Nothing here stops at a master's bottom, the
 * carpet or the bar's stop: footWhere says when each is met.
 *
 * Neglected: change of i through the swing, flex of pedal and firewall, tilt and friction of the bar, the tires' limit.
 * @throws RangeError as the functions used, or on a negative freePlay or pushOut
 * Source: derived, from the functions named. Worked value: reference truck A at 500 N → z 0.810, 22.1 and 9.9 mm, pad 108 mm.
 */
export interface Pedal {
  readonly pedalRatio: number;
  readonly efficiency: number;
  readonly frontShare: number;
  readonly springForce: number;
  readonly frontBore: number;
  readonly rearBore: number;
  readonly portStroke: number;
  readonly freePlay: number;
  readonly frontTakeUpVolume: number;
  readonly rearTakeUpVolume: number;
  readonly frontCompliance: number;
  readonly rearCompliance: number;
  readonly frontGain: number;
  readonly rearGain: number;
  readonly pushOut: number;
  readonly valve?: { readonly knee: number; readonly slope: number } | undefined;
  readonly mass: number;
}

export interface FootState {
  readonly controlForce: number;
  readonly rodForce: number;
  readonly frontArea: number;
  readonly rearArea: number;
  readonly frontPressure: number;
  readonly rearPressure: number;
  readonly rearOutlet: number;
  readonly frontForce: number;
  readonly rearForce: number;
  readonly rate: number;
  readonly rearFraction: number | undefined;
  readonly frontStroke: number;
  readonly rearStroke: number;
  readonly padTravel: number;
}

export function footToRoad(p: Pedal & { readonly controlForce: number }): FootState {
  if (!areNonNegative(p.freePlay, p.pushOut)) requireNonNegative({ freePlay: p.freePlay, pushOut: p.pushOut });
  const line = linePressure(p);
  const rearOutlet = p.valve ? valveOutlet({ inlet: line.rearPressure, knee: p.valve.knee, slope: p.valve.slope }).outlet : line.rearPressure;
  const road = brakingRate({
    frontGain: p.frontGain,
    rearGain: p.rearGain,
    frontPressure: Math.max(0, line.frontPressure - p.pushOut),
    rearPressure: Math.max(0, rearOutlet - p.pushOut),
    mass: p.mass,
  });
  const frontStroke = strokeForPressure({ pressure: line.frontPressure, takeUpVolume: p.frontTakeUpVolume, compliance: p.frontCompliance, bore: p.frontBore, portStroke: p.portStroke }).stroke;
  const rearStroke = strokeForPressure({ pressure: rearOutlet, takeUpVolume: p.rearTakeUpVolume, compliance: p.rearCompliance, bore: p.rearBore, portStroke: p.portStroke }).stroke;
  return {
    controlForce: p.controlForce,
    rodForce: line.rodForce,
    frontArea: line.frontArea,
    rearArea: line.rearArea,
    frontPressure: line.frontPressure,
    rearPressure: line.rearPressure,
    rearOutlet,
    frontForce: road.frontForce,
    rearForce: road.rearForce,
    rate: road.rate,
    rearFraction: road.rearFraction,
    frontStroke,
    rearStroke,
    padTravel: p.pedalRatio * (p.frontShare * frontStroke + (1 - p.frontShare) * rearStroke + p.freePlay),
  };
}

/**
 * The least foot force at which something runs out: `excess` is how far past its limit it is, 0 or more once it is met.
 *
 * excess must be a sum of multiples of a FootState's values. Each of those is a straight line in F between the forces
 * at which a spring gives way, a brake starts to bite or the valve bends, so the answer is exact and no step size enters.
 * upTo (N, 4000): how far to look. undefined: not met by then.
 *
 * @throws RangeError as footToRoad
 * Source: derived. Worked value: reference truck A, front master of 28 mm stroke: 720 N bottoms it.
 */
export function footWhere({ pedal, excess, upTo = 4000 }: {
  readonly pedal: Pedal;
  readonly excess: (state: FootState) => number;
  readonly upTo?: number;
}): number | undefined {
  requireNonNegative({ upTo });
  const at = (controlForce: number): number => excess(footToRoad({ ...pedal, controlForce }));
  let from = 0;
  let before = at(0);
  if (before >= 0) return 0;
  for (const to of [...bends(pedal).filter((f) => f > 0 && f < upTo).sort((a, b) => a - b), upTo]) {
    const after = at(to);
    if (after >= 0) return from + ((to - from) * before) / (before - after);
    from = to;
    before = after;
  }
  return undefined;
}

/** Foot forces at which one of the straight lines changes its slope. */
function bends(p: Pedal): readonly number[] {
  const { frontArea, rearArea } = footToRoad({ ...p, controlForce: 0 });
  const perNewton = p.pedalRatio * p.efficiency;
  const front = (pressure: number): number => (pressure * frontArea + p.springForce) / (p.frontShare * perNewton);
  const rear = (pressure: number): number => (pressure * rearArea + p.springForce) / ((1 - p.frontShare) * perNewton);
  const { valve, pushOut } = p;
  // Behind a valve that bends below the push-out pressure, the rear bites later than its inlet says; at slope 0, never.
  const rearBites = valve && valve.knee < pushOut ? valve.knee + (pushOut - valve.knee) / valve.slope : pushOut;
  return [front(0), rear(0), front(pushOut), rear(rearBites), ...(valve ? [rear(valve.knee)] : [])];
}
