import { standardGravity } from '../../engine/constants.ts';
import { idealCurve, idealDistribution } from '../../engine/distribution.ts';
import type { IdealPoint } from '../../engine/distribution.ts';
import { withPayload } from '../../engine/loads.ts';
import { isImpossible } from '../../engine/outcome.ts';
import type { Refusal, ValuesOf } from '../record.ts';
import type { At, Chart } from '../show.ts';

export type IdealInputs = 'frontAxleLoad' | 'rearAxleLoad' | 'wheelbase' | 'cgHeight' | 'brakingRate' | 'rearBrakeFraction' | 'payload' | 'payloadAhead' | 'payloadHeight' | 'frontBrakeGain' | 'rearBrakeGain' | 'pushOutPressure';
type V = ValuesOf<IdealInputs>;
type Shown = ValuesOf<IdealInputs | 'idealRearShare' | 'idealFrontForce' | 'idealRearForce' | 'fixedShareCriticalRate' | 'peakRearRate' | 'rearLoadFraction' | 'heightRatio' | 'ladenRearLoadFraction' | 'ladenHeightRatio'>;

export interface Truck {
  readonly rearFraction: number;
  readonly heightRatio: number;
  readonly weight: number;
}

/** Charts stop here: no street tire stops harder. */
const hardest = 1.2;

export function truckOf(v: V): Truck {
  const mass = v.frontAxleLoad + v.rearAxleLoad;
  return { rearFraction: v.rearAxleLoad / mass, heightRatio: v.cgHeight / v.wheelbase, weight: mass * standardGravity };
}

export function ladenTruck(v: V): Truck | Refusal {
  const r = withPayload({
    frontLoad: v.frontAxleLoad, rearLoad: v.rearAxleLoad, wheelbase: v.wheelbase, cgHeight: v.cgHeight, payload: v.payload, payloadAhead: v.payloadAhead, payloadHeight: v.payloadHeight,
  });
  if (!isImpossible(r)) return { rearFraction: r.rearFraction, heightRatio: r.cgHeight / v.wheelbase, weight: r.mass * standardGravity };
  return { refused: (say) => `This load lifts the ${r.impossible === 'front-axle-lifts' ? 'front' : 'rear'} wheels of the parked truck; ${say(r.by ?? 0, 'mass')} more would be needed to hold them down. Move it over the axle or make it lighter.` };
}

export function idealAt(truck: Truck, rate: number, who = 'The rear wheels'): IdealPoint | Refusal {
  const r = idealDistribution({ ...truck, rate });
  if (!isImpossible(r)) return r;
  return { refused: (say) => `${who} lift at ${say(rate - (r.by ?? 0), 'brakingRate')}, ${say(r.by ?? 0, 'brakingRate')} below the rate typed. With no load on the rear, no split is right.` };
}

/** Rate at which a fixed rear share is the ideal one; the ideal falls, the share does not. */
export const meets = (truck: Truck, share: number): number => (truck.rearFraction - share) / truck.heightRatio;

/** Front and rear brake force, each over the weight. */
const curve = (truck: Truck): At[] => idealCurve({ ...truck, upTo: hardest, steps: 48 }).points.map((p) => [p.frontForce / truck.weight, p.rearForce / truck.weight]);
/** The same for one share at all rates, and for one rate at all shares. */
const atShare = (share: number, rate: number): At => [(1 - share) * rate, share * rate];
const lastRate = (truck: Truck): number => Math.min(hardest, truck.rearFraction / truck.heightRatio);

const crosses = (v: Shown): boolean => v.fixedShareCriticalRate > 0 && v.fixedShareCriticalRate <= hardest;

export const idealCharts: readonly Chart<Shown>[] = [
  {
    title: 'Rear brake force against front, each over the weight',
    x: { label: 'front brake force over weight', dimension: 'ratio' },
    y: { label: 'rear brake force over weight', dimension: 'ratio' },
    series: (v) => {
      const truck = truckOf(v);
      const laden = ladenTruck(v);
      const end = lastRate(truck);
      return [
        { label: 'ideal, empty', tone: 'frame', points: curve(truck) },
        ...('refused' in laden || v.payload === 0 ? [] : [{ label: 'ideal, with the load', tone: 'ghost' as const, points: curve(laden) }]),
        { label: 'your split', tone: 'accent', points: [[0, 0], atShare(v.rearBrakeFraction, end)] },
        { label: 'this rate, less rear than ideal', tone: 'plain', points: [atShare(0, v.brakingRate), atShare(v.idealRearShare, v.brakingRate)] },
      ];
    },
    marks: (v, say) => {
      return [
        { at: atShare(v.idealRearShare, v.brakingRate), label: '', tone: 'plain' },
        ...(crosses(v) ? [{ at: atShare(v.rearBrakeFraction, v.fixedShareCriticalRate), label: say(v.fixedShareCriticalRate, 'brakingRate'), tone: 'alert' as const }] : []),
      ];
    },
    describe: (v, say) => `The empty truck’s ideal rises from zero, is highest at ${say(v.peakRearRate, 'brakingRate')} and turns down; at ${say(v.brakingRate, 'brakingRate')} it asks ${say(v.idealRearForce, 'force')} of the rear and ${say(v.idealFrontForce, 'force')} of the front. Your split of ${say(v.rearBrakeFraction, 'share')} to the rear is a straight line. ${v.fixedShareCriticalRate > 0 ? `They meet at ${say(v.fixedShareCriticalRate, 'brakingRate')}: under the curve the front locks first, over it the rear. Lock order leaves out push-out pressure, so it may differ in the third digit.` : 'It lies over the curve everywhere: the rear locks first.'}${v.payload > 0 && v.ladenRearLoadFraction > v.rearLoadFraction ? ' With the load the curve lies higher.' : ''}`,
  },
  {
    title: 'Ideal rear share against the braking rate',
    x: { label: 'braking rate', dimension: 'brakingRate' },
    y: { label: 'rear share of the brake force', dimension: 'share' },
    series: (v) => {
      const end = Math.min(hardest, 2 * v.peakRearRate);
      const ladenEnd = Math.min(hardest, v.ladenRearLoadFraction / v.ladenHeightRatio);
      return [
        { label: 'ideal, empty', tone: 'frame', points: [[0, v.rearLoadFraction], [end, v.rearLoadFraction - v.heightRatio * end]] },
        ...(v.payload === 0 ? [] : [{ label: 'ideal, with the load', tone: 'ghost' as const, points: [[0, v.ladenRearLoadFraction], [ladenEnd, v.ladenRearLoadFraction - v.ladenHeightRatio * ladenEnd]] as const }]),
        { label: 'your split', tone: 'accent', points: [[0, v.rearBrakeFraction], [hardest, v.rearBrakeFraction]] },
        ...(crosses(v) ? [{ label: 'where they meet', tone: 'alert' as const, points: [[v.fixedShareCriticalRate, 0], [v.fixedShareCriticalRate, v.rearBrakeFraction]] as const }] : []),
      ];
    },
    // The number stands at the foot of the upright line, where no curve runs through it.
    marks: (v, say) => (crosses(v) ? [{ at: [v.fixedShareCriticalRate, v.rearBrakeFraction], label: '', tone: 'alert' }, { at: [v.fixedShareCriticalRate, 0], label: say(v.fixedShareCriticalRate, 'brakingRate'), tone: 'alert' }] : []),
    describe: (v, say) => `The ideal share falls in a straight line from ${say(v.rearLoadFraction, 'share')} in the gentlest stop to ${say(v.idealRearShare, 'share')} at ${say(v.brakingRate, 'brakingRate')}; your ${say(v.rearBrakeFraction, 'share')} is level. Where yours lies lower, the front locks first.`,
  },
];
