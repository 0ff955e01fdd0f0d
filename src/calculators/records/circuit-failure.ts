import { circleArea } from '../../engine/circle.ts';
import { pressureForStroke } from '../../engine/fluid.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { swellFeed } from '../helpers/circuit-volume.ts';
import { discFeed } from '../helpers/disc-torque.ts';
import { defineCalculator, isRefusal } from '../record.ts';
import type { Refusal, Say, ValuesOf } from '../record.ts';
import { failureCautions, failureExamples } from '../helpers/failed-cautions.ts';
import { commonEquations, failedEquations } from '../helpers/failed-equations.ts';
import { failureOf, failurePicture, other, regimeWords, sure } from '../helpers/failed-pedal.ts';
import type { FailedInputs, Side } from '../helpers/failed-pedal.ts';
import { failureComparison, failureEvents, failurePressures, failureRates } from '../helpers/failed-show.ts';

type V = ValuesOf<FailedInputs>;

const sides = ['front', 'rear'] as const;
const failed = (v: V, dead: Side) => sure(failureOf(v, dead));

/** Both failures, or why there are none. */
function solve(v: V) {
  const tooStiff = sides.find((side) => !(v[`${side}Compliance`] > 0));
  if (tooStiff) return refuse(() => `The ${tooStiff} circuit is set to swell by nothing, so no pressure belongs to a stroke. Hoses, calipers and brake pads always give: type a little, such as 0.01 cm³/bar.`);
  const play = v.pedalRatio * v.pushrodFreePlay;
  if (play >= v.floorTravel) return refuse((say) => `Free play alone moves the pedal ${say(play, 'length')}, and the carpet is at ${say(v.floorTravel, 'length')}. Nothing is left to brake with.`);
  const path = failureOf(v, 'front');
  if (!isImpossible(path)) return { f: side(v, 'front', path), r: side(v, 'rear', failed(v, 'rear')) };
  if (path.impossible === 'on-stop-at-rest') return refuse((say) => `At rest the bar leans ${say(path.by ?? 0, 'length')} beyond its stop. Check the two rod lengths.`);
  return refuse((say) => `The pivot stands ${say(path.by ?? 0, 'length')} outside a clevis. It must lie between them: a smaller offset or a wider bar.`);
}

const refuse = (refused: Refusal['refused']): Refusal => ({ refused });

function side(v: V, dead: Side, r: ReturnType<typeof failed>) {
  const live = other(dead);
  const lead = v.barStop === 'none' ? v.barSpacing : v.barSpacing * Math.sin(v.barStopAngle);
  const bottoms = v[`${dead}MasterStroke`] - lead + (dead === 'front' ? v.barRestLead : -v.barRestLead);
  const { pressure: ceiling } = pressureForStroke({ stroke: bottoms, bore: v[`${live}MasterBore`], takeUpVolume: v[`${live}TakeUp`], compliance: v[`${live}Compliance`], portStroke: v.portStroke });
  const travel = r.regime === 'on-floor' ? v.floorTravel : r.padTravel;
  return { ...r, lead, ceiling, travel, margin: v.floorTravel - travel, from: r.flatSpot?.from ?? 0, to: r.flatSpot?.to ?? 0 };
}

function outcome(v: V, dead: Side, rate: number, margin: number, say: Say): string {
  const rest = margin > 0 ? `${say(margin, 'length')} above the carpet: ${regimeWords(failed(v, dead).regime, dead)}` : 'on the carpet, so a harder push adds nothing';
  return `the ${other(dead)} brakes alone give ${say(rate, 'brakingRate')}, the pedal ${rest}`;
}

export default defineCalculator({
  id: 'circuit-failure',
  version: 2,
  // The first version let the brakes bite from no pressure on. Its links still do.
  upgrade: { 1: (link) => new Map([['push-out-pressure', '0psi'], ...link]) },
  title: 'One circuit dead',
  purpose: 'What brakes are left when one line lets go, where the pedal ends up, and which stop the pedal meets first.',
  inputs: [
    { title: 'Which failure', of: ['deadCircuit'] },
    { title: 'Foot and pedal', of: ['controlForce', 'pedalRatio', 'linkageEfficiency', 'pushrodFreePlay', 'floorTravel'] },
    { title: 'Bar', of: ['barSpacing', 'barOffset', 'barRestLead', 'barStop', 'barStopAngle'] },
    { title: 'Masters', of: ['frontMasterBore', 'rearMasterBore', 'frontMasterStroke', 'rearMasterStroke', 'portStroke'] },
    { title: 'Fluid', of: ['frontTakeUp', 'rearTakeUp', 'frontCompliance', 'rearCompliance'] },
    { title: 'Brakes and truck, empty', of: ['frontBrakeGain', 'rearBrakeGain', 'pushOutPressure', 'frontAxleLoad', 'rearAxleLoad', 'wheelbase', 'cgHeight', 'grip'] },
  ],
  feeds: [discFeed, swellFeed],
  outputs: [
    'rateFrontDead', 'rateRearDead', 'travelFrontDead', 'travelRearDead', 'floorMarginFrontDead', 'floorMarginRearDead', 'pressureFrontDead', 'pressureRearDead',
    'slipLimitFrontDead', 'slipLimitRearDead', 'flatFromFrontDead', 'flatToFrontDead', 'flatFromRearDead', 'flatToRearDead', 'ceilingFrontDead', 'ceilingRearDead',
    'frontStrokeFrontDead', 'rearStrokeFrontDead', 'frontStrokeRearDead', 'rearStrokeRearDead', 'barLead', 'frontShare', 'rodForce', 'frontMasterArea', 'rearMasterArea',
    'mass', 'rearLoadFraction', 'heightRatio', 'stateFrontDead', 'stateRearDead',
  ],
  compute: (v) => {
    const solved = solve(v);
    if (isRefusal(solved)) return solved;
    const { f, r } = solved;
    const mass = v.frontAxleLoad + v.rearAxleLoad;
    return {
      rateFrontDead: f.rate, rateRearDead: r.rate, travelFrontDead: f.travel, travelRearDead: r.travel, floorMarginFrontDead: f.margin, floorMarginRearDead: r.margin,
      pressureFrontDead: f.pressure, pressureRearDead: r.pressure, slipLimitFrontDead: f.slipLimit, slipLimitRearDead: r.slipLimit,
      flatFromFrontDead: f.from, flatToFrontDead: f.to, flatFromRearDead: r.from, flatToRearDead: r.to, ceilingFrontDead: f.ceiling, ceilingRearDead: r.ceiling,
      frontStrokeFrontDead: f.deadStroke, rearStrokeFrontDead: f.goodStroke, frontStrokeRearDead: r.goodStroke, rearStrokeRearDead: r.deadStroke,
      barLead: f.lead, frontShare: 0.5 + v.barOffset / v.barSpacing, rodForce: v.controlForce * v.pedalRatio * v.linkageEfficiency,
      frontMasterArea: circleArea({ diameter: v.frontMasterBore }).area, rearMasterArea: circleArea({ diameter: v.rearMasterBore }).area,
      mass, rearLoadFraction: v.rearAxleLoad / mass, heightRatio: v.cgHeight / v.wheelbase, stateFrontDead: f.regime, stateRearDead: r.regime,
    };
  },
  howSure: {
    draws: 1200,
    quick: (v) => {
      const solved = solve(v);
      return isRefusal(solved) ? solved : { rateFrontDead: solved.f.rate, floorMarginFrontDead: solved.f.margin, floorMarginRearDead: solved.r.margin };
    },
    happens: {
      when: (v) => Math.min(v.floorMarginFrontDead, v.floorMarginRearDead) <= 0,
      words: () => 'the pedal meets the carpet with one of the circuits dead',
    },
  },
  summary: (v, say) => (v.floorMarginFrontDead <= 0 && v.floorMarginRearDead <= 0
    ? `At ${say(v.controlForce, 'force')} the rears alone give ${say(v.rateFrontDead, 'brakingRate')}, the fronts alone ${say(v.rateRearDead, 'brakingRate')}. In both failures the pedal is on the carpet, and a harder push adds nothing.`
    : `At ${say(v.controlForce, 'force')} with the front dead, ${outcome(v, 'front', v.rateFrontDead, v.floorMarginFrontDead, say)}. With the rear dead, ${outcome(v, 'rear', v.rateRearDead, v.floorMarginRearDead, say)}.`),
  equations: [...commonEquations, ...failedEquations('front'), ...failedEquations('rear')],
  cautions: failureCautions,
  picture: failurePicture,
  charts: [failureRates, failurePressures],
  tables: [failureComparison, failureEvents],
  paper: {
    assumptions: [
      'A slow push. A stab moves the pedal farther before it stops.',
      'The dead circuit resists nothing until its piston meets the end of its bore, and the live circuit’s seals drag a little, so the dead rod runs ahead first.',
      'The bar and pedal are rigid, the pivot lies on the line between the clevises, and the stop holds at the same angle both ways.',
      'The live circuit swallows a fixed volume before pressure builds, then a volume in proportion to pressure.',
      'The truck is empty, on a level straight road.',
      'Both axles bite from the same push-out pressure. With discs in front and drums at the rear type the drums’: 70 psi against 5 takes about 0.02 g from the rear alone and 0.04 g from the front alone, which is on the safe side for the front.',
    ],
    leftOut: [
      'Flex of pedal and firewall, which adds pedal travel.',
      'A rear proportioning valve. With the front dead it holds back the rear’s pressure as ever, unless it is of a kind that opens then: the rear gets less than shown.',
      'Return springs of the masters and friction of the bar, a few pounds.',
      'A slow leak, which holds a stab and sinks under a long push.',
      'The loss of grip once a wheel has locked.',
    ],
    sources: [
      { of: 'pressure, strokes and the flat spot with one circuit dead', kind: 'derived', note: 'free body of the bar; no published worked example was found' },
      { of: 'most that one axle alone can brake', kind: 'derived', note: 'statics' },
      { of: 'yardstick of 168 m from 100 km/h with one circuit dead, about 0.25 g', kind: 'from memory', id: 'fmvss-135', note: 'S7.10; agrees with the distance formula 0.10 V + 0.0158 V²; for new light vehicles, light trucks built from September 2002' },
      { of: 'clamping a hose does not simulate a failed circuit', kind: 'published', id: 'nsw-manual', note: 'pages 12, 25 and 38' },
      { of: '1 in (25 mm) between pedal pad and carpet', kind: 'common practice' },
    ],
    examples: failureExamples,
    related: ['two-circuits', 'balance-bar', 'line-pressure', 'lock-order', 'braking-rate'],
  },
});
