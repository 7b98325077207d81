import { describe, expect, it } from 'vitest';
import { matchingOptions } from '#lib/grid/matching-options.ts';

const options = [
  { id: 'tracheal-tube', label: 'Tracheal tube' },
  { id: 'supraglottic', label: 'Supraglottic airway' },
  { id: 'mask', label: 'Face mask' },
  { id: 'none', label: 'None' },
  { id: 'tube', label: 'Höhere Röhre' }
];
const found = (typed: string) => matchingOptions(options, typed).map(({ id }) => id);

describe('type-ahead', () => {
  it('offers everything, in its own order, before anything is typed', () => {
    expect(found('')).toEqual(options.map(({ id }) => id));
    expect(found('  ')).toHaveLength(5);
  });
  it('puts what begins so first, then a later word, then anywhere', () => {
    expect(found('s')).toEqual(['supraglottic', 'mask']);
    expect(found('m')).toEqual(['mask']);
    expect(found('tu')).toEqual(['tube', 'tracheal-tube']);
    expect(found('a')).toEqual(['supraglottic', 'tracheal-tube', 'mask']);
  });
  it('an id or a label in full comes first, whatever the case and the accents', () => {
    expect(found('TUBE')[0]).toBe('tube');
    expect(found('hohere')).toEqual(['tube']);
    expect(found('röh')).toEqual(['tube']);
  });
  it('offers nothing where nothing fits', () => {
    expect(found('zz')).toEqual([]);
  });
});
