import type { At, Scene } from '../show.ts';
import type { Place } from './truck.ts';
import { bodyShapes, frameShapes, shape, wheelShapes } from './truck.ts';

export interface BodyDropScene {
  readonly wheelbase: number;
  /** Frame axes to the picture: as the frame stands, as the body stands now, as the body stood before. */
  readonly frame: Place;
  readonly body: Place;
  readonly bodyBefore: Place;
  /** The reader's points, on the picture, and what stands between them. */
  readonly framePoint: At;
  readonly bodyPoint: At;
  readonly bodyPointBefore: At;
  readonly label: string;
}

/** Side view over the road, front on the left: heavy lines ride with the frame, thin ones with the body, dashed ones are the body's old place. */
export function bodyDropScene(v: BodyDropScene): Scene {
  const L = v.wheelbase;
  const points = [v.framePoint, v.bodyPoint, v.bodyPointBefore];
  const corners = [...points, v.body(shape.nose * L, shape.roof * L), v.body(shape.tail * L, shape.roof * L), v.bodyBefore(shape.nose * L, shape.roof * L), v.frame(0.26 * L, 0), v.frame(-1.35 * L, 0)];
  const [xs, ys] = [corners.map((p) => p[0]), corners.map((p) => p[1])];
  return {
    box: [Math.min(-0.36 * L, ...xs) - 0.02 * L, Math.min(0, ...ys) - 0.06 * L, Math.max(1.45 * L, ...xs) + 0.02 * L, Math.max(...ys) + 0.06 * L],
    shapes: [
      ...wheelShapes([[0, shape.tireRadius * L], [L, shape.tireRadius * L]], shape.tireRadius * L),
      ...bodyShapes({ wheelbase: L, place: v.bodyBefore, tone: 'ghost' }),
      ...bodyShapes({ wheelbase: L, place: v.body, tone: 'body' }),
      ...frameShapes({ wheelbase: L, place: v.frame, tone: 'frame' }),
      { line: [[Math.min(-0.38 * L, ...xs), 0], [Math.max(1.47 * L, ...xs), 0]], tone: 'ground' },
      { line: [v.bodyPointBefore, v.bodyPoint], tone: 'ghost' },
      { line: [v.framePoint, v.bodyPoint], tone: 'accent' },
      { circle: v.bodyPointBefore, radius: 0.012 * L, tone: 'ghost' },
      { circle: v.framePoint, radius: 0.016 * L, tone: 'accent', filled: true },
      { circle: v.bodyPoint, radius: 0.016 * L, tone: 'accent', filled: true },
      { text: v.label, at: [v.bodyPoint[0] + 0.04 * L, v.bodyPoint[1] - 0.035 * L], anchor: 'start' },
    ],
  };
}
