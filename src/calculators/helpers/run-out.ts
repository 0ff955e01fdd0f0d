import { standardGravity } from '../../engine/constants.ts';
import { footToRoad, footWhere } from '../../engine/footToRoad.ts';
import type { FootState, Pedal } from '../../engine/footToRoad.ts';
import { inch } from '../../units/si.ts';
import type { Say } from '../record.ts';

/** 500 N, 112 lbf: what the light-vehicle brake test lets its driver push. */
export const legLimit = 500;
/** What the pedal should keep above the carpet, and the part of a stroke to plan with: common practice, no source. */
export const padKeep = 1.5 * inch;
export const padKeepWords = '1-1/2 in (38 mm)';
export const strokePlan = 0.8;
export const targetRate = 0.8;

/** `reserve` is a planning limit, `hard` one that no foot gets past. */
export interface RunOut {
  readonly id: keyof typeof inWords;
  readonly kind: 'reserve' | 'hard' | 'bar' | 'leg' | 'tires';
  readonly controlForce: number;
  readonly rate: number;
}

export interface Room {
  readonly floorTravel: number;
  readonly frontMasterStroke: number;
  readonly rearMasterStroke: number;
  readonly barSpacing: number;
  readonly barRestLead: number;
  readonly barStopAngle: number;
  readonly frontAxleLoad: number;
  readonly rearAxleLoad: number;
  readonly wheelbase: number;
  readonly cgHeight: number;
  readonly grip: number;
}

/** The ends that no foot gets past. */
export const hardEnds = { carpet: 'pedal on the carpet', 'front-bottom': 'front master at its bottom', 'rear-bottom': 'rear master at its bottom' } as const;

export const inWords = {
  'pad-reserve': () => `pedal within ${padKeepWords} of the carpet`,
  carpet: () => hardEnds.carpet,
  'front-plan': (say: Say) => `front master at ${say(strokePlan, 'share')} of its stroke`,
  'rear-plan': (say: Say) => `rear master at ${say(strokePlan, 'share')} of its stroke`,
  'front-bottom': () => hardEnds['front-bottom'],
  'rear-bottom': () => hardEnds['rear-bottom'],
  'bar-front': () => 'bar on its stop, front ahead',
  'bar-rear': () => 'bar on its stop, rear ahead',
  leg: (say: Say) => `leg at ${say(legLimit, 'force')}`,
  'front-tires': () => 'front tires slide',
  'rear-tires': () => 'rear tires slide',
} as const satisfies Record<string, (say: Say) => string>;

type Limit = readonly [id: RunOut['id'], kind: RunOut['kind'], excess: (s: FootState) => number];

function limits(room: Room): readonly Limit[] {
  const lead = room.barSpacing * Math.sin(room.barStopAngle);
  const height = room.cgHeight / room.wheelbase;
  const rearLoad = room.rearAxleLoad * standardGravity;
  const frontLoad = room.frontAxleLoad * standardGravity;
  return [
    ['pad-reserve', 'reserve', (s) => s.padTravel + padKeep - room.floorTravel],
    ['carpet', 'hard', (s) => s.padTravel - room.floorTravel],
    ['front-plan', 'reserve', (s) => s.frontStroke - strokePlan * room.frontMasterStroke],
    ['rear-plan', 'reserve', (s) => s.rearStroke - strokePlan * room.rearMasterStroke],
    ['front-bottom', 'hard', (s) => s.frontStroke - room.frontMasterStroke],
    ['rear-bottom', 'hard', (s) => s.rearStroke - room.rearMasterStroke],
    ['bar-front', 'bar', (s) => room.barRestLead + s.frontStroke - s.rearStroke - lead],
    ['bar-rear', 'bar', (s) => s.rearStroke - s.frontStroke - room.barRestLead - lead],
    ['leg', 'leg', (s) => s.controlForce - legLimit],
    ['front-tires', 'tires', (s) => s.frontForce - room.grip * (frontLoad + height * (s.frontForce + s.rearForce))],
    ['rear-tires', 'tires', (s) => s.rearForce - room.grip * (rearLoad - height * (s.frontForce + s.rearForce))],
  ];
}

/** Everything that runs out as foot force rises, in the order it does. Tires only once: after the first axle slides the rest differs. */
export function runOuts(pedal: Pedal, room: Room): readonly RunOut[] {
  const found = limits(room).flatMap(([id, kind, excess]): RunOut[] => {
    const controlForce = footWhere({ pedal, excess });
    return controlForce === undefined ? [] : [{ id, kind, controlForce, rate: footToRoad({ ...pedal, controlForce }).rate }];
  });
  const sorted = found.sort((a, b) => a.controlForce - b.controlForce);
  const tires = firstOf(sorted, 'tires');
  return sorted.filter((r) => r.kind !== 'tires' || r === tires);
}

export const firstOf = (list: readonly RunOut[], ...kinds: readonly RunOut['kind'][]): RunOut | undefined => list.find((r) => kinds.includes(r.kind));

/** Foot force for the design stop, undefined where no foot reaches it. */
export const footForTarget = (pedal: Pedal): number | undefined => footWhere({ pedal, excess: (s) => s.rate - targetRate });
