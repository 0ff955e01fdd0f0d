import { bar, deg, inch, lb, lbf, mm, psi } from '../../units/si.ts';
import { barAtStop } from '../helpers/balance-bar.ts';
import { brakingFeed, effortTooHigh, frontSlides, padNearCarpet, rearSlides, strokeSpent } from '../helpers/braking-rate.ts';
import { at, chain, chartEnd, chartFeet, ends, hardEnd, pedalOf, refusal, shortOf, sliding, travelParts } from '../helpers/foot-to-road.ts';
import type { FootToRoad } from '../helpers/foot-to-road.ts';
import { footToRoadEquations } from '../helpers/foot-to-road-equations.ts';
import { firstOf, footForTarget, hardEnds, inWords, legLimit, padKeep, padKeepWords, targetRate } from '../helpers/run-out.ts';
import type { RunOut } from '../helpers/run-out.ts';
import { defineCalculator } from '../record.ts';
import { travelScene } from '../scenes/travel.ts';

/** Where the pedal ends for good, if a chart goes that far: a ring on it, and its words for the legend. */
function endRing(v: FootToRoad, of: (s: ReturnType<typeof chain>) => number) {
  const end = hardEnd(v);
  return end && end.controlForce <= chartEnd(v) ? [{ at: [end.controlForce, of(chain(v, end.controlForce))] as const, label: '', tone: 'alert' as const }] : [];
}
function upToRing(v: FootToRoad, label: string): string {
  const end = hardEnd(v);
  return end && end.controlForce <= chartEnd(v) ? `${label}, to the ring: ${hardEnds[end.id as keyof typeof hardEnds]}` : label;
}

export default defineCalculator({
  ...brakingFeed,
  version: 1,
  purpose: 'What a foot force makes of braking, and what it uses of stroke and pedal travel: is this pedal short of force or of volume?',
  howSure: {
    samePads: true,
    quick: (v) => {
      const s = chain(v, v.controlForce);
      return refusal(v, s) ?? { brakingRateReached: s.rate };
    },
  },
  summary: (v, say) => `${say(v.controlForce, 'force')} on the pedal asks the brakes for ${say(v.brakingRateReached, 'brakingRate')} and uses ${say(v.frontStrokeUsed, 'share')} of the front master’s stroke, ${say(v.rearStrokeUsed, 'share')} of the rear’s and ${say(v.padTravelUsed, 'share')} of the pedal’s travel to the carpet. ${shortOf(v, say)}`,
  equations: footToRoadEquations,
  cautions: [
    {
      id: 'bottom-or-carpet', level: 'danger',
      words: 'A master at its bottom or a pedal on the carpet makes no more pressure. The truck then does not stop, and a harder push changes nothing.',
      todo: `Parked, wheels chocked, push as hard as you can and hold ten seconds: the pedal must stand still, at least ${padKeepWords} above the finished carpet. Do it again after every change and after the first hot drive.`,
    },
    {
      id: 'bar-at-stop', level: 'danger', when: barAtStop,
      words: (v, say) => `At this foot force the bar ${v.tiltOfStop > 1 ? 'would need' : 'has used'} ${say(v.tiltOfStop, 'share')} of its swing. On its stop it no longer shares by your setting, one circuit takes what the other should have, and the figures on this page do not hold.`,
      todo: 'Bring the two strokes together: another bore, or less fluid for the circuit that runs ahead. The adjuster does not help.',
      fires: { barStopAngle: 9 * deg }, silent: {},
    },
    {
      id: 'rear-slides', level: 'danger', when: rearSlides,
      words: (v, say) => `The rear tires slide ${at(sliding(v) as RunOut, say)}, before this foot force, on a road of grip ${say(v.grip, 'friction')}. The truck cannot reach ${say(v.brakingRateReached, 'brakingRate')}; it turns around instead.`,
      todo: 'Less rear: move the bar toward the front, a larger rear bore, or a valve. Then check the lock order, empty.',
      fires: { rearBrakeGain: 120 / bar, grip: 0.6 }, silent: {},
    },
    {
      id: 'front-slides', level: 'warning', when: frontSlides,
      words: (v, say) => `The front tires slide ${at(sliding(v) as RunOut, say)}, before this foot force, on a road of grip ${say(v.grip, 'friction')}. The truck cannot reach ${say(v.brakingRateReached, 'brakingRate')}: that is only what the brakes ask for, and it no longer steers.`,
      todo: 'On this road more pressure is no help. Ease off until the wheels turn.',
      fires: { grip: 0.5 }, silent: {},
    },
    {
      id: 'pad-near-carpet', level: 'warning', when: padNearCarpet,
      words: (v, say) => `Only ${say(v.padReserve, 'length')} are left between pedal and carpet, with ${say(v.padTravelUsed, 'share')} of the travel used. Air, worn brake pads or hot fluid can take the rest, and then the floor holds the pedal, not the brakes. One US inspection text, written for heavier vehicles, allows 80 % at ${say(50 * lbf, 'force')}.`,
      todo: `Keep ${padKeepWords} at the hardest stop (common practice, no source). The picture shows what takes the travel: work on the longest row.`,
      fires: { controlForce: 112 * lbf }, silent: { controlForce: 60 * lbf },
    },
    {
      id: 'pad-two-thirds', level: 'caution', when: (v) => v.padTravelUsed > 2 / 3 && v.padTravelUsed <= 0.8 && v.padReserve >= padKeep,
      words: (v, say) => `The pedal has used ${say(v.padTravelUsed, 'share')} of its travel. A third should be left for air, wear and heat (common practice, no source).`,
      todo: 'The picture shows what takes the travel: work on the longest row.',
      fires: { controlForce: 85 * lbf }, silent: { controlForce: 50 * lbf },
    },
    {
      id: 'stroke-spent', level: 'warning', when: strokeSpent,
      words: (v, say) => `The ${v.frontStrokeUsed >= v.rearStrokeUsed ? 'front' : 'rear'} master has used ${say(Math.max(v.frontStrokeUsed, v.rearStrokeUsed), 'share')} of its stroke. What is left must cover air, knocked-back brake pads and heat.`,
      todo: 'Plan on 80 % at the hardest stop (common practice, no source). A larger bore or a longer master; check foot force again.',
      fires: { frontMasterStroke: 0.9 * inch }, silent: {},
    },
    {
      id: 'effort-target', level: 'warning', when: effortTooHigh,
      words: (v, say) => {
        const foot = footForTarget(pedalOf(v));
        return `${say(targetRate, 'brakingRate')} needs ${foot === undefined ? 'more than any leg has' : say(foot, 'force')}. The light-vehicle brake test allows its driver ${say(legLimit, 'force')}, and a small driver has less.`;
      },
      todo: 'A smaller bore, more ratio, a larger caliper or a better brake pad. Check stroke and pedal travel again after each: they pay for it.',
      fires: { frontMasterBore: 13 / 16 * inch, rearMasterBore: 13 / 16 * inch }, silent: {},
    },
  ],
  picture: {
    title: 'Where the pedal’s travel goes at this foot force, to scale',
    describe: (v, say) => `From rest to the carpet, ${say(v.floorTravel, 'length')} in all: ${travelParts(v, say).map((part) => `${part.name} ${part.label}`).join(', ')}.`,
    scene: (v, _at, say) => travelScene({ parts: travelParts(v, say), whole: v.floorTravel }),
  },
  charts: [
    {
      title: 'Braking rate against foot force',
      x: { label: 'foot force', dimension: 'force' },
      y: { label: 'braking rate', dimension: 'brakingRate' },
      series: (v) => {
        const tires = firstOf(ends(v), 'tires');
        return [
          { label: upToRing(v, 'asked by the brakes'), tone: 'accent', points: chartFeet(v).map((f) => [f, chain(v, f).rate] as const) },
          ...(tires && tires.controlForce <= chartEnd(v) ? [{ label: `${tires.id === 'front-tires' ? 'front' : 'rear'} tires slide above`, tone: 'ghost' as const, points: [[0, tires.rate], [chartEnd(v), tires.rate]] as const }] : []),
        ];
      },
      marks: (v) => [{ at: [v.controlForce, v.brakingRateReached], label: 'you' }, ...endRing(v, (s) => s.rate)],
      describe: (v, say) => {
        const end = hardEnd(v);
        const tires = firstOf(ends(v), 'tires');
        return `The rate rises with foot force${end && end.controlForce <= chartEnd(v) ? ` until it ends ${at(end, say)}: ${inWords[end.id](say)}` : ''}.${tires ? ` On this road the ${inWords[tires.id](say)} ${at(tires, say)}.` : ''}`;
      },
    },
    {
      title: 'Pedal travel against foot force',
      x: { label: 'foot force', dimension: 'force' },
      y: { label: 'pedal travel', dimension: 'length' },
      series: (v) => [
        { label: upToRing(v, 'pedal'), tone: 'accent', points: chartFeet(v).map((f) => [f, chain(v, f).padTravel] as const) },
        { label: 'carpet', tone: 'ground', points: [[0, v.floorTravel], [chartEnd(v), v.floorTravel]] },
        ...(v.floorTravel > padKeep ? [{ label: `${padKeepWords} above it`, tone: 'ghost' as const, points: [[0, v.floorTravel - padKeep], [chartEnd(v), v.floorTravel - padKeep]] as const }] : []),
      ],
      marks: (v) => [{ at: [v.controlForce, v.padTravelNormal], label: 'you' }, ...endRing(v, (s) => s.padTravel)],
      describe: (v, say) => `The pedal drops ${say(chain(v, 0).padTravel, 'length')} before pressure builds, then goes down with foot force to ${say(v.padTravelNormal, 'length')} at ${say(v.controlForce, 'force')}. The carpet is at ${say(v.floorTravel, 'length')}.`,
    },
  ],
  tables: [
    {
      caption: 'As foot force rises',
      head: ['Foot force', 'Front', 'Rear', 'Rate', 'Pedal travel'],
      rows: (v, say) => {
        const end = hardEnd(v);
        return [25 * lbf, 50 * lbf, 75 * lbf, 100 * lbf, legLimit].map((controlForce) => {
          const s = chain(v, controlForce);
          const gone = end !== undefined && end.controlForce < controlForce;
          return [{ value: controlForce, dimension: 'force' }, ...(gone ? ['–', '–', inWords[end.id](say), '–'] : [say(s.frontPressure, 'pressure'), say(s.rearOutlet, 'pressure'), say(s.rate, 'brakingRate'), say(s.padTravel, 'length')])];
        });
      },
    },
    {
      caption: 'What runs out, in the order it does',
      head: ['What', 'Foot force', 'Braking rate'],
      rows: (v, say) => ends(v).filter((r) => r.controlForce <= 3 * legLimit).map((r) => [inWords[r.id](say), { value: r.controlForce, dimension: 'force' }, { value: r.rate, dimension: 'brakingRate' }]),
    },
  ],
  paper: {
    assumptions: ['A steady push on a bled, cold system.', 'One pedal ratio through the swing.', 'Each circuit swallows a fixed volume before pressure builds, then a volume in proportion to pressure; behind a valve, to the valve’s outlet.', 'The bar shares force and adds motion by the same lever.', 'Every brake bites at the same push-out pressure.'],
    leftOut: ['The tires: the rate is what the brakes ask for. A caution says when the road gives less.', 'Flex of pedal, firewall and bracket, which adds pedal travel.', 'Friction of the bar and its tilt, until it meets its stop.', 'Fade, air, knocked-back brake pads, hot fluid: what the reserve is for.'],
    sources: [
      { of: 'brake forces over weight', kind: 'from memory', id: 'gillespie', note: 'chapter 3, brake proportioning example' },
      { of: 'stroke and pedal travel', kind: 'derived', note: 'volume kept; checked by equal work at foot and fluid' },
      { of: '500 N as the most a test driver pushes', kind: 'published', id: 'fmvss-135', note: 'S7.5; a yardstick, not a target' },
      { of: '80 % of the pedal’s travel at 50 lbf', kind: 'published', id: 'cfr-570', note: 'paragraph (c), written for heavier vehicles' },
      { of: '1-1/2 in (38 mm) above the carpet, 80 % of the stroke, a third in reserve, 0.8 g as the design stop', kind: 'common practice' },
    ],
    examples: [
      ...([[222, 0.359, 14.5, 6.9, 72], [500, 0.81, 22.1, 9.9, 108]] as const).map(([controlForce, rate, front, rear, pad]) => ({
        source: `Reference truck worked by hand: ${controlForce} N, both masters 0.70 in, 122.84 and 63.40 N/bar, no free play`,
        inputs: {
          controlForce, pedalRatio: 6.2, linkageEfficiency: 0.85, frontShare: 0.62, barSpacing: 63.5 * mm, frontMasterBore: 17.78 * mm, rearMasterBore: 17.78 * mm, masterSpring: 0, portStroke: 1 * mm, pushrodFreePlay: 0, pushOutPressure: 0, rearValve: 'none' as const,
          frontTakeUp: 1.874e-6, rearTakeUp: 0.884e-6, frontCompliance: 0.051e-11, rearCompliance: 0.033e-11, frontBrakeGain: 122.84 / bar, rearBrakeGain: 63.4 / bar, frontAxleLoad: 777.2, rearAxleLoad: 562.8,
        },
        results: {
          brakingRateReached: { value: rate, within: 0.0006 / rate }, frontStroke: { value: front * mm, within: 0.05 / front }, rearStroke: { value: rear * mm, within: 0.05 / rear },
          padTravelNormal: { value: pad * mm, within: 0.5 / pad }, rearBrakeFraction: { value: 0.24, within: 0.002 },
        },
      })),
      {
        source: 'Gillespie, brake proportioning example, row at 100 psi (from memory): 2,210 and 1,864 lb, 20 and 14 lbf·in per psi and brake, tire 12.11 in',
        inputs: {
          controlForce: 100 * psi * Math.PI / 4 * (20 * mm) ** 2 * 2 / 5, pedalRatio: 5, linkageEfficiency: 1, frontShare: 0.5, frontMasterBore: 20 * mm, rearMasterBore: 20 * mm, masterSpring: 0, pushOutPressure: 0, rearValve: 'none',
          frontBrakeGain: 2 * 20 / 12.11 * lbf / psi, rearBrakeGain: 2 * 14 / 12.11 * lbf / psi, frontAxleLoad: 2210 * lb, rearAxleLoad: 1864 * lb,
        },
        results: { frontPressure: { value: 100 * psi, within: 1e-9 }, frontBrakeForce: { value: 330 * lbf, within: 0.5 / 330 }, rearBrakeForce: { value: 231 * lbf, within: 0.5 / 231 }, brakingRateReached: { value: 0.138, within: 0.0005 / 0.138 } },
      },
    ],
    related: ['manual-or-boosted', 'two-circuits', 'disc-torque', 'lock-order', 'circuit-failure'],
  },
});
