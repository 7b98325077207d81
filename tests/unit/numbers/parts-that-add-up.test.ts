import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalText, exactDecimal } from '#lib/numbers/decimal-text.ts';
import { partsThatAddUp } from '#lib/numbers/parts-that-add-up.ts';

describe('rounded parts', () => {
  it('add up to the rounded total', () => {
    expect(partsThatAddUp([1 / 3, 1 / 3, 1 / 3], { decimals: 2 })).toEqual({
      parts: ['0.34', '0.33', '0.33'],
      total: '1.00'
    });
    expect(partsThatAddUp(['10.4', '20.4', '30.4'], { decimals: 0 })).toEqual({
      parts: ['11', '20', '30'],
      total: '61'
    });
    expect(partsThatAddUp([1234, 2345, 3456], { decimals: -2 })).toEqual({
      parts: ['1200', '2300', '3500'],
      total: '7000'
    });
    expect(partsThatAddUp(['-0.5', '0.5'], { decimals: 0 })).toEqual({ parts: ['0', '0'], total: '0' });
    expect(partsThatAddUp([], { decimals: 1 })).toEqual({ parts: [], total: '0.0' });
  });

  it('add up exactly and none moves by a whole last place, whatever the parts', () => {
    const amount = fc.oneof(
      fc
        .bigInt({ min: -(10n ** 20n), max: 10n ** 20n })
        .map((digits) => decimalText({ digits, decimals: 5 })),
      fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 })
    );
    fc.assert(
      fc.property(fc.array(amount, { maxLength: 12 }), fc.integer({ min: -3, max: 4 }), (parts, decimals) => {
        const rounded = partsThatAddUp(parts, { decimals });
        const scaled = (text: string): bigint => {
          const exact = exactDecimal(text);
          return exact.digits * 10n ** BigInt(400 - exact.decimals);
        };
        const place = 10n ** BigInt(400 - decimals);
        expect(rounded.parts.reduce((sum, part) => sum + scaled(part), 0n)).toBe(scaled(rounded.total));
        rounded.parts.forEach((part, index) => {
          const moved = scaled(part) - scaled(String(parts[index]));
          expect(moved < place && moved > -place).toBe(true);
          expect(scaled(part) % place).toBe(0n);
        });
        const sum = parts.reduce<bigint>((total, part) => total + scaled(String(part)), 0n);
        const off = sum - scaled(rounded.total);
        expect(2n * (off < 0n ? -off : off) <= place).toBe(true);
      })
    );
  });

  it('refuses what is no number', () => {
    expect(() => partsThatAddUp(['1,5'], { decimals: 0 })).toThrow(TypeError);
    expect(() => partsThatAddUp([Number.NaN], { decimals: 0 })).toThrow(TypeError);
  });
});
