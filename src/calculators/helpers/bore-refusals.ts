import type { PairResult } from '../../engine/boreFinder.ts';
import type { Impossible } from '../../engine/outcome.ts';
import { isImpossible } from '../../engine/outcome.ts';
import type { Refusal } from '../record.ts';
import type { FinderValues } from './bore-search.ts';
import { ownShare, reachableShares } from './bore-search.ts';
import { missSentence, pairName } from './bore-words.ts';

/** Numbers that leave nothing to search. */
export function refuse(v: FinderValues): Refusal | undefined {
  for (const side of ['front', 'rear'] as const) {
    if (!(v[`${side}Compliance`] > 0)) return { refused: () => `The ${side} circuit is set to swell by nothing, so no pressure belongs to a stroke. Hoses, calipers and brake pads always give: type a little, such as 0.01 cm³/bar.` };
    const usable = v.strokePart * v[`${side}MasterStroke`];
    if (usable <= v.portStroke) return { refused: (say) => `The ${side} master may use ${say(usable, 'length')} of its stroke, and closing the port takes ${say(v.portStroke, 'length')}: the stroke is used up ${say(v.portStroke - usable, 'length')} before any pressure.` };
  }
  if (v.ratioFrom > v.ratioTo) return { refused: (say) => `The lowest ratio to try is ${say(v.ratioFrom - v.ratioTo, 'ratio')} above the highest. Swap the two.` };
  if (v.shareLow >= v.shareHigh) return { refused: (say) => `The lowest front share, ${say(v.shareLow, 'share')}, is not below the highest, ${say(v.shareHigh, 'share')}: no bar setting is left to try.` };
  const { from, to } = reachableShares(v);
  if (from > to) return { refused: (say) => `The bar cannot reach the share: ${say(v.barReach, 'length')} off center on ${say(v.barSpacing, 'length')} gives at most ${say(0.5 + v.barReach / v.barSpacing, 'share')} to one side, ${say(from - to, 'share')} short of the band. Another pair of bores or a longer thread.` };
  const own = ownShare(v);
  if (own <= 0 || own >= 1) return { refused: (say) => `The pivot stands ${say(Math.abs(v.barOffset) - v.barSpacing / 2, 'length')} outside a clevis, so one master would be pulled. It must lie between them: a smaller offset or a wider bar.` };
  if (v.barStop === 'fitted' && v.barStopAngle === 0) return { refused: () => 'A bar whose stop is at 0° cannot tilt, so it cannot share. Type the angle it swings to one side.' };
  const play = v.pedalRatio * v.pushrodFreePlay;
  if (play >= v.floorTravel) return { refused: (say) => `Free play alone moves the pedal ${say(play, 'length')}, and the carpet is at ${say(v.floorTravel, 'length')}. Nothing is left to brake with.` };
  if (v.brakingRate > v.grip) return { refused: (say) => `A road of grip ${say(v.grip, 'friction')} gives ${say(v.grip, 'brakingRate')} at the very most, and the target is ${say(v.brakingRate - v.grip, 'brakingRate')} above it. No parts reach it there.` };
  return undefined;
}

export function refuseSearch(v: FinderValues, no: Impossible | PairResult): Refusal {
  if (isImpossible(no)) {
    const by = no.by ?? 0;
    if (no.impossible === 'on-stop-at-rest') return { refused: (say) => `At rest the bar leans ${say(by, 'length')} beyond its stop. Check the two rod lengths.` };
    return { refused: (say) => `This load lifts the ${no.impossible === 'front-axle-lifts' ? 'front' : 'rear'} wheels off the road: ${say(by, 'mass')} are missing on that axle. Move the load, or make it lighter.` };
  }
  if (no.verdict !== 'never') return { refused: () => `In the nearest set one circuit makes no pressure at the target rate: its return spring takes all of its share. Check spring, share and target.` };
  return { refused: (say) => `No set tried ever reaches ${say(v.brakingRate, 'brakingRate')}. The nearest, ${pairName(no, say)} in at ratio ${say(no.pedalRatio, 'ratio')}, ends before it. ${missSentence({ ...no, judgements: [] }, v, say)} Change calipers, stroke, floor or brake pads: no bore does it.` };
}
