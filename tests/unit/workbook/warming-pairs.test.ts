import { describe, expect, test } from 'vitest';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { offeredPair } from '#lib/workbook/warming-pairs.ts';
import { aDesk } from '../../fixtures/a-desk.ts';

const demo = demoWorkbook();
const over = (warmingHorizonYears: 20 | 100, warmingSet: 'literature-2012' | 'AR6' = 'AR6') => ({
  ...demo,
  accounting: { ...demo.accounting, warmingSet, warmingHorizonYears }
});
const setCell = 'accounting.warmingSet';
const horizonCell = 'accounting.warmingHorizonYears';

describe('a warming set without the chosen horizon', () => {
  test('is offered over the horizon that it has, and a horizon with a set that has it', () => {
    expect(offeredPair(over(20), { path: setCell, text: 'Literature 2012' }, 'en-GB')?.label).toBe(
      'Take Literature 2012 over 100 years'
    );
    expect(offeredPair(over(100, 'literature-2012'), { path: horizonCell, text: '20' }, 'en-GB')?.label).toBe(
      'Take IPCC AR6 (2021) over 20 years'
    );
  });

  test('is no matter where the pair exists, or the text cannot be read', () => {
    expect(offeredPair(over(100), { path: setCell, text: 'Literature 2012' }, 'en-GB')).toBeNull();
    expect(offeredPair(over(20), { path: setCell, text: 'mine' }, 'en-GB')).toBeNull();
    for (const text of ['x', '20'])
      expect(offeredPair(over(100, 'literature-2012'), { path: 'title', text }, 'en-GB')).toBeNull();
  });

  test('nothing is shown that does not count: the choice is not kept, and the offer takes both cells', () => {
    const desk = aDesk({ workbook: over(20) });
    desk.edit([{ path: setCell, text: 'Literature 2012' }]);
    expect(desk.workbook.keptTexts).toEqual({});
    expect(desk.workbook.accounting).toMatchObject({ warmingSet: 'AR6', warmingHorizonYears: 20 });
    expect(desk.message?.sentence).toMatch(/no potentials of Literature 2012 over 20 years/);
    desk.message?.action?.run();
    expect(desk.workbook.accounting).toMatchObject({
      warmingSet: 'literature-2012',
      warmingHorizonYears: 100
    });
    expect(desk.message).toBeNull();
  });
});
