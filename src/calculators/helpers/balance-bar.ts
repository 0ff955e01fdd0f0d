import { balanceBar } from '../../engine/balanceBar.ts';
import { strokeForPressure } from '../../engine/fluid.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { linePressure } from '../../engine/pressure.ts';
import { defineFeed } from '../record.ts';
import type { Refusal, ValuesOf } from '../record.ts';
import { swellFeed } from './circuit-volume.ts';

type Bar = 'barSpacing' | 'barOffset' | 'barRestLead' | 'barPinOffset' | 'barBearingRadius' | 'barFriction' | 'barStopAngle' | 'threadPitch' | 'rodLength' | 'masterSpacing';
type Foot = 'controlForce' | 'pedalRatio' | 'linkageEfficiency' | 'frontMasterBore' | 'rearMasterBore' | 'portStroke' | 'frontTakeUp' | 'rearTakeUp' | 'frontCompliance' | 'rearCompliance';

/** Strokes at this foot force while the bar shares it as it would square. */
function strokes(v: ValuesOf<Bar | Foot>): { frontStroke: number; rearStroke: number } {
  const p = linePressure({
    controlForce: v.controlForce, pedalRatio: v.pedalRatio, efficiency: v.linkageEfficiency, frontShare: 0.5 + v.barOffset / v.barSpacing,
    frontBore: v.frontMasterBore, rearBore: v.rearMasterBore, springForce: 0,
  });
  return {
    frontStroke: strokeForPressure({ pressure: p.frontPressure, takeUpVolume: v.frontTakeUp, compliance: v.frontCompliance, bore: v.frontMasterBore, portStroke: v.portStroke }).stroke,
    rearStroke: strokeForPressure({ pressure: p.rearPressure, takeUpVolume: v.rearTakeUp, compliance: v.rearCompliance, bore: v.rearMasterBore, portStroke: v.portStroke }).stroke,
  };
}

export function solveBar(v: ValuesOf<Bar | Foot>) {
  const outside = Math.abs(v.barOffset) - v.barSpacing / 2;
  if (outside >= 0) return { impossible: 'pivot-outside-clevises', by: outside };
  if (!(v.barStopAngle > 0)) return { impossible: 'no-swing' };
  const leaning = Math.abs(v.barRestLead) - v.barSpacing * Math.sin(v.barStopAngle);
  if (leaning > 0) return { impossible: 'on-stop-at-rest', by: leaning };
  const moved = strokes(v);
  const bar = balanceBar({
    barSpacing: v.barSpacing, barOffset: v.barOffset, ...moved, pinOffset: v.barPinOffset, bearingRadius: v.barBearingRadius, bearingFriction: v.barFriction,
    stopAngle: v.barStopAngle, threadPitch: v.threadPitch, rodLength: v.rodLength, masterSpacing: v.masterSpacing, clevisesStay: true, restTilt: Math.asin(v.barRestLead / v.barSpacing),
  });
  return isImpossible(bar) ? bar : { ...bar, ...moved };
}

function refuse(code: string, by = 0): Refusal {
  return {
    refused: (say) => ({
      'pivot-outside-clevises': `The pivot stands ${say(by, 'length')} outside a clevis. It must lie between them: a smaller offset or a wider bar.`,
      'on-stop-at-rest': `At rest the bar leans ${say(by, 'length')} beyond its stop. Check the two rod lengths.`,
      'no-swing': 'A bar that may tilt 0° cannot share at all. Type the angle at which it meets its stop.',
      'strokes-exceed-bar': `The front and rear strokes differ by ${say(by, 'length')} more than the bar is long. No bar can follow that: check bores and volumes.`,
      'pivot-outside-rods': 'At this tilt a rod’s line has crossed the pivot and the bar would flip. Check the pivot’s distance from the clevis line.',
      'rod-cannot-reach': `A pushrod is ${say(by, 'length')} too short to reach its bore sideways. Check rod length and spacings.`,
    })[code] ?? 'This bar cannot stand like that.',
  };
}

export const barAtStop = (v: ValuesOf<'tiltOfStop'>): boolean => v.tiltOfStop >= 0.9;

export const barFeed = defineFeed({
  id: 'balance-bar',
  title: 'Balance bar',
  inputs: [
    { title: 'Bar', of: ['barSpacing', 'barOffset', 'threadPitch', 'barRestLead', 'barStopAngle', 'barPinOffset', 'barBearingRadius', 'barFriction'] },
    { title: 'Rods and masters', of: ['rodLength', 'masterSpacing', 'frontMasterBore', 'rearMasterBore', 'portStroke'] },
    { title: 'Foot', of: ['controlForce', 'pedalRatio', 'linkageEfficiency'] },
    { title: 'Fluid', of: ['frontTakeUp', 'rearTakeUp', 'frontCompliance', 'rearCompliance'] },
  ],
  feeds: [swellFeed],
  outputs: ['frontShare', 'barTilt', 'tiltOfStop', 'shareTilted', 'frictionBand', 'frontShareLow', 'frontShareHigh', 'sharePerTurn', 'frontStroke', 'rearStroke', 'frontSplay', 'rearSplay'],
  alarms: [{ caution: 'tilt-on-stop', level: 'danger', when: barAtStop, first: 'the bar is at its stop or close to it.' }],
  compute: (v) => {
    const r = solveBar(v);
    if (isImpossible(r)) return refuse(r.impossible, r.by);
    return {
      frontShare: r.frontShare, barTilt: r.tilt, tiltOfStop: r.tiltShareOfStop, shareTilted: r.shareTilted, frictionBand: r.frictionBand, frontShareLow: r.frontShareLow,
      frontShareHigh: r.frontShareHigh, sharePerTurn: r.sharePerTurn, frontStroke: r.frontStroke, rearStroke: r.rearStroke, frontSplay: r.frontSplay, rearSplay: r.rearSplay,
    };
  },
});
