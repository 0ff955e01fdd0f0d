import type { Point } from './capsule.ts';
import type { Impossible } from './outcome.ts';
import { isImpossible } from './outcome.ts';
import { areFinite, requireFinite } from './require.ts';

/**
 * What a point rides with.
 *
 * 'floor' is its own answer because the two kinds of drop differ just there. 'channeled': the floor is cut out and
 * set D higher in the body, so it keeps its height over the frame. 'stock-floor': the floor stays in the body and
 * comes down with it, and everything under it has to make room.
 */
export type DropType = 'channeled' | 'stock-floor';
export type Attached = 'body' | 'floor' | 'frame' | 'axle-front' | 'axle-rear';

export interface BodyPoint extends Point {
  readonly attached: Attached;
}

/**
 * Where a point of the truck ends up, in the axes of the FRAME, after a body drop and a lower suspension.
 *
 * Axes x forward, y left, z up, origin on the frame and square to the level ground before the work. The frame is
 * what a tape can be hooked on while the body moves, so frame points keep their numbers.
 *
 *   body    x' = x_F + (x − x_F) cos θ − (z − z_0) sin θ
 *           z' = z_0 − D_F + (x − x_F) sin θ + (z − z_0) cos θ          sin θ = (D_R − D_F)/(x_F − x_R)
 *   floor   as the frame when channeled, as the body with a stock floor
 *   axle    z' = z + S_f or z + S_r: the frame came down over it
 *
 * The body is rigid, so unequal drops turn it. D_F and D_R are measured at two points of the body, (x_F, z_0) and
 * (x_R, z_0), for instance two cab mounts. The front one keeps its x. The turn is written exactly: it costs nothing,
 * keeps every distance inside the body, and shows what a formula for z alone leaves out: points high over the mounts
 * also move fore and aft by (z − z_0) sin θ, 4 mm at 0.6 m for 10 mm over 1.5 m.
 * θ is positive NOSE UP (tail dropped more), the opposite of the ISO 8855 sense.
 *
 * heightChange: of the point over the ground, negative where it comes down. The frame's own turn over the ground comes
 * from S_f and S_r at x_f and x_r, read at z = 0: sin φ = (S_r − S_f)/(x_f − x_r), φ positive nose up.
 *
 * D, S (m; negative raises; D 0.05–0.10); zMount z_0 (m, 0 if left out). xFront ≠ xRear, xFrontAxle ≠ xRearAxle.
 * dx, dy, dz: moved by. dy is always 0: a side view, no roll.
 *
 * Neglected: bending of cab and frame; the arc of the axles (fore-and-aft shift under 1 % of S on a long link, more
 * on a short one); tire size; movement of the rubber mounts (add ± 10 mm to every gap).
 *
 * Impossible 'drop-exceeds-span', by how much the difference of drops is above the distance between its points.
 * @throws RangeError if a number is not finite or the two stations of a pair are at the same x
 * Source: plane rigid motion. Worked value: D 60 front, 70 rear, 1500 apart → θ 0.382°.
 */
export interface DropMotion {
  readonly type: DropType;
  readonly dropFront: number;
  readonly dropRear: number;
  readonly xFront: number;
  readonly xRear: number;
  readonly zMount?: number;
  readonly suspensionFront: number;
  readonly suspensionRear: number;
  readonly xFrontAxle: number;
  readonly xRearAxle: number;
}

export interface MovedPoint extends Point {
  readonly dx: number;
  readonly dy: number;
  readonly dz: number;
  readonly heightChange: number;
}

export function movePoint(p: DropMotion & { readonly point: BodyPoint }): MovedPoint | Impossible {
  const { point, zMount = 0 } = p;
  if (!areFinite(point.x, point.y, point.z, zMount)) requireFinite({ x: point.x, y: point.y, z: point.z, zMount });
  const turns = dropPitch(p);
  if (isImpossible(turns)) return turns;
  const moved = inFrameAxes({ ...p, point, zMount, pitch: turns.pitch });
  const onAxle = point.attached === 'axle-front' || point.attached === 'axle-rear';
  const sin = Math.sin(turns.framePitch);
  const cos = Math.cos(turns.framePitch);
  const over = (moved.x - p.xFrontAxle) * sin + moved.z * cos - p.suspensionFront;
  return {
    ...moved,
    dx: moved.x - point.x,
    dy: 0,
    dz: moved.z - point.z,
    heightChange: onAxle ? 0 : over - point.z,
  };
}

function inFrameAxes(p: DropMotion & { readonly point: BodyPoint; readonly zMount: number; readonly pitch: number }): Point {
  const { point, zMount, pitch } = p;
  const { x, y, z } = point;
  if (point.attached === 'axle-front') return { x, y, z: z + p.suspensionFront };
  if (point.attached === 'axle-rear') return { x, y, z: z + p.suspensionRear };
  if (point.attached === 'frame' || (point.attached === 'floor' && p.type === 'channeled')) return { x, y, z };
  const along = x - p.xFront;
  const up = z - zMount;
  return {
    x: p.xFront + along * Math.cos(pitch) - up * Math.sin(pitch),
    y,
    z: zMount - p.dropFront + along * Math.sin(pitch) + up * Math.cos(pitch),
  };
}

/**
 * How far the body turns over the frame, and the frame over the ground (rad, + nose up). Everything on the body turns
 * with it: an angle read on the column or a firewall bracket changes by `pitch`. See movePoint.
 */
export function dropPitch(p: DropMotion): { readonly pitch: number; readonly framePitch: number } | Impossible {
  const { dropFront, dropRear, xFront, xRear, suspensionFront, suspensionRear, xFrontAxle, xRearAxle } = p;
  if (!(areFinite(dropFront, dropRear, xFront, xRear) && areFinite(suspensionFront, suspensionRear, xFrontAxle, xRearAxle))) requireFinite({ dropFront, dropRear, xFront, xRear, suspensionFront, suspensionRear, xFrontAxle, xRearAxle });
  if (xFront === xRear) throw new RangeError(`xRear: expected another x than xFront, found ${xRear} for both`);
  if (xFrontAxle === xRearAxle) throw new RangeError(`xRearAxle: expected another x than xFrontAxle, found ${xRearAxle} for both`);
  const sinBody = (dropRear - dropFront) / (xFront - xRear);
  const sinFrame = (suspensionRear - suspensionFront) / (xFrontAxle - xRearAxle);
  if (Math.abs(sinBody) > 1) return { impossible: 'drop-exceeds-span', by: Math.abs(dropRear - dropFront) - Math.abs(xFront - xRear) };
  if (Math.abs(sinFrame) > 1) {
    return { impossible: 'drop-exceeds-span', by: Math.abs(suspensionRear - suspensionFront) - Math.abs(xFrontAxle - xRearAxle) };
  }
  return { pitch: Math.asin(sinBody), framePitch: Math.asin(sinFrame) };
}

/**
 * The distance between two points before and after, for anything that spans them: a shaft, a hose, a cable, a gap.
 *
 *   before = |b − a|     after = |b' − a'|     change = after − before
 *
 * dx, dy, dz: by how much the vector from a to b changes (dz −0.075: b comes down 75 mm over a). A part of fixed
 * length L_0 has slack L_0 − distance. Two points that ride together keep their distance.
 *
 * Inputs, neglected, impossible and throws: as movePoint. Source: geometry.
 * Worked value: body point 0.3 m ahead of and 0.4 m above a frame point, D 0.075 → 0.5000 before, 0.4423 m after.
 */
export function pairChange(p: DropMotion & { readonly a: BodyPoint; readonly b: BodyPoint }):
  | {
      readonly before: number;
      readonly after: number;
      readonly change: number;
      readonly dx: number;
      readonly dy: number;
      readonly dz: number;
      readonly pitch: number;
    }
  | Impossible {
  const turns = dropPitch(p);
  if (isImpossible(turns)) return turns;
  const a = movePoint({ ...p, point: p.a });
  const b = movePoint({ ...p, point: p.b });
  if (isImpossible(a)) return a;
  if (isImpossible(b)) return b;
  const before = Math.hypot(p.b.x - p.a.x, p.b.y - p.a.y, p.b.z - p.a.z);
  const after = Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
  return { before, after, change: after - before, dx: b.dx - a.dx, dy: b.dy - a.dy, dz: b.dz - a.dz, pitch: turns.pitch };
}

/**
 * What each kind of part rides with. The list is of kinds, not of any one truck: look at yours and change what differs
 * (a core support that was raised again, a bed that was left up, a seat on its own risers).
 */
export const rides = Object.freeze({
  firewall: 'body',
  pedals: 'body',
  'master cylinders': 'body',
  reservoirs: 'body',
  'steering column and rim': 'body',
  dash: 'body',
  roof: 'body',
  cowl: 'body',
  hood: 'body',
  'core support': 'body',
  'dropped bed': 'body',
  'filler neck': 'body',
  'wiring bulkhead': 'body',
  'parking lever under the dash': 'body',
  floor: 'floor',
  seat: 'floor',
  tunnel: 'floor',
  'parking lever on the floor': 'floor',
  engine: 'frame',
  gearbox: 'frame',
  'front of the driveshaft': 'frame',
  'clutch slave cylinder': 'frame',
  'steering box': 'frame',
  exhaust: 'frame',
  'fuel tank': 'frame',
  'lines on the frame': 'frame',
  'cross-members': 'frame',
  'front calipers': 'axle-front',
  'rear calipers': 'axle-rear',
  'parking cable ends at the axle': 'axle-rear',
  'rear of the driveshaft': 'axle-rear',
} as const satisfies Record<string, Attached>);

export type PartKind = keyof typeof rides;

/**
 * Whether a kind of part comes down over the frame with the body. `attached` is what movePoint wants to know.
 *
 * Source: the definition of the two kinds of drop, and common practice for where parts sit.
 * Worked value: floor → rides with the frame when channeled, with the body in a stock-floor drop.
 */
export function ridesWith({ part, type }: { readonly part: PartKind; readonly type: DropType }): {
  readonly attached: Attached;
  readonly comesDown: boolean;
} {
  const attached: Attached = rides[part];
  return { attached, comesDown: attached === 'body' || (attached === 'floor' && type === 'stock-floor') };
}

const watched = Object.freeze({
  padOverFloor: ['pedals', 'floor'],
  hipOverPad: ['seat', 'pedals'],
  rimOverSeat: ['steering column and rim', 'seat'],
  dashOverFloor: ['dash', 'floor'],
  roofOverSeat: ['roof', 'seat'],
  seatOverFloor: ['seat', 'floor'],
  floorOverFrame: ['floor', 'cross-members'],
  tunnelOverGearbox: ['tunnel', 'gearbox'],
  hoodOverEngine: ['hood', 'engine'],
  mastersOverFrame: ['master cylinders', 'lines on the frame'],
  columnOverBox: ['steering column and rim', 'steering box'],
  fillerOverTank: ['filler neck', 'fuel tank'],
} as const satisfies Record<string, readonly [PartKind, PartKind]>);

export type Watched = keyof typeof watched;

/**
 * Signed change of the heights a driver or a wrench will notice, upper part over lower part (m; − means it closes).
 *
 *   change = D × (1 if the lower part comes down) − D × (1 if the upper part comes down)
 *
 * Channeled: pads, rim, dash and roof come down toward a floor and seat that stayed. So pad over floor, rim over
 * seat, dash over floor (room for the shins) and headroom all lose D, and the hip ends D *higher* over the pads than
 * before unless the seat is lowered too. Nothing under the floor changes.
 * Stock floor: inside the cab nothing changes; floor and tunnel lose D over frame and gearbox.
 * Both: hood over engine, masters over frame, column over box and filler neck over tank lose D.
 *
 * drop D (m, same front and rear; negative raises). Neglected: pitch (use pairChange with real points), seat work.
 * @throws RangeError if D is not finite
 * Source: derived from `rides`. Worked value: channeled, D 0.075 → padOverFloor −0.075, floorOverFrame 0.
 */
export function driverHeights({ type, drop }: { readonly type: DropType; readonly drop: number }): Readonly<Record<Watched, number>> {
  requireFinite({ drop });
  const down = (part: PartKind): number => (ridesWith({ part, type }).comesDown ? drop : 0);
  const entries = Object.entries(watched).map(([name, [upper, lower]]) => [name, down(lower) - down(upper)] as const);
  return Object.fromEntries(entries) as Record<Watched, number>;
}
