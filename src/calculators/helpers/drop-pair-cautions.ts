import { inch, mm } from '../../units/si.ts';
import { defineCautions } from '../record.ts';
import type { Say, ValuesOf } from '../record.ts';
import { mountMovement } from './body-drop-tables.ts';
import type { PairFound, PairsValues } from './drop-pairs.ts';
import { bendDiameters, bentTooTight, gapCloses, heights, leastRadius, leastSlack, pairName, pairsOf, tooShort, unseen } from './drop-pairs.ts';

type All = PairsValues & ValuesOf<'worstShortening' | 'worstBefore' | 'worstAfter' | 'pairsCloser' | 'gapsClosed' | 'partsTooShort' | 'bendsTooTight' | 'bodyPitch'>;

const some = (v: PairsValues, holds: (found: PairFound) => boolean): PairFound[] => pairsOf(v).filter(holds);
const names = (found: readonly PairFound[]): string => {
  const all = found.map(({ pair }) => pairName(pair));
  return all.length > 3 ? `${all.slice(0, 3).join('; ')}; and ${all.length - 3} more` : all.join('; ');
};

const shortens = ({ pair, loss }: PairFound): boolean => pair.kind === 'shaft' && loss > 1 * mm;
const lengthens = ({ pair, before, at }: PairFound): boolean => pair.kind === 'shaft' && heights.some((height) => at[height].span > before + 1 * mm);
const flexible = ({ pair }: PairFound): boolean => pair.kind === 'line' || pair.kind === 'cable' || pair.kind === 'hose';
const moves = (found: PairFound): boolean => flexible(found) && heights.some((height) => Math.abs(found.at[height].span - found.before) > unseen);
const taut = (found: PairFound): boolean => !tooShort(found) && (leastSlack(found)?.value ?? Infinity) < mountMovement;
const ofUnknownLength = (found: PairFound): boolean => flexible(found) && found.pair.length === undefined;

const slackWords = (found: readonly PairFound[], say: Say): string => found.slice(0, 3).map((one) => {
  const least = leastSlack(one);
  return `${pairName(one.pair)} ${least === undefined ? '' : `${say(Math.abs(least.value), 'length')} at ${least.height}`}`;
}).join('; ');

const twoPoints = (z: number, drop = 0) => ({
  truckPoints: [{ name: 'a', on: 'body', x: -0.5, y: 0, z }, { name: 'b', on: 'frame', x: -0.5 + drop, y: 0, z: 0.1 }],
} as const);

export const dropPointCautions = defineCautions<All>([
  {
    id: 'under-the-body', level: 'danger',
    words: 'A cab or frame on jacks, air springs or a hoist comes down when one of them lets go, and kills whoever is under it.',
    todo: 'Take every point with the truck on its wheels or on stands rated for it, wheels chocked. Measure each ride height from outside.',
  },
  {
    id: 'list-not-whole', level: 'warning',
    words: 'This computes the pairs you listed. What crushes a brake line or wedges a steering shaft is usually the pair that nobody listed.',
    todo: 'Walk around the truck with the list: everything that has one end on the body or an axle and one on the frame. Then look again after the drop, at all three heights and both steering locks.',
  },
  {
    id: 'shaft-shortens', level: 'danger', when: (v) => some(v, shortens).length > 0,
    words: (v, say) => `A shaft shortens: ${some(v, shortens).map((one) => `${pairName(one.pair)} by ${say(one.loss, 'length')}`).join('; ')}. In a steering shaft that comes out of the length that folds in a crash, and with none left the wheel is pushed at the driver.`,
    todo: 'Measure the slip left; keep at least 1-5/8 in (40 mm), better 2 in (50 mm) (common practice, no source), and every folding or break-away part. If that cannot be had, stop. Have steering work checked by someone licensed for it.',
    fires: {}, silent: { bodyDropFront: 0, bodyDropRear: 0 },
  },
  {
    id: 'shaft-lengthens', level: 'danger', when: (v) => some(v, lengthens).length > 0,
    words: (v) => `A shaft gets longer: ${names(some(v, lengthens))}. A shaft that pulls out of its slip takes the steering or the drive with it.`,
    todo: 'Measure the overlap that is left at every ride height. Have the shaft remade by someone licensed for it.',
    fires: { ...twoPoints(-0.1), pointPairs: [{ from: 'a', to: 'b', kind: 'shaft' }] }, silent: {},
  },
  {
    id: 'gap-closes', level: 'danger', when: (v) => v.gapsClosed > 0,
    words: (v, say) => `${some(v, gapCloses).slice(0, 3).map((one) => `${pairName(one.pair)}: ${one.at[one.least].span <= 0 ? `${say(-one.at[one.least].span, 'length')} too little, the parts meet` : `${say(one.at[one.least].span, 'length')} left`}`).join('; ')}. Rubber mounts let the body move about ${say(mountMovement, 'length')} either way (common practice, no source), so this touches on the road.`,
    todo: 'Drop less, or move one of the two parts before you cut.',
    fires: { bodyDropFront: 3.4 * inch, bodyDropRear: 3.4 * inch }, silent: {},
  },
  {
    id: 'part-too-short', level: 'danger', when: (v) => v.partsTooShort > 0,
    words: (v, say) => `Too short by: ${slackWords(some(v, tooShort), say)}. A brake hose or line that is pulled tears off, and that circuit is gone; a parking cable pulls the brakes on.`,
    todo: 'Fit a longer one, or move an end. Check it lifted, with the wheels hanging, and at both steering locks.',
    fires: { liftedFront: 6 * inch, liftedRear: 6 * inch }, silent: {},
  },
  {
    id: 'part-taut', level: 'warning', when: (v) => some(v, taut).length > 0,
    words: (v, say) => `Nearly tight: ${slackWords(some(v, taut), say)} to spare, and mounts move about ${say(mountMovement, 'length')} either way (common practice, no source).`,
    todo: 'Give it more length than mounts and steering take.',
    fires: { liftedFront: 4 * inch, liftedRear: 4 * inch }, silent: {},
  },
  {
    id: 'bend-too-tight', level: 'warning', when: (v) => v.bendsTooTight > 0,
    words: (v, say) => `Bent too tight: ${some(v, bentTooTight).slice(0, 3).map((one) => `${pairName(one.pair)}, at best to a radius of ${say(leastRadius(one) ?? 0, 'length')} where ${bendDiameters} outside diameters are ${say(bendDiameters * (one.pair.diameter as number), 'length')}`).join('; ')} (common practice, no source). A kinked hose closes, a kinked line cracks.`,
    todo: 'Shorten it, turn an end fitting, or lead it so that it bows wider.',
    fires: { pointPairs: [{ from: 'filler neck', to: 'tank spout', kind: 'hose', length: 24 * inch, diameter: 2.25 * inch }] }, silent: {},
  },
  {
    id: 'lines-changed', level: 'warning', when: (v) => some(v, moves).length > 0,
    words: (v) => `These get another length between their ends: ${names(some(v, moves))}. A line that bows lies on the rail or the exhaust; under a rail it is crushed when the frame lays out.`,
    todo: 'Make it new with a loop at the crossing, clip it, and look at all three ride heights with the steering straight and at both locks.',
    fires: {}, silent: { pointPairs: [{ from: 'hood', to: 'engine top', kind: 'gap' }] },
  },
  {
    id: 'length-unknown', level: 'notice', when: (v) => some(v, ofUnknownLength).length > 0,
    words: (v) => `No length is given for ${names(some(v, ofUnknownLength))}: whether it still reaches is not checked.`,
    todo: 'Lay a string along the whole part and tape the string.',
    fires: { pointPairs: [{ from: 'parking lever', to: 'cable bracket', kind: 'cable' }] }, silent: {},
  },
]);
