import type { Entry } from './quantity.ts';

/** What a stop takes of road and time. All results. */
export const stopping = {
  stoppingDistance: { name: 'stopping distance (with reaction)', symbol: 'S', dimension: 'distance' },
  brakingDistance: { name: 'braking distance (without reaction)', symbol: 'S_b', dimension: 'distance' },
  reactionDistance: { name: 'distance rolled while the driver reacts', symbol: 'S_react', dimension: 'distance' },
  riseDistance: { name: 'distance rolled while the brakes rise', symbol: 'S_rise', dimension: 'distance' },
  rateOnGrade: { name: 'braking rate with the help or drag of the grade', symbol: 'z_q', dimension: 'brakingRate' },
  speedAfterRise: { name: 'speed left when the brakes are fully on', symbol: 'v_1', dimension: 'speed' },
  riseTime: { name: 'time during which the brakes rise', symbol: 't_1', dimension: 'time' },
  brakingTime: { name: 'time from first bite to standstill', symbol: 't_s', dimension: 'time' },
  stoppingTime: { name: 'time of the whole stop', symbol: 't', dimension: 'time' },
} as const satisfies Record<string, Entry>;
