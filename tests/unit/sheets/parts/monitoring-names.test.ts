import { expect, test } from 'vitest';
import { itemWithin } from '#lib/sheets/parts/monitoring-names.ts';

test.each([
  ['ecg', 'ECG'],
  ['processed-eeg', 'processed EEG'],
  ['capnography', 'capnography'],
  ['leak-test', 'leak test before each case']
])('%s is “%s” within a sentence', (item, name) => {
  expect(itemWithin(item)).toBe(name);
});
