import type { NumberColumn } from '../calculators/vocabulary/index.ts';
import { formatIn } from '../units/index.ts';

/** Said beside a value outside its usual range; undefined inside it. */
export function usualNote(entry: NumberColumn, si: number, unit: string): string | undefined {
  const usual = entry.usual;
  if (!usual) return undefined;
  const slack = 1e-6 * Math.max(Math.abs(usual.min), Math.abs(usual.max));
  if (si >= usual.min - slack && si <= usual.max + slack) return undefined;
  return `Outside the usual ${formatIn(usual.min, entry.dimension, unit)} to ${formatIn(usual.max, entry.dimension, unit)} (${usual.source}).`;
}
