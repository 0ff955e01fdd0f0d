/** Finds room for the words of a drawing, so that none leaves it or runs into another. Positions are those of SVG text. */

export interface Label {
  readonly text: string;
  readonly x: number;
  /** The line the letters stand on. */
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly size: number;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Size of small words where they are largest, on a narrow phone: src/styles/drawing.css. They find room there too. */
export const smallWords = 12.75;

/** On the generous side for the fonts of phones: the true width is known only where it is drawn. */
export function textWidth(text: string, size: number): number {
  let ems = 0;
  for (const letter of text) ems += /[iljtfrI.,:;'’| \u00a0\u202f]/.test(letter) ? 0.36 : /[mwMW%@—]/.test(letter) ? 0.94 : /[A-Z]/.test(letter) ? 0.72 : 0.62;
  return ems * size;
}

export function boxOf({ text, x, y, anchor, size }: Label): Box {
  const width = textWidth(text, size);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, top: y - 0.78 * size, right: left + width, bottom: y + 0.22 * size };
}

const apart = (a: Box, b: Box): boolean => a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
const step = 4;
const directions = Array.from({ length: 16 }, (_, k) => [Math.cos((k * Math.PI) / 8), Math.sin((k * Math.PI) / 8)] as const);

/**
 * Each label as near as can be to where it wants to stand; those that come first choose first. Undefined for one that
 * finds no room.
 *
 * @param keepOff what no label should cover, such as the marks of a chart; given up where there is no room beside it
 */
export function placeLabels(labels: readonly Label[], within: Box, keepOff: readonly Box[] = []): (Label | undefined)[] {
  const taken: Box[] = [];
  return labels.map((label) => {
    if (label.text === '') return undefined;
    const found = firstFree(label, within, [...taken, ...keepOff]) ?? firstFree(label, within, taken);
    if (found) taken.push(boxOf(found));
    return found;
  });
}

function firstFree(label: Label, within: Box, taken: readonly Box[]): Label | undefined {
  const wanted = boxOf(label);
  if (wanted.right - wanted.left > within.right - within.left || wanted.bottom - wanted.top > within.bottom - within.top) return undefined;
  const farthest = Math.hypot(within.right - within.left, within.bottom - within.top);
  for (let reach = 0; reach <= farthest; reach += step) {
    for (const [dx, dy] of reach === 0 ? directions.slice(0, 1) : directions) {
      const [x, y] = [reach * dx, reach * dy];
      // Pushed back inside where it would stick out.
      const right = x + Math.max(0, within.left - wanted.left - x) - Math.max(0, wanted.right + x - within.right);
      const down = y + Math.max(0, within.top - wanted.top - y) - Math.max(0, wanted.bottom + y - within.bottom);
      const moved = { ...label, x: label.x + right, y: label.y + down };
      const box = boxOf(moved);
      if (taken.every((other) => apart(box, other))) return moved;
    }
  }
  return undefined;
}

/** How the lines of one chart are dashed, so that no two look alike without color: a number for each tone. */
export function dashesFor(tones: readonly string[]): number[] {
  const own: Readonly<Record<string, number>> = { front: 0, ghost: 1, rear: 2 };
  const taken = new Set<number>();
  const dashes = tones.map((tone) => {
    const dash = own[tone];
    if (dash === undefined || taken.has(dash)) return undefined;
    taken.add(dash);
    return dash;
  });
  return dashes.map((dash) => {
    if (dash !== undefined) return dash;
    let free = 0;
    while (taken.has(free)) free++;
    taken.add(free);
    return free;
  });
}
