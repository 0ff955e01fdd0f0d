import type { Scene, Shape, Tone } from '../show.ts';

export interface Cup {
  readonly name: string;
  readonly full: number;
  readonly level: number;
  readonly tone: Tone;
  readonly low: boolean;
  readonly label: string;
}

/** Reservoirs side by side, all of one width, so that height is volume: level, full mark and least level. */
export function cupsScene({ cups, minimum }: { readonly cups: readonly Cup[]; readonly minimum: number }): Scene {
  const tall = Math.max(...cups.map((cup) => cup.full), minimum);
  const width = tall * 0.5;
  const step = tall * 0.95;
  const shapes = cups.flatMap((cup, k): Shape[] => {
    const left = k * step;
    const right = left + width;
    return [
      { line: [[left, 0], [right, 0], [right, cup.level], [left, cup.level]], tone: cup.low ? 'alert' : cup.tone, closed: true, filled: true },
      { line: [[left, cup.full], [left, 0], [right, 0], [right, cup.full]], tone: 'plain' },
      { line: [[left + width * 0.42, 0], [left + width * 0.42, -tall * 0.08]], tone: 'plain' },
      { line: [[left + width * 0.58, 0], [left + width * 0.58, -tall * 0.08]], tone: 'plain' },
      { line: [[left - width * 0.08, cup.full], [left, cup.full]], tone: 'plain' },
      { line: [[left - width * 0.12, minimum], [right + width * 0.12, minimum]], tone: 'ghost' },
      { text: cup.name, at: [left + width / 2, tall * 1.14], tone: cup.tone },
      { text: cup.label, at: [left + width / 2, tall * 1.05], ...(cup.low ? { tone: 'alert' as const } : {}) },
      { text: 'full', at: [left - width * 0.12, cup.full - tall * 0.02], anchor: 'end', small: true },
      { text: 'least', at: [left - width * 0.14, minimum - tall * 0.02], anchor: 'end', small: true },
    ];
  });
  return { box: [-width * 0.5, -tall * 0.12, step * (cups.length - 1) + width * 1.2, tall * 1.24], shapes };
}
