import { isImpossible } from '../../engine/outcome.ts';
import { lbf } from '../../units/si.ts';
import type { Say, ValuesOf } from '../record.ts';
import type { At, Cell, Chart, Table } from '../show.ts';
import { paperPressures, rowsOf, sureFit } from './gauge-fit.ts';
import type { GaugeValues } from './gauge-fit.ts';

type V = GaugeValues;
type Circuit = 'front' | 'rear';
type Readings = GaugeValues['gaugeReadings'];

const way = (v: V, foot: 'down' | 'up'): Readings => v.gaugeReadings.filter((r) => r.foot === foot);
const highest = (v: V): number => Math.max(...v.gaugeReadings.map((r) => r.force));
const byForce = (v: V, foot: 'down' | 'up', circuit: Circuit): At[] => [...way(v, foot)].sort((a, b) => a.force - b.force).map((r) => [r.force, r[circuit]] as const);

/** Going down, by the lines through the readings: what the same gauges should show again after 500 miles. */
function lineAt(v: V, force: number): Record<Circuit, number> {
  const { rising, knee } = sureFit(v);
  const front = Math.max(0, rising.front.intercept + rising.front.slope * force);
  const open = Math.max(0, rising.rear.intercept + rising.rear.slope * force);
  const ofFront = rising.rear.slope / rising.front.slope;
  return { front, rear: knee && front > knee.frontPressure ? knee.pressure + knee.slope * ofFront * (front - knee.frontPressure) : open };
}

const pressure = (value: number): Cell => ({ value: Math.abs(value) < 1 ? 0 : value, dimension: 'pressure' });

const readingTable = (circuit: Circuit): Table<V> => ({
  caption: `${circuit === 'front' ? 'Front' : 'Rear'}: what was read, what the line through the readings says, what the paper expects`,
  head: ['Foot', 'Read', 'Line', 'Paper', 'Off paper'],
  rows: (v, say) => rowsOf(v).map(({ reading, off, paper }) => {
    const left = off?.[circuit];
    const part = reading[circuit] / paper[circuit] - 1;
    return [
      `${say(reading.force, 'force')}\u00a0${reading.foot === 'down' ? '↓' : '↑'}`, pressure(reading[circuit]), left === undefined ? '–' : pressure(reading[circuit] - left), pressure(paper[circuit]),
      Number.isFinite(part) ? say(Math.abs(part) < 5e-5 ? 0 : part, 'share', 2) : '–',
    ];
  }),
});

const sticking: Table<V> = {
  caption: 'Coming up less going down, at 50 lbf (222 N): half the difference over the mean',
  head: ['Where', 'Part', '±'],
  rows: (v, say) => {
    const { hysteresis: h } = sureFit(v);
    const part = (x: number): string => say(Math.abs(x) < 5e-5 ? 0 : x, 'share', 2);
    if (isImpossible(h)) return [['front, rear', 'not measured', '–']];
    return [
      ['front line', part(h.front), part(h.frontError)], ['rear line', part(h.rear), part(h.rearError)],
      ['held up alike: pedal, rods, seals', part(h.drag), '–'],
      ['front share moved: the bar', h.share === undefined ? 'the valve hides it' : part(h.share), '–'],
    ];
  },
};

const forTheSheet: Table<V> = {
  caption: 'For your sheet: going down, by your own gauges. Read again at 500 miles',
  head: ['Foot force', 'Front', 'Rear'],
  rows: (v) => [25, 50, 75, 100].map((pounds) => {
    const force = pounds * lbf;
    const line = lineAt(v, force);
    const stop = sureFit(v).steepening?.frontPressure ?? Infinity;
    return [{ value: force, dimension: 'force' as const }, ...(line.front > stop ? ['past the bend', 'past the bend'] : force > 1.1 * highest(v) ? ['not read', 'not read'] : [pressure(line.front), pressure(line.rear)])];
  }),
};

export const gaugeTables: readonly Table<V>[] = [readingTable('front'), readingTable('rear'), sticking, forTheSheet];

const steps = (to: number): number[] => Array.from({ length: 25 }, (_, k) => (to * k) / 24);

const againstFoot: Chart<V> = {
  title: 'Both pressures against foot force',
  x: { label: 'foot force', dimension: 'force' },
  y: { label: 'line pressure', dimension: 'pressure' },
  series: (v) => [
    ...(['front', 'rear'] as const).flatMap((circuit) => (['down', 'up'] as const).map((foot) => ({
      label: `${circuit}, going ${foot === 'down' ? 'down' : 'back up'}`, tone: circuit, points: byForce(v, foot, circuit),
    }))),
    ...(['front', 'rear'] as const).map((circuit) => ({ label: `${circuit}, paper`, tone: 'ghost' as const, points: steps(highest(v)).map((f) => [f, paperPressures(v, f)[circuit]] as const) })),
  ].filter(({ points }) => points.length > 1),
  marks: (v) => (['front', 'rear'] as const).flatMap((circuit) => byForce(v, 'down', circuit).map((at) => ({ at, label: '', tone: circuit }))),
  describe: (v, say) => {
    const fit = sureFit(v);
    const ten = 10 * lbf;
    const { hysteresis: h } = fit;
    const back = isImpossible(h) ? '' : ` Coming back up, at 50 lbf, the two together are ${say(2 * Math.abs(h.drag), 'share', 2)} ${h.drag < 0 ? 'lower' : 'higher'}.`;
    return `Rings: readings going down. For each ${say(ten, 'force')} more of foot the front rises by ${say(ten * fit.rising.front.slope, 'pressure')} and the rear by ${say(ten * fit.rising.rear.slope, 'pressure')}${fit.knee ? ', less above the bend' : ''}.${back}`;
  },
};

const rearAgainstFront: Chart<V> = {
  title: 'Rear pressure against front pressure: straight, or bent by a valve',
  x: { label: 'front pressure', dimension: 'pressure' },
  y: { label: 'rear pressure', dimension: 'pressure' },
  series: (v) => {
    const pairs = (foot: 'down' | 'up'): At[] => [...way(v, foot)].sort((a, b) => a.front - b.front).map((r) => [r.front, r.rear] as const);
    const forces = [...new Set([...steps(highest(v)), ...kneeForce(v)])].sort((a, b) => a - b);
    return [
      { label: 'going down', tone: 'rear' as const, points: pairs('down') }, { label: 'coming up', tone: 'accent' as const, points: pairs('up') },
      { label: 'line through those going down', tone: 'ghost' as const, points: forces.map((f) => { const p = lineAt(v, f); return [p.front, p.rear] as const; }) },
    ].filter(({ points }) => points.length > 1);
  },
  marks: (v, say) => {
    const { knee, steepening } = sureFit(v);
    if (steepening) return [{ at: [steepening.frontPressure, steepening.rearPressure], label: 'bar on its stop?', tone: 'alert' }];
    return knee ? [{ at: [knee.frontPressure, knee.pressure], label: `knee ${say(knee.pressure, 'pressure')}`, tone: 'rear' }] : [];
  },
  describe: (v, say) => {
    const { knee, steepening, kneeChance } = sureFit(v);
    if (steepening) return `From ${say(steepening.frontPressure, 'pressure')} in front the rear rises ${say(steepening.times, 'ratio', 2)} times as fast as before: a bar on its stop, or a front master at its end.`;
    if (!knee) return kneeChance === undefined ? 'These readings are too few, or too much alike, to look for a bend.' : 'No bend stands out of the scatter: the rear rises with the front all the way.';
    return `The rear follows the front up to ${say(knee.pressure, 'pressure')}, give or take ${say(knee.pressureError, 'pressure', 2)}, then with ${say(knee.slope, 'ratio')} of the slope, give or take ${say(knee.slopeError, 'ratio', 2)}.`;
  },
};

/** Foot force at the knee, so that the corner stays sharp. */
function kneeForce(v: V): number[] {
  const { knee, rising } = sureFit(v);
  const at = knee && (knee.frontPressure - rising.front.intercept) / rising.front.slope;
  return at !== undefined && at > 0 && at < highest(v) ? [at] : [];
}

export const gaugeCharts: readonly Chart<V>[] = [againstFoot, rearAgainstFront];

export function gaugeSummary(v: V & ValuesOf<'measuredShare' | 'shareError' | 'measuredEfficiency' | 'barFreedom' | 'gaugeAgreement' | 'paperDifference' | 'paperShare'>, say: Say): string {
  const { worstDeviation: worst, knee, steepening } = sureFit(v);
  const free = {
    free: 'Nothing sticks at 50 lbf.', bar: 'The bar sticks: on the way back up front and rear part.', drag: 'Pedal, rods or seals drag: both lines stay high on the way back up.', both: 'Something sticks on the way back up.',
    noisy: 'Whether the bar swings free these readings scatter too much to tell.', unread: 'Whether the bar swings free they cannot tell: nothing was read coming up.', bracket: 'Whether the bar swings free they cannot tell: read below and above 50 lbf, both ways.',
  }[v.barFreedom];
  const off = worst && Number.isFinite(worst.part) ? `${say(Math.abs(worst.part), 'share', 2)} ${worst.part < 0 ? 'below' : 'above'} it` : 'where it has no pressure yet';
  const agrees = worst && `${v.gaugeAgreement === 'agrees' ? 'The truck agrees with the paper' : 'The truck does not agree with the paper'}: the farthest reading, ${worst.circuit} at ${say(worst.controlForce, 'force')}, is ${off}.`;
  return `The gauges give the front ${say(v.measuredShare, 'share')} of the push (the bar’s turns say ${say(v.paperShare, 'share')}) and the linkage an efficiency of ${say(v.measuredEfficiency, 'share')}.${knee ? ` The rear line bends at ${say(knee.pressure, 'pressure')}.` : ''}${steepening ? ` From ${say(steepening.frontPressure, 'pressure')} in front on the rear gets more.` : ''} ${free} ${agrees ?? ''}`.trim();
}
