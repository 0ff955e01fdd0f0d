import type { At, Scene, Shape, Tone } from '../show.ts';

export interface HeightValveScene {
  /** Frame over axle now, and where the lever stands level. */
  readonly height: number;
  readonly levelHeight: number;
  /** How far the body has come down over the frame. */
  readonly bodyDown: number;
  readonly labels: { readonly height: string; readonly knee: string };
}

/** Rear axle from the side, front on the left: valve and lever on the frame, a link of fixed length standing on the axle, the body above. The link's length is drawn, the rest invented around it. */
export function heightValveScene(v: HeightValveScene): Scene {
  const size = Math.max(v.height, v.levelHeight, 0.1);
  const lever = size * 0.7;
  const bracket = size * 0.3;
  const rail = size * 0.42;
  const tube = size * 0.16;
  const [valveX, z] = [-lever - tube * 0.2, v.height];
  // The link holds the lever's end at a fixed height over the axle; the valve rides with the frame.
  const rise = Math.min(lever * 0.97, Math.max(-lever * 0.97, v.levelHeight - v.height));
  const pivot: At = [valveX, z + rail * 0.5];
  const end: At = [valveX + Math.sqrt(lever ** 2 - rise ** 2), z + rail * 0.5 + rise];
  const floor = z + rail + size * 0.75 - v.bodyDown;
  const box = (x0: number, z0: number, x1: number, z1: number, tone: Tone, filled = false): Shape => ({ line: [[x0, z0], [x1, z0], [x1, z1], [x0, z1]], closed: true, tone, filled });
  const left = -size * 2.1;
  return {
    box: [left, -size * 0.75, size * 1.75, Math.max(size * 2.5, floor + size * 0.5)],
    shapes: [
      box(left + size * 0.1, floor, size * 1.65, floor + size * 0.3, 'body'),
      box(left, z, size * 1.7, z + rail, 'frame'),
      { circle: [0, 0], radius: tube, tone: 'plain', filled: true },
      { circle: [0, 0], radius: size * 0.62, tone: 'ghost' },
      { line: [[0, 0], [end[0], 0]], tone: 'plain' },
      { line: [[end[0], 0], end], tone: 'rear' },
      { circle: [end[0], 0], radius: tube * 0.25, tone: 'plain', filled: true },
      box(valveX - size * 0.34, z + rail * 0.15, valveX, z + rail * 0.85, 'alert', true),
      { line: [pivot, end], tone: 'alert' },
      { circle: end, radius: tube * 0.25, tone: 'alert', filled: true },
      { span: [[size * 0.8, 0], [size * 0.8, z]], label: v.labels.height },
      { text: 'body', at: [left + size * 0.3, floor + size * 0.1], anchor: 'start', small: true },
      { text: 'valve', at: [valveX - size * 0.42, z + rail * 0.36], anchor: 'end', small: true },
      { text: 'link', at: [end[0] + tube * 0.4, bracket], anchor: 'start', small: true },
      { text: 'axle', at: [0, -tube - size * 0.22], small: true },
      { text: v.labels.knee, at: [left + size * 0.1, -size * 0.45], anchor: 'start' },
    ],
  };
}
