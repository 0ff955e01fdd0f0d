import type { At, Scene, Shape, Tone } from '../show.ts';

export interface Round {
  readonly start: readonly [number, number, number];
  readonly end: readonly [number, number, number];
  readonly radius: number;
}

export interface ClearanceScene {
  readonly first: Round;
  readonly second: Round;
  /** The nearest points on the two center lines. */
  readonly near: readonly [readonly [number, number, number], readonly [number, number, number]];
  readonly label: string;
}

const drawn = (part: Round, tone: Tone, place: (p: Round['start']) => At): Shape => ({ capsule: [place(part.start), place(part.end)], radius: part.radius, tone });

/** Two views to one scale, both with the front on the left: from the truck's left side above, from above below. The first part has the heavy line. */
export function clearanceScene(v: ClearanceScene): Scene {
  const side = (p: readonly [number, number, number]): At => [-p[0], p[2]];
  const reach = (axis: 0 | 1 | 2): readonly [number, number] => {
    const low = [v.first, v.second].flatMap((part) => [part.start[axis] - part.radius, part.end[axis] - part.radius]);
    const high = [v.first, v.second].flatMap((part) => [part.start[axis] + part.radius, part.end[axis] + part.radius]);
    return [Math.min(...low), Math.max(...high)];
  };
  const [x0, x1] = reach(0);
  const [y0, y1] = reach(1);
  const [z0, z1] = reach(2);
  const size = Math.max(x1 - x0, 0.6 * (y1 - y0 + z1 - z0), 0.02);
  const gap = 0.22 * size;
  // From above with the front on the left, the truck's left side is at the bottom.
  const above = (p: readonly [number, number, number]): At => [-p[0], z0 - gap - (p[1] - y0)];
  const left = -(x0 + x1) / 2 - size / 2;
  // What stands nearer to the eye, at the nearest places, is drawn over the other.
  const view = (place: (p: readonly [number, number, number]) => At, depth: 1 | 2): Shape[] => [
    ...(v.near[0][depth] > v.near[1][depth] ? [drawn(v.second, 'body', place), drawn(v.first, 'frame', place)] : [drawn(v.first, 'frame', place), drawn(v.second, 'body', place)]),
    { line: [place(v.first.start), place(v.first.end)], tone: 'ghost' },
    { line: [place(v.second.start), place(v.second.end)], tone: 'ghost' },
    { line: v.near.map(place), tone: 'alert' },
    ...v.near.map((p): Shape => ({ circle: place(p), radius: 0.008 * size, tone: 'alert', filled: true })),
  ];
  return {
    box: [left - 0.06 * size, z0 - gap - (y1 - y0) - 0.14 * size, left + 1.06 * size, z1 + 0.15 * size],
    shapes: [
      { text: `from the left side; nearest: ${v.label}`, at: [left, z1 + 0.08 * size], anchor: 'start', small: true }, ...view(side, 1),
      { text: 'from above, left side down', at: [left, z0 - gap + 0.06 * size], anchor: 'start', small: true }, ...view(above, 2),
      { text: 'heavy line: first part; thin line: second', at: [left, z0 - gap - (y1 - y0) - 0.1 * size], anchor: 'start', small: true },
    ],
  };
}
