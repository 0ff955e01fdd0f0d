import { circleArea } from './circle.ts';
import type { Impossible } from './outcome.ts';
import { isImpossible } from './outcome.ts';
import { areFinite, areNonNegative, arePositive, requireFinite, requireNonNegative, requirePositive } from './require.ts';

/**
 * Friction that one drum shoe makes, per unit of force on its tip.
 *
 *   leading  S = μ h/(a − μ c)      trailing  S = μ h/(a + μ c)      torque = S × tip force × drum radius
 *
 * Free body of the shoe about the end it bears on: tip force F at arm h, lining force N at arm a, friction μ N at arm c.
 * The drum drags a leading shoe into itself, F h + μ N c = N a, and pushes a trailing one away, F h = N a + μ N c.
 *
 * applyArm h (m, 0.14–0.24); normalArm a (m, 0.07–0.12); frictionArm c (m, 0.08–0.14); friction μ (0.30–0.45).
 * N is pressure × area added up round the lining, so that the torque is μ N times the radius whatever the pressure
 * pattern. pinnedShoe.ts has a and c from the lining's angles; by tape, a is the anchor to the drum's center, up to
 * 15 % too long. normalPerForce N/F; lockFriction a/c: there a leading shoe needs no push, and locks.
 *
 * Neglected: bending of shoe and drum, friction in the anchor, and that μ itself changes with heat. Not for μ above
 * 0.8 a/c: so near to locking, a guess of μ is no guess of the brake.
 * Impossible 'self-locks', by how much μ is at or past a/c (leading only).
 * @throws RangeError if a size is not above 0
 * Source: derived. Worked value: h 0.200, a 0.100, c 0.100 m, μ 0.38 → 1.226 leading, 0.551 trailing.
 */
export interface ShoeArms {
  readonly applyArm: number;
  readonly normalArm: number;
  readonly frictionArm: number;
}

export function shoeFactor(p: ShoeArms & { readonly friction: number; readonly sense: 'leading' | 'trailing' }):
  | { readonly factor: number; readonly normalPerForce: number; readonly lockFriction: number }
  | Impossible {
  const { applyArm, normalArm, frictionArm, friction, sense } = p;
  if (!arePositive(applyArm, normalArm, frictionArm, friction)) requirePositive({ applyArm, normalArm, frictionArm, friction });
  const lockFriction = normalArm / frictionArm;
  if (sense === 'leading' && friction >= lockFriction) return { impossible: 'self-locks', by: friction - lockFriction };
  const help = (sense === 'leading' ? friction : -friction) * frictionArm;
  const normalPerForce = applyArm / (normalArm - help);
  return { factor: friction * normalPerForce, normalPerForce, lockFriction };
}

/**
 * Brake factor: friction of both shoes at the drum's radius, per unit of force from one wheel cylinder piston.
 *
 *   leading-trailing  BF = S_L + S_T = 2 μ h a/(a² − μ²c²)
 *   duo-servo         BF = S_L [1 + (a + μ c)/(a − μ c)] = 2 μ h a/(a − μ c)²
 *
 * Duo-servo: the first shoe is held by a floating link, the link pushes the second, the second bears on the anchor pin,
 * and both lead. Moments of the first shoe about its *tip* give the link's push, P h = N (a + μ c). Then N from
 * shoeFactor makes P/F = (a + μ c)/(a − μ c). The piston on the second shoe pushes at the anchor and helps with nothing.
 * Without friction P = F, and both types come down to 2 μ h/a.
 *
 * sensitivity = d ln BF/d ln μ: percent of torque for each percent of μ (a disc has 1). (a² + μ²c²)/(a² − μ²c²) leading-
 * trailing, (a + μ c)/(a − μ c) duo-servo. firstFactor, secondFactor: the leading or primary shoe, and the other.
 *
 * Neglected: as shoeFactor; for the duo-servo also shoe ends that are not equally far from the drum's center and a lining
 * off the middle of its shoe (duoServo.ts has both), and that the link cannot push
 * along the shoe, so that the primary creeps round until the drum's push lies along the link: with a lining
 * of ±55° BF is then lower by 7 % at μ 0.30, 12 % at 0.38 and 18 % at 0.45. In reverse the shoes change roles; the factor
 * stays.
 * Impossible, throws: as shoeFactor.
 * Source: derived. Worked value: arms above, μ 0.30/0.38/0.45 → 1.32/1.78/2.26 and 2.45/3.95/5.95; at 0.38 the leading
 * or secondary shoe carries 69 %, and the sensitivity is 1.34 and 2.23.
 */
export type DrumType = 'leading-trailing' | 'duo-servo';

export function brakeFactor({ type, ...shoe }: ShoeArms & { readonly type: DrumType; readonly friction: number }):
  | {
      readonly brakeFactor: number;
      readonly firstFactor: number;
      readonly secondFactor: number;
      readonly sensitivity: number;
      readonly lockFriction: number;
    }
  | Impossible {
  const first = shoeFactor({ ...shoe, sense: 'leading' });
  if (isImpossible(first)) return first;
  const servo = (first.lockFriction + shoe.friction) / (first.lockFriction - shoe.friction);
  const trailing = first.factor / servo;
  const secondFactor = type === 'duo-servo' ? first.factor * servo : trailing;
  return {
    brakeFactor: first.factor + secondFactor,
    firstFactor: first.factor,
    secondFactor,
    sensitivity: type === 'duo-servo' ? servo : (servo + 1 / servo) / 2,
    lockFriction: first.lockFriction,
  };
}

/**
 * Brake force of an axle with one drum per wheel.
 *
 *   F_tip = (p − p_po) A_wc      T = F_tip BF r η      F = 2 T/R
 *
 * cylinderDiameter (m, 0.016–0.025): of ONE wheel cylinder piston; its twin pushes the other shoe with the same force,
 * and BF counts both shoes. pushOut p_po (Pa, 3e5–7e5): what the shoe springs take. drumRadius r (m, 0.11–0.14);
 * efficiency η (0.95–0.98); loadedRadius R (m); pressure p (Pa). gain: axle force per Pa above push-out, both wheels.
 *
 * Neglected: as brakeFactor, a drum grown hot or out of round, wet linings.
 * Impossible as brakeFactor. @throws RangeError as brakeFactor, if a size is not above 0 or η is above 1
 * Source: statics. Worked value: arms above, μ 0.38, 19.05 mm, push-out 5 bar, r 0.115, η 0.96, R 0.300 m, 40 bar → 1304 N.
 */
export function drumAxle(p: ShoeArms & {
  readonly type: DrumType;
  readonly friction: number;
  readonly cylinderDiameter: number;
  readonly drumRadius: number;
  readonly efficiency: number;
  readonly loadedRadius: number;
  readonly pushOut: number;
  readonly pressure: number;
}):
  | { readonly brakeFactor: number; readonly tipForce: number; readonly torquePerWheel: number; readonly axleForce: number; readonly gain: number }
  | Impossible {
  const shoes = brakeFactor(p);
  return isImpossible(shoes) ? shoes : { brakeFactor: shoes.brakeFactor, ...drumForce({ ...p, brakeFactor: shoes.brakeFactor }) };
}

/** drumAxle for a brake factor from elsewhere, as pinnedShoe.ts or duoServo.ts. Symbols, neglected, throws: as drumAxle. */
export function drumForce(p: {
  readonly brakeFactor: number;
  readonly cylinderDiameter: number;
  readonly drumRadius: number;
  readonly efficiency: number;
  readonly loadedRadius: number;
  readonly pushOut: number;
  readonly pressure: number;
}): { readonly tipForce: number; readonly torquePerWheel: number; readonly axleForce: number; readonly gain: number } {
  const { drumRadius, efficiency, loadedRadius, pushOut, pressure } = p;
  if (!arePositive(p.brakeFactor, drumRadius, efficiency, loadedRadius)) requirePositive({ brakeFactor: p.brakeFactor, drumRadius, efficiency, loadedRadius });
  if (!areNonNegative(pushOut)) requireNonNegative({ pushOut });
  if (!areFinite(pressure)) requireFinite({ pressure });
  if (efficiency > 1) throw new RangeError(`efficiency: expected at most 1, found ${efficiency}`);
  const { area } = circleArea({ diameter: p.cylinderDiameter });
  const working = Math.max(0, pressure - pushOut);
  const torquePerPascal = area * p.brakeFactor * drumRadius * efficiency;
  const gain = (2 * torquePerPascal) / loadedRadius;
  return { tipForce: working * area, torquePerWheel: working * torquePerPascal, axleForce: working * gain, gain };
}
