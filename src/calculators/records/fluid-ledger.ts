import { caliperAreas } from '../../engine/caliper.ts';
import { atmosphere } from '../../engine/constants.ts';
import { inch, mm } from '../../units/si.ts';
import { barFeed } from '../helpers/balance-bar.ts';
import { partsOf, sides } from '../helpers/circuit-volume.ts';
import type { Side } from '../helpers/circuit-volume.ts';
import { itemNames, itemOf, ledgerAt, ledgerRows, pressuresAt, travelAt } from '../helpers/fluid-ledger.ts';
import type { Ledger, LedgerAt } from '../helpers/fluid-ledger.ts';
import { footToRoadEquations } from '../helpers/foot-to-road-equations.ts';
import { areaEquations, itemEquations, sumEquations } from '../helpers/ledger-equations.ts';
import { defineCalculator } from '../record.ts';
import type { ValuesOf } from '../record.ts';
import { travelScene } from '../scenes/travel.ts';

const items = ['gaps', 'knockBack', 'hoses', 'calipers', 'pads', 'fluid', 'air'] as const;
const whole = ['pedal', 'front', 'rear'] as const;
const optionOf = { front: { gaps: 'frontGaps', knockBack: 'frontKnockBack', hoses: 'frontHoses', calipers: 'frontCalipers', pads: 'frontPads', fluid: 'frontFluid', air: 'frontAir' }, rear: { gaps: 'rearGaps', knockBack: 'rearKnockBack', hoses: 'rearHoses', calipers: 'rearCalipers', pads: 'rearPads', fluid: 'rearFluid', air: 'rearAir' } } as const;

function largest(v: Ledger, l: LedgerAt) {
  const all = [
    ['freePlay', l.freePlayTravel] as const, ['port', v.pedalRatio * v.portStroke] as const, ['flex', l.flexTravel] as const,
    ...sides.flatMap((side) => items.map((item) => [optionOf[side][item], itemOf(l[side], item)] as const)),
  ];
  return all.reduce((a, b) => (b[1] > a[1] ? b : a));
}

/** Foot forces for the curve, up to the carpet or a bottomed master, closer together at the start where air bends it. */
function curve(v: Ledger): LedgerAt[] {
  const top = Math.max(1.3 * v.controlForce, 300);
  const points = Array.from({ length: 25 }, (_, k) => ledgerAt(v, top * (k / 24) ** 2));
  const over = points.findIndex((l) => l.padReserve < 0 || l.front.strokeReserve < 0 || l.rear.strokeReserve < 0);
  return over < 0 ? points : points.slice(0, over);
}

const oneCubicCentimeter = 1e-6;

/** The master that lacks most stroke, and how much; nothing where `by` is not above zero. */
function shortest(v: ValuesOf<`${Side}Stroke` | `${Side}MasterStroke`>): { readonly side: Side; readonly by: number } {
  const [front, rear] = sides.map((side) => v[`${side}Stroke`] - v[`${side}MasterStroke`]) as [number, number];
  return front > rear ? { side: 'front', by: front } : { side: 'rear', by: rear };
}

export default defineCalculator({
  id: 'fluid-ledger',
  version: 1,
  title: 'Fluid ledger: where the pedal goes',
  purpose: 'Every millimeter of pedal on one line: free play, ports, gaps, knock-back, hoses, calipers, brake pads, fluid, air and the mounting.',
  inputs: [
    { title: 'Foot and pedal', of: ['controlForce', 'pedalRatio', 'linkageEfficiency', 'pushrodFreePlay', 'flangeGive', 'dialTestForce', 'floorTravel'] },
    { title: 'Bar, masters and valve', of: ['frontShare', 'frontMasterBore', 'rearMasterBore', 'frontMasterStroke', 'rearMasterStroke', 'portStroke', 'masterSpring', 'rearValve', 'kneePressure', 'valveSlope'] },
    { title: 'Front calipers', of: ['frontPistonDiameter', 'frontPistons', 'frontCaliperType', 'frontPadGap', 'frontKnockBack', 'frontCaliperSwell'] },
    { title: 'Front hoses and fluid', of: ['frontHoses', 'frontHoseSwell', 'frontFluidVolume', 'frontAir'] },
    { title: 'Rear calipers', of: ['rearPistonDiameter', 'rearPistons', 'rearCaliperType', 'rearPadGap', 'rearKnockBack', 'rearCaliperSwell'] },
    { title: 'Rear hoses and fluid', of: ['rearHoses', 'rearHoseSwell', 'rearFluidVolume', 'rearAir'] },
    { title: 'Both circuits', of: ['padSqueeze', 'swellPressure', 'bulkModulus', 'airExponent'] },
  ],
  feeds: [barFeed],
  outputs: [
    'padTravelNormal', 'largestTravel', 'largestItem', 'padReserve', 'padTravelUsed', 'frontStroke', 'rearStroke', 'frontStrokeUsed', 'rearStrokeUsed', 'freePlayAtPad', 'portTravel', 'flexTravel',
    'frontGapTravel', 'frontKnockBackTravel', 'frontHoseTravel', 'frontCaliperTravel', 'frontPadTravel', 'frontFluidTravel', 'frontAirTravel',
    'rearGapTravel', 'rearKnockBackTravel', 'rearHoseTravel', 'rearCaliperTravel', 'rearPadTravel', 'rearFluidTravel', 'rearAirTravel',
    'rodForce', 'frontMasterArea', 'rearMasterArea', 'frontPressure', 'rearPressure', 'rearPressureAfterValve', 'frontClampArea', 'frontMovingArea', 'rearClampArea', 'rearMovingArea', 'standardAtmosphere',
  ],
  compute: (v) => {
    const l = ledgerAt(v, v.controlForce);
    const inlet = pressuresAt({ ...v, rearValve: 'none' }, v.controlForce).rearPressure;
    const [item, length] = largest(v, l);
    const [af, ar] = [caliperAreas(partsOf(v, 'front')), caliperAreas(partsOf(v, 'rear'))];
    return {
      padTravelNormal: l.padTravel, largestTravel: length, largestItem: item, padReserve: l.padReserve, padTravelUsed: l.padTravel / v.floorTravel,
      frontStroke: l.front.stroke, rearStroke: l.rear.stroke, frontStrokeUsed: l.front.stroke / v.frontMasterStroke, rearStrokeUsed: l.rear.stroke / v.rearMasterStroke,
      freePlayAtPad: l.freePlayTravel, portTravel: v.pedalRatio * v.portStroke, flexTravel: l.flexTravel,
      frontGapTravel: itemOf(l.front, 'gaps'), frontKnockBackTravel: itemOf(l.front, 'knockBack'), frontHoseTravel: itemOf(l.front, 'hoses'), frontCaliperTravel: itemOf(l.front, 'calipers'),
      frontPadTravel: itemOf(l.front, 'pads'), frontFluidTravel: itemOf(l.front, 'fluid'), frontAirTravel: itemOf(l.front, 'air'),
      rearGapTravel: itemOf(l.rear, 'gaps'), rearKnockBackTravel: itemOf(l.rear, 'knockBack'), rearHoseTravel: itemOf(l.rear, 'hoses'), rearCaliperTravel: itemOf(l.rear, 'calipers'),
      rearPadTravel: itemOf(l.rear, 'pads'), rearFluidTravel: itemOf(l.rear, 'fluid'), rearAirTravel: itemOf(l.rear, 'air'),
      rodForce: l.rodForce, frontMasterArea: l.frontArea, rearMasterArea: l.rearArea, frontPressure: l.frontPressure, rearPressure: inlet, rearPressureAfterValve: l.rearPressure,
      frontClampArea: af.clampArea, frontMovingArea: af.pistonArea, rearClampArea: ar.clampArea, rearMovingArea: ar.pistonArea, standardAtmosphere: atmosphere,
    };
  },
  howSure: { draws: 5000, quick: (v) => ({ padTravelNormal: travelAt(v, v.controlForce) }) },
  summary: (v, say) => {
    const names: Record<string, string> = { freePlay: 'free play', port: 'closing the ports', flex: 'the mounting' };
    const name = names[v.largestItem] ?? sides.flatMap((side) => items.map((item) => [optionOf[side][item] as string, `${side} ${itemNames[item]}`] as const)).find(([key]) => key === v.largestItem)![1];
    const short = shortest(v);
    const bottoms = short.by > 0 ? `. The ${short.side} master bottoms ${say(short.by, 'length')} before that, so it cannot be reached` : '';
    return `${say(v.controlForce, 'force')} on the pedal takes ${say(v.padTravelNormal, 'length')} of travel${v.padReserve > 0 ? bottoms || ` and leaves ${say(v.padReserve, 'length')} above the carpet` : `: ${say(-v.padReserve, 'length')} more than there is to the carpet, so it cannot be reached`}. The largest item is ${name}, ${say(v.largestTravel, 'length')}.`;
  },
  equations: [...footToRoadEquations.slice(0, 7), ...sides.flatMap(areaEquations), ...sides.flatMap(itemEquations), ...sumEquations()],
  cautions: [
    {
      id: 'on-carpet', level: 'danger', when: (v) => v.padReserve <= 0 || shortest(v).by > 0,
      words: (v, say) => (v.padReserve <= 0
        ? `This pressure needs ${say(-v.padReserve, 'length')} more pedal than there is. The pedal meets the carpet first, and a harder push changes nothing.`
        : `This pressure needs ${say(shortest(v).by, 'length')} more stroke than the ${shortest(v).side} master has. It bottoms first.`),
      todo: 'Do not drive. Work on the longest lines below, or fit a larger bore and find the foot force elsewhere.',
      fires: { floorTravel: 3 * inch }, silent: {},
    },
    {
      id: 'near-carpet', level: 'warning', when: (v) => v.padReserve > 0 && v.padReserve < 1 * inch,
      words: (v, say) => `Only ${say(v.padReserve, 'length')} are left above the carpet. A little air, a warm day or a corner that knocks the pads back takes that.`,
      todo: 'Keep 1 in (25 mm) above the finished carpet at the hardest stop (common practice, no source).',
      fires: { floorTravel: 4.9 * inch }, silent: { controlForce: 100 },
    },
    {
      id: 'zero-play', level: 'danger', when: (v) => v.pushrodFreePlay < 0.3 * mm,
      words: 'With next to no free play the piston may not come back past its port. Fluid that warms up then has no way out: the brakes drag, heat more, and lock.',
      todo: 'Set 0.02 to 0.06 in (0.5 to 1.5 mm) at the rod (common practice, no source). Check: fluid must spurt in the reservoir at the first touch.',
      fires: { pushrodFreePlay: 0 }, silent: {},
    },
    {
      id: 'air-takes', level: 'warning', when: (v) => v.frontAirTravel + v.rearAirTravel > 2 * mm,
      words: (v, say) => `Air takes ${say(v.frontAirTravel + v.rearAirTravel, 'length')} of pedal, most of it in the first bars: it feels like a gap, not like a sponge.`,
      todo: 'Bleed until the travel at a light push stops shrinking. Bleeder at the top, no loop of line above it.',
      fires: { frontAir: 0.5e-6 }, silent: {},
    },
    {
      id: 'knock-back-takes', level: 'warning', when: (v) => v.frontKnockBackTravel + v.rearKnockBackTravel > 10 * mm,
      words: (v, say) => `Knock-back takes ${say(v.frontKnockBackTravel + v.rearKnockBackTravel, 'length')}. It comes and goes: the pedal you tested in the driveway is not the one after a corner.`,
      todo: 'Rotor run-out, axle end float, wheel bearings. Then test again after a hard corner in an empty lot, at walking pace first.',
      fires: { rearKnockBack: 0.6 * mm }, silent: {},
    },
    {
      id: 'mounting-gives', level: 'caution', when: (v) => v.flexTravel > 5 * mm,
      words: (v, say) => `The masters’ mounting takes ${say(v.flexTravel, 'length')} of pedal. Metal that moves with every push cracks at the edge of a weld.`,
      todo: 'Brace it, then push again with the dial gauge on.',
      fires: { flangeGive: 1.5 * mm }, silent: {},
    },
    {
      id: 'hot-fluid', level: 'warning',
      words: 'Hot fluid gives more, and boiling fluid gives all the way: the pedal drops to the floor with no leak to be seen. Least boiling points, dry and wet: DOT 3 401 and 284 °F (205 and 140 °C), DOT 4 446 and 311 °F (230 and 155 °C), DOT 5 and 5.1 500 and 356 °F (260 and 180 °C). Wet is 3.7 % water by weight.',
      todo: 'Change the fluid yearly on a home-built truck (common practice). Long pedal and hot smell: stop, cool for half an hour, pump, test at walking pace.',
    },
  ],
  picture: {
    title: 'Where it goes at this foot force, to scale',
    describe: (v, say, at) => {
      const { parts, end, endName } = ledgerRows(v, whole[at] ?? 'pedal', say);
      return `${at === 0 ? 'Pedal pad' : `${at === 1 ? 'Front' : 'Rear'} piston`}, from rest to the ${endName}, ${say(end, 'length')} in all: ${parts.map((part) => `${part.name} ${part.label}`).join(', ')}.`;
    },
    states: { label: 'Show', names: ['pedal', 'front master', 'rear master'] },
    scene: (v, at, say) => {
      const rows = ledgerRows(v, whole[at] ?? 'pedal', say);
      return travelScene({ ...rows, whole: Math.max(rows.end, rows.parts.reduce((sum, part) => sum + part.length, 0)) });
    },
  },
  charts: [{
    title: 'Line pressure against pedal travel',
    x: { label: 'pedal travel', dimension: 'length' },
    y: { label: 'line pressure', dimension: 'pressure' },
    series: (v) => {
      const now = curve(v);
      const front = (points: readonly LedgerAt[]) => points.map((l) => [l.padTravel, l.frontPressure] as const);
      return [
        { label: 'front', tone: 'front', points: front(now) }, { label: 'rear', tone: 'rear', points: now.map((l) => [l.padTravel, l.rearPressure] as const) },
        { label: 'front, with 0.06 in³ (1 cm³) more air in it', tone: 'ghost', points: front(curve({ ...v, frontAir: v.frontAir + oneCubicCentimeter })) },
      ];
    },
    marks: (v) => (v.padReserve > 0 && Math.max(v.frontStrokeUsed, v.rearStrokeUsed) <= 1 ? [{ at: [v.padTravelNormal, v.frontPressure], label: 'you, front', tone: 'front' as const }] : []),
    describe: (v, say) => `Nothing until the gaps are closed at ${say(ledgerAt(v, 0).padTravel, 'length')}, then both pressures rise. Air shifts the curve to the right and bends its foot; swell makes it lean. The curves end where the pedal meets the carpet or a master its bottom.`,
  }],
  tables: [{
    caption: 'The ledger',
    head: ['Item', 'Front stroke', 'Rear stroke', 'Pedal'],
    rows: (v, say) => {
      const l = ledgerAt(v, v.controlForce);
      const line = (item: keyof typeof itemNames): string[] => {
        const [f, r] = sides.map((side) => l[side].lines.find((x) => x.item === item)!);
        return [itemNames[item], say(f!.stroke, 'length'), say(r!.stroke, 'length'), say(f!.padTravel + r!.padTravel, 'length')];
      };
      return [
        ['free play', '–', '–', say(l.freePlayTravel, 'length')], ...(Object.keys(itemNames) as (keyof typeof itemNames)[]).map(line),
        ['mounting', '–', '–', say(l.flexTravel, 'length')], ['together', say(l.front.stroke, 'length'), say(l.rear.stroke, 'length'), say(l.padTravel, 'length')],
      ];
    },
  }],
  paper: {
    assumptions: ['The bar weighs strokes as it splits force, square or tilted, rods parallel.', 'One pedal ratio through the whole swing.', 'Swell, squeeze and the mounting give in step with pressure or push.', 'The mounting moves both masters alike.', 'A slow push; two calipers on each axle.'],
    leftOut: ['The bar’s stop, which other pages watch.', 'Bending of pedal arm and bar: push against a blocked rod and measure it.', 'Stiffening of hoses and brake pads as they are squeezed.', 'Heat, beyond the bulk modulus you type.', 'Flow: a stab moves the pedal less at first, and then it sinks.'],
    sources: [
      { of: 'the sum, and both areas of a caliper', kind: 'derived', note: 'volume kept, free body of the bar' },
      { of: 'compression of the fluid', kind: 'published', id: 'esposito', note: 'example 2.11 agrees' },
      { of: 'boiling points and wet fluid', kind: 'published', id: 'fmvss-116', note: 'minima' },
      { of: 'hose expansion limits', kind: 'from memory', id: 'fmvss-106' },
      { of: 'gaps, knock-back, mounting, free play', kind: 'common practice' },
    ],
    examples: [
      {
        source: 'Worked by hand: 0.25 mm of knock-back in each front caliper of the reference truck',
        inputs: { frontKnockBack: 0.25 * mm, frontPistonDiameter: 0.054, frontPistons: 1, frontCaliperType: 'floating', frontMasterBore: 0.01778, pedalRatio: 6.2, frontShare: 0.62 },
        results: { frontKnockBackTravel: { value: 17.7 * mm, within: 0.003 } },
      },
      {
        source: 'Worked by hand: 1 cm³ of air, all of it squeezed away, 3/4 in master, 6:1, half of the bar: half of 21 mm; at 90 lbf 98 % of it is gone',
        inputs: { frontAir: 1e-6, airExponent: 1, frontMasterBore: 0.01905, pedalRatio: 6, frontShare: 0.5 },
        results: { frontAirTravel: { value: 10.5 * mm, within: 0.03 } },
      },
    ],
    related: ['circuit-volume', 'air-from-travel', 'braking-rate', 'circuit-failure', 'balance-bar'],
  },
});
