import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { inSlices } from '../../src/ui/slices.ts';

/** A clock that moves only when work is done, and timers that run when they are told to. */
let now = 0;
beforeEach(() => {
  now = 0;
  vi.stubGlobal('performance', { now: () => now });
  vi.stubGlobal('window', globalThis);
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

function* steps(count: number, each: number): Generator<void, number> {
  for (let k = 0; k < count; k++) {
    now += each;
    yield;
  }
  return count;
}

test('long work leaves the page free after each slice of 6 ms, and hands over its result once', () => {
  const done = vi.fn();
  const ends: number[] = [];
  inSlices(() => steps(100, 1), done);
  while (done.mock.calls.length === 0) {
    const start = now;
    vi.advanceTimersToNextTimer();
    ends.push(now - start);
  }
  expect(Math.max(...ends)).toBeLessThanOrEqual(6);
  expect(ends.length).toBe(17);
  expect(done).toHaveBeenCalledExactlyOnceWith(100);
});

test('one step that takes longer than a slice is still taken, one to a slice', () => {
  const done = vi.fn();
  inSlices(() => steps(3, 50), done);
  for (let k = 0; k < 3; k++) vi.advanceTimersToNextTimer();
  expect(done).not.toHaveBeenCalled();
  vi.advanceTimersToNextTimer();
  expect(done).toHaveBeenCalledOnce();
});

test('stopped work neither goes on nor hands anything over', () => {
  const done = vi.fn();
  const work = inSlices(() => steps(100, 1), done);
  vi.advanceTimersToNextTimer();
  work.stop();
  const before = now;
  vi.runAllTimers();
  expect(now).toBe(before);
  expect(done).not.toHaveBeenCalled();
});

test('for the printer the rest is done at once, and only once', () => {
  const done = vi.fn();
  const work = inSlices(() => steps(100, 1), done);
  vi.advanceTimersToNextTimer();
  work.finish();
  expect(done).toHaveBeenCalledExactlyOnceWith(100);
  work.finish();
  vi.runAllTimers();
  expect(done).toHaveBeenCalledOnce();
});
