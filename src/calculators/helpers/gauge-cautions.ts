import { isImpossible } from '../../engine/outcome.ts';
import { lbf, psi } from '../../units/si.ts';
import { defineCautions } from '../record.ts';
import type { ValuesOf } from '../record.ts';
import { alikeOff, backwards, sureFit, unexplainedLoss } from './gauge-fit.ts';
import type { GaugeInputs } from './gauge-fit.ts';

type V = ValuesOf<GaugeInputs | 'measuredShare' | 'shareError' | 'measuredEfficiency' | 'efficiencyError' | 'pressureHysteresis' | 'barFreedom' | 'gaugeAgreement' | 'measuredKnee' | 'shareOff' | 'paperShare' | 'oneLinePressure'>;

const shareLimit = 0.03;
const leftLimit = 5 * psi;

const sticks = (v: V): boolean => v.barFreedom === 'bar' || v.barFreedom === 'drag' || v.barFreedom === 'both';
const unread = (v: V): boolean => v.barFreedom === 'unread' || v.barFreedom === 'bracket' || v.barFreedom === 'noisy';
export const shareDoubtful = (v: Pick<V, 'shareOff'>): boolean => Math.abs(v.shareOff) > shareLimit;
export const efficiencyDoubtful = (v: Pick<V, 'measuredEfficiency'>): boolean => v.measuredEfficiency > 0.97 || v.measuredEfficiency < 0.7;
/** A bar on its stop, or a front master at its end. */
export const shareChanges = (v: Pick<V, GaugeInputs>): boolean => sureFit(v).steepening !== undefined;
/** The failure test pushes half as hard again as the hardest push that is planned. */
const failureTest = 1.5;
const highestRead = (v: V): number => Math.max(...v.gaugeReadings.flatMap((r) => [r.front, r.rear]));

/** Readings of an invented truck for the cautions to be tried on: slopes in psi per lbf each way. */
function read(front: readonly [down: number, up: number], rear: readonly [down: number, up: number], forces = [25, 40, 55, 70, 85, 100]): V['gaugeReadings'] {
  return (['down', 'up'] as const).flatMap((foot, k) => forces.map((pounds) => ({ foot, force: pounds * lbf, front: pounds * (front[k] as number) * psi, rear: pounds * (rear[k] as number) * psi })));
}
const sound = read([8.4, 8.5], [5.2, 5.25]);

export const gaugeCautions = defineCautions<V>([
  {
    id: 'standing-only', level: 'danger',
    words: 'These are readings of a truck that stands. They say nothing of brake pads, tires and road, and a truck that agrees with its paper on gauges can still lock its rear wheels first.',
    todo: 'No driving until every standing test has passed. Then prove the lock order on a closed lot, empty, dry and wet.',
  },
  {
    id: 'steepens', level: 'danger', when: shareChanges,
    words: (v, say) => {
      const bend = sureFit(v).steepening;
      return `From ${say(bend?.frontPressure ?? 0, 'pressure')} in front the rear rises ${say(bend?.times ?? 1, 'ratio', 2)} times as fast against the front as before. No valve does that. A bar that has met its stop does: from there both pistons go in alike, and the rear, which swells less, gets more of the push. So does a front master at the end of its bore. In the hard stop this truck has another share, with more at the rear, and an empty pickup whose rears lock first turns around. ${bend?.cut ? 'Share and efficiency here are from the readings below the bend.' : 'Share and efficiency here are from all readings, and so of neither part.'}`;
    },
    todo: 'Do not drive it. Look for bright metal at the bar’s stop, measure both rods’ travel against the masters’ strokes, bleed again. The bar must stay off its stop up to the hardest push you plan. Read more forces about the bend: it may be chance, and it may not.',
    fires: { gaugeReadings: read([8.4, 8.5], [5.2, 5.25], [25, 35, 45, 55, 65, 75, 85, 95, 105, 115]).map((r) => ({ ...r, rear: r.rear + Math.max(0, r.front - 600 * psi) * 0.6 })) }, silent: {},
  },
  {
    id: 'share-off', level: 'warning', when: shareDoubtful,
    words: (v, say) => `The gauges say ${say(v.measuredShare, 'share')}, the bar’s turns ${say(v.paperShare, 'share')}. That is too far apart for gauges and tape: a bar that binds or touches its stop, a wrong bore, swapped gauges, or turns counted from the wrong middle. A bound bar gives another truck every stop.`,
    todo: 'Rods off, swing the bar by hand to both stops; measure pivot to each clevis with calipers; swap the gauges and read again. Do not take this share over before you know.',
    fires: { barOffset: 0 }, silent: {},
  },
  {
    id: 'efficiency-high', level: 'warning', when: (v) => v.measuredEfficiency > 0.97,
    words: (v, say) => `An efficiency of ${say(v.measuredEfficiency, 'share')} leaves nothing for friction, so a number is wrong: the pedal ratio too low, a bore too large on paper, or a scale that reads low. Brakes planned with it are weaker than they look.`,
    todo: 'Measure the ratio again at the height where the pedal stood, read the bores on the castings, check the scale with a known weight.',
    fires: { pedalRatio: 5 }, silent: {},
  },
  {
    id: 'efficiency-low', level: 'warning', when: (v) => v.measuredEfficiency < 0.7,
    words: (v, say) => `Only ${say(v.measuredEfficiency, 'share')} of what the lever should give reaches the fluid. Something rubs, the foot pushes across the arm, or a ratio or bore on paper is not the one in the truck. What rubs today binds tomorrow.`,
    todo: 'Push square to the arm and read again. Then rods off: pedal and bar must move with a finger. Check ratio and bores.',
    fires: { pedalRatio: 8 }, silent: {},
  },
  {
    id: 'loss-not-friction', level: 'caution', when: (v) => (unexplainedLoss(v) ?? 0) > 0.1,
    words: (v, say) => `The linkage seems to lose ${say(1 - v.measuredEfficiency, 'share', 2)} of the push. Friction takes on the way down what it gives on the way back, and these lines come back so close that it can be only about ${say(1 - v.measuredEfficiency - (unexplainedLoss(v) ?? 0), 'share', 2)}. The rest is something else.`,
    todo: 'Look for a number that is wrong: the ratio where the pedal stands, a foot that does not push square to the arm, a bore, the scale.',
    fires: {}, silent: { pedalRatio: 5.5 },
  },
  {
    id: 'sticks', level: 'warning', when: sticks,
    words: (v, say) => {
      const { hysteresis: h } = sureFit(v);
      const what = { bar: 'Front and rear part ways, so it is the bar: its bearing, its clevises or dirt. The share then depends on what the foot did before.', drag: 'Both circuits stay high alike, so it is the pedal pivot, the rods or the seals: brakes that let go late.' }[v.barFreedom as 'bar' | 'drag'] ?? 'Bar, pedal or seals: these readings cannot tell which.';
      return `Coming back up, at ${say(50 * lbf, 'force')}, ${isImpossible(h) ? 'the pressures' : `front ${say(h.front, 'share', 2)} and rear ${say(h.rear, 'share', 2)}`} off the middle of going down and coming up. ${what}`;
    },
    todo: 'Rods off: swing the bar to both stops with a finger and let the pedal fall. Side gap at each clevis 0.06 to 0.10 in (1.5 to 2.5 mm), greased, no paint (common practice, no source). Then read again. Do not drive on it.',
    fires: { gaugeReadings: read([8.4, 9.6], [5.2, 5.2]) }, silent: {},
  },
  {
    id: 'backwards', level: 'warning', when: backwards,
    words: 'At 50 lbf (222 N) the lines are lower coming up than going down. Friction does the opposite. Readings of the two ways may be exchanged, or the foot pushed on a little before a reading of the way up. Then the efficiency here is that of the way back, which is too good.',
    todo: 'Check which readings were taken on which way. Then read again: down without easing off, up without pushing on.',
    fires: { gaugeReadings: read([8.6, 8.2], [5.3, 5.1]) }, silent: {},
  },
  {
    id: 'not-read', level: 'caution', when: unread,
    words: (v) => (v.barFreedom === 'noisy' ? 'The readings scatter so much that a bar that sticks would not show. That is not a bar that swings free.' : 'Whether the bar swings free is not known. Nothing coming up at 50 lbf (222 N) was read, and a bar that sticks looks perfect going down.'),
    todo: 'Read coming up too, at least five forces, with one at 50 lbf (222 N) or on both sides of it, holding each three seconds.',
    fires: { gaugeReadings: sound.filter((r) => r.foot === 'down') }, silent: {},
  },
  {
    id: 'pressure-left', level: 'warning', when: (v) => v.releasePressure > leftLimit,
    words: (v, say) => `${say(v.releasePressure, 'pressure')} is left a second after the foot has gone. Brakes that hold on drag, get hot, boil their fluid and can lock on a long drive.`,
    todo: 'Free play at both rods, ports open (fluid must spurt in both reservoirs at first touch), no residual valve in a disc circuit, no check valve left in a port. At most 5 psi (0.3 bar), common practice, no source, and wheels that spin by hand.',
    fires: { releasePressure: 10 * psi }, silent: {},
  },
  {
    id: 'gauge-small', level: 'warning', when: (v) => highestRead(v) > 0.75 * v.gaugeRange || failureTest * v.oneLinePressure > v.gaugeRange,
    words: (v, say) => `The gauge ends at ${say(v.gaugeRange, 'pressure')}. ${highestRead(v) > 0.75 * v.gaugeRange ? `${say(highestRead(v), 'pressure')} is in its last quarter, where it wears out and tells little. ` : ''}If one line is open, or its master bottoms late, the bar can give the other line all of the push: ${say(v.oneLinePressure, 'pressure')} at your hardest reading, and ${say(failureTest * v.oneLinePressure, 'pressure')} where the failure test pushes half as hard again. A burst tube sprays fluid into your eyes.`,
    todo: 'Take gauges of 2,000 or 3,000 psi (140 or 200 bar) whose range is well above that. Take them off for the leak hold with all your might. Eye protection on.',
    fires: { gaugeRange: 1000 * psi }, silent: {},
  },
  {
    id: 'differs', level: 'warning', when: (v) => v.gaugeAgreement === 'differs',
    words: (v, say) => {
      const { worstDeviation: worst } = sureFit(v);
      return `The truck is not the one on paper: at ${say(worst?.controlForce ?? 0, 'force')} the ${worst?.circuit ?? 'front'} is off by ${worst && Number.isFinite(worst.part) ? say(Math.abs(worst.part), 'share', 2) : 'everything, for the paper has no pressure there'}, and 7 % is what gauges, scale and tape may differ (common practice, no source). ${alikeOff(v) ? `But it is off by much the same pressure at every push, so it is a dial, a scale or a spring that is not at zero. A 3,000 psi dial may be off by 90 psi down there (from memory, not checked against a text). Share and efficiency do not feel it.` : 'Every page that starts from the paper is off by as much.'}`;
    },
    todo: 'A difference that is the same part everywhere is the efficiency or the ratio; opposite ones front and rear are the share; one that fades as the push grows is a spring or a scale that was not at zero. Find it, or take the measured values over, and read the other calculators again.',
    fires: { linkageEfficiency: 0.75 }, silent: {},
  },
  {
    id: 'bent-without-valve', level: 'warning', when: (v) => v.rearValve === 'none' && v.measuredKnee > 0,
    words: (v, say) => `The rear line bends at ${say(v.measuredKnee, 'pressure')}, and you say there is no valve. A rear master at the end of its bore does that, a bar whose rear rod has run ahead to the stop, and an old valve nobody has traced.`,
    todo: 'Trace the rear line from master to axle. Look for bright metal at the bar’s stop. Do not take these figures over before you know.',
    fires: { gaugeReadings: read([8.4, 8.5], [5.2, 5.3], [15, 25, 35, 45, 55, 65, 75, 85, 95]).map((r) => ({ ...r, rear: Math.min(r.rear, 300 * psi + 0.4 * (r.rear - 300 * psi)) })) }, silent: {},
  },
  {
    id: 'valve-unseen', level: 'caution', when: (v) => v.rearValve === 'fitted' && v.measuredKnee === 0,
    words: 'A valve is fitted and no bend shows. Its knee lies above your readings, between too few of them, or the valve does nothing. The share is then read from a line that may be bent.',
    todo: 'Read on to a hard push, with three readings or more on both sides of where the knee should be. Or set the bar with the valve wide open.',
    fires: { rearValve: 'fitted' }, silent: {},
  },
  {
    id: 'scatter', level: 'caution', when: (v) => v.shareError > 0.01,
    words: (v, say) => `The readings scatter: the share is uncertain by ${say(v.shareError, 'share', 2)} from that alone. A turn of the bar moves it by about two points.`,
    todo: 'Hold each push three seconds, tap the dials, read more forces.',
    fires: { gaugeReadings: sound.map((r, k) => ({ ...r, front: r.front * (1 + 0.15 * Math.sin(5 * k)) })) }, silent: {},
  },
]);

