import points from '../../../content/demo-points.json' with { type: 'json' };
import { driverHeights, rides, ridesWith } from '../../engine/bodyDrop.ts';
import type { Attached, PartKind, Watched } from '../../engine/bodyDrop.ts';
import { parseQuantity } from '../../units/index.ts';
import { mm } from '../../units/si.ts';
import type { Cell, Table } from '../show.ts';
import type { DropValues } from './body-drop-motion.ts';
import { dropType, pairOf, pointAt } from './body-drop-motion.ts';

/** Rubber mounts let the body move this far either way (common practice, no source). */
export const mountMovement = 10 * mm;
/** Below this a tape sees no change. */
const nothing = 0.5 * mm;

const kinds = ['shaft', 'line', 'cable', 'hose', 'gap-up', 'gap-along'] as const;
type Kind = (typeof kinds)[number];

interface Pair {
  readonly name: string;
  readonly kind: Kind;
  readonly upper: { readonly x: number; readonly z: number; readonly on: Attached };
  readonly lower: { readonly x: number; readonly z: number; readonly on: Attached };
}

function length(name: string, text: string): number {
  const parsed = parseQuantity(text, 'length', 'in');
  if (!parsed.ok) throw new RangeError(`demo points, ${name}: expected a length, found ${text}`);
  return parsed.si;
}

const pairs: readonly Pair[] = points.pairs.map(({ name, kind, upper, lower }) => {
  if (!(kinds as readonly string[]).includes(kind)) throw new RangeError(`demo points, ${name}: expected one of ${kinds.join(', ')}, found ${kind}`);
  const end = (p: typeof upper) => {
    if (!['body', 'floor', 'frame'].includes(p.on)) throw new RangeError(`demo points, ${name}: expected body, floor or frame, found ${p.on}`);
    return { x: length(name, p.station), z: length(name, p.height), on: p.on as Attached };
  };
  return { name, kind: kind as Kind, upper: end(upper), lower: end(lower) };
});

/** Distance of a pair, or the gap in its own direction, before and after. */
function spanOf(v: DropValues, { kind, upper, lower }: Pair): { before: number; after: number } {
  const r = pairOf(v, lower, upper);
  if (kind === 'gap-up') return { before: upper.z - lower.z, after: upper.z - lower.z + r.dz };
  if (kind === 'gap-along') return { before: upper.x - lower.x, after: upper.x - lower.x + r.dx };
  return { before: r.before, after: r.after };
}

const shorter: Readonly<Record<Kind, string>> = { shaft: 'shortens: collapse length goes', line: 'bows: rubs or is pinched', cable: 'goes slack', hose: 'loses fall, kinks', 'gap-up': 'closes', 'gap-along': 'closes' };
const longer: Readonly<Record<Kind, string>> = { shaft: 'pulls out of its slip', line: 'is pulled at its flares', cable: 'is pulled: drags', hose: 'is pulled', 'gap-up': 'opens', 'gap-along': 'opens' };

function meaning(kind: Kind, after: number, change: number): string {
  const gap = kind === 'gap-up' || kind === 'gap-along';
  if (gap && after <= 0) return 'meets: no room';
  if (gap && after < mountMovement) return 'touches as the mounts move';
  if (Math.abs(change) < nothing) return kind === 'gap-along' ? 'same gap, but what slides past is new' : 'same';
  return change < 0 ? shorter[kind] : longer[kind];
}

export const pairsTable: Table<DropValues> = {
  caption: 'Example distances, invented, with your drop',
  head: ['From, to', 'Before', 'After', 'What it does'],
  rows: (v) => pairs.map((pair): readonly Cell[] => {
    const { before, after } = spanOf(v, pair);
    return [pair.name, { value: before, dimension: 'length' }, { value: after, dimension: 'length' }, meaning(pair.kind, after, after - before)];
  }),
};

const inWords: Readonly<Record<Watched, string>> = {
  padOverFloor: 'pedal pads over floor', hipOverPad: 'hip over pedal pads', rimOverSeat: 'wheel rim over seat', dashOverFloor: 'dash over floor (shins)', roofOverSeat: 'roof over seat',
  seatOverFloor: 'seat over floor', floorOverFrame: 'floor over frame', tunnelOverGearbox: 'tunnel over transmission', hoodOverEngine: 'hood over engine', mastersOverFrame: 'masters over frame',
  columnOverBox: 'column over steering box', fillerOverTank: 'filler neck over tank',
};

/** Cab heights use the drop at the middle of the cab. */
export const heightsTable: Table<DropValues> = {
  caption: 'What driver and wrench notice, with the drop at the middle of the cab',
  head: ['Height', 'Changes by'],
  rows: (v) => {
    const changes = driverHeights({ type: dropType(v), drop: (v.bodyDropFront + v.bodyDropRear) / 2 });
    return (Object.keys(inWords) as Watched[]).map((key): readonly Cell[] => [
      inWords[key], changes[key] === 0 ? 'nothing' : { value: changes[key], dimension: 'length' },
    ]);
  },
};

/** The engine’s names as an American reader has them. */
const partWords = (part: PartKind): string => (part === 'gearbox' ? 'transmission' : part === 'cross-members' ? 'crossmembers' : part);

const carriers = { body: 'the body', floor: 'the floor', frame: 'the frame', 'axle-front': 'the front axle', 'axle-rear': 'the rear axle' } as const;

export const ridesTable: Table<DropValues> = {
  caption: 'What comes down over the frame in this kind of drop, and what stays',
  head: ['With', 'Over the frame', 'Parts'],
  rows: (v) => (Object.keys(carriers) as (keyof typeof carriers)[]).map((carrier): readonly Cell[] => {
    const parts = (Object.keys(rides) as PartKind[]).filter((part) => rides[part] === carrier);
    const down = parts.some((part) => ridesWith({ part, type: dropType(v) }).comesDown);
    const stays = carrier === 'body' || carrier === 'floor' || carrier === 'frame' ? 'stays' : 'only the suspension moves it';
    return [carriers[carrier], down ? 'comes down' : stays, parts.map(partWords).join(', ')];
  }),
};

export const clearanceTable: Table<DropValues> = {
  caption: 'Above the road at each ride height',
  head: ['', 'Before', 'Drive', 'Aired out', 'Lifted'],
  rows: (v, say) => {
    const row = (name: string, point: { x: number; z: number; on: Attached }): readonly Cell[] => [
      name, ...(['before', 'drive height', 'aired out', 'lifted'] as const).map((stand) => say(pointAt(v, stand, point).overRoad, 'length')),
    ];
    return [
      row('frame line at front axle', { x: 0, z: 0, on: 'frame' }), row('frame line at rear axle', { x: -v.wheelbase, z: 0, on: 'frame' }),
      row('your frame point', { x: v.framePointStation, z: v.framePointHeight, on: 'frame' }), row('your body point', { x: v.bodyPointStation, z: v.bodyPointHeight, on: 'body' }),
    ];
  },
};
