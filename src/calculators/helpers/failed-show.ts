import { brakingRate } from '../../engine/brakingRate.ts';
import type { FailureEvent } from '../../engine/circuitFailure.ts';
import { strokeForPressure } from '../../engine/fluid.ts';
import { linePressure } from '../../engine/pressure.ts';
import { lbf } from '../../units/si.ts';
import type { Say, ValuesOf } from '../record.ts';
import type { At, Cell, Chart, Table } from '../show.ts';
import { failureOf, other, stateAtForce, sure } from './failed-pedal.ts';
import type { FailedInputs, Side } from './failed-pedal.ts';

type V = ValuesOf<FailedInputs>;
const sides = ['front', 'rear'] as const;

const eventWords = (kind: FailureEvent['kind'], dead: Side): string => ({
  'bar-stop': `bar meets its stop, dead ${dead} rod ahead`,
  'first-pressure': `${other(dead)} line starts to build pressure`,
  'dead-bottoms': `dead ${dead} master bottoms`,
  'flat-spot-ends': 'flat spot ends: the bar leaves its stop',
  'good-bottoms': `${other(dead)} master bottoms: no more pressure`,
  'opposite-stop': 'bar meets its other stop: no more pressure',
  'pad-on-floor': 'pedal on the carpet: no more pressure',
  'axle-slides': `${other(dead)} tires slide`,
})[kind];

const first: Readonly<Record<string, string>> = { 'bar-stop': 'bar’s stop', 'dead-bottoms': 'dead master’s end', 'pad-on-floor': 'carpet' };

function limit(v: V, dead: Side): string {
  const s = stateAtForce(v, dead, v.controlForce);
  if (s.slipLimited) return `${other(dead)} tires slide`;
  return ({
    'free-run': 'no pressure yet', 'on-bar-stop': 'your foot force', 'flat-spot': 'flat spot', 'on-dead-master': 'only its share of your push',
    'good-bottomed': 'live master’s stroke', 'on-opposite-stop': 'bar’s other stop', 'on-floor': 'carpet',
  })[s.regime];
}

export const failureEvents: Table<V> = {
  caption: 'What happens as foot force rises, in order, for the circuit chosen as dead',
  head: ['What happens', 'Foot force', 'Pedal', 'Live line'],
  rows: (v) => {
    const dead = v.deadCircuit;
    const r = sure(failureOf(v, dead));
    const you = { words: 'your foot force', controlForce: r.controlForce, padTravel: r.padTravel, pressure: r.pressure };
    const events = r.events.map((e) => ({ ...e, words: eventWords(e.kind, dead) }));
    const after = events.findIndex((e) => e.controlForce > you.controlForce);
    const at = after < 0 ? events.length : after;
    return [...events.slice(0, at), you, ...events.slice(at)].map((e): readonly Cell[] => [
      e.words, { value: e.controlForce, dimension: 'force' }, { value: e.padTravel, dimension: 'length' }, { value: e.pressure, dimension: 'pressure' },
    ]);
  },
};

export const failureComparison: Table<V> = {
  caption: 'Both failures, side by side',
  head: ['At your foot force', 'Front dead', 'Rear dead'],
  rows: (v, say) => {
    const both = sides.map((dead) => ({ dead, ...sure(failureOf(v, dead)) }));
    const row = (words: string, of: (r: (typeof both)[number]) => string): string[] => [words, ...both.map(of)];
    return [
      row('brakes left', (r) => `${other(r.dead)}s alone`),
      row('braking rate', (r) => say(r.rate, 'brakingRate')),
      row('the tires allow', (r) => say(r.slipLimit, 'brakingRate')),
      row('what limits it', (r) => limit(v, r.dead)),
      row('pedal travel', (r) => say(r.padTravel, 'length')),
      row('travel it asks for', (r) => say(r.travelWithoutFloor, 'length')),
      row('pedal above carpet', (r) => (r.regime === 'on-floor' ? 'none' : say(r.floorMargin, 'length'))),
      row('stop met first', (r) => first[r.firstStop] ?? r.firstStop),
      row('flat spot', (r) => (r.flatSpot ? `${say(r.flatSpot.from, 'force')} to ${say(r.flatSpot.to, 'force')}` : 'none')),
      row('gauge, live line', (r) => say(r.pressure, 'pressure')),
    ];
  },
};

const endOfAxis = (v: V): number => Math.max(150 * lbf, v.controlForce * 1.15);

/** Foot forces for a curve: even steps and every corner, so that no bend is rounded off. */
function forces(v: V): number[] {
  const most = endOfAxis(v);
  const corners = sides.flatMap((dead) => sure(failureOf(v, dead)).events.map((e) => e.controlForce));
  const even = Array.from({ length: 51 }, (_, k) => (k * most) / 50);
  return [...new Set([...even, ...corners.filter((f) => f < most)])].sort((a, b) => a - b);
}

/** Both circuits alive, until a master bottoms or the pad is on the carpet: from there it is another story. */
function healthy(v: V): At[] {
  const [toFront, toRear] = [v.barSpacing / 2 - v.barOffset, v.barSpacing / 2 + v.barOffset];
  const points: At[] = [];
  for (const controlForce of forces(v)) {
    const p = linePressure({
      controlForce, pedalRatio: v.pedalRatio, efficiency: v.linkageEfficiency, frontShare: toRear / v.barSpacing,
      frontBore: v.frontMasterBore, rearBore: v.rearMasterBore, springForce: 0,
    });
    const { stroke: front } = strokeForPressure({ pressure: p.frontPressure, takeUpVolume: v.frontTakeUp, compliance: v.frontCompliance, bore: v.frontMasterBore, portStroke: v.portStroke });
    const { stroke: rear } = strokeForPressure({ pressure: p.rearPressure, takeUpVolume: v.rearTakeUp, compliance: v.rearCompliance, bore: v.rearMasterBore, portStroke: v.portStroke });
    const pad = v.pedalRatio * (v.pushrodFreePlay + (front * toRear + rear * toFront) / v.barSpacing);
    if (front > v.frontMasterStroke || rear > v.rearMasterStroke || pad > v.floorTravel) break;
    const { rate } = brakingRate({ frontGain: v.frontBrakeGain, rearGain: v.rearBrakeGain, frontPressure: Math.max(0, p.frontPressure - v.pushOutPressure), rearPressure: Math.max(0, p.rearPressure - v.pushOutPressure), mass: v.frontAxleLoad + v.rearAxleLoad });
    if (rate > v.grip) break;
    points.push([controlForce, rate]);
  }
  return points;
}

const words = (v: V, dead: Side, say: Say): string => {
  const r = sure(failureOf(v, dead));
  const flat = r.flatSpot ? `, level from ${say(r.flatSpot.from, 'force')} to ${say(r.flatSpot.to, 'force')}` : '';
  return `With the ${dead} dead ${say(r.rate, 'brakingRate')} at your foot force, from ${say(r.pressure, 'pressure')} in the ${other(dead)} line${flat}; the ${other(dead)} tires slide at ${say(r.slipLimit, 'brakingRate')}.`;
};

const at = (v: V, dead: Side) => stateAtForce(v, dead, v.controlForce);

export const failureRates: Chart<V> = {
  title: 'Braking rate against foot force',
  x: { label: 'foot force', dimension: 'force' },
  y: { label: 'braking rate', dimension: 'brakingRate' },
  series: (v) => {
    const across = forces(v);
    const level = (dead: Side): At[] => [0, endOfAxis(v)].map((f) => [f, at(v, dead).slipLimit] as const);
    return [
      { label: 'both circuits alive', tone: 'body', points: healthy(v) },
      { label: 'front dead: rear brakes alone', tone: 'rear', points: across.map((f) => [f, stateAtForce(v, 'front', f).rate] as const) },
      { label: 'rear dead: front brakes alone', tone: 'front', points: across.map((f) => [f, stateAtForce(v, 'rear', f).rate] as const) },
      { label: 'rear tires alone slide', tone: 'ghost', points: level('front') },
      { label: 'front tires alone slide', tone: 'ghost', points: level('rear') },
    ];
  },
  marks: (v) => {
    const end = endOfAxis(v);
    return [
      { at: [v.controlForce, at(v, 'front').rate], label: 'you', tone: 'rear' },
      { at: [v.controlForce, at(v, 'rear').rate], label: 'you', tone: 'front' },
      { at: [end, at(v, 'front').slipLimit], label: 'rear tires slide' },
      { at: [end, at(v, 'rear').slipLimit], label: 'front tires slide' },
    ];
  },
  describe: (v, say) => `${words(v, 'front', say)} ${words(v, 'rear', say)}`,
};

export const failurePressures: Chart<V> = {
  title: 'Pressure in the line that lives',
  x: { label: 'foot force', dimension: 'force' },
  y: { label: 'line pressure', dimension: 'pressure' },
  series: (v) => {
    const across = forces(v);
    return [
      { label: 'front dead: rear line', tone: 'rear', points: across.map((f) => [f, stateAtForce(v, 'front', f).pressure] as const) },
      { label: 'rear dead: front line', tone: 'front', points: across.map((f) => [f, stateAtForce(v, 'rear', f).pressure] as const) },
    ];
  },
  marks: (v) => [
    { at: [v.controlForce, at(v, 'front').pressure], label: 'you', tone: 'rear' },
    { at: [v.controlForce, at(v, 'rear').pressure], label: 'you', tone: 'front' },
  ],
  describe: (v, say) => sides.map((dead) => {
    const r = sure(failureOf(v, dead));
    const ends = r.regime === 'on-floor' ? ' and no more, the pedal being on the carpet' : r.flatSpot ? `, with a flat spot from ${say(r.flatSpot.from, 'force')} to ${say(r.flatSpot.to, 'force')}` : '';
    return `With the ${dead} dead the ${other(dead)} line has ${say(r.pressure, 'pressure')} at your foot force${ends}.`;
  }).join(' '),
};
