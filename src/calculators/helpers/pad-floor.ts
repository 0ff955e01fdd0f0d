import { padOverFloor } from '../../engine/padArc.ts';
import { floorStack } from '../../engine/pedalCut.ts';
import { mm } from '../../units/si.ts';
import { defineFeed, isRefusal } from '../record.ts';
import type { Refusal, ValuesOf } from '../record.ts';
import { brakingFeed } from './braking-rate.ts';

type V = ValuesOf<'pivotOverFloor' | 'toeBoardStart' | 'toeBoardSlope' | 'padArm' | 'padRestAngle' | 'padToEdge' | 'floorLayers'>;

export const pedal = (v: V) => ({ pivotHeight: v.pivotOverFloor, padArm: v.padArm, edgeArm: v.padArm + v.padToEdge, restAngle: v.padRestAngle });

const plane = (v: V, slope: number, stack: number, travel: number) =>
  padOverFloor({ pivotHeight: v.pivotOverFloor, padArm: v.padArm, edgeArm: v.padArm + v.padToEdge, restAngle: v.padRestAngle, slope, start: slope === 0 ? 0 : v.toeBoardStart, stack, travel });

/** Over the flat floor and over the toe board: what comes first counts. `meets` is undefined where the pad touches neither. */
export function over(v: V, stack: number, travel: number): { clearance: number; least: number; meets: number | undefined } {
  const [floor, board] = [plane(v, 0, stack, travel), plane(v, v.toeBoardSlope, stack, travel)];
  const meets = Math.min(floor.toContact ?? Infinity, board.toContact ?? Infinity);
  return { clearance: Math.min(floor.clearance, board.clearance), least: Math.min(floor.least, board.least), meets: meets < Infinity ? meets : undefined };
}

/** Travel at which a pad that never touches is nearest: where its arm stands square to the floor or to the toe board. */
function nearest(v: V, stack: number): number {
  const squares = [0, v.toeBoardSlope].map((slope) => Math.max(0, (slope - v.padRestAngle) * v.padArm));
  return squares.reduce((a, b) => (over(v, stack, b).clearance < over(v, stack, a).clearance ? b : a));
}

/** The floor's layers, and the pad over them at rest. */
function atRest(v: V) {
  const { loose, pressed } = floorStack({ layers: v.floorLayers });
  const rest = over(v, loose, 0);
  if (rest.clearance > 0) return { loose, pressed, rest };
  return { refused: (say) => `At rest the pad’s lower edge already stands ${say(-rest.clearance, 'length')} in the finished floor. The pivot is too low, the arm too long or the floor too thick: there is no travel to compute.` } satisfies Refusal;
}

function left(v: V, stack: number, travel: number): number {
  const { least } = over(v, stack, travel);
  // Two hundredths of a millimeter is rounding, not room.
  return least > 2e-5 ? least : 0;
}

export function quickCarpet(v: V & ValuesOf<'failedPadTravel'>): { readonly carpetAtFailed: number } | Refusal {
  const stands = atRest(v);
  return isRefusal(stands) ? stands : { carpetAtFailed: left(v, stands.loose, v.failedPadTravel) };
}

/** Common practice, no source: to keep with a circuit dead, and in a hard stop. */
export const keepFailed = 25 * mm;
export const keepHard = 40 * mm;
export const failedNearCarpet = (v: ValuesOf<'carpetAtFailed'>): boolean => v.carpetAtFailed < keepFailed;
export const hardNearCarpet = (v: ValuesOf<'carpetAtHard'>): boolean => v.carpetAtHard < keepHard;

export const padFloorFeed = defineFeed({
  id: 'pad-floor',
  title: 'Pedal over the finished floor',
  inputs: [
    { title: 'Pedal', of: ['pivotOverFloor', 'padArm', 'padRestAngle', 'padToEdge'] },
    { title: 'Floor', of: ['toeBoardStart', 'toeBoardSlope', 'floorLayers'] },
    { title: 'Travel', of: ['padTravelNormal', 'failedPadTravel'] },
  ],
  feeds: [brakingFeed],
  outputs: ['carpetAtFailed', 'carpetAtHard', 'carpetAtRest', 'travelToCarpet', 'padOverHeel', 'padOverBare', 'stackLoose', 'stackPressed'],
  alarms: [
    { caution: 'with-a-circuit-dead', level: 'danger', when: failedNearCarpet, first: 'with a circuit dead the pedal comes too near the carpet.' },
    { caution: 'hard-stop', level: 'warning', when: hardNearCarpet, first: 'a hard stop brings the pedal close to the carpet.' },
  ],
  compute: (v) => {
    const stands = atRest(v);
    if (isRefusal(stands)) return stands;
    const { loose, pressed, rest } = stands;
    const bare = v.pivotOverFloor - v.padArm * Math.cos(v.padRestAngle);
    return {
      carpetAtFailed: left(v, loose, v.failedPadTravel), carpetAtHard: left(v, loose, v.padTravelNormal), carpetAtRest: rest.clearance,
      travelToCarpet: rest.meets ?? nearest(v, loose), padOverHeel: bare - pressed, padOverBare: bare, stackLoose: loose, stackPressed: pressed,
    };
  },
});
