/**
 * The units a reader may type, and what each is in SI: the only conversion table.
 *
 * SI value = (typed value + offset) × factor, or the tangent of the angle where `tangent` is set.
 * A vacuum is counted positive, as its gauge reads: how far the pressure is below the atmosphere.
 */
import { bar, cm3, deg, foot, inch, kPa, lb, lbf, mm, mph, percent, psi, standardGravity } from './si.ts';

export type Dimension =
  | 'ratio' | 'share' | 'count' | 'friction' | 'brakingRate' | 'length' | 'distance' | 'area' | 'volume' | 'mass'
  | 'force' | 'pressure' | 'vacuum' | 'angle' | 'speed' | 'time' | 'torque' | 'grade' | 'brakeGain'
  | 'compliance' | 'energy' | 'power' | 'temperature' | 'temperatureRise' | 'specificHeat' | 'conductivity' | 'density' | 'stress'
  | 'current' | 'voltage' | 'resistivity';

export type System = 'us' | 'si';

export interface Unit {
  /** Plain ASCII, readable by the parser, and permanent: it is in shared links. */
  readonly id: string;
  /** SI units in one of this unit. */
  readonly factor: number;
  /** What is shown to the reader. */
  readonly label: string;
  /** Spellings understood, as `unitKey` writes them. */
  readonly aliases: readonly string[];
  /** The unit to show beside this one: the same size of thing in the other system. '' if none helps. */
  readonly twin: string;
  readonly offset: number;
  readonly tangent: boolean;
}

export interface DimensionInfo {
  /** With its article, for sentences: "psi is a pressure". */
  readonly name: string;
  /** An everyday value in the US unit, for "type a pressure such as …". */
  readonly example: number;
  readonly us: string;
  readonly si: string;
  readonly units: readonly Unit[];
}

const mmHg = 13.5951 * standardGravity; // Pa: 1 mm of conventional mercury, 13,595.1 kg/m³
const btu = 4186.8 * lb * (5 / 9); // J: warms 1 lb of water by 1 °F, by the calorie of 4.1868 J agreed for steam tables

const spellings: readonly (readonly [RegExp, string])[] = [
  [/^m\Wm$/, 'm²'], [/ per /, '/'], [/²/, '2'], [/³/, '3'], [/lbs|pounds?/, 'lb'], [/inch(es)?|^"(?= ?hg|$)/, 'in'], [/foot|feet|^'$/, 'ft'],
  [/degrees?|[°º]/, 'deg'], [/cu\.? ?in/, 'in3'], [/sq\.? ?in/, 'in2'], [/cc|ml/, 'cm3'], [/percent|pct/, '%'],
  [/\s|(?!^)(\.|[·⋅•*^-](?!$))/g, ''], // between words such marks mean nothing; elsewhere they are a slip, and stay
];

/** One spelling for `lb-ft`, `lb·ft` and `LBS FT`; for `in³`, `in^3` and `cu in`; for `in.`, `inch` and `"`. */
export const unitKey = (text: string): string =>
  spellings.reduce((key, [from, to]) => key.replace(from, to), text.toLowerCase());

type Row = Omit<Unit, 'twin'> & { readonly twin?: string };

function unit(id: string, factor: number, also = '', rest: Partial<Unit> = {}): Row {
  const label = id.replace(/[23.]|deg/, (c) => ({ 2: '²', 3: '³', '.': '·', deg: '°' })[c] as string);
  return { id, factor, label, aliases: `${unitKey(id)} ${also}`.trim().split(' '), offset: 0, tangent: false, ...rest };
}

/** The first unit is the US one. Unless a row says otherwise its twin is `si`, and it is the twin of the others. */
function about(name: string, example: number, si: string, ...rows: [Row, ...Row[]]): DimensionInfo {
  const us = rows[0].id;
  return { name, example, us, si, units: rows.map((row) => ({ twin: row.id !== us ? us : si !== us ? si : '', ...row })) };
}

// A wrong unit is named after the first dimension here that knows it, so the commoner goes first.
export const dimensions: Readonly<Record<Dimension, DimensionInfo>> = {
  ratio: about('a ratio', 6.2, '', unit('', 1, ':1 to1')),
  count: about('a count', 4, '', unit('', 1)),
  friction: about('a friction coefficient', 0.38, '', unit('', 1)),
  share: about('a share', 62, '%', // the doubled spellings: a number that had to keep its unit, with the unit put after it
    unit('%', percent, '%%', { twin: 'fraction' }), unit('fraction', 1, 'fractionfraction', { label: '' })),
  brakingRate: about('a braking rate', 0.8, 'g',
    unit('g', 1, '', { twin: 'm/s2' }), unit('m/s2', 1 / standardGravity, 'm/s/s'),
    unit('ft/s2', foot / standardGravity, 'ft/s/s'), unit('%', percent)),
  length: about('a length', 7 / 8, 'mm',
    unit('in', inch), unit('ft', foot, '', { twin: 'm' }), unit('mm', mm), unit('cm', 1e-2), unit('m', 1, '', { twin: 'ft' })),
  distance: about('a distance', 300, 'm', unit('ft', foot), unit('m', 1)), // of a stop: what inches and millimeters are too small for
  area: about('an area', 0.44, 'cm2', unit('in2', inch ** 2), unit('ft2', foot ** 2, '', { twin: 'm2' }), unit('cm2', 1e-4), unit('mm2', 1e-6), unit('m2', 1, '', { twin: 'ft2' })),
  volume: about('a volume', 0.5, 'cm3',
    unit('in3', inch ** 3), unit('cm3', cm3), unit('floz', (231 * inch ** 3) / 128, '', { label: 'fl oz', twin: 'cm3' }),
    unit('L', 1e-3, 'liter liters', { twin: 'floz' })),
  mass: about('a mass', 2950, 'kg', unit('lb', lb, 'lbm'), unit('kg', 1), unit('g', 1e-3)),
  force: about('a force', 100, 'N', unit('lbf', lbf), unit('N', 1), unit('kN', 1e3), unit('kgf', standardGravity)),
  pressure: about('a pressure', 800, 'bar',
    unit('psi', psi), unit('bar', bar), unit('kPa', kPa), unit('MPa', 1e6), unit('Pa', 1)),
  vacuum: about('a vacuum', 18, 'kPa',
    unit('inHg', 25.4 * mmHg), unit('psi', psi, '', { twin: 'kPa' }), unit('kPa', kPa), unit('bar', bar), unit('mmHg', mmHg)),
  angle: about('an angle', 12, 'deg', unit('deg', deg), unit('rad', 1)),
  speed: about('a speed', 60, 'km/h',
    unit('mph', mph, 'mi/h'), unit('ft/s', foot, 'fps', { twin: 'm/s' }),
    unit('km/h', 1 / 3.6, 'kmh kph'), unit('m/s', 1, '', { twin: 'ft/s' })),
  time: about('a time', 1.5, 's', unit('s', 1, 'sec second seconds'), unit('ms', 1e-3), unit('min', 60)),
  torque: about('a torque', 90, 'N.m',
    unit('lbf.ft', lbf * foot, 'ftlbf'), unit('lbf.in', lbf * inch, 'inlbf', { twin: 'N.m' }), unit('N.m', 1)),
  grade: about('a grade', 20, '%', unit('%', percent, '', { twin: 'deg' }), unit('deg', deg, '', { tangent: true })),
  brakeGain: about('a brake force per line pressure', 1.9, 'N/bar', unit('lbf/psi', lbf / psi), unit('N/bar', 1 / bar)),
  compliance: about('a volume per pressure', 0.2, 'cm3/bar',
    unit('in3/1000psi', inch ** 3 / (1000 * psi), '', { label: 'in³/1000 psi' }), unit('cm3/bar', cm3 / bar)),
  stress: about('a stress', 36, 'MPa', unit('ksi', 1000 * psi), unit('MPa', 1e6), unit('GPa', 1e9), unit('psi', psi, '', { twin: 'MPa' })),
  energy: about('an energy', 300, 'kJ', unit('ft.lbf', lbf * foot, 'lbfft'), unit('kJ', 1e3), unit('J', 1)),
  temperature: about('a temperature', 300, 'degC',
    unit('degF', 5 / 9, 'f', { offset: 459.67 }), unit('degC', 1, 'c', { offset: 273.15 }), unit('K', 1)),
  current: about('a current', 5, 'A', unit('A', 1, 'amp amps')),
  voltage: about('a voltage', 13, 'V', unit('V', 1, 'volt volts')),
  resistivity: about('a resistivity', 0.0172, 'ohm.mm2/m', unit('ohm.mm2/m', 1e-6, 'ωmm2/m', { label: 'Ω·mm²/m' })),
  power: about('a power', 12, 'kW', unit('hp', 550 * foot * lbf), unit('kW', 1e3), unit('W', 1)),
  temperatureRise: about('a difference of temperatures', 110, 'degC', unit('degF', 5 / 9, 'f'), unit('degC', 1, 'c'), unit('K', 1)), // no zero of its own: 18 °F more is 10 °C more
  specificHeat: about('a specific heat', 0.115, 'J/kg.K',
    unit('Btu/lb.degF', 4186.8, '', { label: 'Btu/lb·°F' }), unit('J/kg.K', 1), unit('kJ/kg.K', 1e3)),
  conductivity: about('a thermal conductivity', 29, 'W/m.K',
    unit('Btu/h.ft.degF', btu / (3600 * foot * (5 / 9)), '', { label: 'Btu/h·ft·°F' }), unit('W/m.K', 1)),
  density: about('a density', 450, 'kg/m3', unit('lb/ft3', lb / foot ** 3), unit('kg/m3', 1), unit('g/cm3', 1e3)),
};

/** The unit a reader's spelling means in a dimension. In the trade lb and kg also name forces. */
export function spelled(dimension: Dimension, text: string): Unit | undefined {
  const key = unitKey(text);
  const find = (spelling: string): Unit | undefined => dimensions[dimension].units.find((u) => u.aliases.includes(spelling));
  return key ? find(key) ?? find(key.replace(/(lb|kg)(?!f(?!t))/, '$1f')) : undefined;
}

/** @throws RangeError for a unit the dimension does not have: the calling code is wrong */
export function unitOf(dimension: Dimension, id: string): Unit {
  const { units } = dimensions[dimension];
  const found = units.find((u) => u.id === id);
  if (!found) throw new RangeError(`unit of ${dimension}: expected one of ${units.map((u) => u.id)}, found ${id}`);
  return found;
}

/** The default sheds only the last bit of binary noise: 22.2 mm is 0.0222 m, not 0.022199999999999998. */
export const settle = (x: number, digits = 15): number => +x.toPrecision(digits);

export const toSi = (value: number, { factor, offset, tangent }: Unit): number =>
  settle(tangent ? Math.tan(value * factor) : (value + offset) * factor);

export const fromSi = (si: number, { factor, offset, tangent }: Unit): number =>
  settle(tangent ? Math.atan(si) / factor : si / factor - offset);

/** The unit a share without one is in: above 1 percent, up to 1 the field's. */
export const bareShare = (value: number, field: string): string => (Math.abs(value) > 1 ? '%' : field);

export const unitFor = (dimension: Dimension, system: System): string => dimensions[dimension][system];

/** The unit a toggle button leads to. Where both systems share one unit (deg, s, g, %), that unit. */
export function otherUnit(dimension: Dimension, id: string): string {
  const { us, si } = dimensions[dimension];
  return us === si ? us : unitOf(dimension, id).twin;
}
