import { circleArea } from './circle.ts';
import { pressureForStroke, strokeForPressure } from './fluid.ts';
import type { FluidCircuit } from './fluid.ts';
import type { Impossible } from './outcome.ts';
import { areFinite, areNonNegative, arePositive, requireFinite, requireNonNegative, requirePositive } from './require.ts';

/**
 * The road a pedal travels when one circuit has lost its fluid: every corner of it, in the order the foot meets them.
 *
 * The dead master pushes nothing until its piston bottoms; the good one holds pressure. With a_g, a_d the distances
 * pivot to good and to dead clevis (a_g + a_d = L_b), s_g = a_d/L_b, x_g and x_d the strokes:
 *
 *   pad travel  = i (g_0 + (x_d a_g + x_g a_d)/L_b)   the pivot lies on the line between the clevises
 *   bar on stop : x_d − x_g = S − e_d, S = L_b sin α_s   nothing holds the dead clevis, so F i η = A_g p   (all of it)
 *   dead bottom : x_d = x_d,max                   moments about the dead clevis:  s_g F i η = A_g p (its share)
 *   both at once: x_g = x_d,max − S + e_d stands still while F i η goes from A_g p to A_g p/s_g: the flat spot
 *   ends        : x_g,max; or the bar on its *other* stop, x_g = x_d,max + S + e_d; or the pad on the floor
 *
 * Between corners everything is a straight line, so the list is the exact solution and no step size enters.
 * The free run takes no force, and then which clevis leads is for friction to say: here the dead one, since the good
 * one has seals wetted with fluid to drag. What holds at any force above 0 does not depend on that.
 *
 * dead: the circuit without fluid. pedalRatio i, efficiency η; barSpacing L_b (m) between clevis centers; barOffset u
 * (m) of the pivot from the middle, + toward the front clevis, so a_f = L_b/2 − u, a_r = L_b/2 + u; stopAngle α_s (rad,
 * 0–90°, the same both ways; left out: no stop, which is a stop at 90°); frontStroke, rearStroke (m): piston travel to
 * the bottom of each master; frontLead e (m, 0): how far the front clevis stands ahead of the rear one at rest, e_d = e with the
 * front dead and −e with the rear dead; freePlay g_0 (m, 0) at the rods; bores, take-up volumes, compliances, port strokes as in fluid.ts; floorTravel (m): pad
 * travel to the carpet.
 *
 * Neglected: return springs, the change of i through the swing, the splay of the rods as the bar tilts, flex.
 * Impossible 'pivot-outside-clevises', 'on-stop-at-rest' where the lead at rest is beyond the stop, by how much (m).
 * @throws RangeError if a size is out of its range above
 * Source: derived (free body of the bar, rigid kinematics). Worked value: reference truck (i 6.2, η 0.85, 63.5 mm,
 * u 7.62 mm, stop 12°, both masters 17.78 × 28 mm), rear dead: dead master bottoms at 143 N, flat spot to 231 N.
 */
export type FailureRegime =
  | 'free-run' | 'on-bar-stop' | 'flat-spot' | 'on-dead-master' | 'good-bottomed' | 'on-opposite-stop' | 'on-floor';

export type FailureEventKind =
  | 'bar-stop' | 'first-pressure' | 'dead-bottoms' | 'flat-spot-ends' | 'good-bottoms' | 'opposite-stop' | 'pad-on-floor';

export interface FailureCorner {
  /** at rest and where the free play is taken up nothing happens that a driver notices */
  readonly kind: FailureEventKind | 'rest' | 'play-taken';
  /** what holds from this corner to the next; after the last corner the pedal is solid */
  readonly regime: FailureRegime;
  readonly controlForce: number;
  readonly padTravel: number;
  readonly pressure: number;
  readonly goodStroke: number;
  readonly deadStroke: number;
}

export interface FailedPedal {
  readonly dead: 'front' | 'rear';
  readonly pedalRatio: number;
  readonly efficiency: number;
  readonly barSpacing: number;
  readonly barOffset: number;
  readonly stopAngle?: number | undefined;
  readonly frontLead?: number;
  readonly freePlay?: number;
  readonly frontBore: number;
  readonly rearBore: number;
  readonly frontStroke: number;
  readonly rearStroke: number;
  readonly frontTakeUpVolume: number;
  readonly rearTakeUpVolume: number;
  readonly frontCompliance: number;
  readonly rearCompliance: number;
  readonly frontPortStroke: number;
  readonly rearPortStroke: number;
  readonly floorTravel: number;
}

export function failurePath(p: FailedPedal): readonly FailureCorner[] | Impossible {
  const { pedalRatio, efficiency, barSpacing, barOffset, stopAngle = Math.PI / 2, floorTravel, frontLead = 0, freePlay = 0 } = p;
  if (!arePositive(pedalRatio, efficiency, barSpacing, floorTravel)) requirePositive({ pedalRatio, efficiency, barSpacing, floorTravel });
  if (!arePositive(p.frontStroke, p.rearStroke)) requirePositive({ frontStroke: p.frontStroke, rearStroke: p.rearStroke });
  if (!areFinite(barOffset, frontLead)) requireFinite({ barOffset, frontLead });
  if (!areNonNegative(stopAngle, freePlay)) requireNonNegative({ stopAngle, freePlay });
  if (efficiency > 1) throw new RangeError(`efficiency: expected at most 1, found ${efficiency}`);
  if (stopAngle > Math.PI / 2) throw new RangeError(`stopAngle: expected at most π/2, found ${stopAngle}`);
  const outside = Math.abs(barOffset) - barSpacing / 2;
  if (outside >= 0) return { impossible: 'pivot-outside-clevises', by: outside };

  const good = goodCircuit(p);
  const { area } = circleArea({ diameter: good.bore });
  const deadMax = p.dead === 'front' ? p.frontStroke : p.rearStroke;
  const toGood = barSpacing / 2 + (p.dead === 'front' ? barOffset : -barOffset);
  const share = 1 - toGood / barSpacing;
  const stop = barSpacing * Math.sin(stopAngle);
  const deadLead = p.dead === 'front' ? frontLead : -frontLead;
  if (Math.abs(deadLead) > stop) return { impossible: 'on-stop-at-rest', by: Math.abs(deadLead) - stop };
  const spread = stop - deadLead; // from rest to the stop that the dead side runs to
  const otherSpread = stop + deadLead;
  const firstPressure = strokeForPressure({ ...good, pressure: 0 }).stroke;
  const bothStopped = deadMax - spread; // good stroke with the bar on its stop and the dead master bottomed
  const last = Math.min(good.stroke, deadMax + otherSpread);

  const corner = (kind: FailureCorner['kind'], regime: FailureRegime, goodStroke: number, carried: number): FailureCorner => {
    const deadStroke = kind === 'rest' || kind === 'play-taken' ? 0 : Math.min(goodStroke + spread, deadMax);
    const pressure = goodStroke <= firstPressure ? 0 : pressureForStroke({ ...good, stroke: goodStroke }).pressure;
    return {
      kind,
      regime,
      controlForce: (area * pressure) / (pedalRatio * efficiency * carried),
      padTravel: kind === 'rest' ? 0 : pedalRatio * (freePlay + (deadStroke * toGood + goodStroke * (barSpacing - toGood)) / barSpacing),
      pressure,
      goodStroke,
      deadStroke,
    };
  };

  const path = [corner('rest', 'free-run', 0, 1)];
  if (freePlay > 0) path.push(corner('play-taken', 'free-run', 0, 1));
  path.push(corner(bothStopped >= 0 ? 'bar-stop' : 'dead-bottoms', 'free-run', 0, 1));
  if (firstPressure < Math.min(last, bothStopped)) path.push(corner('first-pressure', 'on-bar-stop', firstPressure, 1));
  if (bothStopped >= 0 && bothStopped <= last) {
    const squeezed = bothStopped > firstPressure && bothStopped < last;
    const then = bothStopped <= firstPressure ? 'free-run' : squeezed ? 'flat-spot' : 'on-bar-stop';
    path.push(corner('dead-bottoms', then, bothStopped, 1));
    if (squeezed) path.push(corner('flat-spot-ends', 'on-dead-master', bothStopped, share));
  }
  if (firstPressure >= bothStopped && firstPressure < last) {
    path.push(corner('first-pressure', 'on-dead-master', firstPressure, share));
  }
  const carriedLast = last <= bothStopped ? 1 : share;
  if (good.stroke <= deadMax + otherSpread) path.push(corner('good-bottoms', 'good-bottomed', last, carriedLast));
  else path.push(corner('opposite-stop', 'on-opposite-stop', last, carriedLast));
  return cutAtFloor(path, floorTravel);
}

export function isEvent(kind: FailureCorner['kind']): kind is FailureEventKind {
  return kind !== 'rest' && kind !== 'play-taken';
}

/** Straight line between two corners: `part` 0 is the first, 1 the second. */
export function between(a: FailureCorner, b: FailureCorner, part: number): Omit<FailureCorner, 'kind' | 'regime'> {
  const mix = (x: number, y: number): number => x + (y - x) * part;
  return {
    controlForce: mix(a.controlForce, b.controlForce),
    padTravel: mix(a.padTravel, b.padTravel),
    pressure: mix(a.pressure, b.pressure),
    goodStroke: mix(a.goodStroke, b.goodStroke),
    deadStroke: mix(a.deadStroke, b.deadStroke),
  };
}

function cutAtFloor(path: readonly FailureCorner[], floorTravel: number): readonly FailureCorner[] {
  const beyond = path.findIndex((c) => c.padTravel >= floorTravel);
  if (beyond < 1) return path;
  const a = path[beyond - 1] as FailureCorner;
  const b = path[beyond] as FailureCorner;
  const part = (floorTravel - a.padTravel) / (b.padTravel - a.padTravel);
  return [...path.slice(0, beyond), { kind: 'pad-on-floor', regime: 'on-floor', ...between(a, b, part) }];
}

function goodCircuit(p: FailedPedal): FluidCircuit & { readonly stroke: number } {
  return p.dead === 'rear'
    ? { bore: p.frontBore, stroke: p.frontStroke, takeUpVolume: p.frontTakeUpVolume, compliance: p.frontCompliance, portStroke: p.frontPortStroke }
    : { bore: p.rearBore, stroke: p.rearStroke, takeUpVolume: p.rearTakeUpVolume, compliance: p.rearCompliance, portStroke: p.rearPortStroke };
}
