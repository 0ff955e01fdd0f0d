import { goldenSection } from './goldenSection.ts';
import { nearestSquared } from './segmentPair.ts';
import { motionNames, placeEnds, shaftLine } from './sweepMotion.ts';
import type { Motions, SweepPart, SweepState } from './sweepMotion.ts';

/**
 * How far two parts are apart in the state in which a sweep has found them nearest, when places and movements are a
 * little different from what the sweep was told.
 *
 *   gap = |A − B| − r_A − r_B, each movement at the same part of its range as in the state
 *
 * The steering has no range: its angle is looked for again, within 30 degrees of the state's, because an ear as short as
 * the error of the shaft's line turns far to its new nearest place. A sweep of the other truck would find other states for
 * the rest too, but at a least gap a state may shift and change the gap in second order only (the envelope theorem), and at
 * an end of a range it does not shift at all. So this is never below the least gap of the other truck, and little above it.
 *
 * A, B, motions and their shaft line: the other truck's; was: the motions of the sweep; state: its answer for the pair, as
 * PairSweep has it. Lengths m, angles rad, all finite, the steering's two points apart; nothing is checked. Returns m.
 * Neglected: as clearanceSweep, and what the envelope leaves out. Source: derived; the tests compare it with sweeps.
 * Worked value: an axle's tie rod 40 mm under the rail when aired out by 80 mm: 35 mm where it is aired out by 85 mm.
 */
export function heldGap({ A, B, motions, line, was, state }: {
  readonly A: SweepPart;
  readonly B: SweepPart;
  readonly motions: Motions;
  readonly line: ReturnType<typeof shaftLine>;
  readonly was: Motions;
  readonly state: SweepState;
}): number {
  for (let k = 0; k < now.length; k++) now[k] = scaled(state[motionNames[k]!], rangeOf[k]?.(was, state), rangeOf[k]?.(motions, state));
  placeEnds(A, motions, line, now, endsA);
  placeEnds(B, motions, line, now, endsB);
  let least = nearestSquared(endsA, endsB, found);
  if (A.rides !== B.rides && (A.rides === 'steering' || B.rides === 'steering')) {
    const [turns, ends] = A.rides === 'steering' ? [A, endsA] : [B, endsB];
    const straight = now[steering]!;
    const turned = (angle: number): number => {
      now[steering] = angle;
      placeEnds(turns, motions, line, now, ends);
      return nearestSquared(endsA, endsB, found);
    };
    least = Math.min(least, goldenSection(turned, straight - nearby, straight + nearby, 6).y);
  }
  return Math.sqrt(least) - A.radius - B.radius;
}

/** Room to work in, which no call leaves anything in. */
const [endsA, endsB, found, now] = [new Float64Array(6), new Float64Array(6), new Float64Array(2), new Float64Array(motionNames.length)];

/** What a movement is a part of, in the order of motionNames. */
const rangeOf: readonly (((m: Motions, state: SweepState) => number) | undefined)[] = [
  (m) => m.roll, (m) => m.mountUp, (m) => m.mountSideways, undefined, (m) => m.swing,
  (m, { frontHeight }) => (frontHeight < 0 ? m.airedOutFront : m.liftedFront), (m, { rearHeight }) => (rearHeight < 0 ? m.airedOutRear : m.liftedRear), (m) => m.mountForeAft,
];

const steering = motionNames.indexOf('steering');
/** A step of the sweep's own angles. */
const nearby = Math.PI / 6;

const scaled = (x: number, was: number | undefined, is: number | undefined): number => (was ? (x * (is as number)) / was : x);
