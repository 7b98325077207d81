import { describe, expect, test } from 'vitest';
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { newestReferenceSet, referenceSets } from '#lib/calc/reference/reference-sets.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { moveToReferenceSet } from '#lib/workbook/move-reference-set.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';

const power = newestReferenceSet.constants.get('machine.power');
if (power === undefined) throw new Error('The set has no power of a machine.');

/** A later set as one may be: one value corrected, one record gone. */
const later: ReferenceSet = {
  id: 'later',
  date: '2030-01-01',
  constants: new Map(
    [...newestReferenceSet.constants.values()]
      .filter(({ id }) => id !== 'machine.life')
      .map((record) => [record.id, record.id === power.id ? { ...record, value: 90 } : record])
  )
};
const demo = { ...demoWorkbook(), referenceSet: newestReferenceSet.id };
const own = { constant: power.id, value: 120, unit: 'W', reason: 'Measured here.' };
const known = (id: string): ReferenceSet | null =>
  [...referenceSets, later].find((set) => set.id === id) ?? null;

describe('moving a workbook to another reference set', () => {
  test('changes nothing where it is there already', () => {
    expect(moveToReferenceSet(demo)).toEqual({ workbook: demo, changes: [] });
  });

  test('lists each value that changes, comes or goes, and keeps what the user chose', () => {
    const { workbook, changes } = moveToReferenceSet({ ...demo, overrides: [own] }, later, known);
    expect(workbook.referenceSet).toBe('later');
    expect(workbook.overrides).toEqual([own]);
    expect(changes).toEqual([
      'Electrical power of an anaesthesia workstation: 97 W becomes 90 W.',
      'Planning life of an anaesthesia workstation: 10 y is no longer in the set.'
    ]);
  });

  test('says which of the user’s figures the new set does not take, with value and reason', () => {
    const gone = { constant: 'machine.life', value: 12, unit: 'y', reason: 'Contract.' };
    const { workbook, changes } = moveToReferenceSet({ ...demo, overrides: [own, gone] }, later, known);
    expect(workbook.overrides).toEqual([own]);
    expect(changes.at(-1)).toMatch(/^Your own figure 12 y for machine\.life \(“Contract\.”\) is left out\. /);
  });

  test('opens a file of a set that this version lacks, and says that nothing can be compared', () => {
    const parsed = parseWorkbook({ ...demoWorkbook(), referenceSet: '2199-1' });
    if (parsed.kind !== 'unknown-reference') throw new Error(parsed.kind);
    const { workbook, changes } = moveToReferenceSet(parsed.workbook);
    expect(parseWorkbook(JSON.parse(JSON.stringify(workbook))).kind).toBe('workbook');
    expect(changes).toHaveLength(1);
    expect(changes[0]).toContain('2199-1 is not in this version');
  });
});
