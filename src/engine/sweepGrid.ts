import { nearestSquared } from './segmentPair.ts';
import type { Motions, SweepPart, shaftLine } from './sweepMotion.ts';
import { motionNames, movedBy, placeEnds } from './sweepMotion.ts';

/** Values to try of every motion, in the order of a state. */
export type Samples = readonly (readonly number[])[];

/** Both ends of a part at every combination of the samples that it feels, six numbers each. */
export interface PlaceTable {
  readonly ends: Float64Array;
  /** By motion: how far apart two neighboring samples lie in `ends`, 0 for a motion that the part does not feel; and which sample is rest. */
  readonly stride: readonly number[];
  readonly rest: readonly number[];
}

export function placeTable(part: SweepPart, motions: Motions, line: ReturnType<typeof shaftLine>, samples: Samples): PlaceTable {
  const stride = motionNames.map(() => 0);
  let size = 6;
  for (const k of movedBy[part.rides]) {
    stride[k] = size;
    size *= (samples[k] as readonly number[]).length;
  }
  const [ends, state, one] = [new Float64Array(size), new Float64Array(motionNames.length), new Float64Array(6)];
  for (let at = 0; at < size; at += 6) {
    for (const k of movedBy[part.rides]) {
      const list = samples[k] as readonly number[];
      state[k] = list[Math.floor(at / stride[k]!) % list.length]!;
    }
    placeEnds(part, motions, line, state, one);
    ends.set(one, at);
  }
  return { ends, stride, rest: samples.map((list) => Math.max(0, list.findIndex((x) => Math.abs(x) < 1e-12))) };
}

/** The distance squared at every combination of samples. */
export function sampleAll(dependsOn: readonly number[], { samples, tableA, tableB }: { readonly samples: Samples; readonly tableA: PlaceTable; readonly tableB: PlaceTable }) {
  const sizes = dependsOn.map((k) => (samples[k] as readonly number[]).length);
  const squared = new Float64Array(sizes.reduce((product, size) => product * size, 1));
  const set = (index: number, into: Float64Array): void => {
    for (let d = dependsOn.length - 1, rest = index; d >= 0; d--) {
      const size = sizes[d] as number;
      into[dependsOn[d] as number] = (samples[dependsOn[d] as number] as readonly number[])[rest % size] as number;
      rest = Math.floor(rest / size);
    }
  };
  const still = (table: PlaceTable): number => table.stride.reduce((sum, stride, k) => sum + (dependsOn.includes(k) ? 0 : stride * table.rest[k]!), 0);
  const found = new Float64Array(2);
  let count = 0;
  const visit = (depth: number, i: number, j: number): void => {
    if (depth === dependsOn.length) {
      squared[count++] = nearestSquared(tableA.ends, tableB.ends, found, i, j);
      return;
    }
    const [k, size] = [dependsOn[depth] as number, sizes[depth] as number];
    const [di, dj] = [tableA.stride[k]!, tableB.stride[k]!];
    for (let at = 0; at < size; at++) visit(depth + 1, i + at * di, j + at * dj);
  };
  visit(0, still(tableA), still(tableB));
  /** Samples below a limit that no neighbor on either side undercuts, the first of equals. */
  const valleys = (limit: number): number[] => {
    const below: number[] = [];
    for (let index = 0; index < squared.length; index++) if (squared[index]! < limit && isValley(index)) below.push(index);
    return below;
  };
  const isValley = (index: number): boolean => {
    for (let d = sizes.length - 1, stride = 1; d >= 0; stride *= sizes[d--] as number) {
      const place = Math.floor(index / stride) % (sizes[d] as number);
      if (place > 0 && squared[index - stride]! <= squared[index]!) return false;
      if (place < (sizes[d] as number) - 1 && squared[index + stride]! < squared[index]!) return false;
    }
    return true;
  };
  return { squared, set, valleys };
}
