/** Coordinates of drawings as text: short, because a page may carry dozens of curves. */

type At = readonly [x: number, y: number];

/** Tenths of a picture unit, which is about a CSS pixel. */
export const n = (x: number): string => String(Math.round(x * 10) / 10 + 0);

/** Farthest a point left out may lie from the line drawn, in picture units: a tenth of a stroke's width. */
const off = 0.15;

/** The points of a line that it cannot do without: those left out lie within `off` of it. */
export function thinned<P extends At>(points: readonly P[]): P[] {
  const last = points.length - 1;
  if (last < 2) return [...points];
  const [a, b] = [points[0] as P, points[last] as P];
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  let farthest = 0;
  let at = 0;
  for (let k = 1; k < last; k++) {
    const [x, y] = points[k] as P;
    // Distance from the stretch between a and b, ends included: a curve may turn back past them.
    const part = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / square));
    const distance = Math.hypot(x - a[0] - part * dx, y - a[1] - part * dy);
    if (distance > farthest) [farthest, at] = [distance, k];
  }
  return farthest <= off ? [a, b] : [...thinned(points.slice(0, at + 1)).slice(0, -1), ...thinned(points.slice(at))];
}

/** A polyline's `points`. */
export const pointsOf = (points: readonly At[]): string => thinned(points).map((p) => p.map(n).join()).join(' ');
