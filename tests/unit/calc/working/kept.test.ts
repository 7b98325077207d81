import { expect, test } from 'vitest';
import { kept, once } from '#lib/calc/working/kept.ts';

test('a value is made when it is asked for, once for each key', () => {
  const made: string[] = [];
  const of = kept((key: string) => {
    made.push(key);
    return key === 'nothing' ? undefined : key.length;
  });
  expect(made).toEqual([]);
  expect([of('four'), of('nothing'), of('four'), of('nothing')]).toEqual([4, undefined, 4, undefined]);
  expect(made).toEqual(['four', 'nothing']);
});

test('once makes a value once, even where there is none', () => {
  let made = 0;
  const of = once(() => void made++);
  expect(made).toBe(0);
  expect([of(), of()]).toEqual([undefined, undefined]);
  expect(made).toBe(1);
});

test('what could not be made is tried again', () => {
  let tries = 0;
  const of = kept(() => {
    tries++;
    if (tries === 1) throw new RangeError('Not yet.');
    return tries;
  });
  expect(() => of('key')).toThrow(RangeError);
  expect(of('key')).toBe(2);
});
