import { bisect } from '../engine/roots.ts';
import { entryOf, evaluate } from './evaluate.ts';
import type { Feed, Refusal, Values } from './record.ts';
import { inputKeys } from './record.ts';
import { isQuantity } from './vocabulary/index.ts';
import type { Quantity, Range } from './vocabulary/index.ts';

/** The input values that give the wanted result; or the one that comes nearest to it; or why none gives any result. */
export type TurnedRound =
  | { readonly found: number; /** Nearest to the present value first: `found` is the first. */ readonly all: readonly number[] }
  | { readonly nearest: number; readonly gives: number }
  | Refusal;

/** One evaluation. */
interface Look {
  readonly x: number;
  /** The result, and by how much it misses the target; or the refusal. */
  readonly result?: number;
  readonly miss?: number;
  readonly refusal?: Refusal;
}

const budget = 400;
/** More than any one of the searches below takes. */
const oneSearch = 56;
/** How near the result has to come to the target, as a part of the target or of what the result changes by in that step. */
const near = 1e-9;

/**
 * A calculator turned round: one result is given, one input is asked for, the others stay.
 *
 * The input's possible range is looked at in some 120 places: over all of it (by equal factors where it spans decades),
 * closer in the usual range, closest about the present value. Where the result passes the target, the step is halved
 * down to rounding; what remains off the target there was a jump, which is no answer. Where the result turns back
 * before the target, or ends in refusals on its way to it, the turning point or the last value that has an answer is
 * sought too. A stretch that stays on the target gives its value nearest to the present one. A count is tried whole
 * number by whole number.
 *
 * values: every input (SI, each possible); target (SI). At most 400 evaluations. `all` is complete unless the result
 * swings there and back within one step, or passes the target more than five times.
 *
 * A record that searches for a best place (`oneWay`) is refused: near its best a result is flat, and what made it cannot
 * be read back.
 *
 * @throws RangeError for an ask that is no number among the inputs, a fix that is no number among the results, or a
 * target that is not finite
 * Worked value: pressure grows with the force, so asking for twice the pressure finds twice the force.
 */
export function turnRound(record: Feed, values: Values, { ask, fix, target }: { readonly ask: string; readonly fix: string; readonly target: number }): TurnedRound {
  const entry = entryOf(ask);
  if (!(inputKeys(record) as string[]).includes(ask) || !isQuantity(entry) || !entry.hard) throw new RangeError(`ask: expected a number among the inputs of ${record.id}, found ${ask}`);
  if (!(record.outputs as readonly string[]).includes(fix) || !isQuantity(entryOf(fix))) throw new RangeError(`fix: expected a number among the results of ${record.id}, found ${fix}`);
  if (!Number.isFinite(target)) throw new RangeError(`target: expected a finite number, found ${target}`);
  if (record.oneWay) return { refused: () => 'This calculator looks for a best place, and many different trucks share one. It cannot be asked backward: change the inputs and watch.' };
  const { min, max } = entry.hard;
  const present = Math.min(max, Math.max(min, values[ask] as number));

  const seen = new Map<number, Look>();
  const look = (x: number): Look => {
    let l = seen.get(x);
    if (!l) {
      const e = evaluate(record, { ...values, [ask]: x });
      if (e.ok) {
        const result = e.values[fix] as number;
        l = { x, result, miss: Math.abs(result - target) <= 1e-14 * Math.abs(target) ? 0 : result - target };
      } else l = { x, refusal: e.refusal };
      seen.set(x, l);
    }
    return l;
  };
  const missAt = (x: number): number | undefined => look(x).miss;
  const line = (): Look[] => [...seen.values()].sort((a, b) => a.x - b.x);
  const spare = (): boolean => seen.size + oneSearch <= budget;
  const away = (x: number): number => Math.abs(x - present);
  const width = (a: number, b: number, part: number): number => part * Math.max(Math.abs(a), Math.abs(b));

  const roots: number[] = [];
  const take = (x: number, scale: number): void => {
    const miss = missAt(x);
    if (miss === undefined || Math.abs(miss) > near * Math.max(Math.abs(target), scale)) return;
    if (!roots.some((r) => Math.abs(r - x) <= width(r, x, 1e-7))) roots.push(x);
  };

  /** Halves every step in which the result passes the target, the nearest first. */
  const halved: number[] = [];
  const halveSteps = (): void => {
    for (;;) {
      const steps = pairs(line()).filter(([a, b]) => (a.miss ?? 0) * (b.miss ?? 0) < 0 && !halved.some((x) => x >= a.x && x <= b.x));
      const step = steps.sort((s, t) => away(s[0].x) - away(t[0].x))[0];
      if (!step || !spare()) return;
      const [a, b] = step;
      // Refusals within the step count to its left side: the search then ends right of them, or on their edge and off the target.
      const x = bisect((at) => missAt(at) ?? (a.miss as number), a.x, b.x, { tolerance: width(a.x, b.x, 1e-15) });
      halved.push(x);
      take(x, Math.max(Math.abs(a.miss as number), Math.abs(b.miss as number)));
    }
  };

  /** Walks down from m, lower than both its neighbors, to the least miss between them, or over to the other side of the target. */
  const descend = (left: Look, middle: Look, right: Look): void => {
    let [a, m, b] = [left.x, middle, right.x];
    for (let k = 0; k < 40 && b - a > width(a, b, 1e-8); k += 1) {
      const l = look(b - m.x > m.x - a ? m.x + 0.381966 * (b - m.x) : m.x - 0.381966 * (m.x - a));
      if ((l.miss ?? 0) * (m.miss as number) < 0) return;
      const better = Math.abs(l.miss ?? Infinity) < Math.abs(m.miss as number);
      if (better === l.x > m.x) a = better ? m.x : l.x;
      else b = better ? m.x : l.x;
      if (better) m = l;
    }
    take(m.x, 0);
  };

  /** The last value, from one that holds toward one that does not. */
  const edge = (from: number, to: number, holds: (l: Look) => boolean): number => {
    bisect((x) => (holds(look(x)) ? 1 : -1), from, to, { tolerance: width(from, to, 1e-11) });
    const inside = line().filter((l) => holds(l) && (l.x - from) * (l.x - to) <= 0);
    return (from < to ? inside[inside.length - 1] : inside[0])?.x ?? from;
  };

  const whole = entry.dimension === 'count';
  for (const x of whole ? wholes(entry.hard, present) : places(entry, entry.hard, present)) look(x);
  if (!whole) {
    halveSteps();
    for (const [left, m, right] of turns(line()).slice(0, 4)) {
      if (!spare()) break;
      if (left?.miss !== undefined && right?.miss !== undefined) descend(left, m, right);
      else for (const side of [left, right]) if (side && side.miss === undefined && spare()) edge(m.x, side.x, (l) => l.miss !== undefined);
    }
    halveSteps();
  }
  for (const stretch of stretches(line())) {
    const [first, last] = [stretch[0] as number, stretch[stretch.length - 1] as number];
    const x = Math.min(last, Math.max(first, present));
    const all = line();
    const beyond = x === present ? undefined : x === first ? all[all.findIndex((l) => l.x === first) - 1] : all[all.findIndex((l) => l.x === last) + 1];
    take(stretch.length > 1 && beyond && !whole && spare() ? edge(x, beyond.x, (l) => l.miss === 0) : x, 0);
  }
  if (roots.length > 0) {
    const all = roots.sort((a, b) => away(a) - away(b));
    return { found: all[0] as number, all };
  }

  const answered = line().filter((l) => l.miss !== undefined);
  const least = answered.reduce((low, l) => Math.min(low, Math.abs(l.miss as number)), Infinity);
  const best = answered.filter((l) => Math.abs(l.miss as number) <= least + 1e-12 * Math.max(least, Math.abs(target))).sort((a, b) => away(a.x) - away(b.x))[0];
  return best ? { nearest: best.x, gives: best.result as number } : (look(present).refusal as Refusal);
}

function pairs(line: readonly Look[]): [Look, Look][] {
  return line.slice(1).map((b, i) => [line[i] as Look, b]);
}

/** Where the miss is less than at the neighbors, or than at the only neighbor that has an answer: the least first. */
function turns(line: readonly Look[]): [Look | undefined, Look, Look | undefined][] {
  return line.map((m, i): [Look | undefined, Look, Look | undefined] => [line[i - 1], m, line[i + 1]]).filter(([left, m, right]) => {
    if (!m.miss) return false;
    const above = [left, right].filter((l) => l?.miss !== undefined).map((l) => Math.abs(l?.miss as number) - Math.abs(m.miss as number));
    const passes = [left, right].some((l) => (l?.miss ?? 0) * (m.miss as number) < 0);
    const open = (left !== undefined && right !== undefined) || [left, right].some((l) => l !== undefined && l.miss === undefined);
    return open && !passes && above.every((d) => d >= 0) && (above.length < 2 || above.some((d) => d > 0));
  }).sort((s, t) => Math.abs(s[1].miss as number) - Math.abs(t[1].miss as number));
}

/** Runs of places that lie on the target. */
function stretches(line: readonly Look[]): number[][] {
  const runs: number[][] = [];
  line.forEach((l, i) => {
    if (l.miss !== 0) return;
    const run = line[i - 1]?.miss === 0 ? runs[runs.length - 1] : undefined;
    if (run) run.push(l.x);
    else runs.push([l.x]);
  });
  return runs;
}

function wholes({ min, max }: Range, present: number): number[] {
  const all = Array.from({ length: Math.min(budget, Math.floor(max) - Math.ceil(min) + 1) }, (_, k) => Math.ceil(min) + k);
  return Number.isInteger(present) ? [present, ...all] : all;
}

function places(entry: Quantity, { min, max }: Range, present: number): number[] {
  const steps = (n: number): number[] => Array.from({ length: n + 1 }, (_, k) => k / n);
  const over = min > 0 && max >= 30 * min ? (t: number) => min * (max / min) ** t : min === 0 ? (t: number) => max * t * t : (t: number) => min + t * (max - min);
  const { usual } = entry;
  const about = steps(17).flatMap((_, k) => [present - (max - min) / 2 ** (k + 2), present + (max - min) / 2 ** (k + 2)]);
  const inRange = [...(usual ? steps(36).map((t) => usual.min + t * (usual.max - usual.min)) : []), ...steps(48).map(over), ...about].filter((x) => x > min && x < max);
  // Two rows of places can meet but for rounding. Such twins hide an edge: the better one then has a neighbor on either side.
  const apart = inRange.sort((a, b) => a - b).filter((x, i, all) => [all[i - 1] ?? min, present].every((other) => Math.abs(x - other) > 1e-9 * Math.abs(x)));
  return [present, min, max, ...apart];
}
