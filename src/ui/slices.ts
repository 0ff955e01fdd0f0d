/** Shorter than a frame, so that a keystroke between two slices is answered in the next frame, on slow phones too. */
const longest = 6;
/** So long between two looks at the clock, ms. */
const briefly = 0.2;

/**
 * Does long work in slices, so that typing never waits, and hands over what it returns. `begin` gets a question it may
 * ask: is this slice over? Stop the work with `stop`; `finish` does the rest at once, for the printer.
 */
export function inSlices<T>(begin: (late: () => boolean) => Generator<void, T>, done: (result: T) => void): { readonly stop: () => void; readonly finish: () => void } {
  let end = 0;
  let timer = 0;
  let burst = 1; // steps between two looks at the clock, which itself takes time
  const late = (): boolean => performance.now() >= end;
  const work = begin(late);
  const slice = (length: number): void => {
    let from = performance.now();
    for (end = from + length; from < end;) {
      for (let k = 0; k < burst; k += 1) {
        const step = work.next();
        if (step.done) {
          timer = -1;
          return done(step.value);
        }
      }
      const now = performance.now();
      if (now - from < briefly) burst *= 2;
      else if (burst > 1) burst /= 2;
      from = now;
    }
    timer = window.setTimeout(slice, 0, longest);
  };
  timer = window.setTimeout(slice, 0, longest);
  return {
    stop: () => clearTimeout(timer),
    finish: () => {
      clearTimeout(timer);
      if (timer !== -1) slice(Infinity);
    },
  };
}
