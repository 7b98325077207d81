import { describe, expect, it } from 'vitest';
import { constant } from '#lib/calc/reference/constant.ts';
import { derivations } from '#lib/calc/reference/derivations.ts';
import { nextSet } from '#lib/calc/reference/next-set.ts';
import type { SetChanges } from '#lib/calc/reference/next-set.ts';
import { referenceSet2026 as base } from '#lib/calc/reference/reference-set-2026-1.ts';
import { take } from '#lib/calc/reference/reference-set.ts';

const source = { title: 'A table of this test', locator: 'line 1' };
/** A record of the base with another value. */
const corrected = (id: string, value: number) =>
  constant({ ...take(base, id), value, printed: String(value), evidence: 'read', source });
const fresh = constant({
  id: 'invented.volume',
  name: 'A volume that no set has yet',
  value: 3,
  printed: '3',
  unit: 'L',
  source,
  evidence: 'read',
  kind: 'lung-volume'
});
const made = (changes: Partial<SetChanges>) => nextSet(base, { id: 'later', date: '2030-01-01', ...changes });

describe('a set made out of an older one', () => {
  it('has the changed record, shares all others, and leaves the older set as it was', () => {
    const records = [...base.constants];
    const power = corrected('machine.power', 90);
    const later = made({ records: [power] });
    expect([later.id, later.date]).toEqual(['later', '2030-01-01']);
    expect([...later.constants.keys()]).toEqual([...base.constants.keys()]);
    for (const [id, record] of later.constants)
      expect(record).toBe(id === 'machine.power' ? power : take(base, id));
    expect([...base.constants]).toEqual(records);
  });

  it('takes in new records and leaves out those that are named', () => {
    const later = made({ records: [fresh], without: ['machine.life'] });
    expect(take(later, 'invented.volume')).toBe(fresh);
    expect(later.constants.has('machine.life')).toBe(false);
    expect(later.constants.size).toBe(base.constants.size);
  });

  it('computes anew what is derived from a changed record, through every generation, value and print', () => {
    const later = made({ records: [corrected('organ.adipose.volume', 0.3)] });
    // 0.3 L/kg × 70 kg, and half of it for each of the two fat compartments.
    expect(take(later, 'body.reference-adult.fat.volume')).toMatchObject({ value: 21, printed: '21.0' });
    for (const fat of ['fat-well-perfused', 'fat-poorly-perfused'])
      expect(take(later, `body.two-fat.${fat}.volume`).value).toBe(10.5);
    expect(take(later, 'body.two-fat.fat-well-perfused.volume')).toMatchObject({
      evidence: 'computed',
      parents: ['body.reference-adult.fat.volume']
    });
    expect(take(later, 'body.two-fat.fat-well-perfused.volume').override).toBeUndefined();
    // Volume × perfusion over cardiac output: the share grows with the volume.
    const share = 'body.two-fat.fat-well-perfused.share';
    expect(take(later, share).value).toBeCloseTo((take(base, share).value * 0.3) / 0.2086, 10);
    const muscle = 'body.reference-adult.muscle.volume';
    expect(take(later, muscle)).toBe(take(base, muscle));
  });

  it.each(derivations.map(({ yields, from }) => [yields, Object.values(from)] as const))(
    'has another %s for another value of any of its parents',
    (yields, parents) => {
      const record = take(base, yields);
      for (const parent of parents) {
        const later = made({ records: [corrected(parent, take(base, parent).value * 1.5)] });
        const { value, printed } = take(later, yields);
        expect(value).not.toBeCloseTo(record.value, 6);
        const decimals = /\.(\d+)/.exec(printed)?.[1]?.length ?? 0;
        expect(decimals).toBe(/\.(\d+)/.exec(record.printed)?.[1]?.length ?? 0);
        expect(Math.abs(Number(printed) - value)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-12);
      }
    }
  );

  it('keeps a record that is given for what was derived, and derives the rest from it', () => {
    const measured = corrected('body.reference-adult.fat.volume', 18);
    const later = made({ records: [corrected('organ.adipose.volume', 0.3), measured] });
    expect(take(later, measured.id)).toBe(measured);
    expect(take(later, 'body.two-fat.fat-poorly-perfused.volume').value).toBe(9);
  });

  it('can itself be followed by another', () => {
    const later = made({ records: [corrected('organ.adipose.volume', 0.3)] });
    const last = nextSet(later, {
      id: 'last',
      date: '2031-01-01',
      records: [corrected('machine.power', 90)]
    });
    expect(take(last, 'body.reference-adult.fat.volume').value).toBe(21);
    expect(take(last, 'machine.power').value).toBe(90);
  });

  it.each([
    ['the older one’s id', { id: base.id, records: [fresh] }, 'it needs an id of its own'],
    ['no id', { id: '', records: [fresh] }, 'it needs an id of its own'],
    ['the older one’s date', { date: base.date, records: [fresh] }, `must be after ${base.date}`],
    ['no date', { date: 'soon', records: [fresh] }, '“soon” was given as its date'],
    ['no change', {}, 'nothing changes'],
    ['a record twice', { records: [fresh, fresh] }, '“invented.volume” is given twice'],
    [
      'a record both given and left out',
      { records: [corrected('machine.life', 12)], without: ['machine.life'] },
      '“machine.life” is given twice'
    ],
    ['a record to leave out that is not there', { without: ['x'] }, 'there is no “x” to leave out'],
    [
      'another unit for a known id',
      { records: [constant({ ...take(base, 'machine.power'), unit: 'kW', value: 0.09 })] },
      '“machine.power” is in “W”, not in “kW”'
    ],
    [
      'a parent left out',
      { without: ['oxygen.bed-day-flow'] },
      '“oxygen.co2e” is derived from “oxygen.bed-day-flow”, which is left out'
    ]
  ])('is refused with %s', (_, changes: Partial<SetChanges>, sentence) => {
    expect(() => made(changes)).toThrow(sentence);
  });
});
