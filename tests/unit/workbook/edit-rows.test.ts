import { describe, expect, test } from 'vitest';
import { duplicateRows } from '#lib/workbook/edit-rows.ts';
import type { ListName, RowsChanged } from '#lib/workbook/edit-rows.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

const done = (changed: RowsChanged): Workbook => {
  if ('sentence' in changed) throw new Error(changed.sentence);
  return changed.workbook;
};

describe('a duplicate', () => {
  test('of today is a scenario beside it, and not a second baseline', () => {
    const workbook = done(duplicateRows(demoWorkbook(), { list: 'scenarios', rows: [0] }));
    const [today, copy] = workbook.scenarios;
    expect(copy).toEqual({ ...today, id: 'today-2', name: 'Today (copy)', baseline: false });
    expect(workbook.scenarios.filter(({ baseline }) => baseline).map(({ id }) => id)).toEqual(['today']);
    expect(parseWorkbook(workbook).kind).toBe('workbook');
  });

  test.each<ListName>(['caseMix', 'flowPlans', 'machines', 'absorbents'])(
    'in %s is the same but for its id and its name, and stands below the original',
    (list) => {
      const demo = demoWorkbook();
      const workbook = done(duplicateRows(demo, { list, rows: [0] }));
      const [original] = demo[list] as readonly { readonly id: string; readonly name: string }[];
      expect(workbook[list][1]).toEqual({
        ...original,
        id: `${original?.id}-2`,
        name: `${original?.name} (copy)`
      });
      expect(workbook[list]).toHaveLength(demo[list].length + 1);
      expect(parseWorkbook(workbook).kind).toBe('workbook');
    }
  );
});
