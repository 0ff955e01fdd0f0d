import { asPoint, heights, pairName, pairsOf, worstOf } from '../helpers/drop-pairs.ts';
import type { PairFound, PairsValues } from '../helpers/drop-pairs.ts';
import { pointAt } from '../helpers/body-drop-motion.ts';
import type { Stand } from '../helpers/body-drop-motion.ts';
import type { Say } from '../record.ts';
import type { At, Scene, Shape, Tone } from '../show.ts';
import { bodyShapes, frameShapes, shape, wheelShapes } from './truck.ts';
import type { Place } from './truck.ts';

export const pointStates = ['before', 'drive height', 'aired out', 'lifted', 'from above, after'] as const;

const standOf = (at: number): Stand => (at === 0 ? 'before' : (heights[at - 1] ?? 'drive height'));
const toneOf: Readonly<Record<string, Tone>> = { body: 'body', floor: 'body', frame: 'frame', frontAxle: 'plain', rearAxle: 'plain' };

export function describePoints(v: PairsValues, say: Say, at: number): string {
  const worst = worstOf(pairsOf(v));
  const above = at === 4;
  const state = at === 0 ? 'Before the drop' : above ? 'After the drop, drive height' : `After the drop, ${standOf(at)}`;
  const span = at === 0 ? worst.before : worst.at[above ? 'drive height' : (heights[at - 1] ?? 'drive height')].span;
  return `${above ? 'From above, front on the left and the truck’s left side down' : 'Side view, front on the left'}, outlines invented, your points to scale and numbered as in the list. ${state}: heavy line, ${pairName(worst.pair)}, the pair that loses most, ${say(span, 'length')}. Dashed: before the drop.`;
}

/** Where a point is on the picture: from the side over the road, or from above, where the truck's left is down. */
type View = (row: PairsValues['truckPoints'][number], stand: Stand) => At;

export function dropPointsScene(v: PairsValues, at: number): Scene {
  const above = at === 4;
  const stand = standOf(above ? 1 : at);
  const L = v.wheelbase;
  const found = pairsOf(v);
  const side: View = (row, on) => {
    const point = asPoint(row);
    const moved = pointAt(v, on, { x: point.x, z: point.z, on: point.attached });
    return [-moved.x, moved.overRoad];
  };
  const plan: View = (row, on) => [side(row, on)[0], -row.y];
  const view = above ? plan : side;
  const rows = v.truckPoints;
  const places = rows.flatMap((row) => [view(row, stand), view(row, 'before')]);
  const [xs, ys] = [places.map((p) => p[0]), places.map((p) => p[1])];
  const frameOf = (on: Stand): Place => (x, z) => { const p = pointAt(v, on, { x, z, on: 'frame' }); return [-p.x, p.overRoad]; };
  const bodyOf = (on: Stand): Place => (x, z) => { const p = pointAt(v, on, { x, z, on: 'body' }); return [-p.x, p.overRoad]; };
  const outline: Shape[] = above ? planShapes(L) : [
    ...wheelShapes([[0, shape.tireRadius * L], [L, shape.tireRadius * L]], shape.tireRadius * L),
    ...(stand === 'before' ? [] : bodyShapes({ wheelbase: L, place: bodyOf('before'), tone: 'ghost' })),
    ...bodyShapes({ wheelbase: L, place: bodyOf(stand), tone: 'body' }),
    ...frameShapes({ wheelbase: L, place: frameOf(stand), tone: 'frame' }),
  ];
  // As much of the truck as the points take, but enough of it to be known again.
  const room = Math.max(0.1 * L, (0.7 * L - (Math.max(...xs) - Math.min(...xs))) / 2);
  const height = above ? [-0.34 * L, 0.34 * L] : [0, (shape.roof + shape.railHeight) * L];
  const box: Scene['box'] = [Math.min(...xs) - room, Math.min(height[0] as number, ...ys) - 0.05 * L, Math.max(...xs) + room, Math.max(height[1] as number, ...ys) + 0.05 * L];
  const worst = worstOf(found);
  const end = (name: string, on: Stand): At => view(rows.find((row) => row.name === name) as (typeof rows)[number], on);
  const line = ({ pair }: PairFound, on: Stand, tone: Tone): Shape => ({ line: [end(pair.from, on), end(pair.to, on)], tone });
  return {
    box,
    shapes: [
      ...outline.flatMap((part) => within(part, box[0], box[2])),
      ...(above ? [] : [{ line: [[box[0], 0], [box[2], 0]] as const, tone: 'ground' as const }]),
      ...(stand === 'before' ? [] : [line(worst, 'before', 'ghost')]),
      ...found.filter((one) => one !== worst).map((one) => line(one, stand, 'plain')),
      line(worst, stand, 'accent'),
      ...rows.map((row): Shape => ({ circle: view(row, stand), radius: 0.01 * L, tone: toneOf[row.on] ?? 'plain', filled: true })),
      ...numbers(rows.map((row) => view(row, stand)), (box[2] - box[0]) / 360),
    ],
  };
}

/** Of an outline, what lies between two uprights. */
function within(part: Shape, left: number, right: number): Shape[] {
  const round = 'circle' in part ? Array.from({ length: 33 }, (_, k): At => [part.circle[0] + part.radius * Math.cos((k * Math.PI) / 16), part.circle[1] + part.radius * Math.sin((k * Math.PI) / 16)]) : undefined;
  const points = round ?? ('line' in part ? (part.closed ? [...part.line, part.line[0] as At] : part.line) : []);
  const inside = ([x]: At): boolean => x >= left && x <= right;
  if (points.every(inside)) return [part];
  const runs: At[][] = [];
  points.slice(1).forEach((b, k) => {
    const a = points[k] as At;
    const along = (x: number): number => (x - a[0]) / (b[0] - a[0]);
    const [t0, t1] = a[0] === b[0] ? [0, inside(a) ? 1 : -1] : [Math.max(0, Math.min(along(left), along(right))), Math.min(1, Math.max(along(left), along(right)))];
    if (t0 > t1) return;
    const at = (t: number): At => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    const run = runs[runs.length - 1];
    if (run && t0 === 0 && run[run.length - 1] === a) run.push(t1 === 1 ? b : at(t1));
    else runs.push([t0 === 0 ? a : at(t0), t1 === 1 ? b : at(t1)]);
  });
  const tone = ('tone' in part && part.tone) || 'plain';
  return runs.map((line): Shape => ({ line, tone }));
}

/** The number of each point, where it covers neither a point nor another number; left out where there is no room. `unit` is one unit of the picture. */
function numbers(points: readonly At[], unit: number): Shape[] {
  const [wide, high] = [13 * unit, 11 * unit];
  const taken: At[] = [];
  const free = (at: At): boolean => taken.every((other) => Math.abs(at[0] - other[0]) > wide || Math.abs(at[1] - other[1]) > high) && points.every((p) => Math.abs(at[0] - p[0]) > wide / 2 + 2 * unit || Math.abs(at[1] - p[1]) > high / 2 + 2 * unit);
  return points.flatMap((p, k): Shape[] => {
    const round = [9, 14, 20].flatMap((far) => [90, -90, 0, 180, 45, 135, -45, -135].map((degrees): At => [p[0] + far * unit * 1.1 * Math.cos((degrees * Math.PI) / 180), p[1] + far * unit * Math.sin((degrees * Math.PI) / 180)]));
    const at = round.find(free);
    if (!at) return [];
    taken.push(at);
    return [{ text: String(k + 1), at: [at[0], at[1] - 4 * unit], small: true }];
  });
}

/** Rails, tires and the sides of the body from above, invented. */
function planShapes(L: number): Shape[] {
  const box = (x1: number, x2: number, y: number, half: number, tone: Tone): Shape => ({ line: [[x1 * L, (y - half) * L], [x2 * L, (y - half) * L], [x2 * L, (y + half) * L], [x1 * L, (y + half) * L]], tone, closed: true });
  return [box(-0.28, 1.37, 0, 0.32, 'body'), ...[-0.15, 0.15].map((y) => box(-0.26, 1.35, y, 0.012, 'frame')), ...[0, 1].flatMap((x) => [-0.27, 0.27].map((y) => box(x - 0.109, x + 0.109, y, 0.035, 'plain')))];
}
