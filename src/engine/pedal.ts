import { isImpossible } from './outcome.ts';
import type { Impossible } from './outcome.ts';
import { areFinite, arePositive, requireFinite, requireNonNegative, requirePositive } from './require.ts';
import { bisect, findRoot } from './roots.ts';

/**
 * Pedal ratio, pushrod angle and pushrod position at one angle of the pedal arm.
 *
 *   sin γ = (R_c cos φ − e)/ℓ
 *   x = R_c sin φ + ℓ cos γ
 *   i = R_p cos δ · cos γ/(R_c cos(φ − γ))
 *
 * padArm R_p (m, 0.25–0.38), pivot to pad; clevisArm R_c (m, 0.040–0.075), pivot to clevis pin; boreOffset e (m),
 * pivot to bore axis, square across; rodLength ℓ (m, 0.08–0.16), clevis pin to ball seat; armAngle φ (rad, within
 * ±35°), of the clevis arm from the perpendicular dropped from the pivot to the bore axis, positive as the pedal goes
 * down; footAngle δ (rad, 0–20°), foot force off the pad's tangent, held fixed to the arm.
 *
 * i is force on the piston, along the bore, per unit of foot force: from equal power, F cos δ R_p dφ = F_piston dx
 * with dx/dφ = R_c cos(φ − γ)/cos γ. γ is positive where the clevis stands farther from the pivot than the bore axis.
 * x runs along the bore from the foot of that perpendicular. With a balance bar, ℓ and e are those of its pivot.
 * Neglected: friction (see η), play in the pins, bending of the arm.
 *
 * Impossible: 'rod-too-short' by |R_c cos φ − e| − ℓ (m); 'rod-past-dead-point' by |φ − γ| − 90° (rad);
 * 'arm-beyond-35-degrees' by the angle over (rad); 'foot-pulls-off-arm' where |δ| ≥ 90°.
 * @throws RangeError if a length is not above 0 or an input is not finite
 * Source: derived from geometry and virtual work. Worked value: 310, 50, 49, 120 mm: −10, 0, +15° → 6.298, 6.200, 6.429.
 */
export interface PedalGeometry {
  readonly padArm: number;
  readonly clevisArm: number;
  readonly boreOffset: number;
  readonly rodLength: number;
  readonly footAngle: number;
}

export interface PedalState {
  readonly ratio: number;
  readonly rodAngle: number;
  readonly rodPosition: number;
}

const swingLimit = (35 * Math.PI) / 180;
const roundOff = 1e-12; // lets a typed 35° pass after its trip through the degree factor

export function pedalAt(p: PedalGeometry & { readonly armAngle: number }): PedalState | Impossible {
  const { padArm, clevisArm, boreOffset, rodLength, armAngle, footAngle } = p;
  if (!arePositive(padArm, clevisArm, rodLength)) requirePositive({ padArm, clevisArm, rodLength });
  if (!areFinite(boreOffset, armAngle, footAngle)) requireFinite({ boreOffset, armAngle, footAngle });
  const quarter = Math.PI / 2;
  if (Math.abs(footAngle) >= quarter) return { impossible: 'foot-pulls-off-arm', by: Math.abs(footAngle) - quarter };
  const over = Math.abs(armAngle) - swingLimit;
  if (over > roundOff) return { impossible: 'arm-beyond-35-degrees', by: over };

  const rise = clevisArm * Math.cos(armAngle) - boreOffset;
  if (Math.abs(rise) >= rodLength) return { impossible: 'rod-too-short', by: Math.abs(rise) - rodLength };
  const rodAngle = Math.asin(rise / rodLength);
  const lean = Math.abs(armAngle - rodAngle);
  // There the arm points along the rod: the pad moves and the piston does not.
  if (lean >= quarter - roundOff) return { impossible: 'rod-past-dead-point', by: Math.max(0, lean - quarter) };

  return {
    ratio: (padArm * Math.cos(footAngle) * Math.cos(rodAngle)) / (clevisArm * Math.cos(armAngle - rodAngle)),
    rodAngle,
    rodPosition: rodPosition(p, armAngle),
  };
}

/**
 * The same pedal over its whole swing.
 *
 * restAngle (rad): arm at rest. freePlay (m, 0.0005–0.0015): gap between rod and piston, closed before the piston
 * moves. stroke (m, 0.025–0.036): travel of the piston after that. So the rod advances freePlay + stroke, and
 *   x(φ_full) = x(φ_rest) + freePlay + stroke     padTravel = R_p (φ_full − φ_rest), along the pad's arc
 *
 * ratioAtRest, ratioMid (half the piston's stroke), ratioFull; ratioFall: how far the ratio sinks below ratioMid
 * anywhere in the second half of the stroke, as a fraction of it, 0 if it only rises; rodAngleMin and rodAngleMax with
 * their signs; rodAngleWorst, the larger of the two in size; freePlayAtPad (m); fullAngle (rad).
 *
 * Impossible: as pedalAt for the arm at rest, and 'stroke-out-of-reach' by the rod travel that is missing (m) where 35°
 * or the dead point comes first. (On the way, the dead point always comes before the rod is too short.)
 * @throws RangeError as pedalAt, or if stroke or freePlay is negative
 * Source: derived. Worked value: 310, 50, 49, 120 mm from −10°: 21.62 mm of rod brings the arm to +15°, the pad 135 mm.
 */
export function pedalStroke(p: PedalGeometry & {
  readonly restAngle: number;
  readonly stroke: number;
  readonly freePlay: number;
}):
  | {
      readonly ratioAtRest: number;
      readonly ratioMid: number;
      readonly ratioFull: number;
      readonly ratioFall: number;
      readonly rodAngleMin: number;
      readonly rodAngleMax: number;
      readonly rodAngleWorst: number;
      readonly fullAngle: number;
      readonly padTravel: number;
      readonly freePlayAtPad: number;
    }
  | Impossible {
  const { restAngle, stroke, freePlay } = p;
  const pedal: PedalGeometry = p;
  requireNonNegative({ stroke, freePlay });
  const rest = pedalAt({ ...p, armAngle: restAngle });
  if (isImpossible(rest)) return rest;
  const fullAngle = angleForAdvance({ pedal, restAngle, advance: freePlay + stroke });
  if (isImpossible(fullAngle)) return fullAngle;
  // Everything short of fullAngle has been passed on the way to it, so from here nothing can be impossible.
  const within = (advance: number): number => angleForAdvance({ pedal, restAngle, advance }) as number;
  const state = (armAngle: number): PedalState => pedalAt({ ...pedal, armAngle }) as PedalState;

  const freeAngle = within(freePlay);
  const midAngle = within(freePlay + stroke / 2);
  const ratioMid = state(midAngle).ratio;
  const ratioFull = state(fullAngle).ratio;
  const turning = findRoot((a) => ratioSlope({ pedal, armAngle: a, state: state(a) }), midAngle, fullAngle, 20);
  const lowest = Math.min(ratioMid, ratioFull, turning === undefined ? Infinity : state(turning).ratio);

  // γ is greatest where the arm is square to the bore and falls away on both sides.
  const ends = [rest.rodAngle, state(fullAngle).rodAngle];
  if (restAngle < 0 && fullAngle > 0) ends.push(state(0).rodAngle);
  const rodAngleMin = Math.min(...ends);
  const rodAngleMax = Math.max(...ends);
  return {
    ratioAtRest: rest.ratio,
    ratioMid,
    ratioFull,
    ratioFall: 1 - lowest / ratioMid,
    rodAngleMin,
    rodAngleMax,
    rodAngleWorst: Math.max(Math.abs(rodAngleMin), Math.abs(rodAngleMax)),
    fullAngle,
    padTravel: pedal.padArm * (fullAngle - restAngle),
    freePlayAtPad: pedal.padArm * (freeAngle - restAngle),
  };
}

/** How far the rod reaches forward of the pivot, at an angle that can be. */
function rodPosition({ clevisArm, boreOffset, rodLength }: PedalGeometry, armAngle: number): number {
  return clevisArm * Math.sin(armAngle) + rodLength * Math.cos(Math.asin((clevisArm * Math.cos(armAngle) - boreOffset) / rodLength));
}

/** The arm angle after the rod has advanced from rest; walks in steps of half a degree, then bisects the last one. */
function angleForAdvance({ pedal, restAngle, advance }: {
  readonly pedal: PedalGeometry;
  readonly restAngle: number;
  readonly advance: number;
}): number | Impossible {
  const at = (armAngle: number): PedalState | Impossible => pedalAt({ ...pedal, armAngle });
  if (advance === 0) return restAngle;
  const from = rodPosition(pedal, restAngle);
  const target = from + advance;
  let angle = restAngle;
  let reached = from;
  while (angle < swingLimit) {
    let next = Math.min(angle + Math.PI / 360, swingLimit);
    const blocked = isImpossible(at(next));
    if (blocked) next = bisect((a) => (isImpossible(at(a)) ? 1 : -1), angle, next, { tolerance: 1e-10 }) - 1e-10;
    const there = rodPosition(pedal, next);
    if (next > angle && there >= target) return bisect((a) => rodPosition(pedal, a) - target, angle, next);
    reached = Math.max(reached, there);
    if (blocked) break;
    angle = next;
  }
  return { impossible: 'stroke-out-of-reach', by: target - reached };
}

/** d(ln i)/dφ, whose zero is where the ratio turns. */
function ratioSlope({ pedal, armAngle, state }: {
  readonly pedal: PedalGeometry;
  readonly armAngle: number;
  readonly state: PedalState;
}): number {
  const { rodAngle } = state;
  const rodTurn = (-pedal.clevisArm * Math.sin(armAngle)) / (pedal.rodLength * Math.cos(rodAngle));
  return Math.tan(armAngle - rodAngle) * (1 - rodTurn) - Math.tan(rodAngle) * rodTurn;
}
