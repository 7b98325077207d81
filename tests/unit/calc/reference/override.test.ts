import { describe, expect, it } from 'vitest';
import { checkOverride } from '#lib/calc/reference/plausible-ranges.ts';
import { referenceSet2026 as set } from '#lib/calc/reference/reference-set-2026-1.ts';
import { take, withOverrides } from '#lib/calc/reference/reference-set.ts';

const sound = { constant: 'sevoflurane.mac40', value: 2.1, unit: '%', reason: 'The label figure is ours.' };

describe('a value of the user’s own', () => {
  it('stands where it is plausible, in the right unit and has a reason', () => {
    expect(checkOverride(set, sound)).toBeNull();
  });

  it.each([
    ['an unknown constant', { constant: 'sevoflurane.colour' }, 'has no constant “sevoflurane.colour”'],
    ['another unit', { unit: 'kPa' }, 'the unit “kPa” was given; it must be “%”'],
    ['no reason', { reason: '  ' }, 'a reason is needed'],
    ['a value too high', { value: 21 }, '21 was given; allowed is 0.5 to 10 %'],
    ['a value too low', { value: 0.021 }, '0.021 was given; allowed is 0.5 to 10 %'],
    ['no number', { value: Number.NaN }, 'NaN was given; allowed is 0.5 to 10 %']
  ])('is refused with a sentence for %s', (_, change, sentence) => {
    expect(checkOverride(set, { ...sound, ...change })).toContain(sentence);
  });

  it('keeps the published value and the reason on the record, and leaves the set as it was', () => {
    const changed = withOverrides(set, [sound]);
    expect(take(changed, 'sevoflurane.mac40')).toMatchObject({
      value: 2.1,
      override: { publishedValue: 1.8, reason: sound.reason }
    });
    expect(take(set, 'sevoflurane.mac40').value).toBe(1.8);
    expect(withOverrides(set, [])).toBe(set);
  });

  it('reaches what is computed from it, through every generation', () => {
    const adipose = {
      constant: 'organ.adipose.volume',
      value: 0.3,
      unit: 'L/kg',
      reason: 'An obese population.'
    };
    const changed = withOverrides(set, [adipose]);
    expect(take(changed, 'body.reference-adult.fat.volume').value).toBeCloseTo(21, 12);
    const half = take(changed, 'body.two-fat.fat-well-perfused.volume');
    expect(half.value).toBeCloseTo(10.5, 12);
    expect(half.override?.publishedValue).toBeCloseTo(7.301, 12);
    expect(half.override?.reason).toContain('body.reference-adult.fat.volume');
    expect(take(changed, 'body.reference-adult.muscle.volume').override).toBeUndefined();
  });

  it('is not computed over where the user gave the computed one too', () => {
    const changed = withOverrides(set, [
      { constant: 'organ.adipose.volume', value: 0.3, unit: 'L/kg', reason: 'An obese population.' },
      { constant: 'body.reference-adult.fat.volume', value: 18, unit: 'L', reason: 'Measured here.' }
    ]);
    expect(take(changed, 'body.reference-adult.fat.volume').value).toBe(18);
    expect(take(changed, 'body.two-fat.fat-poorly-perfused.volume').value).toBe(9);
  });
});
