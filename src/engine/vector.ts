import type { Point } from './capsule.ts';

/**
 * The few operations on directions and places that the steering shaft needs, in the truck's axes: x forward, y left,
 * z up, right-handed. A direction is a Point of length 1. Nothing here can fail except `unit`, which has no answer for
 * a vector of no length: its caller must have seen to that.
 */
export const minus = (p: Point, q: Point): Point => ({ x: p.x - q.x, y: p.y - q.y, z: p.z - q.z });
export const dot = (p: Point, q: Point): number => p.x * q.x + p.y * q.y + p.z * q.z;
export const length = (p: Point): number => Math.hypot(p.x, p.y, p.z);

/** Square to both, right-handed: x × y = z. */
export const cross = (p: Point, q: Point): Point => ({ x: p.y * q.z - p.z * q.y, y: p.z * q.x - p.x * q.z, z: p.x * q.y - p.y * q.x });

/** a p + b q */
export const mix = (a: number, p: Point, b: number, q: Point): Point => ({ x: a * p.x + b * q.x, y: a * p.y + b * q.y, z: a * p.z + b * q.z });

/** @throws RangeError for a vector without length */
export function unit(p: Point): Point {
  const size = length(p);
  if (!(size > 0) || size === Infinity) throw new RangeError(`direction: expected a vector with a length, found ${p.x}, ${p.y}, ${p.z}`);
  return { x: p.x / size, y: p.y / size, z: p.z / size };
}

/**
 * The angle between two directions (rad, 0 to π). From sine and cosine together: the arc cosine alone loses half its
 * digits near 0, where steering joints like to be.
 */
export const angleBetween = (p: Point, q: Point): number => Math.atan2(length(cross(p, q)), dot(p, q));
