import type { Point } from '../../engine/capsule.ts';
import { motionNames, placeEnds, shaftLine } from '../../engine/sweepMotion.ts';
import { motionsIn, nameOf, pairsSwept, partsIn, placeWords, stateWords } from '../helpers/sweep.ts';
import type { PartRow, SweepValues } from '../helpers/sweep.ts';
import type { Say } from '../record.ts';
import type { At, Scene, Shape, Tone } from '../show.ts';
import { outline, throughWindow } from './window.ts';
import type { Box } from './window.ts';

export const sweepViews = ['near, side', 'near, above', 'all, side', 'all, above'] as const;

const toneOf: Readonly<Record<PartRow['on'], Tone>> = { frame: 'frame', body: 'body', engine: 'rear', pedal: 'body', rod: 'body', steering: 'front', frontAxle: 'plain', rearAxle: 'plain' };

interface Drawn {
  readonly ends: readonly [At, At];
  /** Toward the eye. */
  readonly depth: number;
  readonly radius: number;
  readonly tone: Tone;
}

/** Every part where it is in the worst state of the closest pair. Front on the left; from above the truck's left side is down. */
function drawn(v: SweepValues, above: boolean): Drawn[] {
  const worst = pairsSwept(v)[0] as ReturnType<typeof pairsSwept>[number];
  const motions = motionsIn(v);
  const [line, state, ends] = [shaftLine(motions), Float64Array.from(motionNames, (name) => worst.state[name]), new Float64Array(6)];
  return partsIn(v).map((part, k): Drawn => {
    placeEnds(part, motions, line, state, ends);
    const [a, b] = [0, 3].map((at): Point => ({ x: ends[at]!, y: ends[at + 1]!, z: ends[at + 2]! })) as [Point, Point];
    return { ends: [seen(a, above), seen(b, above)], depth: above ? Math.max(a.z, b.z) : Math.max(a.y, b.y), radius: part.radius, tone: toneOf[(v.sweepParts[k] as PartRow).on] };
  });
}

const seen = (p: Point, above: boolean): At => [-p.x, above ? -p.y : p.z];

export function describeSweep(v: SweepValues, say: Say, at: number): string {
  const worst = pairsSwept(v)[0] as ReturnType<typeof pairsSwept>[number];
  const found = worst.gap < 0 ? `They overlap by ${say(-worst.gap, 'length')}` : `The gap is ${say(worst.gap, 'length')}`;
  return `${at < 2 ? 'Close up' : 'All parts'}, ${at % 2 === 0 ? 'from the left' : 'from above, the truck’s left side down'}, front on the left, to scale, numbered as in the list. Heavy red outline: ${nameOf(v, worst.a)} and ${nameOf(v, worst.b)}, ${stateWords(v, worst, say)}. ${found}, at the red line: on the first at ${place(worst.s, say)}, on the second at ${place(worst.t, say)}. In one view alone parts can seem to cross that pass clear of each other.`;
}

const place = (part: number, say: Say): string => (part < 0.005 || part > 0.995 ? `its ${placeWords(part, say)}` : `${placeWords(part, say)} of its length`);

export function sweepScene(v: SweepValues, at: number, say: Say): Scene {
  const above = at % 2 === 1;
  const worst = pairsSwept(v)[0] as ReturnType<typeof pairsSwept>[number];
  const parts = drawn(v, above);
  const near: readonly [At, At] = [seen(worst.onA, above), seen(worst.onB, above)];
  const [left, bottom, right, top] = at < 2 ? closeUp(near, parts[worst.a] as Drawn, parts[worst.b] as Drawn) : around(parts);
  const size = Math.max(right - left, top - bottom);
  const inView = (p: At): boolean => p[0] > left && p[0] < right && p[1] > bottom && p[1] < top;
  const order = parts.map((_, k) => k).sort((a, b) => Number(isWorst(a)) - Number(isWorst(b)) || (parts[a] as Drawn).depth - (parts[b] as Drawn).depth);
  function isWorst(k: number): boolean {
    return k === worst.a || k === worst.b;
  }
  const window: Box = [left, bottom, right, top];
  const shapes = order.flatMap((k): Shape[] => {
    const { ends, radius, tone } = parts[k] as Drawn;
    const seenThrough = throughWindow(outline(ends, Math.max(radius, 0.002 * size)), window);
    const middle = throughWindow(ends, window);
    return [
      ...(seenThrough.length > 0 ? [{ line: seenThrough, tone: isWorst(k) ? 'alert' : tone, closed: true, filled: true } as const] : []),
      ...(isWorst(k) && middle.length > 1 ? [{ line: middle, tone: 'ghost' as const }] : []),
    ];
  });
  const numbers = [...order].reverse().flatMap((k): Shape[] => {
    const { ends: [a, b] } = parts[k] as Drawn;
    const along = [0.5, 0.3, 0.7, 0.15, 0.85, 0, 1].map((part): At => [a[0] + part * (b[0] - a[0]), a[1] + part * (b[1] - a[1])]).find(inView);
    return along ? [{ text: String(k + 1), at: [along[0], along[1] - 0.012 * size], small: true, ...(isWorst(k) ? { tone: 'alert' as const } : {}) }] : [];
  });
  const name = (k: number): string => `${k + 1} ${nameOf(v, k)}`;
  return {
    box: [left, bottom, right, top + 0.13 * size],
    shapes: [
      ...shapes,
      { line: near, tone: 'alert' }, ...near.map((p): Shape => ({ circle: p, radius: 0.006 * size, tone: 'alert', filled: true })),
      { text: name(worst.a), at: [left + 0.01 * size, top + 0.085 * size], anchor: 'start', tone: 'alert', small: true },
      { text: `${name(worst.b)}: ${worst.gap < 0 ? 'overlap' : say(worst.gap, 'length')}`, at: [left + 0.01 * size, top + 0.035 * size], anchor: 'start', tone: 'alert', small: true },
      ...numbers,
    ],
  };
}

/** A square about the nearest places, wide enough for both parts' thickness. */
function closeUp([a, b]: readonly [At, At], one: Drawn, other: Drawn): Box {
  const half = Math.max(0.08, 1.6 * (Math.hypot(b[0] - a[0], b[1] - a[1]) / 2 + Math.max(one.radius, other.radius)));
  const [x, y] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  return [x - 1.25 * half, y - half, x + 1.25 * half, y + half];
}

function around(parts: readonly Drawn[]): Box {
  const low = (axis: 0 | 1): number => Math.min(...parts.flatMap(({ ends, radius }) => ends.map((p) => p[axis] - radius)));
  const high = (axis: 0 | 1): number => Math.max(...parts.flatMap(({ ends, radius }) => ends.map((p) => p[axis] + radius)));
  const [x0, x1, y0, y1] = [low(0), high(0), low(1), high(1)];
  const edge = 0.04 * Math.max(x1 - x0, y1 - y0, 0.05);
  return [x0 - edge, y0 - edge, x1 + edge, y1 + edge];
}
