import type { Place } from '../../engine/placement.ts';
import type { At, Scene, Shape } from '../show.ts';

export interface PadPlaceScene {
  readonly marks: readonly { readonly name: string; readonly x: number; readonly y: number; readonly z: number }[];
  readonly places: readonly Place[];
  readonly above: boolean;
  readonly label: string;
}

/** Marks, tapes and pad to scale, front on the left; the error twenty times too long. */
export function padPlaceScene(v: PadPlaceScene): Scene {
  const seen = ([x, y, z]: readonly [number, number, number]): At => (v.above ? [-x, -y] : [-x, z]);
  const marks = v.marks.map((m) => seen([m.x, m.y, m.z]));
  const spots = v.places.map((p) => seen(p.point));
  const place = v.places[0];
  const [pad, other] = spots;
  // The outline of the error's ellipsoid as the eye sees it: in every direction as far out as its shadow reaches.
  const half = place?.axes.map(seen) ?? [];
  const outline = pad && place ? Array.from({ length: 48 }, (_, k): At => {
    const way = [Math.cos((k * Math.PI) / 24), Math.sin((k * Math.PI) / 24)] as const;
    const parts = half.map((h) => h[0] * way[0] + h[1] * way[1]);
    const reach = Math.hypot(...parts) || 1;
    return [0, 1].map((axis) => pad[axis as 0 | 1] + (20 * half.reduce((sum, h, n) => sum + h[axis as 0 | 1] * (parts[n] as number), 0)) / reach) as unknown as At;
  }) : [];
  const all = [...marks, ...spots, ...outline];
  const [left, right] = [Math.min(...all.map((p) => p[0])), Math.max(...all.map((p) => p[0]))];
  const [low, high] = [Math.min(...all.map((p) => p[1])), Math.max(...all.map((p) => p[1]))];
  const size = Math.max(right - left, high - low, 0.1);
  const middle = [(left + right) / 2, (low + high) / 2] as const;
  // Names of marks that lie close together are stacked, highest mark on top.
  const names: { at: At; text: string }[] = [];
  for (const [k, m] of [...marks.entries()].sort((a, b) => a[1][1] - b[1][1])) {
    let y = m[1] + 0.035 * size;
    for (const n of names) if (Math.abs(n.at[0] - m[0]) < 0.34 * size && Math.abs(n.at[1] - y) < 0.05 * size) y = n.at[1] + 0.05 * size;
    names.push({ at: [m[0], y], text: v.marks[k]!.name });
  }
  return {
    box: [middle[0] - 0.66 * size, middle[1] - 0.66 * size, middle[0] + 0.66 * size, middle[1] + 0.66 * size],
    shapes: [
      ...(pad ? marks.map((m): Shape => ({ line: [m, pad], tone: 'ghost' })) : []),
      ...marks.map((m): Shape => ({ circle: m, radius: 0.014 * size, tone: 'plain', filled: true })),
      ...names.map((n): Shape => ({ text: n.text, at: n.at, anchor: n.at[0] > middle[0] + 0.2 * size ? 'end' : n.at[0] < middle[0] - 0.2 * size ? 'start' : 'middle', small: true })),
      ...(outline.length > 0 ? [{ line: outline, closed: true, tone: 'alert' } as Shape] : []),
      ...(other ? [{ circle: other, radius: 0.018 * size, tone: 'ghost' } as Shape] : []),
      ...(pad ? [{ circle: pad, radius: 0.013 * size, tone: 'accent', filled: true } as Shape, { text: 'pad', at: [pad[0] + 0.04 * size, pad[1] - 0.05 * size], anchor: 'start' } as Shape] : []),
      { text: v.above ? 'from above, left side down' : 'from the left side', at: [middle[0] - 0.64 * size, middle[1] + 0.61 * size], anchor: 'start', small: true },
    ],
  };
}
