import { caliperAreas } from '../../engine/caliper.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { reservoir } from '../../engine/reservoir.ts';
import { cm3, inch } from '../../units/si.ts';
import { sides } from '../helpers/circuit-volume.ts';
import type { Side } from '../helpers/circuit-volume.ts';
import { areaEquations } from '../helpers/ledger-equations.ts';
import { defineCalculator } from '../record.ts';
import type { Equation, Values, ValuesOf } from '../record.ts';
import { cupsScene } from '../scenes/cups.ts';
import type { QuantityKey } from '../vocabulary/index.ts';

type Inputs = `${Side}${'PistonDiameter' | 'Pistons' | 'CaliperType' | 'PadNew' | 'PadWorn' | 'DiscWear' | 'Reservoir'}` | 'reservoirMinimum' | 'sloshShare' | 'clutchFluidBack' | 'clutchRoom';
type V = ValuesOf<Inputs>;

const caliper = (v: V, side: Side) => ({ pistonDiameter: v[`${side}PistonDiameter`], pistonsPerSide: v[`${side}Pistons`], type: v[`${side}CaliperType`] });
const cupOf = (v: V, side: Side) => reservoir({
  axles: [{ ...caliper(v, side), newLining: v[`${side}PadNew`], wornLining: v[`${side}PadWorn`], discWear: v[`${side}DiscWear`] }],
  fullVolume: v[`${side}Reservoir`], minimumVolume: v.reservoirMinimum, sloshShare: v.sloshShare,
});

function sideEquations(side: Side): readonly Equation[] {
  const key = (name: string): QuantityKey => `${side}${name}` as QuantityKey;
  const wear = `(${side}PadNew - ${side}PadWorn + ${side}DiscWear)`;
  const of = (type: string) => (v: Values): boolean => v[`${side}CaliperType`] === type;
  return [
    { result: key('WearVolume'), expression: `2 * ${side}MovingArea * 2 * ${wear}`, words: 'Two calipers. A floating caliper’s pistons follow the wear of both pads.', source: 'derived: volume kept', when: of('floating') },
    { result: key('WearVolume'), expression: `2 * ${side}MovingArea * ${wear}`, words: 'Two calipers. Opposed pistons follow their own pad only, but all of them do.', source: 'derived: volume kept', when: of('opposed') },
    { result: key('ReservoirNeeded'), expression: `${side}WearVolume * (1 + sloshShare) + reservoirMinimum`, words: 'Wear, a reserve, and what must never leave.', source: 'common practice' },
    { result: key('ReservoirSpare'), expression: `${side}Reservoir - ${side}ReservoirNeeded`, words: 'What there is, less what is needed.', source: 'defined' },
    { result: key('WornAtMinimum'), expression: `(${side}Reservoir - reservoirMinimum) / ${side}WearVolume`, words: 'The part of the wear that brings the level down to its least; above 100 % the pads are finished first.', source: 'derived' },
  ];
}

export default defineCalculator({
  id: 'reservoir-volume',
  version: 1,
  title: 'Reservoir for full wear',
  purpose: 'Whether each reservoir holds the fluid that goes behind the pistons as pads and rotors wear, and whether the clutch’s has room.',
  inputs: [
    { title: 'Front calipers', of: ['frontPistonDiameter', 'frontPistons', 'frontCaliperType', 'frontPadNew', 'frontPadWorn', 'frontDiscWear'] },
    { title: 'Rear calipers', of: ['rearPistonDiameter', 'rearPistons', 'rearCaliperType', 'rearPadNew', 'rearPadWorn', 'rearDiscWear'] },
    { title: 'Reservoirs', of: ['frontReservoir', 'rearReservoir', 'reservoirMinimum', 'sloshShare'] },
    { title: 'Clutch', of: ['clutchFluidBack', 'clutchRoom'] },
  ],
  outputs: [
    'frontReservoirNeeded', 'frontReservoirSpare', 'rearReservoirNeeded', 'rearReservoirSpare', 'frontWearVolume', 'rearWearVolume', 'frontWornAtMinimum', 'rearWornAtMinimum', 'clutchRoomSpare',
    'frontClampArea', 'frontMovingArea', 'rearClampArea', 'rearMovingArea',
  ],
  compute: (v) => {
    const [f, r] = [cupOf(v, 'front'), cupOf(v, 'rear')];
    for (const [side, cup] of [['front', f], ['rear', r]] as const) {
      if (!isImpossible(cup)) continue;
      if (cup.impossible === 'worn-not-thinner') return { refused: (say) => `The ${side} brake pad, worn, is ${cup.by === 0 ? 'as thick as' : `${say(cup.by ?? 0, 'length')} thicker than`} new. Swap or correct the two.` };
      return { refused: (say) => `The least level of ${say(v.reservoirMinimum, 'volume')} is all that the ${side} reservoir holds, or more: ${say(cup.by ?? 0, 'volume')} over its full mark.` };
    }
    if (isImpossible(f) || isImpossible(r)) return { refused: () => 'These reservoirs are not possible.' };
    const [af, ar] = [caliperAreas(caliper(v, 'front')), caliperAreas(caliper(v, 'rear'))];
    return {
      frontReservoirNeeded: f.needed, frontReservoirSpare: v.frontReservoir - f.needed, rearReservoirNeeded: r.needed, rearReservoirSpare: v.rearReservoir - r.needed,
      frontWearVolume: f.wearVolume, rearWearVolume: r.wearVolume, frontWornAtMinimum: f.wornAtMinimum, rearWornAtMinimum: r.wornAtMinimum, clutchRoomSpare: v.clutchRoom - v.clutchFluidBack,
      frontClampArea: af.clampArea, frontMovingArea: af.pistonArea, rearClampArea: ar.clampArea, rearMovingArea: ar.pistonArea,
    };
  },
  summary: (v, say) => `Front: ${say(v.frontWearVolume, 'volume')} go behind the pistons, ${say(v.frontReservoirNeeded, 'volume')} are needed, ${v.frontReservoirSpare >= 0 ? `${say(v.frontReservoirSpare, 'volume')} to spare` : `${say(-v.frontReservoirSpare, 'volume')} short`}. Rear: ${say(v.rearWearVolume, 'volume')}, ${say(v.rearReservoirNeeded, 'volume')}, ${v.rearReservoirSpare >= 0 ? `${say(v.rearReservoirSpare, 'volume')} to spare` : `${say(-v.rearReservoirSpare, 'volume')} short`}.`,
  equations: [
    ...sides.flatMap(areaEquations), ...sides.flatMap(sideEquations),
    { result: 'clutchRoomSpare', expression: 'clutchRoom - clutchFluidBack', words: 'A wearing clutch disc lets the diaphragm’s fingers come out and push the slave’s piston back: its level rises.', source: 'derived: volume kept' },
  ],
  cautions: [
    {
      id: 'runs-dry', level: 'danger', when: (v) => Math.min(v.frontWornAtMinimum, v.rearWornAtMinimum) < 1,
      words: (v, say) => {
        const [side, at] = v.frontWornAtMinimum <= v.rearWornAtMinimum ? ['front', v.frontWornAtMinimum] as const : ['rear', v.rearWornAtMinimum] as const;
        return `The ${side} reservoir is down to its least level at ${say(at, 'share')} of the wear. After that it can draw air, and a circuit with air in it is a pedal on the floor.`;
      },
      todo: 'A larger reservoir. Until then look at it monthly, and read a falling level as worn pads or a leak, never as thirst.',
      fires: {}, silent: { frontReservoir: 10 * inch ** 3 },
    },
    {
      id: 'reserve-short', level: 'warning', when: (v) => Math.min(v.frontReservoirSpare, v.rearReservoirSpare) < 0,
      words: (v, say) => `A reservoir is short by ${say(-Math.min(v.frontReservoirSpare, v.rearReservoirSpare), 'volume')} of wear plus reserve.`,
      todo: 'Change pads earlier and type that thickness, or fit a larger reservoir.',
      fires: {}, silent: { frontReservoir: 10 * inch ** 3 },
    },
    {
      id: 'one-pot', level: 'danger',
      words: 'One pot for both circuits, without a wall inside, makes one circuit of two: one leak empties both.',
      todo: 'Two pots, or a wall high enough that each side keeps its fluid when the other is dry. Try it with a baster.',
    },
    {
      id: 'top-up', level: 'caution',
      words: 'A reservoir topped up on worn pads overflows when new ones push the pistons home. Glycol fluid takes paint with it.',
      todo: 'Draw the level down before pushing pistons back. Rags under it, water at hand.',
    },
    {
      id: 'clutch-overflows', level: 'caution', when: (v) => v.clutchRoomSpare < 0,
      words: (v, say) => `As the clutch disc wears its reservoir rises, and ends ${say(-v.clutchRoomSpare, 'volume')} above its cap’s seal. It weeps, and the piston may not come all the way back.`,
      todo: 'Leave room above the level when the disc is new.',
      fires: { clutchRoom: 2 * cm3 }, silent: {},
    },
  ],
  picture: {
    title: 'Both reservoirs as pads and rotors wear, to one scale of volume',
    describe: (v, say, at) => `At ${say(at, 'share')} of the wear the front reservoir holds ${say(Math.max(0, v.frontReservoir - at * v.frontWearVolume), 'volume')} of ${say(v.frontReservoir, 'volume')}, the rear ${say(Math.max(0, v.rearReservoir - at * v.rearWearVolume), 'volume')} of ${say(v.rearReservoir, 'volume')}. Least level ${say(v.reservoirMinimum, 'volume')}.`,
    motion: { label: 'Wear', dimension: 'share', range: () => [0, 1], start: () => 1 },
    scene: (v, at, say) => cupsScene({
      minimum: v.reservoirMinimum,
      cups: sides.map((side) => {
        const level = v[`${side}Reservoir`] - at * v[`${side}WearVolume`];
        return { name: side, full: v[`${side}Reservoir`], level: Math.max(0, level), tone: side, low: level < v.reservoirMinimum, label: level <= 0 ? 'dry' : say(level, 'volume') };
      }),
    }),
  },
  paper: {
    assumptions: ['Each reservoir feeds one axle, two calipers.', 'Both pads of a caliper wear alike.', 'The clutch is of the push kind, with a slave that takes up its own play: its level rises as the disc wears. A pull clutch, or one with set free play, may do otherwise.'],
    leftOut: ['Fluid in use while the foot is on the pedal.', 'Leaks.', 'Drum wheel cylinders, which need little.'],
    sources: [{ of: 'wear volume', kind: 'derived', note: 'volume kept' }, { of: 'a reservoir must cover all linings from new to worn', kind: 'from memory', id: 'fmvss-135', note: 'S5.4.2, for new vehicles' }, { of: 'reserve of 15 %', kind: 'common practice' }],
    examples: [{
      source: 'Worked by hand: two 54 mm floating calipers, 9 mm of wear on each pad',
      inputs: { frontPistonDiameter: 0.054, frontPistons: 1, frontCaliperType: 'floating', frontPadNew: 0.011, frontPadWorn: 0.002, frontDiscWear: 0 },
      results: { frontWearVolume: { value: 82.4 * cm3, within: 0.001 } },
    }],
    related: ['circuit-volume', 'fluid-head', 'plumbing-and-lamps', 'two-circuits'],
  },
});
