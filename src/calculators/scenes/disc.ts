import type { At, Scene, Shape } from '../show.ts';

export interface Disc {
  readonly outer: number;
  readonly inner: number;
  readonly effective: number;
  readonly pistonDiameter: number;
  /** On one side of the rotor. */
  readonly pistons: number;
  readonly labels: { readonly track: string; readonly effective: string; readonly pistons: string };
}

const around = (center: At, radius: number, angle: number): At => [center[0] + radius * Math.sin(angle), center[1] + radius * Math.cos(angle)];
const arc = (center: At, radius: number, from: number, to: number): At[] => Array.from({ length: 33 }, (_, k) => around(center, radius, from + ((to - from) * k) / 32));

/** Both rotors from the side at one scale, front left, rear right, each with the pad's track, the pistons of one side and the effective radius. */
export function discScene({ front, rear }: { readonly front: Disc; readonly rear: Disc }): Scene {
  const reach = Math.max(front.outer, rear.outer);
  const apart = reach * 1.16;
  const one = (side: 'front' | 'rear', disc: Disc, x: number): Shape[] => {
    const center: At = [x, 0];
    const half = Math.PI / 2;
    // The pad spans what its pistons need, and no less than a third of a right angle either way.
    const pitch = 2 * Math.asin(Math.min(1, (disc.pistonDiameter * 0.55) / disc.effective));
    const pad = Math.min(half, Math.max(0.5, (pitch * disc.pistons) / 2 + 0.06));
    return [
      { line: [...arc(center, disc.outer, -half, half), ...arc(center, disc.inner, half, -half)], closed: true, tone: 'ghost' },
      { line: [...arc(center, disc.outer, -pad, pad), ...arc(center, disc.inner, pad, -pad)], closed: true, filled: true, tone: side },
      ...Array.from({ length: disc.pistons }, (_, k): Shape => ({ circle: around(center, disc.effective, pitch * (k - (disc.pistons - 1) / 2)), radius: disc.pistonDiameter / 2, tone: 'plain' })),
      { circle: center, radius: reach * 0.02, tone: 'plain', filled: true },
      { arrow: [center, around(center, disc.effective, -0.62 - pad * 0.3)], tone: 'accent' },
      { text: side, at: [x, -reach * 0.2], tone: side },
      { text: `acts at ${disc.labels.effective}`, at: [x, -reach * 0.38] },
      { text: `track ${disc.labels.track}`, at: [x, -reach * 0.55], small: true },
      { text: disc.labels.pistons, at: [x, -reach * 0.71], small: true },
    ];
  };
  const high = Math.max(reach, ...[front, rear].map((d) => d.effective + d.pistonDiameter / 2)) + reach * 0.06;
  return {
    box: [-apart - reach * 1.06, -reach * 0.8, apart + reach * 1.06, high],
    shapes: [...one('front', front, -apart), ...one('rear', rear, apart), { line: [[-apart - reach, 0], [apart + reach, 0]], tone: 'ghost' }],
  };
}
