import { mph } from '../../units/si.ts';
import { brakingFeed } from '../helpers/braking-rate.ts';
import { fluidBehind, fluidCautions, fluidEquations, fluidGroup, fluidWords } from '../helpers/fluid-heat.ts';
import { haltTimeOf, massOf, parts, ringMass, ringOutweighs, saw, series, skinCurve, skinOf, stop, sweptOf } from '../helpers/rotor-heat.ts';
import type { Axle, HeatInputs, V } from '../helpers/rotor-heat.ts';
import { defineCalculator } from '../record.ts';
import type { Refusal, ValuesOf } from '../record.ts';

const axles = ['front', 'rear'] as const;
const rise = (axle: Axle) => `${axle}RotorEnergy / (${axle}RotorMass * rotorSpecificHeat)`;
const peak = (axle: Axle) => `ambient + ${axle}Rise * (1 - keptFraction^stops) / (1 - keptFraction)`;
const skin = 'frontRotorEnergy / (frontSweptArea * sqrt(haltTime * rotorDensity * rotorSpecificHeat * rotorConductivity))';
/** Of the two lumps. */
const hotter = (v: ValuesOf<'frontSeriesTemperature' | 'rearSeriesTemperature'>): number => Math.max(v.frontSeriesTemperature, v.rearSeriesTemperature);
const kept = 'derived: energy is kept';
const cooling = 'derived: Newton’s law of cooling';
const conduction = 'derived: conduction of heat';

function refuse(v: V): Refusal | undefined {
  for (const axle of axles) {
    const inside = v[`${axle}TrackInner`] - v[`${axle}TrackOuter`];
    if (inside >= 0) return { refused: (say) => `The ${axle} brake pad’s track has its inner radius ${say(inside, 'length')} outside its outer one. No face is left to rub on.` };
  }
  if (v.speed < 0.1 * mph) return { refused: (say) => `At ${say(v.speed, 'speed')} there is nothing to stop and no heat.` };
  const haltTime = haltTimeOf(v);
  if (haltTime > v.stopInterval) return { refused: (say) => `At this braking rate one stop takes ${say(haltTime, 'time')}, ${say(haltTime - v.stopInterval, 'time')} longer than the time you give from one stop to the next.` };
  return undefined;
}

export default defineCalculator({
  id: 'rotor-heat',
  version: 2,
  // The first version knew the skin of the front only. A link of it gets the front’s track and wall at the rear as well.
  upgrade: { 1: (link) => new Map([...(['track-outer', 'track-inner', 'rotor-wall'] as const).map((name) => [`rear-${name}`, link.get(`front-${name}`) ?? ''] as const), ...link]) },
  title: 'Rotor heat: one stop and many',
  purpose: 'How hot rotors, their rubbed skin and the fluid behind them get in one stop and in a row of stops.',
  inputs: [
    { title: 'Truck', of: ['frontAxleLoad', 'rearAxleLoad', 'payload', 'rearBrakeFraction'] },
    { title: 'Stops', of: ['speed', 'brakingRate', 'stops', 'stopInterval'] },
    { title: 'Rotors', of: ['frontRotorMass', 'rearRotorMass', 'frontTrackOuter', 'frontTrackInner', 'frontRotorWall', 'rearTrackOuter', 'rearTrackInner', 'rearRotorWall', 'padFadeTemperature'] },
    { title: 'Cooling', of: ['ambient', 'coolingTime'] },
    fluidGroup,
    { title: 'Iron and shares', of: ['rotorFraction', 'rotatingFraction', 'rotorSpecificHeat', 'rotorConductivity', 'rotorDensity'] },
  ],
  feeds: [brakingFeed],
  outputs: [
    'frontSeriesTemperature', 'rearSeriesTemperature', 'frontRise', 'rearRise', 'frontSeriesLimit', 'skinTemperature', 'rearSkinTemperature', 'skinRise', 'rearSkinRise', 'thickSkinRise', 'thickHaltRise', 'fluidTemperature', 'wetMargin', 'dryMargin',
    'stopEnergy', 'frontRotorEnergy', 'rearRotorEnergy', 'keptFraction', 'haltTime', 'heatedDepth', 'frontSweptArea', 'rearSweptArea', 'wetBoilingPoint', 'dryBoilingPoint', 'ladenMass',
  ],
  compute: (v) => {
    const no = refuse(v);
    if (no) return no;
    const haltTime = haltTimeOf(v);
    const [front, rear] = [stop(v, 'front'), stop(v, 'rear')];
    const [f, r] = [series(v, front.rise, v.stops), series(v, rear.rise, v.stops)];
    const [thick, wall, rearWall] = [skinOf(v, 'front', undefined), skinOf(v, 'front', v.frontRotorWall), skinOf(v, 'rear', v.rearRotorWall)];
    const [frontSeriesTemperature, rearSeriesTemperature] = [v.ambient + f.peak, v.ambient + r.peak];
    return {
      frontSeriesTemperature, rearSeriesTemperature, frontRise: front.rise, rearRise: rear.rise, frontSeriesLimit: v.ambient + f.limit,
      skinTemperature: frontSeriesTemperature - front.rise + wall.peakRise, rearSkinTemperature: rearSeriesTemperature - rear.rise + rearWall.peakRise, skinRise: wall.peakRise, rearSkinRise: rearWall.peakRise, thickSkinRise: thick.peakRise, thickHaltRise: thick.haltRise,
      stopEnergy: front.stopEnergy, frontRotorEnergy: front.rotorEnergy, rearRotorEnergy: rear.rotorEnergy, keptFraction: f.kept, haltTime, heatedDepth: thick.heatedDepth, frontSweptArea: sweptOf(v, 'front'), rearSweptArea: sweptOf(v, 'rear'),
      ladenMass: massOf(v), ...fluidBehind(v, v.ambient + Math.max(f.peak, r.peak)),
    };
  },
  howSure: { quick: (v) => refuse(v) ?? { frontSeriesTemperature: v.ambient + series(v, stop(v, 'front').rise, v.stops).peak } },
  summary: (v, say) => `One stop from ${say(v.speed, 'speed')} warms each front rotor by ${say(v.frontRise, 'temperatureRise')} and each rear one by ${say(v.rearRise, 'temperatureRise')}. After ${v.stops === 1 ? 'it' : `${v.stops} of them, ${say(v.stopInterval, 'time')} apart,`} the fronts are at ${say(v.frontSeriesTemperature, 'temperature')} and the rears at ${say(v.rearSeriesTemperature, 'temperature')}; ${fluidWords(v, say)}.`,
  equations: [
    { result: 'ladenMass', expression: 'frontAxleLoad + rearAxleLoad + payload', words: 'Truck and load.', source: 'derived' },
    { result: 'stopEnergy', expression: 'ladenMass * speed^2 / 2 * (1 + rotatingFraction)', words: 'All motion becomes heat. Twice the speed is four times the heat.', source: kept },
    { result: 'frontRotorEnergy', expression: 'stopEnergy * rotorFraction * (1 - rearBrakeFraction) / 2', words: 'The front’s share of the brake force, over two rotors, less what the brake pads take.', source: kept },
    { result: 'rearRotorEnergy', expression: 'stopEnergy * rotorFraction * rearBrakeFraction / 2', words: 'And the rear’s.', source: kept },
    { result: 'frontRise', expression: rise('front'), words: 'Heat over what the iron holds. Light rotors get hot.', source: kept },
    { result: 'rearRise', expression: rise('rear'), words: 'The same for the rear.', source: kept },
    { result: 'keptFraction', expression: 'exp(-stopInterval / coolingTime)', words: 'What a pause leaves of the excess over the air.', source: cooling },
    { result: 'frontSeriesTemperature', expression: peak('front'), words: 'Each stop adds its rise to what the pauses have left of all those before it.', source: `${cooling}; geometric series` },
    { result: 'rearSeriesTemperature', expression: peak('rear'), words: 'The same for the rear.', source: `${cooling}; geometric series` },
    { result: 'frontSeriesLimit', expression: 'ambient + frontRise / (1 - keptFraction)', words: 'Where a pause gives off just what a stop brings.', source: cooling },
    { result: 'haltTime', expression: 'speed / (g * brakingRate)', words: 'A steady loss of speed.', source: 'derived' },
    { result: 'frontSweptArea', expression: 'pi * (frontTrackOuter^2 - frontTrackInner^2)', words: 'One turn of the wheel brings the whole ring under the brake pads.', source: 'derived' },
    { result: 'rearSweptArea', expression: 'pi * (rearTrackOuter^2 - rearTrackInner^2)', words: 'The same for the rear.', source: 'derived' },
    { result: 'heatedDepth', expression: '2 * sqrt(rotorConductivity * haltTime / (rotorDensity * rotorSpecificHeat))', words: 'How far in the heat gets while you stop. A wall thinner than this fills up.', source: conduction },
    { result: 'thickSkinRise', expression: `2 * sqrt(2) / (3 * sqrt(pi)) * ${skin}`, words: 'The brakes bring heat fastest at the start, and it sinks in all the while: the skin is hottest half way through the stop. The number in front is 0.532.', source: conduction },
    { result: 'thickHaltRise', expression: `2 / (3 * sqrt(pi)) * ${skin}`, words: 'At the halt it is already cooler. The number in front is 0.376.', source: conduction },
    { result: 'skinTemperature', expression: 'frontSeriesTemperature - frontRise + skinRise', words: 'The last stop starts where the pause before it ended. The rise of the skin in your wall, with its far side keeping the heat in, is a series of exponentials summed here.', source: conduction },
    { result: 'rearSkinTemperature', expression: 'rearSeriesTemperature - rearRise + rearSkinRise', words: 'The same for the rear, whose walls are often thinner.', source: conduction },
    ...fluidEquations('Series'),
  ],
  cautions: [
    {
      id: 'real-parts-vary', level: 'warning',
      words: 'The whole rotor is taken as one lump of one temperature. Real parts differ from it by a quarter either way, and hot spots by more.',
      todo: 'Hot smell, smoke or a pedal that gets longer: ease off, gear down, stop where it is safe, and let the brakes cool rolling slowly and not with the pedal held.',
    },
    {
      id: 'pad-fades', level: 'danger', when: (v) => hotter(v) > v.padFadeTemperature,
      words: (v, say) => `The ${v.frontSeriesTemperature >= v.rearSeriesTemperature ? 'front' : 'rear'} rotors reach ${say(hotter(v), 'temperature')}, and this brake pad fades from ${say(v.padFadeTemperature, 'temperature')}. The same push then stops less, and pushing harder makes more heat.`,
      todo: 'Slow down before it, not in it. Heavier or vented rotors, a brake pad made for more heat, or longer pauses.',
      fires: {}, silent: { stops: 3 },
    },
    {
      id: 'skin-fades', level: 'caution', when: (v) => Math.max(v.skinTemperature, v.rearSkinTemperature) > v.padFadeTemperature && hotter(v) <= v.padFadeTemperature,
      words: (v, say) => `The lumps stay below fade, but the rubbed skin of the ${v.skinTemperature >= v.rearSkinTemperature ? 'front' : 'rear'} touches ${say(Math.max(v.skinTemperature, v.rearSkinTemperature), 'temperature')} in the middle of the last stop. The brake pad feels the skin.`,
      todo: 'Expect the last stop of such a row to ask for a harder foot.',
      fires: { stops: 6 }, silent: { stops: 1 },
    },
    {
      id: 'ring-outweighs', level: 'caution', when: (v) => ringOutweighs(v).length > 0,
      words: (v, say) => ringOutweighs(v).map((axle) => `The ring the ${axle} brake pads rub, two walls of ${say(v[`${axle}RotorWall`], 'length')}, alone would weigh ${say(ringMass(v, axle), 'mass')}. The whole ${axle} rotor is typed as ${say(v[`${axle}RotorMass`], 'mass')}, so one of these numbers is wrong, and with it every temperature of that axle.`).join(' '),
      todo: 'Put the rotor on a scale, then measure its wall and the track of the brake pad again.',
      fires: { frontRotorMass: 2.5 }, silent: {},
    },
    {
      id: 'out-of-range', level: 'notice', when: (v) => hotter(v) > 673.15,
      words: (v, say) => `Above ${say(673.15, 'temperature')} a rotor glows away heat that this sum leaves out, and iron holds more per degree. The true figure is lower than ${say(hotter(v), 'temperature')}, and too hot all the same.`,
      todo: 'Take it as “far too hot”, not as a temperature.',
      fires: { stopInterval: 5 }, silent: {},
    },
    ...fluidCautions<ValuesOf<HeatInputs | 'frontSeriesTemperature' | 'rearSeriesTemperature' | 'fluidTemperature' | 'wetMargin' | 'dryMargin' | 'wetBoilingPoint' | 'dryBoilingPoint'>>((v) => hotter(v), { soakFraction: 0.9 }, { stops: 1 }),
  ],
  charts: [{
    title: 'Rotors through the row of stops',
    x: { label: 'time', dimension: 'time' },
    y: { label: 'rotor', dimension: 'temperature' },
    series: (v) => {
      const end = Math.max((Math.min(v.stops, 30) - 1) * v.stopInterval, 1);
      const level = (t: number) => [[0, t], [end, t]] as const;
      return [
        { label: 'front', tone: 'front', points: saw(v, 'front') }, { label: 'rear', tone: 'rear', points: saw(v, 'rear') },
        { label: 'brake pad fades', tone: 'alert', points: level(v.padFadeTemperature) }, { label: 'old fluid would boil, if it got as hot', tone: 'ghost', points: level(v.wetBoilingPoint) },
      ];
    },
    describe: (v, say) => `Each stop lifts the fronts by ${say(v.frontRise, 'temperatureRise')}, each pause keeps ${say(v.keptFraction, 'share')} of the excess. After ${v.stops === 1 ? 'one' : v.stops} they stand at ${say(v.frontSeriesTemperature, 'temperature')}; without end they would come to ${say(v.frontSeriesLimit, 'temperature')}. The brake pad fades from ${say(v.padFadeTemperature, 'temperature')}.${v.stops > 30 ? ' The first 30 are drawn.' : ''}`,
  }, {
    title: 'Rubbed skin of a rotor during one stop',
    x: { label: 'time from the first bite', dimension: 'time' },
    y: { label: 'rise', dimension: 'temperatureRise' },
    series: (v) => [
      { label: 'front skin', tone: 'front', points: skinCurve(v, 'front', v.frontRotorWall) }, { label: 'front skin, if the wall were thick', tone: 'ghost', points: skinCurve(v, 'front', undefined) },
      { label: 'rear skin', tone: 'rear', points: skinCurve(v, 'rear', v.rearRotorWall) }, { label: 'whole front rotor', tone: 'accent', points: parts.map((part) => [part * haltTimeOf(v), stop(v, 'front').rise * part * (2 - part)] as const) },
    ],
    describe: (v, say) => `The front skin rises fast, is hottest at ${say(v.skinRise, 'temperatureRise')} over where it began, after half of the ${say(v.haltTime, 'time')} or later, and is cooling again at the halt. The front rotor as a whole rises all the way to ${say(v.frontRise, 'temperatureRise')}. The rear skin’s highest rise is ${say(v.rearSkinRise, 'temperatureRise')}.`,
  }],
  tables: [{
    caption: 'What the speed does',
    head: ['Stops from', 'Heat of one', 'Fronts after it', 'Fronts after the row', 'Rears after the row'],
    rows: (v) => [30, 45, 60, 75].map((miles) => {
      const at = { ...v, speed: miles * mph };
      const [s, rear] = [stop(at, 'front'), stop(at, 'rear')];
      return [{ value: at.speed, dimension: 'speed' }, { value: s.stopEnergy, dimension: 'energy' }, { value: v.ambient + s.rise, dimension: 'temperature' }, { value: v.ambient + series(at, s.rise, v.stops).peak, dimension: 'temperature' }, { value: v.ambient + series(at, rear.rise, v.stops).peak, dimension: 'temperature' }];
    }),
  }],
  paper: {
    assumptions: [
      'Each stop is to standstill at a steady rate and starts as soon as the pause is over. For a stop from one speed to another, type the speed whose square is the difference of the two squares.',
      'Heat divides between the axles as the brake force does.',
      'The excess over the air falls by the same part in every second of a pause.',
      'The rubbed skin: the whole ring is warmed evenly, and no heat leaves through the far side of the wall.',
      'Discs at all four wheels. With drums at the rear its figures mean nothing: a drum is rubbed from one side, weighs more and cools more slowly.',
    ],
    leftOut: ['Drag of air and tires, which take a little of the heat.', 'Cooling during the stop, and radiation.', 'Vanes behind a cheek, which take some of its heat at once: with one cheek typed as the wall, the skin comes out on the hot side.', 'Heat that goes on into hub, wheel and bearing grease.', 'Bands and spots hotter than the rest of the ring.'],
    sources: [
      { of: 'temperature of the lump', kind: 'derived', note: 'energy kept; compare the truck on a hill in OpenStax 14.2', id: 'openstax' },
      { of: 'rise of the skin, 0.532 at half time and 0.376 at the halt', kind: 'derived', note: 'a coefficient of 0.527 for the highest rise goes about (from memory): 1 % low for that, 40 % high for the halt' },
      { of: 'boiling points of DOT 3, 4 and 5.1', kind: 'published', id: 'fmvss-116', note: 'read in texts that quote the standard' },
      { of: 'cooling time 150 to 400 s, fade of street brake pads from 300 to 400 °C, 90 to 95 % into the rotor', kind: 'common practice' },
      { of: 'half of the excess reaching the fluid', kind: 'common practice', note: 'an invented middle: measure yours' },
    ],
    examples: [
      {
        source: 'Worked by hand: 1340 kg from 60 mph at 0.8 g, 76 % on the front, 6 kg rotors, 93 % into them: 61.5 K in one stop, 177 kJ',
        inputs: { frontAxleLoad: 780, rearAxleLoad: 560, payload: 0, rearBrakeFraction: 0.24, speed: 26.8224, brakingRate: 0.8, stops: 10, stopInterval: 60, coolingTime: 250, frontRotorMass: 6, rotorFraction: 0.93, rotatingFraction: 0.04, rotorSpecificHeat: 480, ambient: 293 },
        results: { frontRise: { value: 61.5, within: 0.002 }, frontRotorEnergy: { value: 177e3, within: 0.003 }, frontSeriesTemperature: { value: 555, within: 0.002 } },
      },
      {
        source: 'Wentzell, Machine Design, example 16.5: 3500 lb from 73 ft/s into 40 lb of iron at 93 ft·lb/lb·°F, 77.9 °F (read in a worked-solution companion)',
        inputs: { frontAxleLoad: 1587.573295 / 2, rearAxleLoad: 1587.573295 / 2, payload: 0, rearBrakeFraction: 0.001, speed: 22.2504, frontRotorMass: 9.0718474, rotorFraction: 1, rotatingFraction: 0, rotorSpecificHeat: 500.4 },
        results: { frontRise: { value: 77.9 / 1.8, within: 0.005 } },
      },
    ],
    related: ['heat-and-tires', 'grade-heat', 'braking-rate', 'stopping-distance'],
  },
});
