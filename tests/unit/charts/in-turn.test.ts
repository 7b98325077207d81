import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { inTurn } from '#lib/charts/in-turn.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

test('each piece of work has a task of its own, in the order of asking', () => {
  const done: string[] = [];
  for (const name of ['a', 'b', 'c']) inTurn(() => done.push(name));
  expect(done).toEqual([]);
  vi.advanceTimersToNextTimer();
  expect(done).toEqual(['a']);
  vi.advanceTimersToNextTimer();
  expect(done).toEqual(['a', 'b']);
  vi.runAllTimers();
  expect(done).toEqual(['a', 'b', 'c']);
});

test('what is taken back is not done, and what is asked for after it is', () => {
  const done: string[] = [];
  inTurn(() => done.push('old'))();
  const takeBack = inTurn(() => done.push('new'));
  vi.runAllTimers();
  expect(done).toEqual(['new']);
  takeBack();
  inTurn(() => done.push('newer'));
  vi.runAllTimers();
  expect(done).toEqual(['new', 'newer']);
});

test('work that throws holds up no other', () => {
  const done: string[] = [];
  inTurn(() => {
    throw new Error('broken');
  });
  inTurn(() => done.push('next'));
  expect(() => vi.advanceTimersToNextTimer()).toThrow('broken');
  vi.runAllTimers();
  expect(done).toEqual(['next']);
});
