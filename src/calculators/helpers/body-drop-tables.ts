import { driverHeights, rides, ridesWith } from '../../engine/bodyDrop.ts';
import type { Attached, PartKind, Watched } from '../../engine/bodyDrop.ts';
import { mm } from '../../units/si.ts';
import type { Cell, Table } from '../show.ts';
import type { DropValues } from './body-drop-motion.ts';
import { dropType, pointAt } from './body-drop-motion.ts';

/** Rubber mounts let the body move this far either way (common practice, no source). */
export const mountMovement = 10 * mm;
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
