/** What the records say of where they are shown is so. The pages themselves are held to it by `tests/e2e/guides.spec.ts`. */
import { describe, expect, it } from 'vitest';
import { newestReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import { guidesInWords } from '#lib/sheets/parts/guides-in-words.ts';
import {
  absorbentFields,
  accountingFields,
  gasFields,
  machineFields,
  scenarioFields,
  siteFields
} from '#lib/workbook/fields.ts';

const fields: Readonly<Record<string, object>> = {
  machines: machineFields,
  absorbents: absorbentFields,
  scenarios: scenarioFields,
  gases: gasFields,
  site: siteFields,
  accounting: accountingFields
};
const constants = [...newestReferenceSet.constants.values()];
const guides = constants.filter(({ guideFor }) => guideFor !== undefined);

describe('published figures that are guides', () => {
  it('are those that say so, and no other record claims to be shown somewhere', () => {
    expect(guides.length).toBeGreaterThan(20);
    for (const { id, unusedBecause = '', guideFor } of constants)
      expect([id, /\b(shown|offered|beside|guide)\b/i.test(unusedBecause)]).toEqual([
        id,
        guideFor !== undefined
      ]);
  });

  it.each(guides.map((constant) => [constant.id, constant] as const))(
    '%s stands beside a cell that there is, with value, source and evidence',
    (_, constant) => {
      const [part = '', field = ''] = (constant.guideFor ?? '').split('.');
      expect(Object.keys(fields[part] ?? {})).toContain(field);
      const said = guidesInWords(newestReferenceSet, constant.guideFor ?? '', 'EUR').filter((sentence) =>
        sentence.startsWith(`${constant.name}: ${constant.printed} `)
      );
      expect(said).toHaveLength(1);
      expect(said[0]).toContain(constant.source.title.replace(/\.$/, ''));
      expect(said[0]).toMatch(/(read in the source|from memory|quotes it|computed from other records)\)\.$/);
    }
  );
});
