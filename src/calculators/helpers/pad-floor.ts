import { padOverFloor } from '../../engine/padArc.ts';
import { floorStack } from '../../engine/pedalCut.ts';
import { mm } from '../../units/si.ts';
import { defineFeed } from '../record.ts';
import type { ValuesOf } from '../record.ts';
import { brakingFeed } from './braking-rate.ts';

type V = ValuesOf<'pivotOverFloor' | 'toeBoardStart' | 'toeBoardSlope' | 'padArm' | 'padRestAngle' | 'padToEdge' | 'floorLayers'>;

const layers = (v: V) => floorStack({ layers: v.floorLayers });
export const pedal = (v: V) => ({ pivotHeight: v.pivotOverFloor, padArm: v.padArm, edgeArm: v.padArm + v.padToEdge, restAngle: v.padRestAngle });

const planes = (v: V, stack: number, travel: number) => [0, v.toeBoardSlope].map((slope) => padOverFloor({ ...pedal(v), slope, start: slope === 0 ? 0 : v.toeBoardStart, stack, travel }));

/** Over the flat floor and over the toe board: what comes first counts. `meets` is undefined where the pad touches neither. */
export function over(v: V, stack: number, travel: number): { clearance: number; least: number; meets: number | undefined } {
  const both = planes(v, stack, travel);
  const meets = both.flatMap((b) => b.toContact ?? []);
  return { clearance: Math.min(...both.map((b) => b.clearance)), least: Math.min(...both.map((b) => b.least)), meets: meets.length > 0 ? Math.min(...meets) : undefined };
}

/** Travel at which a pad that never touches is nearest: where its arm stands square to the floor or to the toe board. */
function nearest(v: V, stack: number): number {
  const squares = [0, v.toeBoardSlope].map((slope) => Math.max(0, (slope - v.padRestAngle) * v.padArm));
  return squares.reduce((a, b) => (over(v, stack, b).clearance < over(v, stack, a).clearance ? b : a));
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
    const { loose, pressed } = layers(v);
    const rest = over(v, loose, 0);
    if (rest.clearance <= 0) return { refused: (say) => `At rest the pad’s lower edge already stands ${say(-rest.clearance, 'length')} in the finished floor. The pivot is too low, the arm too long or the floor too thick: there is no travel to compute.` };
    const bare = v.pivotOverFloor - v.padArm * Math.cos(v.padRestAngle);
    // Two hundredths of a millimeter is rounding, not room.
    const left = (travel: number): number => { const { least } = over(v, loose, travel); return least > 2e-5 ? least : 0; };
    return {
      carpetAtFailed: left(v.failedPadTravel), carpetAtHard: left(v.padTravelNormal), carpetAtRest: rest.clearance,
      travelToCarpet: rest.meets ?? nearest(v, loose), padOverHeel: bare - pressed, padOverBare: bare, stackLoose: loose, stackPressed: pressed,
    };
  },
});
