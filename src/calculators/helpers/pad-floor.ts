import { padOverFloor } from '../../engine/padArc.ts';
import { floorStack } from '../../engine/pedalCut.ts';
import { mm } from '../../units/si.ts';
import { defineFeed } from '../record.ts';
import type { ValuesOf } from '../record.ts';
import { brakingFeed } from './braking-rate.ts';

type V = ValuesOf<'pivotOverFloor' | 'toeBoardStart' | 'toeBoardSlope' | 'padArm' | 'padRestAngle' | 'padToEdge' | 'floorLayers'>;

const layers = (v: V) => floorStack({ layers: v.floorLayers });
export const pedal = (v: V) => ({ pivotHeight: v.pivotOverFloor, padArm: v.padArm, edgeArm: v.padArm + v.padToEdge, restAngle: v.padRestAngle });

/** Over the flat floor and over the toe board: what comes first counts. */
export function over(v: V, stack: number, travel: number): { clearance: number; toContact: number } {
  const both = [0, v.toeBoardSlope].map((slope) => padOverFloor({ ...pedal(v), slope, start: slope === 0 ? 0 : v.toeBoardStart, stack, travel }));
  // Past the level of the toe board's square an arm that never touched swings away again.
  const nearest = Math.max(0, (v.toeBoardSlope - v.padRestAngle) * v.padArm);
  return { clearance: Math.min(...both.map((b) => b.clearance)), toContact: Math.min(nearest, ...both.map((b) => b.toContact ?? nearest)) };
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
    return {
      carpetAtFailed: Math.max(0, over(v, loose, Math.min(v.failedPadTravel, rest.toContact)).clearance), carpetAtHard: Math.max(0, over(v, loose, Math.min(v.padTravelNormal, rest.toContact)).clearance), carpetAtRest: rest.clearance,
      travelToCarpet: rest.toContact, padOverHeel: bare - pressed, padOverBare: bare, stackLoose: loose, stackPressed: pressed,
    };
  },
});
