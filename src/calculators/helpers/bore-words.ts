import type { Judgement, PairResult } from '../../engine/boreFinder.ts';
import { standardGravity } from '../../engine/constants.ts';
import { footToRoad } from '../../engine/footToRoad.ts';
import type { End } from '../../engine/pairScore.ts';
import type { Say } from '../record.ts';
import { boreName } from '../scenes/bore-strip.ts';
import type { FinderValues } from './bore-search.ts';

export const nameOf = (d: number, say: Say): string => boreName(d, (x) => say(x, 'length'));
const inInches = (d: number, say: Say): string => boreName(d, (x) => say(x, 'length'), '\u00a0in');
export const pairName = (p: PairResult, say: Say): string => `${nameOf(p.frontBore, say)} + ${nameOf(p.rearBore, say)}`;

/** What ends a pair before the target rate, in words with the amount. */
function endWords(p: PairResult, { end, by }: { readonly end: End; readonly by: number }, v: FinderValues, say: Say): string {
  const z = say(v.brakingRate, 'brakingRate');
  return {
    'front-bottom': () => `front ${inInches(p.frontBore, say)} runs out of stroke by ${say(by, 'length')}`,
    'rear-bottom': () => `rear ${inInches(p.rearBore, say)} runs out of stroke by ${say(by, 'length')}`,
    'bar-stop': () => `bar meets its stop ${say(by, 'length')} too early`,
    'front-slides': () => `front tires slide before ${z}`,
    'rear-slides': () => `rear tires slide before ${z}`,
    carpet: () => `pedal meets the carpet ${say(by, 'length')} too early`,
  }[end]();
}

function missWords(p: PairResult, j: Judgement, say: Say): string {
  const by = (dimension: 'force' | 'length' | 'brakingRate' | 'share') => say(j.missedBy, dimension, 2);
  return {
    effort: () => `asks ${by('force')} more than the weakest driver has`,
    'front-stroke': () => `front ${inInches(p.frontBore, say)} uses ${by('length')} of the stroke kept in reserve`,
    'rear-stroke': () => `rear ${inInches(p.rearBore, say)} uses ${by('length')} of the stroke kept in reserve`,
    'pad-travel': () => `pedal ${by('length')} too deep`,
    'bar-tilt': () => `bar tilts ${by('length')} too far`,
    share: () => `bar ${by('share')} outside its band`,
    'lock-empty': () => `critical rate ${say(j.found, 'brakingRate', 2)} empty, ${by('brakingRate')} short`,
    'lock-laden': () => `critical rate ${say(j.found, 'brakingRate', 2)} loaded, ${by('brakingRate')} short`,
    'front-dead-travel': () => `front dead: pedal ${by('length')} too deep`,
    'front-dead-rate': () => `front dead: ${by('brakingRate')} short`,
    'rear-dead-travel': () => `rear dead: pedal ${by('length')} too deep`,
    'rear-dead-rate': () => `rear dead: ${by('brakingRate')} short`,
  }[j.criterion]();
}

/** Said by an end already. */
const coveredBy: Readonly<Record<End, readonly Judgement['criterion'][]>> = {
  'front-bottom': ['front-stroke'], 'rear-bottom': ['rear-stroke'], 'bar-stop': ['bar-tilt'], carpet: ['pad-travel'], 'front-slides': [], 'rear-slides': [],
};

/** Everything a pair misses in one sentence: first what puts it out, then the worst. */
export function missSentence(p: PairResult, v: FinderValues, say: Say): string {
  const covered = p.ends.flatMap(({ end }) => coveredBy[end]);
  const missed = p.judgements.filter((j) => !j.met && !covered.includes(j.criterion)).sort((a, b) => a.margin - b.margin);
  const out = p.verdict === 'too-hard' ? missed.filter((j) => j.criterion === 'effort') : [];
  const parts = [
    ...(p.verdict === 'rear-first' ? ['rear locks first'] : []),
    ...p.ends.map((e) => endWords(p, e, v, say)), ...[...out, ...missed.filter((j) => !out.includes(j))].map((j) => missWords(p, j, say)),
  ];
  if (parts.length === 0) return 'Misses nothing.';
  const text = parts.join('; ');
  return `${text[0]?.toUpperCase()}${text.slice(1)}.`;
}

export const foundOf = (p: PairResult, criterion: Judgement['criterion']): Judgement => p.judgements.find((j) => j.criterion === criterion) as Judgement;

/** What the finished set should show on the gauges, to freeze before buying. */
export function expected(p: PairResult, v: FinderValues, controlForce: number) {
  return footToRoad({
    controlForce, pedalRatio: p.pedalRatio, efficiency: v.linkageEfficiency, frontShare: p.frontShare, springForce: v.masterSpring, frontBore: p.frontBore, rearBore: p.rearBore, portStroke: v.portStroke, freePlay: v.pushrodFreePlay,
    frontTakeUpVolume: v.frontTakeUp, rearTakeUpVolume: v.rearTakeUp, frontCompliance: v.frontCompliance, rearCompliance: v.rearCompliance, frontGain: v.frontBrakeGain, rearGain: v.rearBrakeGain, pushOut: v.pushOutPressure,
    mass: v.frontAxleLoad + v.rearAxleLoad,
  });
}

/** Foot force at the target rate with the load in the bed: more mass to stop, the same brakes. */
export function ladenEffort(p: PairResult, v: FinderValues): number {
  const effort = foundOf(p, 'effort').found;
  // Past the first bite of both axles force and rate go in a straight line, whose slope is read from the masters.
  const area = (d: number) => (Math.PI / 4) * d * d;
  const perNewton = p.pedalRatio * v.linkageEfficiency * ((v.frontBrakeGain * p.frontShare) / area(p.frontBore) + (v.rearBrakeGain * (1 - p.frontShare)) / area(p.rearBore));
  return effort + (v.payload * standardGravity * v.brakingRate) / perNewton;
}
