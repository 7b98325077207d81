import { expect, test } from 'vitest';
import { cellMessage } from '#lib/grid/cell-message.ts';

test('what was computed says so, a name that is only shown does not', () => {
  const cell = { text: 'Breast surgery', editText: 'Breast surgery', state: 'computed' } as const;
  expect(cellMessage(cell).text).toBe('');
  expect(cellMessage({ ...cell, path: 'today.cases.breast.liquidMl' }).text).toMatch(/^Computed; /);
});
