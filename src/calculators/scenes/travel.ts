import type { Scene, Shape, Tone } from '../show.ts';

export interface TravelPart {
  readonly name: string;
  readonly length: number;
  readonly label: string;
  readonly tone: Tone;
}

/**
 * Where a way goes: one row per cause, each bar beginning where the last one ended, all to one scale. `whole` is as far as
 * the drawing reaches, `end` where the way ends and `endName` at what: the pad at the carpet, unless it says otherwise.
 */
export function travelScene({ parts, whole, end = whole, endName = 'carpet' }: { readonly parts: readonly TravelPart[]; readonly whole: number; readonly end?: number; readonly endName?: string }): Scene {
  const row = whole * 0.125;
  const names = whole * 0.72;
  let start = 0;
  const bars = parts.flatMap((part, k): Shape[] => {
    const y = -k * row;
    const [from, to] = [start, start + part.length];
    start = to;
    return [
      { line: [[from, y - row * 0.3], [to, y - row * 0.3], [to, y + row * 0.3], [from, y + row * 0.3]], tone: part.tone, closed: true, filled: true },
      { text: part.name, at: [-names, y - row * 0.16], anchor: 'start', ...(part.tone === 'front' || part.tone === 'rear' ? { tone: part.tone } : {}) },
      labelBeside({ from, to, whole, label: part.label, y: y - row * 0.16 }),
    ];
  });
  const low = -(parts.length - 0.5) * row;
  return {
    box: [-names - whole * 0.02, low - row * 0.15, whole * 1.05, row * 1.3],
    shapes: [
      { line: [[0, low], [0, row * 0.6]], tone: 'ghost' },
      { line: [[end, low], [end, row * 0.6]], tone: 'ground' },
      { text: 'rest', at: [0, row * 0.75], small: true },
      { text: endName, at: [end + whole * 0.03, row * 0.75], anchor: 'end', small: true },
      ...bars,
    ],
  };
}

/** Right of the bar while there is room before the carpet, else left of it, else on it. */
function labelBeside({ from, to, whole, label, y }: { readonly from: number; readonly to: number; readonly whole: number; readonly label: string; readonly y: number }): Shape {
  const gap = whole * 0.02;
  const room = whole * 0.32;
  if (to + room <= whole) return { text: label, at: [to + gap, y], anchor: 'start' };
  if (from >= room) return { text: label, at: [from - gap, y], anchor: 'end' };
  return { text: label, at: [(from + to) / 2, y] };
}
