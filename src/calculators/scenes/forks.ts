import type { At, Scene, Shape } from '../show.ts';

export interface ForkPair {
  readonly title: string;
  /** From the upper fork's pins, clockwise for who looks down the shaft (rad). */
  readonly yours: number;
  readonly best: number;
  readonly labels: readonly [yours: string, best: string];
}

const at = (center: At, radius: number, clockwise: number): At => [center[0] + radius * Math.sin(clockwise), center[1] + radius * Math.cos(clockwise)];
const across = (center: At, radius: number, clockwise: number): readonly At[] => [at(center, radius, clockwise), at(center, radius, clockwise + Math.PI)];

/** One or two shafts seen from their upper ends: the pins of both forks as lines through the center. */
export function forksScene(pairs: readonly ForkPair[]): Scene {
  const apart = 3.6;
  const shapes = pairs.flatMap((pair, k): Shape[] => {
    const center: At = [k * apart, 0];
    const turn = Math.atan2(Math.sin(pair.best), Math.cos(pair.best));
    const arc = Array.from({ length: 25 }, (_, j): At => at(center, 0.62, (turn * j) / 24));
    return [
      { circle: center, radius: 0.42, tone: 'body' },
      { line: across(center, 1.25, 0), tone: 'frame' },
      { line: across(center, 1.25, pair.best), tone: 'ghost' },
      { line: across(center, 1.05, pair.yours), tone: 'accent' },
      ...[0, Math.PI].map((half): Shape => ({ circle: at(center, 1.05, pair.yours + half), radius: 0.09, tone: 'accent', filled: true })),
      ...(Math.abs(turn) > 0.03 ? [{ line: arc, tone: 'alert' } satisfies Shape, { arrow: [arc[22] as At, arc[24] as At], tone: 'alert' } satisfies Shape] : []),
      { text: pair.title, at: [center[0], 1.55] },
      { text: pair.labels[0], at: [center[0], -1.62], small: true },
      { text: pair.labels[1], at: [center[0], -1.98], small: true },
    ];
  });
  const half = pairs.length === 1 ? 2.6 : 1.75;
  return { box: [-half, -2.2, (pairs.length - 1) * apart + half, 1.95], shapes };
}
