import { reachOf, shaftLine } from '../../engine/sweepMotion.ts';
import type { PairSweep } from '../../engine/clearanceSweep.ts';
import { inch, mm } from '../../units/si.ts';
import { defineCautions } from '../record.ts';
import type { Say, ValuesOf } from '../record.ts';
import type { ValueOf } from '../vocabulary/index.ts';
import { hot, motionsIn, nameOf, nearEngine, pairsSwept, pairWords, partsIn, stateWords, stop, toWatch, tooNear, watch } from './sweep.ts';
import type { SweepValues } from './sweep.ts';

type All = SweepValues & ValuesOf<'sweepLeast' | 'sweepGap' | 'pairsTooNear' | 'pairsToWatch' | 'pairsNearEngine'>;

const overlaps = (v: SweepValues): PairSweep[] => pairsSwept(v).filter(({ gap }) => gap < 0);
const told = (v: SweepValues, found: readonly PairSweep[], say: Say): string => `${found.slice(0, 3).map((pair) => `${pairWords(v, pair)}${pair.gap < 0 ? '' : `, ${pair.gapLessError > 0 ? say(pair.gapLessError, 'length') : 'nothing'} left`} (${stateWords(v, pair, say)})`).join('; ')}${found.length > 3 ? `; and ${found.length - 3} more` : ''}`;

/** Farther off its line than any joint of a passenger truck. */
const farEar = 4 * inch;
const farPedal = 24 * inch;
const offLine = (v: SweepValues): string[] => partsIn(v).flatMap((part, k) => (part.rides === 'steering' && reachOf(part, motionsIn(v), shaftLine(motionsIn(v))) > farEar ? [nameOf(v, k)] : []));
const offPivot = (v: SweepValues): string[] => partsIn(v).flatMap((part, k) => (part.rides === 'pedal' && reachOf(part, motionsIn(v), shaftLine(motionsIn(v))) > farPedal ? [nameOf(v, k)] : []));
const leftOut = (v: SweepValues): string[] => v.sweepParts.flatMap(({ name, touches }) => (touches === undefined ? [] : [`${name} and ${touches}`]));
const stillEngine = (v: SweepValues): boolean => v.engineRoll === 0 && v.sweepParts.some(({ on }) => on === 'engine');

/** Two upright rods, the second one x to the left. */
const rods = (on: ValueOf<'sweepParts'>[number]['on'], y: number) => ({
  sweepParts: [
    { name: 'a', on: 'frame', x1: -0.3, y1: 0.3, z1: 0.2, x2: -0.3, y2: 0.3, z2: 0.4, radius: 0.01 },
    { name: 'b', on, x1: -0.3, y1: 0.3 + y, z1: 0.2, x2: -0.3, y2: 0.3 + y, z2: 0.4, radius: 0.01 },
  ],
} as const);

export const sweepCautions = defineCautions<All>([
  {
    id: 'paper-only', level: 'danger',
    words: 'These are straight round pieces on stiff mounts. A steering shaft that rubs jams, a brake line that rubs is cut through, and what does it is a bolt head, a bracket or a hose that nobody typed.',
    todo: 'Clay or a drill shank at each of the closest places; then lock to lock, at all three heights, pedals up and down. Load the engine both ways only after the brakes have passed their standing tests, tires on the ground and chocked. If anything touches at any lock, load or height, do not drive.',
  },
  {
    id: 'overlap', level: 'danger', when: (v) => overlaps(v).length > 0,
    words: (v, say) => `These meet: ${told(v, overlaps(v), say)}. If they are joined, say so under “meant to touch”. If not, a coordinate is wrong or the parts cannot both be there.`,
    todo: 'Tape the distance between the two directly, in that state, and compare. Do not build to these numbers.',
    fires: rods('frame', 0.015), silent: {},
  },
  {
    id: 'stop', level: 'danger', when: (v) => pairsSwept(v).some((pair) => tooNear(pair) && pair.gap >= 0),
    words: (v, say) => `Under ${say(stop, 'length')} with the tape paid (common practice, no source): ${told(v, pairsSwept(v).filter((pair) => tooNear(pair) && pair.gap >= 0), say)}. On the road these touch.`,
    todo: 'Stop. Move one of the two, or measure better and sweep again. For steering and brakes let someone licensed look before the truck moves.',
    fires: rods('frame', 0.025), silent: {},
  },
  {
    id: 'watch', level: 'warning', when: (v) => v.pairsToWatch > 0,
    words: (v, say) => `Under ${say(watch, 'length')} with the tape paid (common practice, no source): ${told(v, pairsSwept(v).filter(toWatch), say)}. A mount that sags or a bent bracket takes that.`,
    todo: 'Make room, or measure these two again with calipers in that very state and look again after 100 miles.',
    fires: {}, silent: rods('frame', 0.2),
  },
  {
    id: 'engine-or-exhaust', level: 'warning', when: (v) => v.pairsNearEngine > 0,
    words: (v, say) => `Under ${say(hot, 'length')} to engine or exhaust as it rolls (common practice, no source): ${told(v, pairsSwept(v).filter((pair) => nearEngine(v, pair)), say)}. It swings farther as its mounts age, and an exhaust cooks hoses, boots and fluid.`,
    todo: 'Move the part, add a shield that is itself clear, or limit the roll with a strap or new mounts. Then sweep again.',
    fires: rods('engine', 0.04), silent: rods('frame', 0.2),
  },
  {
    id: 'list-not-whole', level: 'warning',
    words: 'Only the parts in the list are compared, and only these movements: steered wheels, a second pedal that swings on its own, an engine that moves forward and back on its mounts, twist of the cab and the arc of the suspension are not in it.',
    todo: 'Type tie rods and hoses once more as they stand at each lock, under names of their own. Then walk around the truck with the list.',
  },
  {
    id: 'left-out', level: 'notice', when: (v) => leftOut(v).length > 0,
    words: (v) => `Not compared, because you say they are joined: ${leftOut(v).slice(0, 8).join('; ')}${leftOut(v).length > 8 ? '; and more' : ''}.`,
    todo: 'Check that each of these really is a joint, and moves freely in it.',
    fires: {}, silent: rods('frame', 0.2),
  },
  {
    id: 'engine-still', level: 'caution', when: stillEngine,
    words: 'With no roll typed, the engine stands still in every state. It does not on the road.',
    todo: 'Film a ruler beside the pipe as the guide says. Until then type 3 degrees, better 5 on old mounts (common practice, no source).',
    fires: { engineRoll: 0 }, silent: {},
  },
  {
    id: 'far-off-its-line', level: 'caution', when: (v) => offLine(v).length > 0 || offPivot(v).length > 0,
    words: (v, say) => [
      offLine(v).length > 0 ? `More than ${say(farEar, 'length')} off the line it turns about: ${offLine(v).join('; ')}. No joint stands out that far.` : '',
      offPivot(v).length > 0 ? `More than ${say(farPedal, 'length')} from the pedal’s pivot: ${offPivot(v).join('; ')}. No pedal is that long.` : '',
    ].filter(Boolean).join(' '),
    todo: 'Check the two joints, the pivot and the part’s ends: all from the same mark, after the drop. Of a shaft with three joints sweep one half at a time.',
    fires: { pivotHeight: 40 * inch }, silent: {},
  },
  {
    id: 'perfect-tape', level: 'notice', when: (v) => v.positionError < 1 * mm,
    words: (v, say) => `A measuring error of ${say(v.positionError, 'length')} is better than a tape under a truck can do.`,
    todo: 'Measure one point on three days; half the spread is your error.',
    fires: { positionError: 0 }, silent: {},
  },
]);
