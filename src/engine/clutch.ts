import { circleArea } from './circle.ts';
import type { Impossible } from './outcome.ts';
import { isImpossible } from './outcome.ts';
import { areNonNegative, arePositive, requireNonNegative, requirePositive } from './require.ts';

/**
 * What a clutch pedal at one travel does to the release bearing, and what the bearing asks of the foot.
 *
 *   x_m = (s − s_0)/i      V = A_m (x_m − x_port)      x_s = η_v V/A_s      x_b = (x_s − g)/f
 *   p = F_b/(f A_s)        F = p A_m/(i η)
 *
 * padTravel s (m) from rest; freePlay s_0 (m at the pad, 0.005–0.015); pedalRatio i (5–6.5); masterBore (m); portStroke
 * x_port (m, 0–0.0015) of the master before it holds; volumetricEfficiency η_v (0.9–0.97), what hose and seals let
 * through; slaveOuter, slaveInner (m): bore of a plain slave, with 0 as inner, or the two diameters of a ring-shaped
 * (concentric) one, A_s = π (D² − d²)/4; forkRatio f (1.3–2.2; 1 concentric), slave travel over bearing travel;
 * forkPlay g (m at the slave's rod, 0.001–0.003 outside, 0 constant contact); bearingForce F_b (N, 800–2500);
 * linkageEfficiency η (0.80–0.90).
 *
 * bearingTravel x_b counts from where the bearing touches; 0 until then. volume V (m³) displaced by the master.
 * totalRatio i f A_s/A_m. Force × travel is kept: F (s − s_touch) η η_v = F_b x_b. A bigger master buys travel with effort.
 *
 * Neglected: change of i through the swing, bending of fork and firewall, return springs, air, the diaphragm's hump.
 * Impossible 'inner-not-inside-outer', by how much (m).
 * @throws RangeError if a size is not above 0, another value is negative or an efficiency is above 1
 * Source: derived; no published chain was found. Worked value: s 130, s_0 12 mm, i 6, 19.05 on 20.6 mm, f 1.5, η_v 0.93,
 * η 0.85, 1500 N → x_s 15.6, x_b 10.4 mm, 168 N at the pad.
 */
export interface ClutchLine {
  readonly pedalRatio: number;
  readonly freePlay: number;
  readonly masterBore: number;
  readonly portStroke: number;
  readonly volumetricEfficiency: number;
  readonly slaveOuter: number;
  readonly slaveInner: number;
  readonly forkRatio: number;
  readonly forkPlay: number;
}

export function clutchAt({ padTravel, bearingForce, linkageEfficiency, ...line }: ClutchLine & {
  readonly padTravel: number;
  readonly bearingForce: number;
  readonly linkageEfficiency: number;
}):
  | {
      readonly masterStroke: number;
      readonly volume: number;
      readonly slaveStroke: number;
      readonly bearingTravel: number;
      readonly pressure: number;
      readonly controlForce: number;
      readonly totalRatio: number;
    }
  | Impossible {
  if (!areNonNegative(padTravel, bearingForce)) requireNonNegative({ padTravel, bearingForce });
  if (!arePositive(linkageEfficiency)) requirePositive({ linkageEfficiency });
  if (linkageEfficiency > 1) throw new RangeError(`linkageEfficiency: expected at most 1, found ${linkageEfficiency}`);
  const areas = pistons(line);
  if (isImpossible(areas)) return areas;
  const { master, slave } = areas;
  const masterStroke = Math.max(0, padTravel - line.freePlay) / line.pedalRatio;
  const volume = master * Math.max(0, masterStroke - line.portStroke);
  const slaveStroke = (line.volumetricEfficiency * volume) / slave;
  const pressure = bearingForce / (line.forkRatio * slave);
  return {
    masterStroke,
    volume,
    slaveStroke,
    bearingTravel: Math.max(0, slaveStroke - line.forkPlay) / line.forkRatio,
    pressure,
    controlForce: (pressure * master) / (line.pedalRatio * linkageEfficiency),
    totalRatio: (line.pedalRatio * line.forkRatio * slave) / master,
  };
}

/**
 * The chain read backward: the pad travel, from rest, at which the bearing has gone so far.
 *
 *   s(x_b) = s_0 + i [x_port + A_s (f x_b + g)/(A_m η_v)]
 *
 * Symbols, neglected, Impossible and throws as clutchAt; bearingTravel x_b (m, 0 or more: 0 is where the bearing touches).
 * Knows no floor and no end of a bore: see clutchWindow. Source: derived. Worked value: the line above, 9 mm → 113.8 mm.
 */
export function clutchPadTravel({ bearingTravel, ...line }: ClutchLine & { readonly bearingTravel: number }): { readonly padTravel: number } | Impossible {
  if (!areNonNegative(bearingTravel)) requireNonNegative({ bearingTravel });
  const areas = pistons(line);
  if (isImpossible(areas)) return areas;
  const slaveStroke = line.forkRatio * bearingTravel + line.forkPlay;
  return { padTravel: line.freePlay + line.pedalRatio * (line.portStroke + (areas.slave * slaveStroke) / (areas.master * line.volumetricEfficiency)) };
}

/**
 * The stretch of pad travel in which the clutch is free and its diaphragm not overbent, and where the pedal stop belongs.
 *
 *   window from s(needed) to the least of s(allowed), s_0 + i x_m,max and the floor
 *   stop at s((1 + reserve) × needed), or at the window's end if that comes first
 *
 * neededTravel, allowedTravel (m): the clutch maker's release travel and its maximum (7–10 mm needed); reserve (0.10–0.15);
 * masterTravel x_m,max (m): all the stroke the master has; padToFloor (m): pad to carpet at rest.
 *
 * limitedBy: what ends the window. Only where that is 'diaphragm' can the foot go too far, and then stopNeeded is true:
 * without a stop the strong leg is the stop. stopTravel (m), and bearingTravelAtStop (m).
 *
 * Neglected: as clutchAt; wear of the lining moves the release point; hot fluid with air in it moves it toward the floor.
 * Impossible as clutchAt; 'allowed-below-needed', by bearing travel (m); 'master-too-short' and 'releases-under-floor',
 * by pad travel (m): nothing releases the clutch then.
 * @throws RangeError as clutchAt, or if a travel here is not above 0 or reserve is negative
 * Source: derived. Worked value: the line above, 9 mm needed, 10.5 allowed, reserve 0.12, 30 mm, 150 mm → window 113.8
 * to 130.8 mm, stop at 126.1 mm.
 */
export function clutchWindow({ neededTravel, allowedTravel, reserve, masterTravel, padToFloor, ...line }: ClutchLine & {
  readonly neededTravel: number;
  readonly allowedTravel: number;
  readonly reserve: number;
  readonly masterTravel: number;
  readonly padToFloor: number;
}):
  | {
      readonly from: number;
      readonly to: number;
      readonly limitedBy: 'diaphragm' | 'master' | 'floor';
      readonly stopTravel: number;
      readonly bearingTravelAtStop: number;
      readonly stopNeeded: boolean;
    }
  | Impossible {
  requirePositive({ neededTravel, allowedTravel, masterTravel, padToFloor });
  requireNonNegative({ reserve });
  if (allowedTravel < neededTravel) return { impossible: 'allowed-below-needed', by: neededTravel - allowedTravel };
  const touch = clutchPadTravel({ ...line, bearingTravel: 0 });
  const needed = clutchPadTravel({ ...line, bearingTravel: neededTravel });
  if (isImpossible(touch)) return touch;
  if (isImpossible(needed)) return needed;
  const perBearing = (needed.padTravel - touch.padTravel) / neededTravel;
  const padFor = (bearing: number): number => touch.padTravel + perBearing * bearing;
  const from = padFor(neededTravel);
  const diaphragm = padFor(allowedTravel);
  const master = line.freePlay + line.pedalRatio * masterTravel;
  const mechanical = Math.min(master, padToFloor);
  if (mechanical < from) return { impossible: master < padToFloor ? 'master-too-short' : 'releases-under-floor', by: from - mechanical };
  const to = Math.min(diaphragm, mechanical);
  const stopTravel = Math.min(padFor((1 + reserve) * neededTravel), to);
  return {
    from,
    to,
    limitedBy: diaphragm < mechanical ? 'diaphragm' : master < padToFloor ? 'master' : 'floor',
    stopTravel,
    bearingTravelAtStop: neededTravel + (stopTravel - from) / perBearing,
    stopNeeded: diaphragm < mechanical,
  };
}

function pistons(line: ClutchLine): { readonly master: number; readonly slave: number } | Impossible {
  const { pedalRatio, freePlay, portStroke, volumetricEfficiency, slaveOuter, slaveInner, forkRatio, forkPlay } = line;
  if (!arePositive(pedalRatio, volumetricEfficiency, forkRatio, slaveOuter)) requirePositive({ pedalRatio, volumetricEfficiency, forkRatio, slaveOuter });
  if (!areNonNegative(freePlay, portStroke, slaveInner, forkPlay)) requireNonNegative({ freePlay, portStroke, slaveInner, forkPlay });
  if (volumetricEfficiency > 1) throw new RangeError(`volumetricEfficiency: expected at most 1, found ${volumetricEfficiency}`);
  if (slaveInner >= slaveOuter) return { impossible: 'inner-not-inside-outer', by: slaveInner - slaveOuter };
  const hole = slaveInner > 0 ? circleArea({ diameter: slaveInner }).area : 0;
  return { master: circleArea({ diameter: line.masterBore }).area, slave: circleArea({ diameter: slaveOuter }).area - hole };
}
