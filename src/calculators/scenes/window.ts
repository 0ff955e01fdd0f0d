import type { At } from '../show.ts';

/** Left, bottom, right, top. */
export type Box = readonly [number, number, number, number];

/** The outline of a straight part with round ends, as points. */
export function outline([a, b]: readonly [At, At], radius: number): At[] {
  const along = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const cap = (center: At, from: number): At[] => Array.from({ length: 13 }, (_, k) => {
    const angle = from + (k * Math.PI) / 12;
    return [center[0] + radius * Math.cos(angle), center[1] + radius * Math.sin(angle)];
  });
  return [...cap(a, along + Math.PI / 2), ...cap(b, along - Math.PI / 2)];
}

/**
 * What of a closed outline is seen through a window, cut off side by side (Sutherland and Hodgman's way, from memory):
 * a shape that runs out of the picture would make the page scroll sideways. Empty where nothing is seen.
 */
export function throughWindow(shape: readonly At[], [left, bottom, right, top]: Box): At[] {
  const sides = [[0, left, 1], [0, right, -1], [1, bottom, 1], [1, top, -1]] as const;
  return sides.reduce<At[]>((points, [axis, limit, sign]) => points.flatMap((p, k): At[] => {
    const before = points.at(k - 1) as At;
    const [now, then] = [sign * (p[axis] - limit), sign * (before[axis] - limit)];
    const part = then / (then - now);
    const crossing: At[] = now >= 0 !== then >= 0 ? [[before[0] + part * (p[0] - before[0]), before[1] + part * (p[1] - before[1])]] : [];
    return now >= 0 ? [...crossing, p] : crossing;
  }), [...shape]);
}
