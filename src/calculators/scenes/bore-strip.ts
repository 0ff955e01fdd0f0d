import type { Scene, Shape } from '../show.ts';
import { inch } from '../../units/si.ts';
import { standardBores } from '../../units/index.ts';

export interface BoreStrip {
  readonly side: 'front' | 'rear';
  /** Smallest bore with the volume, largest the foot can push; the window is open where low is below high. */
  readonly low: number;
  readonly high: number;
  readonly lowLabel: string;
  readonly highLabel: string;
  /** The bore in the set looked at. */
  readonly chosen?: number;
}

const [from, to] = [0.56 * inch, 1.06 * inch];
const onStrip = (d: number): number => Math.min(to, Math.max(from, d));

/** One strip per circuit: bores from left to right, the window shaded between what volume and what effort allow, the standard bores below. */
export function boreStripScene(strips: readonly BoreStrip[]): Scene {
  const tall = (to - from) * 0.42;
  return {
    box: [from - (to - from) * 0.02, -tall * (strips.length - 1) - (to - from) * 0.12, to + (to - from) * 0.02, (to - from) * 0.3],
    shapes: strips.flatMap((strip, k) => stripShapes(strip, -k * tall)),
  };
}

function stripShapes({ side, low, high, lowLabel, highLabel, chosen }: BoreStrip, y: number): Shape[] {
  const unit = (to - from) / 100;
  const height = 4 * unit;
  const open = low <= high;
  const [left, right] = [onStrip(Math.min(low, high)), onStrip(Math.max(low, high))];
  const bound = (d: number, label: string, up: number): Shape[] => {
    const x = onStrip(d);
    return [
      ...(x === d ? [{ line: [[x, y], [x, y + up - 1.2 * unit]], tone: side } as Shape] : []),
      { text: label, at: [x, y + up], anchor: x < from + 55 * unit ? 'start' : 'end', tone: side },
    ];
  };
  return [
    { text: side, at: [from, y + 22 * unit], anchor: 'start', tone: side },
    ...(right > left ? [{ line: [[left, y], [right, y], [right, y + height], [left, y + height]], tone: open ? 'accent' : 'alert', closed: true, filled: true } as Shape] : []),
    { line: [[from, y], [to, y]], tone: 'plain' },
    ...bound(low, lowLabel, 16 * unit),
    ...bound(high, highLabel, 10 * unit),
    ...standardBores.flatMap(({ label, si }): Shape[] => {
      const fits = si >= low && si <= high;
      return [
        { line: [[si, y - (fits ? 2.4 : 1.2) * unit], [si, y + (fits ? height : 0)]], tone: 'plain' },
        { text: label, at: [si, y - 6 * unit], small: !fits },
      ];
    }),
    ...(chosen === undefined || chosen < from || chosen > to ? [] : [{ circle: [chosen, y] as const, radius: 1.6 * unit, tone: 'plain', filled: true } as Shape]),
  ];
}

/** A standard bore by its fraction, another by its size. */
export function boreName(d: number, size: (d: number) => string, unit = ''): string {
  const standard = standardBores.find(({ si }) => Math.abs(si - d) < 1e-6);
  return standard ? standard.label + unit : size(d);
}
