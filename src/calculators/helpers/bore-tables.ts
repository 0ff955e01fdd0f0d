import type { Judgement, PairResult } from '../../engine/boreFinder.ts';
import { criteria } from '../../engine/pairScore.ts';
import { lbf } from '../../units/si.ts';
import type { Say } from '../record.ts';
import type { Table } from '../show.ts';
import { foundFor } from './bore-search.ts';
import type { FinderValues } from './bore-search.ts';
import { expected, foundOf, missSentence, pairName } from './bore-words.ts';

const dozen = 12;

const limitNames = {
  effort: ['foot force', 'force'], 'front-stroke': ['front stroke', 'length'], 'rear-stroke': ['rear stroke', 'length'], 'pad-travel': ['pedal travel', 'length'], 'bar-tilt': ['front clevis ahead', 'length'], share: ['front share', 'share'],
  'lock-empty': ['critical rate, empty', 'brakingRate'], 'lock-laden': ['critical rate, loaded', 'brakingRate'],
  'front-dead-travel': ['front dead: pedal', 'length'], 'front-dead-rate': ['front dead: rate', 'brakingRate'], 'rear-dead-travel': ['rear dead: pedal', 'length'], 'rear-dead-rate': ['rear dead: rate', 'brakingRate'],
} as const satisfies Record<Judgement['criterion'], readonly [string, 'force' | 'length' | 'share' | 'brakingRate']>;
const atLeast: readonly Judgement['criterion'][] = ['lock-empty', 'lock-laden', 'front-dead-rate', 'rear-dead-rate'];
/** From foot to failure, rather than in the order they are computed in. */
const told = Object.keys(limitNames) as Judgement['criterion'][];

const shortly = { 'rear-first': 'rear first', 'too-hard': 'too hard', never: 'never' } as const;
const row = (p: PairResult, name: string, say: Say) => [name, say(p.pedalRatio, 'ratio'), say(p.frontShare, 'share', 2), say(foundOf(p, 'effort').found, 'force'), p.verdict === 'reaches' ? String(p.met) : `${p.met}, ${shortly[p.verdict]}`];

export const boreTables: readonly Table<FinderValues>[] = [
  {
    caption: `The best dozen pairs in order, each with the ratio and bar setting that suit it: foot force at the target rate, and limits met of ${criteria.length}`,
    head: ['Front + rear, in', 'Ratio', 'Bar', 'Foot', 'Met'],
    rows: (v, say) => {
      const { pairs, own } = foundFor(v);
      return [...pairs.slice(0, dozen).map((p) => row(p, pairName(p, say), say)), row(own, `yours: ${pairName(own, say)}`, say)];
    },
  },
  {
    caption: 'What each misses: the first eight, then the ones a foot can push that never get there, then yours',
    head: ['Front + rear', 'Misses'],
    rows: (v, say) => {
      const { pairs, own } = foundFor(v);
      const line = (p: PairResult, name = pairName(p, say)) => [name, missSentence(p, v, say)];
      const never = pairs.filter((p, k) => k >= 8 && p.verdict === 'never' && foundOf(p, 'effort').met).slice(0, 4);
      return [...pairs.slice(0, 8), ...never].map((p) => line(p)).concat([line(own, `yours: ${pairName(own, say)}`)]);
    },
  },
  {
    caption: 'The first pair and yours, limit by limit (× : missed)',
    head: ['What', 'Limit', 'First', 'Yours'],
    rows: (v, say) => {
      const { pairs, own } = foundFor(v);
      const first = pairs[0] as PairResult;
      return told.map((criterion) => {
        const [name, dimension] = limitNames[criterion];
        const cell = (p: PairResult) => {
          const { found, met } = foundOf(p, criterion);
          return `${say(found, dimension)}${met ? '' : ' ×'}`;
        };
        const limit = criterion === 'share' ? `${say(v.shareLow, 'share')} to ${say(v.shareHigh, 'share')}` : `${atLeast.includes(criterion) ? '≥' : '≤'}\u00a0${say(foundOf(first, criterion).limit, dimension)}`;
        return [name, limit, cell(first), cell(own)];
      });
    },
  },
  {
    caption: 'Freeze this before buying: what the first pair should show on gauges and tape',
    head: ['Foot', 'Front', 'Rear', 'Pedal', 'Rate'],
    rows: (v, say) => [25, 50, 75, 100].map((pounds) => {
      const p = foundFor(v).pairs[0] as PairResult;
      const s = expected(p, v, pounds * lbf);
      const ended = s.frontStroke > v.frontMasterStroke || s.rearStroke > v.rearMasterStroke || s.padTravel > v.floorTravel;
      return [say(pounds * lbf, 'force'), ...(ended ? ['–', '–', 'at its end', '–'] : [say(s.frontPressure, 'pressure'), say(s.rearPressure, 'pressure'), say(s.padTravel, 'length'), say(s.rate, 'brakingRate')])];
    }),
  },
];
