import { isImpossible } from '../../engine/outcome.ts';
import { locate } from '../../engine/placement.ts';
import type { Place, Reference } from '../../engine/placement.ts';
import { slipsThatShow } from '../../engine/placementCheck.ts';
import { mm } from '../../units/si.ts';
import type { Refusal, ValuesOf } from '../record.ts';

export type V = ValuesOf<'padMarks' | 'padMethod' | 'padLateral' | 'padBareHeight' | 'padSide' | 'tapeError' | 'markError'>;

/** How many marks each way of measuring uses, the first ones of the list. */
export const needs = { space: 3, plane: 2, floor: 1 } as const;

export const marksUsed = (v: V): V['padMarks'] => (v.padMethod === 'space' ? v.padMarks : v.padMarks.slice(0, needs[v.padMethod]));

const order = { lower: (p: Place) => p.point[2], higher: (p: Place) => -p.point[2], forward: (p: Place) => -p.point[0], rearward: (p: Place) => p.point[0] } as const;

/** The chosen place first. */
export function placesOf(v: V): readonly Place[] | Refusal {
  const missing = needs[v.padMethod] - v.padMarks.length;
  if (missing > 0) return { refused: () => `This way of measuring needs ${needs[v.padMethod]} marks, and the list is ${missing === 1 ? 'one' : missing} short. Add ${missing === 1 ? 'a mark' : 'marks'}, or choose another way.` };
  const references: Reference[] = marksUsed(v).map((m) => ({ from: [m.x, m.y, m.z], distance: m.distance }));
  if (v.padMethod !== 'space') references.push({ lateral: v.padLateral });
  if (v.padMethod === 'floor') references.push({ height: v.padBareHeight });
  const found = locate({ references, tapeError: v.tapeError, markError: v.markError });
  if (!isImpossible(found)) return [...found.places].sort((a, b) => order[v.padSide](a) - order[v.padSide](b));
  const by = found.by ?? 0;
  return {
    refused: (say) => ({
      'marks-coincide': `Two of the marks stand ${say(by, 'length')} apart: that is one mark. Tape from places that are far from each other.`,
      'marks-in-line': `The marks stand in one line, but for ${say(by, 'length')}. From a line the pad can be anywhere on a circle around it. Add a mark well off the line.`,
      'do-not-meet': `No place is that far from all of them: the distances miss each other by at least ${say(by, 'length')}. One tape reading or one mark is wrong.`,
    })[found.impossible] ?? 'These measurements do not fix a place: they see the pad from directions that are too much alike. Add a mark from another side.',
  };
}

/** A miss of more than this is no tape error (common practice, no source). */
export const slipShows = 5 * mm;

/** How far each tape must slip to show, one for each mark used. */
export function slipsOf(v: V): readonly number[] {
  const places = placesOf(v);
  const marks = marksUsed(v);
  if ('refused' in places || marks.length < 4) return marks.map(() => Infinity);
  const { point } = places[0]!;
  if (marks.some((m) => Math.hypot(m.x - point[0], m.y - point[1], m.z - point[2]) < 1e-6)) return marks.map(() => Infinity);
  return slipsThatShow({ point, marks: marks.map((m) => [m.x, m.y, m.z] as const), show: slipShows }).slips;
}

export function inWords(direction: readonly [number, number, number]): string {
  const [x, y, z] = direction.map(Math.abs) as [number, number, number];
  const main = x >= y && x >= z ? 'fore and aft' : y >= z ? 'sideways' : 'up and down';
  return Math.max(x, y, z) > 0.9 ? main : `mostly ${main}`;
}
