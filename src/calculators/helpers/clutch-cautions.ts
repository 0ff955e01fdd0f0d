import { defineCautions } from '../record.ts';
import type { ValuesOf } from '../record.ts';
import { inch, mm } from '../../units/si.ts';
import { pedalEnd } from './clutch.ts';
import type { ClutchInputs } from './clutch.ts';

type Shown = ValuesOf<ClutchInputs | 'bearingTravel' | 'releaseTravel' | 'releaseAboveFloor' | 'bearingLimit' | 'limitTravel' | 'wornBearingTravel' | 'slaveStroke' | 'clutchControlForce' | 'clutchStopTravel' | 'clutchTravelUsed'>;

const releases = (v: Shown): boolean => v.bearingTravel >= v.bearingTravelNeeded;

export const clutchCautions = defineCautions<Shown>([
  {
    id: 'start-switch', level: 'warning',
    words: 'With the start switch left off the new pedal, the starter turns in gear and the truck drives off, over whoever stands in front of it.',
    todo: 'Refit the switch so that it closes only in the last 10 to 15 % of pedal travel (common practice, no source). Try it in gear with the pedal up: wheels chocked, parking brake on, nobody ahead or behind, the starter must not turn. It is a switch, not a release: neutral and brake before every start stay the rule.',
  },
  {
    id: 'never-lets-go', level: 'warning', when: (v) => !releases(v),
    words: (v, say) => `The bearing stops ${say(v.bearingTravelNeeded - v.bearingTravel, 'length')} short of what the clutch needs. With the pedal down the engine still drives the wheels: gears grind, and the truck creeps at a stop.`,
    todo: 'In this order: less free play, bleed again, pedal stop or carpet lower, a larger master, a smaller slave. Force is never the cure for missing travel.',
    fires: { clutchMasterBore: 0.7 * inch }, silent: {},
  },
  {
    id: 'diaphragm-overbent', level: 'warning', when: (v) => v.bearingTravel > v.bearingTravelAllowed,
    words: (v, say) => `The bearing goes ${say(v.bearingTravel - v.bearingTravelAllowed, 'length')} past what the diaphragm bears. Its fingers bend or strike the hub, and a clutch that has been overbent may not clamp again.${v.bearingTravel > 1.2 * v.bearingTravelNeeded ? ' More than a fifth over what it needs: expect damage.' : ''}`,
    todo: 'Set a steel pedal stop at the travel shown before the pedal is pushed down once.',
    fires: { clutchMasterBore: 7 / 8 * inch }, silent: {},
  },
  {
    id: 'slave-overstroked', level: 'warning', when: (v) => v.slaveStroke > v.slaveStrokeLimit,
    words: (v, say) => `The slave would have to move ${say(v.slaveStroke - v.slaveStrokeLimit, 'length')} beyond its stroke. Its seal leaves the bore, the fluid is on the ground and the clutch stays shut.`,
    todo: 'Pedal stop, or a slave with more stroke. With a ring-shaped slave the gearbox has to come out to mend it.',
    fires: { slaveStrokeLimit: 14 * mm }, silent: {},
  },
  {
    id: 'slave-too-short', level: 'warning', when: (v) => v.bearingLimit < v.bearingTravelNeeded,
    words: (v, say) => `The slave runs out at ${say(v.bearingLimit, 'length')} of bearing travel, and the clutch needs ${say(v.bearingTravelNeeded, 'length')}. No pedal stop can be right.`,
    todo: 'A slave with more stroke, less play, or a lower fork ratio.',
    fires: { slaveStrokeLimit: 12 * mm }, silent: {},
  },
  {
    id: 'stop-needed', level: 'warning', when: (v) => pedalEnd(v) > v.limitTravel,
    words: (v, say) => `Nothing but a pedal stop keeps the foot from the limit at ${say(v.limitTravel, 'length')}: carpet and master let the pedal go on to ${say(pedalEnd(v), 'length')}. Without a stop the strong leg is the stop.`,
    todo: 'Weld or bolt a stop of steel at the travel shown, with a jam nut, on the pedal box and not on sheet metal. Check it with a dial gauge or tape at the fork.',
    fires: { clutchMasterBore: 7 / 8 * inch }, silent: {},
  },
  {
    id: 'wear-overbends', level: 'caution', when: (v) => v.wornBearingTravel > v.bearingTravelAllowed && v.bearingTravel <= v.bearingTravelAllowed,
    words: (v, say) => `Good today. But wear brings the fingers to meet the bearing, and once it has eaten the play the same pedal moves them ${say(v.wornBearingTravel, 'length')}, ${say(v.wornBearingTravel - v.bearingTravelAllowed, 'length')} too far.`,
    todo: 'Keep the play adjusted, or set the stop so that it is right with the play gone.',
    fires: { slavePlay: 2.9 * mm, clutchPadTravel: 5.4 * inch, bearingTravelAllowed: 10.2 * mm }, silent: {},
  },
  {
    id: 'low-release', level: 'caution', when: (v) => releases(v) && v.releaseAboveFloor < 25 * mm,
    words: (v, say) => `It lets go ${say(Math.max(0, v.releaseAboveFloor), 'length')} above the carpet. A mat, a little air or a hot day takes that away.`,
    todo: 'Leave 1 in (25 mm) or more (common practice, no source): less free play, or one bore more at the master.',
    fires: {}, silent: { clutchMasterBore: 13 / 16 * inch },
  },
  {
    id: 'little-reserve', level: 'caution', when: (v) => releases(v) && v.bearingTravel < 1.05 * v.bearingTravelNeeded,
    words: (v, say) => `Only ${say(v.bearingTravel / v.bearingTravelNeeded - 1, 'share')} more than it needs. The first bubble or worn pin turns that into a clutch that drags.`,
    todo: 'Aim for 10 to 15 % (common practice, no source).',
    fires: {}, silent: { clutchMasterBore: 13 / 16 * inch },
  },
  {
    id: 'heavy-pedal', level: 'caution', when: (v) => v.clutchControlForce > 180,
    words: (v, say) => `${say(v.clutchControlForce, 'force')} at the pedal. 18 to 40 lbf (80 to 180 N) is what a leg bears in traffic; above 50 lbf (220 N) change something (common practice, no source).`,
    todo: 'More ratio at pedal or fork, a larger slave, a smaller master: each costs bearing travel in the same proportion. Play and air cost travel and give nothing back, so remove those first.',
    fires: { clutchMasterBore: 7 / 8 * inch }, silent: {},
  },
  {
    id: 'no-free-play', level: 'caution', when: (v) => v.clutchFreePlay < 3 * mm,
    words: (v, say) => `${say(v.clutchFreePlay, 'length')} of free play at the pad may leave the master’s port covered at rest. Fluid that warms or a plate that wears then has no way back to the reservoir, and pushes the bearing: the clutch slips.`,
    todo: 'Leave 3/16 to 5/8 in (5 to 15 mm) at the pad (common practice, no source), and see the reservoir move at the first touch.',
    fires: { clutchFreePlay: 0 }, silent: {},
  },
  {
    id: 'no-play-at-slave', level: 'caution', when: (v) => v.slaveType === 'fork' && v.slavePlay < 0.5 * mm,
    words: 'No play at the fork is right only for a bearing made to run against the fingers all day. On a system set loose it burns the bearing and lets the clutch slip.',
    todo: 'Find out which you have. Set loose: 0.04 to 0.12 in (1 to 3 mm) at the fork (common practice, no source). Constant contact: the slave’s own spring holds it, and nothing may push against that.',
    fires: { slavePlay: 0 }, silent: {},
  },
  {
    id: 'lossy-line', level: 'caution', when: (v) => v.volumetricEfficiency < 0.9,
    words: (v, say) => `Only ${say(v.volumetricEfficiency, 'share')} of the fluid arrives. That is air, or a hose that swells.`,
    todo: 'Bleed with the slave’s bleeder as its highest point. A short hose at the bell housing and tube for the rest.',
    fires: { volumetricEfficiency: 0.85 }, silent: {},
  },
  {
    id: 'no-residual-valve', level: 'notice',
    words: 'A clutch line takes no residual valve. Whatever pressure it held would lie on the release bearing all day.',
    todo: 'If the master was made for drum brakes, look into its outlet port for a small check valve and take it out.',
  },
  {
    id: 'hot-line', level: 'notice',
    words: 'Slave and hose live at the bell housing, beside the exhaust. Old fluid boils there: a pedal that sinks or drops after a long climb, and comes back when it has cooled, is vapor.',
    todo: 'Keep 2 in (50 mm) from the exhaust or sleeve the line (common practice, no source). Fresh fluid of the grade the seals ask for, changed yearly.',
  },
]);

