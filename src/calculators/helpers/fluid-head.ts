import { fluidHead } from '../../engine/head.ts';
import type { FluidHead } from '../../engine/head.ts';
import type { ValuesOf } from '../record.ts';
import type { Side } from './circuit-volume.ts';

export type HeadInputs =
  | 'reservoirHeight' | 'reservoirStation' | 'frontBleederHeight' | 'frontBleederStation' | 'rearBleederHeight' | 'rearBleederStation' | 'airedOutFront' | 'airedOutRear' | 'liftedFront' | 'liftedRear'
  | 'wheelbase' | 'steepestGrade' | 'jackLift' | 'fluidDensity';
export type Heads = ValuesOf<HeadInputs>;

/** How the frame, and the reservoir with it, moves at its own station when the suspension does. Calipers stay with the axles. */
export const movesHere = (v: Heads, front: number, rear: number): number => front + ((rear - front) * -v.reservoirStation) / v.wheelbase;

/** Every state of one circuit: three ride heights, each level and on the steepest grade both ways, and each end jacked. */
export function headsOf(v: Heads, side: Side): readonly FluidHead[] {
  const common = { reservoirX: v.reservoirStation, brakeX: v[`${side}BleederStation`], density: v.fluidDensity, brake: 'disc' as const, cupExpanders: true };
  const at = (name: string, moves: number) => ({ name, reservoirHeight: v.reservoirHeight + moves, brakeHeight: v[`${side}BleederHeight`] });
  const drive = at('drive', 0);
  const standing = fluidHead({
    ...common, grade: v.steepestGrade, attitudes: [drive, at('aired out', movesHere(v, v.airedOutFront, v.airedOutRear)), at('lifted', movesHere(v, v.liftedFront, v.liftedRear))],
  }).heads;
  // One axle lifted by H turns the truck by the angle whose sine is H over the wheelbase.
  const grade = v.jackLift / Math.sqrt(v.wheelbase ** 2 - v.jackLift ** 2);
  const jacked = fluidHead({ ...common, grade, attitudes: [drive] }).heads.slice(1).map((head) => ({ ...head, name: head.slope === 'nose-up' ? 'front jacked' : 'rear jacked' }));
  return [...standing, ...jacked];
}

export const least = (heads: readonly FluidHead[]): FluidHead => heads.reduce((low, head) => (head.height < low.height ? head : low));

/** As it reads in a sentence: 'aired out, nose down', 'rear jacked'. */
export function stateName(head: FluidHead): string {
  return head.name.endsWith('jacked') ? head.name : `${head.name}, ${{ level: 'level', 'nose-up': 'nose up', 'nose-down': 'nose down' }[head.slope]}`;
}
