import type { Point } from '../../engine/capsule.ts';
import type { At, Scene, Shape, Tone } from '../show.ts';

export interface DrawnLine {
  /** Joint centers and ends from the rim down: column, joints, box. */
  readonly column: { readonly at: Point; readonly axis: Point };
  readonly joints: readonly { readonly at: Point; readonly label: string }[];
  readonly box: { readonly at: Point; readonly axis: Point };
}

export interface ShaftScene {
  readonly view: 'side' | 'above';
  readonly now: DrawnLine;
  readonly old?: DrawnLine;
  /** The box a bearing can go in: two corners. */
  readonly region?: readonly [Point, Point];
  readonly bearing?: Point;
  readonly length: string;
  readonly title: string;
}

/** Both views have the front on the left; from above, the truck's left side is down. */
const places = { side: (p: Point): At => [-p.x, p.z], above: (p: Point): At => [-p.x, -p.y] } as const;

const along = (p: Point, axis: Point, by: number): Point => ({ x: p.x + by * axis.x, y: p.y + by * axis.y, z: p.z + by * axis.z });

/** The shaft to scale. Heavy: the box's input and what is bolted to the frame. Thin: the column. Dashed: before the drop. */
export function shaftScene(v: ShaftScene): Scene {
  const place = places[v.view];
  const { column, box } = v.now;
  const size = Math.max(Math.hypot(column.at.x - box.at.x, column.at.y - box.at.y, column.at.z - box.at.z), 0.1);
  const rim = (line: DrawnLine): Point => along(line.column.at, line.column.axis, -0.4 * size);
  const inBox = (line: DrawnLine): Point => along(line.box.at, line.box.axis, 0.22 * size);
  const chain = (line: DrawnLine): At[] => [line.column.at, ...line.joints.map(({ at }) => at), line.box.at].map(place);
  const drawn = (line: DrawnLine, tones: readonly [Tone, Tone, Tone]): Shape[] => [
    { line: [place(rim(line)), place(line.column.at)], tone: tones[0] }, { line: chain(line), tone: tones[1] }, { line: [place(line.box.at), place(inBox(line))], tone: tones[2] },
  ];
  const region = v.region?.map(place) as [At, At] | undefined;
  const shown: At[] = [...chain(v.now), place(rim(v.now)), place(inBox(v.now)), ...(v.old ? [...chain(v.old), place(rim(v.old))] : []), ...(region ?? []), ...(v.bearing ? [place(v.bearing)] : [])];
  const [xs, ys] = [shown.map((p) => p[0]), shown.map((p) => p[1])];
  const [left, right, low, high] = [Math.min(...xs) - 0.08 * size, Math.max(...xs) + 0.2 * size, Math.min(...ys) - 0.24 * size, Math.max(...ys) + 0.3 * size];
  const [first, last] = [place(column.at), place(v.now.joints.length > 1 ? (v.now.joints[1] as { at: Point }).at : box.at)]; // the piece that slides
  const mark = 0.03 * size;
  return {
    box: [left, low, right, high],
    shapes: [
      ...(region ? [{ line: [region[0], [region[1][0], region[0][1]], region[1], [region[0][0], region[1][1]]], tone: 'ghost', closed: true } satisfies Shape] : []),
      ...(v.old ? drawn(v.old, ['ghost', 'ghost', 'ghost']) : []),
      ...drawn(v.now, ['body', 'accent', 'frame']),
      ...(v.bearing ? [{ line: [[-1, -1], [1, -1], [1, 1], [-1, 1]].map(([a, b]): At => [place(v.bearing as Point)[0] + 1.5 * mark * (a as number), place(v.bearing as Point)[1] + 1.5 * mark * (b as number)]), tone: 'frame', closed: true } satisfies Shape] : []),
      ...v.now.joints.map(({ at }): Shape => ({ circle: place(at), radius: mark, tone: 'accent', filled: true })),
      ...v.now.joints.map(({ at, label }, k): Shape => ({ text: label, at: [place(at)[0] + 1.2 * mark, place(at)[1] - (k === 0 && v.now.joints.length > 1 ? 0.1 : 0.12) * size], anchor: k === v.now.joints.length - 1 ? 'middle' : 'start' })),
      ...(v.length ? [{ text: v.length, at: [(first[0] + last[0]) / 2 - 0.03 * size, (first[1] + last[1]) / 2 + 0.12 * size], anchor: 'end', small: true } satisfies Shape] : []),
      { text: 'column', at: [place(rim(v.now))[0] - 0.06 * size, place(rim(v.now))[1] - 0.12 * size], anchor: 'middle', small: true },
      { text: 'box', at: [place(inBox(v.now))[0], place(inBox(v.now))[1] + 0.06 * size], anchor: 'start', small: true },
      { text: v.title, at: [left + 0.02 * size, high - 0.07 * size], anchor: 'start', small: true },
    ],
  };
}
