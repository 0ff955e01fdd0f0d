import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';

const left = {
  options: {
    'free-run': 'the dead side still runs ahead',
    'on-bar-stop': 'bar on its stop: the live side gets all of the push',
    'flat-spot': 'flat spot: the dead master takes every extra pound',
    'on-dead-master': 'dead master bottomed: the live side gets only its share',
    'good-bottomed': 'live master bottomed: no more pressure',
    'on-opposite-stop': 'bar on its other stop: no more pressure',
    'on-floor': 'pedal on the carpet: no more pressure',
  },
} as const;

/** Who locks first, how much grip is used, what a rear valve keeps, what one dead circuit leaves. */
export const balance = {
  shareMargin: {
    name: 'margin of the rear share below the ideal', symbol: 'δ_Φ', dimension: 'share',
    usual: { min: 0.03, max: 0.08, source: commonPractice + ': 4 to 5 points cover brake pads, bar friction and the center of gravity' },
    hard: { min: 0, max: 0.5, reason: 'a margin lies between nothing and 50 points' },
    measure: 'Your choice. Four points, unless you have gauge readings and a measured center of gravity.',
  },
  rateLimit: {
    name: 'highest braking rate the margin must hold to', symbol: 'z_lim', dimension: 'brakingRate',
    usual: { min: 0.8, max: 1.1, source: commonPractice },
    hard: { min: 0.05, max: 1.5, reason: 'street tires stop at between 0.05 and 1.5 g' },
    measure: 'Your choice: the hardest stop the tires allow on the best road, empty.',
  },
  // results: lock order
  criticalRate: { name: 'critical braking rate, empty', symbol: 'z_crit', dimension: 'brakingRate' },
  frontLockRate: { name: 'braking rate at which the front locks, empty', symbol: 'z_lf', dimension: 'brakingRate' },
  rearLockRate: { name: 'braking rate at which the rear locks, empty', symbol: 'z_lr', dimension: 'brakingRate' },
  lockMargin: { name: 'critical rate less grip, empty (− : rear first)', symbol: 'Δz', dimension: 'brakingRate' },
  lockControlForce: { name: 'control force at the first lock, empty', symbol: 'F_l', dimension: 'force' },
  ladenCriticalRate: { name: 'critical braking rate, loaded', symbol: 'z_crit,p', dimension: 'brakingRate' },
  ladenFrontLockRate: { name: 'braking rate at which the front locks, loaded', symbol: 'z_lf,p', dimension: 'brakingRate' },
  ladenRearLockRate: { name: 'braking rate at which the rear locks, loaded', symbol: 'z_lr,p', dimension: 'brakingRate' },
  ladenMass: { name: 'mass with driver and load', symbol: 'M_p', dimension: 'mass' },
  ladenRearLoadFraction: { name: 'static rear load fraction, loaded', symbol: 'ψ_p', dimension: 'share' },
  ladenHeightRatio: { name: 'center of gravity height over wheelbase, loaded', symbol: 'χ_p', dimension: 'ratio' },
  // results: adhesion
  neededGrip: { name: 'grip this stop needs', symbol: 'k', dimension: 'friction' },
  frontAdhesion: { name: 'adhesion utilized at the front axle', symbol: 'f_f', dimension: 'friction' },
  rearAdhesion: { name: 'adhesion utilized at the rear axle', symbol: 'f_r', dimension: 'friction' },
  brakingEfficiency: { name: 'braking efficiency', symbol: 'E', dimension: 'share' },
  // results: rear valve
  rearPressureAfterValve: { name: 'rear line pressure after the valve', symbol: 'p_ro', dimension: 'pressure' },
  kneeForMargin: { name: 'highest knee that keeps the margin (0: none does)', symbol: 'p_k,max', dimension: 'pressure' },
  kneeRate: { name: 'braking rate at the knee', symbol: 'z_k', dimension: 'brakingRate' },
  marginKept: { name: 'least margin of the rear share with this knee', symbol: 'δ_Φ,min', dimension: 'share' },
  openValvePressure: { name: 'rear line pressure up to which the bar alone keeps the margin', symbol: 'p_open', dimension: 'pressure' },
  rearShareAboveKnee: { name: 'rear share of what is added above the knee', symbol: 'Φ_m', dimension: 'share' },
  valveNeed: {
    name: 'what the margin asks of the valve',
    options: { set: 'a knee at or below the figure', nothing: 'nothing: the bar alone keeps it', beyond: 'more than any knee can do' },
  },
  // results: one circuit dead. fd: front dead, rd: rear dead
  rateFrontDead: { name: 'braking rate with the front circuit dead', symbol: 'z_fd', dimension: 'brakingRate' },
  rateRearDead: { name: 'braking rate with the rear circuit dead', symbol: 'z_rd', dimension: 'brakingRate' },
  travelFrontDead: { name: 'pedal travel with the front circuit dead', symbol: 'T_fd', dimension: 'length' },
  travelRearDead: { name: 'pedal travel with the rear circuit dead', symbol: 'T_rd', dimension: 'length' },
  floorMarginFrontDead: { name: 'pedal above the carpet with the front circuit dead', symbol: 'c_fd', dimension: 'length' },
  floorMarginRearDead: { name: 'pedal above the carpet with the rear circuit dead', symbol: 'c_rd', dimension: 'length' },
  pressureFrontDead: { name: 'rear line pressure with the front circuit dead', symbol: 'p_fd', dimension: 'pressure' },
  pressureRearDead: { name: 'front line pressure with the rear circuit dead', symbol: 'p_rd', dimension: 'pressure' },
  slipLimitFrontDead: { name: 'braking rate at which the rear tires alone slide', symbol: 'z_sr', dimension: 'brakingRate' },
  slipLimitRearDead: { name: 'braking rate at which the front tires alone slide', symbol: 'z_sf', dimension: 'brakingRate' },
  ceilingFrontDead: { name: 'rear line pressure at which the dead front master bottoms', symbol: 'p_lim,fd', dimension: 'pressure' },
  ceilingRearDead: { name: 'front line pressure at which the dead rear master bottoms', symbol: 'p_lim,rd', dimension: 'pressure' },
  flatFromFrontDead: { name: 'start of the flat spot with the front circuit dead (0: none)', symbol: 'F_1,fd', dimension: 'force' },
  flatToFrontDead: { name: 'end of the flat spot with the front circuit dead (0: none)', symbol: 'F_2,fd', dimension: 'force' },
  flatFromRearDead: { name: 'start of the flat spot with the rear circuit dead (0: none)', symbol: 'F_1,rd', dimension: 'force' },
  flatToRearDead: { name: 'end of the flat spot with the rear circuit dead (0: none)', symbol: 'F_2,rd', dimension: 'force' },
  barLead: { name: 'lead of the dead clevis at the bar’s stop', symbol: 'x_lead', dimension: 'length' },
  frontStrokeFrontDead: { name: 'front master stroke with the front circuit dead', symbol: 'x_f,fd', dimension: 'length' },
  rearStrokeFrontDead: { name: 'rear master stroke with the front circuit dead', symbol: 'x_r,fd', dimension: 'length' },
  frontStrokeRearDead: { name: 'front master stroke with the rear circuit dead', symbol: 'x_f,rd', dimension: 'length' },
  rearStrokeRearDead: { name: 'rear master stroke with the rear circuit dead', symbol: 'x_r,rd', dimension: 'length' },
  stateFrontDead: { name: 'what holds with the front circuit dead', ...left },
  stateRearDead: { name: 'what holds with the rear circuit dead', ...left },
} as const satisfies Record<string, Entry>;
