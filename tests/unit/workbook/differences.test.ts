import { describe, expect, test } from 'vitest';
import { writeCell } from '#lib/calc/cell-path.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { comparison } from '#lib/state/compare.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { countsApart, differencesOf, withDifference } from '#lib/workbook/differences.ts';
import { duplicateRows } from '#lib/workbook/edit-rows.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { lowFlow, wholeWorkbook } from '../../fixtures/whole-workbook.ts';

const here = wholeWorkbook();
const price = 'agents.sevoflurane.bottlePrice';
const cases = `caseMix.${here.caseMix[0]?.id ?? ''}.casesPerYear`;
const changed = [
  [price, '500.00'],
  [cases, 4321],
  ['flowPlans.usual.phases.0.flowLPerMin', 3],
  ['accounting.discountRatePercent', 7]
].reduce<Workbook>((workbook, [path, value]) => writeCell(workbook, String(path), value), here);
const paths = (there: Workbook): readonly string[] => differencesOf(here, there).map(({ path }) => path);

describe('differences', () => {
  test('of a workbook from itself there are none, whether or not it is the same object', () => {
    expect(differencesOf(here, here)).toEqual([]);
    expect(differencesOf(here, structuredClone(here))).toEqual([]);
  });

  test('are told cell by cell', () => {
    expect([...paths(changed)].sort()).toEqual(
      [price, cases, 'flowPlans.usual.phases.0.flowLPerMin', 'accounting.discountRatePercent'].sort()
    );
  });

  test('of rows are met by id, in whatever order they stand', () => {
    expect(paths({ ...here, machines: [...here.machines].reverse() })).toEqual([]);
    const copied = duplicateRows(here, { list: 'caseMix', rows: [0] });
    if ('sentence' in copied) throw new Error(copied.sentence);
    const [difference, ...others] = differencesOf(here, copied.workbook);
    expect([difference?.kind, difference?.here, others]).toEqual(['row', undefined, []]);
  });

  test('of ranges and notes are counted apart', () => {
    const there: Workbook = {
      ...here,
      ranges: { [price]: { low: 1, high: 9999 } },
      notes: { [price]: { text: 'x', date: null, grade: null } }
    };
    expect([paths(there), countsApart(here, there)]).toEqual([[], { ranges: 1, notes: 1 }]);
  });
});

describe('one difference alone', () => {
  test('each taken over in turn, one after the other, makes the other workbook', () => {
    const copied = duplicateRows(changed, { list: 'caseMix', rows: [0] });
    if ('sentence' in copied) throw new Error(copied.sentence);
    const made = differencesOf(here, copied.workbook).reduce<Workbook>((workbook, difference) => {
      const taken = withDifference(workbook, difference);
      if ('sentence' in taken) throw new Error(taken.sentence);
      return taken.workbook;
    }, here);
    expect(differencesOf(made, copied.workbook)).toEqual([]);
  });

  test('that takes another for granted is not taken, with a sentence', () => {
    const plan = { ...(here.flowPlans[0] as Workbook['flowPlans'][number]), id: 'other', name: 'Other' };
    const there: Workbook = {
      ...here,
      flowPlans: [...here.flowPlans, plan],
      scenarios: here.scenarios.map((each) =>
        each.baseline
          ? { ...each, plans: Object.fromEntries(Object.keys(each.plans).map((id) => [id, 'other'])) }
          : each
      )
    };
    const ofPlan = differencesOf(here, there).find(({ path }) => path.startsWith('scenarios.'));
    if (ofPlan === undefined) throw new Error('The plan differs.');
    expect(withDifference(here, ofPlan)).toMatchObject({ sentence: expect.stringContaining('other') });
  });
});

test('side by side, each difference has the answer that the workbook with it alone has', async () => {
  const found = await comparison(here, changed, { scenario: lowFlow.id, breathe: () => Promise.resolve() });
  expect(found.differences).toHaveLength(4);
  const npvOf = (workbook: Workbook): number =>
    Number(
      estimate(coreInput(workbook)).scenarios.find(({ id }) => id === lowFlow.id)?.againstBaseline.npv ?? NaN
    );
  expect([found.answer?.npv, found.answerThere?.npv]).toEqual([npvOf(here), npvOf(changed)]);
  for (const { difference, answer, working } of found.differences) {
    const alone = npvOf(writeCell(here, difference.path, difference.there));
    expect(answer?.npv).toBe(alone);
    expect(Number(String(working('npv').value))).toBe(alone);
  }
  expect(new Set(found.differences.map(({ answer }) => answer?.npv)).size).toBeGreaterThan(2);
});
