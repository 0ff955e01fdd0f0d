import type { Scene, Shape, Tone } from '../show.ts';

/** Pistons of one side, row by row to one scale, each row with its name and size. */
export function pistonScene(rows: readonly { readonly name: string; readonly size: string; readonly diameter: number; readonly count: number; readonly tone: Tone }[]): Scene {
  const widest = Math.max(...rows.map((row) => row.diameter));
  // Many small pistons must not run off to the right of the letters.
  const across = Math.max(...rows.map((row) => row.diameter * 1.12 * row.count), widest * 1.2);
  const letters = Math.max(across * 1.2, widest * 2.2);
  let y = 0;
  const shapes = rows.flatMap((row): Shape[] => {
    const tall = Math.max(row.diameter * 1.2, (letters + across) * 0.13);
    const middle = y - tall / 2;
    y -= tall;
    return [
      ...Array.from({ length: row.count }, (_, k): Shape => ({ circle: [row.diameter * (0.56 + 1.12 * k), middle], radius: row.diameter / 2, tone: row.tone })),
      { text: row.name, at: [-letters * 0.98, middle + (letters + across) * 0.012], anchor: 'start' },
      { text: row.size, at: [-letters * 0.98, middle - (letters + across) * 0.042], anchor: 'start', small: true },
    ];
  });
  return { box: [-letters, y - widest * 0.05, across * 1.04, widest * 0.05], shapes };
}
