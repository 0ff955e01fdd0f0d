import type { At, Scene, Shape } from '../show.ts';

export interface DrumScene {
  readonly radius: number;
  /** Below the center: where the lower shoe ends bear. Above it: the cylinder's line and, of a duo-servo, the anchor pin. */
  readonly pivot: number;
  readonly cylinder: number;
  readonly anchor: number | undefined;
  readonly cylinderRadius: number;
  readonly lining: readonly [number, number];
  readonly labels: { readonly push: string; readonly first: readonly [string, string]; readonly second: readonly [string, string] };
}

/** The left rear drum from outside, front of the truck on the left, rolling forward: it turns against the clock, so it drags the front shoe down and the rear one up. */
export function drumScene(v: DrumScene): Scene {
  const r = v.radius;
  const at = (side: -1 | 1, radius: number, angle: number): At => [side * radius * Math.sin(angle), -radius * Math.cos(angle)];
  const arc = (side: -1 | 1, radius: number, from: number, to: number): At[] => Array.from({ length: 25 }, (_, k) => at(side, radius, from + ((to - from) * k) / 24));
  const shoe = (side: -1 | 1): Shape[] => {
    const [from, to] = v.lining;
    const web = r * 0.86;
    return [
      { line: [...arc(side, r * 0.985, from, to), ...arc(side, r * 0.91, to, from)], closed: true, filled: true, tone: 'accent' },
      { line: [[side * r * 0.1, -v.pivot], ...arc(side, web, from, to), [side * v.cylinderRadius * 1.9, v.cylinder]], tone: 'frame' },
    ];
  };
  const turn = arc(1, r * 1.1, Math.PI * 0.62, Math.PI * 0.86);
  const tip = (side: -1 | 1): Shape => ({ arrow: [[side * v.cylinderRadius * 1.9, v.cylinder], [side * (v.cylinderRadius * 1.9 + r * 0.24), v.cylinder]], tone: 'alert' });
  const block = Math.max(v.cylinderRadius, r * 0.02);
  return {
    box: [-r * 1.9, -r * 1.22, r * 1.9, r * 1.34],
    shapes: [
      { circle: [0, 0], radius: r, tone: 'plain' },
      { circle: [0, 0], radius: r * 1.04, tone: 'plain' },
      { circle: [0, 0], radius: r * 0.03, tone: 'plain', filled: true },
      ...shoe(-1), ...shoe(1),
      { line: [[-block * 1.7, v.cylinder - block], [block * 1.7, v.cylinder - block], [block * 1.7, v.cylinder + block], [-block * 1.7, v.cylinder + block]], closed: true, filled: true, tone: 'plain' },
      tip(-1), tip(1),
      ...(v.anchor === undefined
        ? [{ line: [[-r * 0.1, -v.pivot - r * 0.05], [r * 0.1, -v.pivot - r * 0.05], [r * 0.1, -v.pivot + r * 0.05], [-r * 0.1, -v.pivot + r * 0.05]] as const, closed: true, filled: true, tone: 'frame' as const }, { text: 'anchor', at: [0, -v.pivot + r * 0.12] as const, small: true }]
        : [{ line: [[-r * 0.1, -v.pivot], [r * 0.1, -v.pivot]] as const, tone: 'frame' as const }, { text: 'adjuster', at: [0, -v.pivot + r * 0.12] as const, small: true }, { circle: [0, v.anchor] as const, radius: r * 0.05, tone: 'frame' as const, filled: true }]),
      { arrow: [turn[12] as At, turn[24] as At], tone: 'plain' },
      { line: turn.slice(0, 14), tone: 'plain' },
      { text: 'rolling forward', at: [r * 1.88, r * 1.18], anchor: 'end', small: true },
      { text: v.labels.push, at: [0, v.cylinder - r * 0.27] },
      { text: v.labels.first[0], at: [-r * 1.88, r * 0.1], anchor: 'start', small: true },
      { text: v.labels.first[1], at: [-r * 1.88, -r * 0.08], anchor: 'start' },
      { text: v.labels.second[0], at: [r * 1.88, r * 0.1], anchor: 'end', small: true },
      { text: v.labels.second[1], at: [r * 1.88, -r * 0.08], anchor: 'end' },
    ],
  };
}
