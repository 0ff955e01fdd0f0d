import type { Impossible } from './outcome.ts';
import { requireFinite, requireNonNegative, requirePositive } from './require.ts';

/**
 * Share of the pedal's push that a balance bar sends to each master cylinder, and how it changes with tilt.
 *
 * Seen from above, masters at the top. The pedal pushes the bar forward at its bearing O; each rod pushes back at
 * its clevis pin. t is sideways toward the front circuit's clevis, a and b are the arms on the bar.
 *
 *        F_r ↓                  ↓ F_f            u > 0: O stands nearer the front clevis
 *       rear o------------------o front  ---     d > 0: the line of the pins lies ahead of O
 *            |<----- b ---->|<-a->|       | d    α > 0: the front clevis is ahead
 *                          O             ---     a = L/2 − u,  b = L/2 + u
 *                          ↑ F
 *
 * Turn the bar by α: pins at t_f = a cos α − d sin α and −t_r = −(b cos α + d sin α) from O. Rods that stay parallel
 * have moments F_f t_f = F_r t_r about O, so
 *
 *   s = F_f/(F_f + F_r) = b/L + (d/L) tan α = 1/2 + u/L + (d/L) tan α        sin α = sin α_0 + (x_f − x_r)/L
 *
 * Moving the pivot toward a clevis raises that clevis' share. With d = 0 tilt changes nothing. With d > 0 the side
 * that has run ahead gets more, which drives it further ahead; with d < 0 tilt corrects itself.
 *
 * Friction: the bearing carries all of F = F_f + F_r and resists turning with a torque of up to μ F r, either way:
 * F_f t_f − F_r t_r = ± μ F r, so s lies within ± μ r/(L cos α) of the frictionless share. Which end it takes depends
 * on the way the bar last turned. Clevis pins add the same with their own radius; they are not counted here.
 *
 * Rods that splay: a pin outboard of its bore by t − S/2 makes sin ε = (t − S/2)/ℓ (+ outboard). The rod then also
 * pushes the pin sideways, and that force has a lever when the pin is ahead of or behind O; shareWithSplay is the
 * share of the push along the bores with it. Two ways to build the adjuster differ here. clevisesStay false: O stands
 * midway between the bores and the bar carries both clevises sideways by u. true: the clevises keep station in front
 * of their bores and the bearing moves in its tube, so u makes no splay.
 *
 * barSpacing L (m, pin to pin, 0.055–0.070); barOffset u (m); frontStroke, rearStroke x (m, from where restTilt was
 * read); restTilt α_0 (rad, 0 if left out); pinOffset d (m); bearingRadius r (m, about 0.0095); bearingFriction μ (0.05
 * greased – 0.2 dry, common practice, no source); stopAngle (rad, above 0); threadPitch (m per turn); rodLength ℓ
 * (m, pin to ball seat); masterSpacing S (m, bore axis to bore axis); clevisesStay (false if left out).
 *
 * tiltShareOfStop: |α| over the stop angle; above 1 these strokes cannot both happen, the bar stands on its stop.
 * sideForceFraction: the larger side force of the two rods, as a part of that rod's force (sin ε).
 * frontShareLow, frontShareHigh: about the tilted share, held within 0–1.
 *
 * Neglected: bending of the bar, play in bearing and clevises, angles of the rods seen from the side, the sideways
 * shift of the bearing in its tube. A bar that rubs the tube's ends obeys nothing on this page.
 *
 * Impossible 'pivot-outside-clevises', by how far; 'strokes-exceed-bar', by the excess of stroke difference over L;
 * 'pivot-outside-rods' where tilt and d carry a rod's line across O; 'rod-cannot-reach', by how far.
 * @throws RangeError if a length that must be above 0 is not, friction, radius, pitch or stroke is negative
 * Source: derived from statics; no published worked answer was found.
 * Worked value: L 63.5, u 7.62, x 22.1 and 9.9, d 0 → s 0.620, α 11.1°; μ 0.15, r 9.5 → ± 0.023 there, ± 0.022 square.
 */
export interface BalanceBar {
  readonly barSpacing: number;
  readonly barOffset: number;
  readonly frontStroke: number;
  readonly rearStroke: number;
  readonly restTilt?: number;
  readonly pinOffset: number;
  readonly bearingRadius: number;
  readonly bearingFriction: number;
  readonly stopAngle: number;
  readonly threadPitch: number;
  readonly rodLength: number;
  readonly masterSpacing: number;
  readonly clevisesStay?: boolean;
}

export interface BalanceBarResult {
  readonly frontShare: number;
  readonly frontShareLow: number;
  readonly frontShareHigh: number;
  readonly frictionBand: number;
  readonly sharePerTurn: number;
  readonly tilt: number;
  readonly tiltShareOfStop: number;
  readonly shareTilted: number;
  readonly shareWithSplay: number;
  readonly frontSplay: number;
  readonly rearSplay: number;
  readonly sideForceFraction: number;
}

export function balanceBar(p: BalanceBar): BalanceBarResult | Impossible {
  const { barSpacing, barOffset, pinOffset, rodLength, masterSpacing, restTilt = 0 } = p;
  requirePositive({ barSpacing, stopAngle: p.stopAngle, rodLength, masterSpacing });
  requireNonNegative({ bearingRadius: p.bearingRadius, bearingFriction: p.bearingFriction, threadPitch: p.threadPitch });
  requireNonNegative({ frontStroke: p.frontStroke, rearStroke: p.rearStroke });
  requireFinite({ barOffset, pinOffset, restTilt });
  const frontArm = barSpacing / 2 - barOffset;
  const rearArm = barSpacing / 2 + barOffset;
  if (frontArm <= 0 || rearArm <= 0) {
    return { impossible: 'pivot-outside-clevises', by: Math.abs(barOffset) - barSpacing / 2 };
  }
  const ahead = barSpacing * Math.sin(restTilt) + p.frontStroke - p.rearStroke;
  if (Math.abs(ahead) >= barSpacing) return { impossible: 'strokes-exceed-bar', by: Math.abs(ahead) - barSpacing };
  const sin = ahead / barSpacing;
  const cos = Math.sqrt(1 - sin ** 2);
  const tilt = Math.asin(sin);

  // Pins from the bearing: sideways toward their own master, and forward.
  const frontOut = frontArm * cos - pinOffset * sin;
  const rearOut = rearArm * cos + pinOffset * sin;
  if (frontOut <= 0 || rearOut <= 0) return { impossible: 'pivot-outside-rods', by: -Math.min(frontOut, rearOut) };
  const frontAhead = frontArm * sin + pinOffset * cos;
  const rearAhead = -rearArm * sin + pinOffset * cos;

  const pivotShift = p.clevisesStay === true ? barOffset : 0;
  const frontRun = frontOut + pivotShift - masterSpacing / 2;
  const rearRun = rearOut - pivotShift - masterSpacing / 2;
  const worstRun = Math.max(Math.abs(frontRun), Math.abs(rearRun));
  if (worstRun >= rodLength) return { impossible: 'rod-cannot-reach', by: worstRun - rodLength };
  const frontSplay = Math.asin(frontRun / rodLength);
  const rearSplay = Math.asin(rearRun / rodLength);

  const shareTilted = rearOut / (frontOut + rearOut);
  // A pin that is ahead of the bearing and pushed outboard has its lever lengthened by that side push.
  const frontLever = frontOut + frontAhead * Math.tan(frontSplay);
  const rearLever = rearOut + rearAhead * Math.tan(rearSplay);
  const frictionBand = (p.bearingFriction * p.bearingRadius) / (barSpacing * cos);
  return {
    frontShare: rearArm / barSpacing,
    frontShareLow: Math.max(0, shareTilted - frictionBand),
    frontShareHigh: Math.min(1, shareTilted + frictionBand),
    frictionBand,
    sharePerTurn: p.threadPitch / barSpacing,
    tilt,
    tiltShareOfStop: Math.abs(tilt) / p.stopAngle,
    shareTilted,
    shareWithSplay: rearLever / (frontLever + rearLever),
    frontSplay,
    rearSplay,
    sideForceFraction: worstRun / rodLength,
  };
}
