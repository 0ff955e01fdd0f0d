import type { At, Scene, Shape } from '../show.ts';

export interface BarScene {
  readonly barSpacing: number;
  readonly barOffset: number;
  /** Left out: a bar that nothing stops. */
  readonly barStopAngle: number | undefined;
  readonly frontStroke: number;
  readonly rearStroke: number;
  readonly dead: 'front' | 'rear' | undefined;
  /** What to write at each rod: a share, a pressure. */
  readonly labels: { readonly front: string; readonly rear: string };
  /** Stroke at which each master bottoms, when it matters. */
  readonly bottoms?: { readonly front: number; readonly rear: number };
  /** Travel of the pivot at which the pedal stands on the carpet, when it matters. */
  readonly carpet?: number;
}

/** Reached, to the fiftieth of a millimeter a drawing can show. */
const reached = (at: number, end: number): boolean => at >= end - 2e-5;

/**
 * The balance bar from above, front circuit on the left, masters at the top, to scale. The stop is
 * shown as the wedge the bar may swing in, so that tilt can be read against it. What is touched
 * turns to the tone of an alert: the stop, the end of a bore, the carpet (drawn where the top of the
 * pivot meets it).
 */
export function barScene(v: BarScene): Scene {
  const half = v.barSpacing / 2;
  const front: At = [-half, v.frontStroke];
  const rear: At = [half, v.rearStroke];
  // The pivot lies on the line between the clevises, `barOffset` toward the front one.
  const part = (half + v.barOffset) / v.barSpacing;
  const pivot: At = [rear[0] + (front[0] - rear[0]) * part, rear[1] + (front[1] - rear[1]) * part];
  const lead = v.barStopAngle === undefined ? undefined : v.barSpacing * Math.sin(v.barStopAngle);
  const onStop = lead !== undefined && reached(Math.abs(v.frontStroke - v.rearStroke), lead);
  const swing = (angle: number): Shape => {
    const reach = v.barSpacing * 0.62;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const here = onStop && Math.sign(angle) === Math.sign(v.rearStroke - v.frontStroke);
    return { line: [[pivot[0] - reach * c, pivot[1] - reach * s], [pivot[0] + reach * c, pivot[1] + reach * s]], tone: here ? 'alert' : 'ghost' };
  };
  const longest = Math.max(v.frontStroke, v.rearStroke, v.bottoms?.front ?? 0, v.bottoms?.rear ?? 0, v.barSpacing * 0.4);
  const radius = v.barSpacing * 0.075;
  const top = longest + v.barSpacing * (v.bottoms ? 0.28 : 0.42);
  const rod = (at: At, side: 'front' | 'rear'): Shape[] => {
    const dead = v.dead === side;
    const seat = at[1] + v.barSpacing * 0.2;
    const bottom = v.bottoms && v.bottoms[side] + v.barSpacing * 0.2;
    const bottomed = v.bottoms !== undefined && reached(at[1], v.bottoms[side]);
    return [
      { capsule: [at, [at[0], seat]], radius: v.barSpacing * 0.018, tone: dead ? 'ghost' : side },
      { line: [[at[0] - v.barSpacing * 0.13, seat], [at[0] + v.barSpacing * 0.13, seat]], tone: dead ? 'ghost' : side },
      ...[-1, 1].map((sign): Shape => ({ line: [[at[0] + sign * v.barSpacing * 0.14, v.barSpacing * 0.12], [at[0] + sign * v.barSpacing * 0.14, bottom ?? top]], tone: 'plain' })),
      ...(bottom === undefined ? [] : [{ line: [[at[0] - v.barSpacing * 0.14, bottom], [at[0] + v.barSpacing * 0.14, bottom]], tone: bottomed ? 'alert' : 'plain' } as Shape]),
      { text: dead ? `${side}, dead` : side, at: [at[0], top + v.barSpacing * 0.12], tone: side },
      { text: v.labels[side], at: [at[0], top + v.barSpacing * 0.03], tone: side },
    ];
  };
  // A carpet no stroke can reach would only shrink the drawing.
  const carpetAt = v.carpet !== undefined && v.carpet < top ? v.carpet : undefined;
  const onCarpet = carpetAt !== undefined && reached(pivot[1], carpetAt);
  const carpet: Shape[] = carpetAt === undefined ? [] : [
    { line: [[-v.barSpacing * 0.3, carpetAt + radius], [v.barSpacing * 0.3, carpetAt + radius]], tone: onCarpet ? 'alert' : 'ground' },
    { text: onCarpet ? 'pedal on carpet' : 'carpet', at: [0, carpetAt + radius + v.barSpacing * 0.035], tone: onCarpet ? 'alert' : 'plain', small: !onCarpet },
  ];
  return {
    box: [-v.barSpacing * 0.95, -v.barSpacing * 0.56, v.barSpacing * 0.95, top + v.barSpacing * 0.22],
    shapes: [
      ...(v.barStopAngle === undefined ? [] : [swing(v.barStopAngle), swing(-v.barStopAngle)]),
      ...rod(front, 'front'), ...rod(rear, 'rear'), ...carpet,
      { capsule: [front, rear], radius: v.barSpacing * 0.035, tone: 'plain' },
      { circle: pivot, radius, tone: 'accent', filled: true },
      { arrow: [[pivot[0], pivot[1] - v.barSpacing * 0.38], [pivot[0], pivot[1] - v.barSpacing * 0.09]], tone: 'accent' },
      // Its own text, so that a tilted bar's stop line does not run through it.
      { text: 'pedal', at: [pivot[0], pivot[1] - v.barSpacing * 0.5] },
      ...(v.barStopAngle === undefined ? [] : [{ text: onStop ? 'on stop' : 'stop', at: [-v.barSpacing * 0.93, pivot[1] + v.barSpacing * 0.62 * Math.sin(v.barStopAngle) + v.barSpacing * 0.02], anchor: 'start', small: true } as Shape]),
    ],
  };
}
