import type { Cell, Table } from '../show.ts';
import { mountMovement } from './body-drop-tables.ts';
import type { PairFound, PairRow, PairsValues } from './drop-pairs.ts';
import { bentTooTight, heights, leastRadius, leastSlack, pairName, pairsOf, unseen } from './drop-pairs.ts';

const shorter: Readonly<Record<PairRow['kind'], string>> = { shaft: 'shortens: collapse length goes', line: 'bows: rubs or is pinched', cable: 'goes slack', hose: 'sags or kinks', gap: 'closes' };
const longer: Readonly<Record<PairRow['kind'], string>> = { shaft: 'pulls out of its slip', line: 'is pulled at its flares', cable: 'is pulled: drags', hose: 'is pulled', gap: 'opens' };

function meaning({ pair, before, at, least, loss }: PairFound): string {
  if (pair.kind === 'gap' && at[least].span <= 0) return 'meets: no room';
  if (pair.kind === 'gap' && at[least].span < mountMovement) return 'touches as the mounts move';
  const gain = Math.max(...heights.map((height) => at[height].span)) - before;
  const words = [loss > unseen ? shorter[pair.kind] : '', gain > unseen ? longer[pair.kind] : ''].filter(Boolean);
  return words.length === 0 ? (pair.kind === 'gap' ? 'same gap; what slides past is new' : 'same') : words.join('; at another height ');
}

const length = (value: number): Cell => ({ value, dimension: 'length' });

export const pairsTable: Table<PairsValues> = {
  caption: 'Each pair, before and after',
  head: ['From, to', 'Before', 'Drive', 'Aired out', 'Lifted', 'What it does'],
  rows: (v) => pairsOf(v).map((found): readonly Cell[] => [pairName(found.pair), length(found.before), ...heights.map((height) => length(found.at[height].span)), meaning(found)]),
};

/** Only parts whose own length is known. */
export const slackTable: Table<PairsValues> = {
  caption: 'Slack of lines, cables and hoses whose own length you gave, − is too short',
  head: ['From, to', 'Drive', 'Aired out', 'Lifted', 'Gentlest bend possible'],
  rows: (v) => {
    const known = pairsOf(v).filter((found) => leastSlack(found) !== undefined);
    if (known.length === 0) return [['none yet', '', '', '', '']];
    return known.map((found): readonly Cell[] => {
      const radius = leastRadius(found);
      return [pairName(found.pair), ...heights.map((height) => length(found.at[height].slack as number)), radius === undefined ? 'straight' : bentTooTight(found) ? 'too tight' : length(radius)];
    });
  },
};
