import type { Point } from './capsule.ts';

/**
 * What a part of the truck rides with, in the axes of the FRAME (x forward, y left, z up), and where that takes it.
 *
 *   frame      stays
 *   body       shifts up, sideways and fore and aft on its rubber mounts
 *   engine     turns about a line along the truck through (y, z): + left side up
 *   pedal      turns about a line across the truck through (x, z) and shifts with the body: + a hanging pad goes forward
 *   rod        its first end as the pedal, its second end as the body: a pushrod from the pedal to its master's mouth
 *   steering   turns about the line from the box to the column's end: + clockwise seen from the column's end; and
 *              tilts, since the column's end shifts with the body and the box does not
 *   front-axle, rear-axle   up and down against the frame: a ride height a lifts the frame by a, so the axle's parts
 *              go to z − a
 */
export type Rides = 'frame' | 'body' | 'engine' | 'pedal' | 'rod' | 'steering' | 'front-axle' | 'rear-axle';

/** The motions, in the order of a state. */
export const motionNames = ['roll', 'up', 'sideways', 'steering', 'pedal', 'frontHeight', 'rearHeight', 'foreAft'] as const;
export type MotionName = (typeof motionNames)[number];
/** A value for every motion: rad or m. */
export type SweepState = Readonly<Record<MotionName, number>>;

export interface Motions {
  /** Engine roll, each way (rad), and the line it turns about (m). */
  readonly roll: number;
  readonly rollY: number;
  readonly rollZ: number;
  /** What the rubber mounts let the body do, each way (m). */
  readonly mountUp: number;
  readonly mountSideways: number;
  readonly mountForeAft: number;
  /** The pedal's pivot line (m) and its whole swing (rad, negative for a pedal hinged at the floor). */
  readonly pivotX: number;
  readonly pivotZ: number;
  readonly swing: number;
  readonly columnEnd: Point;
  readonly box: Point;
  /** Frame over the axle against drive height (m). */
  readonly airedOutFront: number;
  readonly liftedFront: number;
  readonly airedOutRear: number;
  readonly liftedRear: number;
}

export interface SweepPart {
  readonly rides: Rides;
  readonly start: Point;
  readonly end: Point;
  readonly radius: number;
  /** The number, in the list, of a part that it is meant to touch. */
  readonly touches?: number;
}

const [roll, up, sideways, steering, pedal, frontHeight, rearHeight, foreAft] = [0, 1, 2, 3, 4, 5, 6, 7] as const;

/** The shifts of the body on its mounts: two parts that both ride on it do not see them. */
export const mountShifts: readonly number[] = [up, sideways, foreAft];

/** Which motions move a part of each kind. */
export const movedBy: Readonly<Record<Rides, readonly number[]>> = Object.freeze({
  frame: [], body: [up, sideways, foreAft], engine: [roll], pedal: [up, sideways, pedal, foreAft], rod: [up, sideways, pedal, foreAft], steering: [up, sideways, steering, foreAft], 'front-axle': [frontHeight], 'rear-axle': [rearHeight],
});

/** The numbers of the motions that a part of each kind feels: while they and its ends stay, so does its gap to another such. */
export function feels(rides: Rides, m: Motions): readonly number[] {
  switch (rides) {
    case 'frame': return [];
    case 'body': return [m.mountUp, m.mountSideways, m.mountForeAft];
    case 'engine': return [m.roll, m.rollY, m.rollZ];
    case 'pedal':
    case 'rod': return [m.mountUp, m.mountSideways, m.mountForeAft, m.pivotX, m.pivotZ, m.swing];
    case 'steering': return [m.mountUp, m.mountSideways, m.mountForeAft, m.columnEnd.x, m.columnEnd.y, m.columnEnd.z, m.box.x, m.box.y, m.box.z];
    case 'front-axle': return [m.airedOutFront, m.liftedFront];
    case 'rear-axle': return [m.airedOutRear, m.liftedRear];
  }
}

const steps = (from: number, to: number, count: number): number[] => (from === to ? [from] : Array.from({ length: count }, (_, k) => from + ((to - from) * k) / (count - 1)));

/** Where each motion is sampled: 5 angles of roll, 3 by 3 by 3 places on the mounts, 13 angles over a full turn, 11 places of the pedal, 3 heights at each end. */
export function sampled(m: Motions): readonly (readonly number[])[] {
  const heights = (low: number, high: number): number[] => [...new Set([low, 0, high])].sort((a, b) => a - b);
  return [
    steps(-m.roll, m.roll, 5), steps(-m.mountUp, m.mountUp, 3), steps(-m.mountSideways, m.mountSideways, 3), steps(0, 2 * Math.PI, 13), steps(0, m.swing, 11),
    heights(m.airedOutFront, m.liftedFront), heights(m.airedOutRear, m.liftedRear), steps(-m.mountForeAft, m.mountForeAft, 3),
  ];
}

/** Unit vector of the shaft's line from the box to the column's end, and its length. */
export function shaftLine({ columnEnd: c, box: b }: Motions): { readonly x: number; readonly y: number; readonly z: number; readonly length: number } {
  const length = Math.hypot(c.x - b.x, c.y - b.y, c.z - b.z);
  return { x: (c.x - b.x) / length, y: (c.y - b.y) / length, z: (c.z - b.z) / length, length };
}

/**
 * Writes both ends of a part in a state into `ends`.
 *
 * A steering part turns by Rodrigues' formula about the shaft's line as it is at rest, and is then carried by the part
 * f of the body's shift, f from 0 at the box to 1 at the column's end. Neglected: how much an ear's own stand-off
 * leans with the line (its reach times shift over length, under 1 mm), and the slip's position, which does not widen it.
 */
export function placeEnds(part: SweepPart, m: Motions, line: ReturnType<typeof shaftLine>, state: Float64Array, ends: Float64Array): void {
  for (let end = 0; end < 2; end++) {
    const p = end === 0 ? part.start : part.end;
    const at = 3 * end;
    ends[at] = p.x;
    ends[at + 1] = p.y;
    ends[at + 2] = p.z;
    switch (part.rides) {
      case 'frame': break;
      case 'engine': {
        const [c, s, dy, dz] = [Math.cos(state[roll]!), Math.sin(state[roll]!), p.y - m.rollY, p.z - m.rollZ];
        ends[at + 1] = m.rollY + dy * c - dz * s;
        ends[at + 2] = m.rollZ + dy * s + dz * c;
        break;
      }
      case 'front-axle': ends[at + 2] = p.z - state[frontHeight]!; break;
      case 'rear-axle': ends[at + 2] = p.z - state[rearHeight]!; break;
      case 'steering': turned(p, m, line, state, ends, at); break;
      default: {
        if (part.rides === 'pedal' || (part.rides === 'rod' && end === 0)) {
          const [c, s, dx, dz] = [Math.cos(state[pedal]!), Math.sin(state[pedal]!), p.x - m.pivotX, p.z - m.pivotZ];
          ends[at] = m.pivotX + dx * c - dz * s;
          ends[at + 2] = m.pivotZ + dx * s + dz * c;
        }
        ends[at]! += state[foreAft]!;
        ends[at + 1]! += state[sideways]!;
        ends[at + 2]! += state[up]!;
      }
    }
  }
}

function turned(p: Point, { box }: Motions, line: ReturnType<typeof shaftLine>, state: Float64Array, ends: Float64Array, at: number): void {
  const dx = p.x - box.x, dy = p.y - box.y, dz = p.z - box.z;
  const along = dx * line.x + dy * line.y + dz * line.z;
  const ox = dx - along * line.x, oy = dy - along * line.y, oz = dz - along * line.z;
  // Seen from the column's end, clockwise is a negative turn about the line that points at the eye.
  const c = Math.cos(state[steering]!), s = -Math.sin(state[steering]!);
  const f = Math.min(1, Math.max(0, along / line.length));
  ends[at] = box.x + along * line.x + ox * c + (line.y * oz - line.z * oy) * s + f * state[foreAft]!;
  ends[at + 1] = box.y + along * line.y + oy * c + (line.z * ox - line.x * oz) * s + f * state[sideways]!;
  ends[at + 2] = box.z + along * line.z + oz * c + (line.x * oy - line.y * ox) * s + f * state[up]!;
}

/** How far a part's ends stand from the line they turn about (m); 0 where nothing turns. */
export function reachOf(part: SweepPart, m: Motions, line: ReturnType<typeof shaftLine>): number {
  const ends = [part.start, part.end];
  if (part.rides === 'engine') return Math.max(...ends.map((p) => Math.hypot(p.y - m.rollY, p.z - m.rollZ)));
  if (part.rides === 'pedal') return Math.max(...ends.map((p) => Math.hypot(p.x - m.pivotX, p.z - m.pivotZ)));
  if (part.rides === 'rod') return Math.hypot(part.start.x - m.pivotX, part.start.z - m.pivotZ);
  if (part.rides !== 'steering') return 0;
  return Math.max(...ends.map((p) => {
    const [dx, dy, dz] = [p.x - m.box.x, p.y - m.box.y, p.z - m.box.z];
    return Math.hypot(dy * line.z - dz * line.y, dz * line.x - dx * line.z, dx * line.y - dy * line.x);
  }));
}
