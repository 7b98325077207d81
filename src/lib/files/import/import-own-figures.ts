import { readNumber } from '#lib/numbers/read-number.ts';
import { crossChecks } from '#lib/workbook/cross-checks.ts';
import { quoted } from '#lib/workbook/field.ts';
import { constantRangesFollowing } from '#lib/workbook/ranged-constants.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { importKeyed } from './import-keyed.ts';
import type { ImportPreview, ImportRequest } from './import-request.ts';

type OwnFigure = Workbook['overrides'][number];

/** `previewImport` for the figures of the user's own that stand in place of published constants. */
export function importOwnFigures(workbook: Workbook, request: ImportRequest): ImportPreview {
  return importKeyed<OwnFigure>(workbook, request, {
    before: new Map(workbook.overrides.map((own) => [own.constant, own])),
    nameOf: (constant) => constant,
    read: (textOf) => {
      const [constant, unit] = [textOf('constant'), textOf('unit')];
      const value = readNumber(textOf('value'), { unit, locale: request.locale });
      if ('sentence' in value) return { sentence: `Value of ${quoted(constant)}: ${value.sentence}` };
      return {
        key: constant,
        name: constant,
        value: { constant, value: value.value, unit, reason: textOf('reason') }
      };
    },
    isSame: (a, b) => a.value === b.value && a.unit === b.unit && a.reason === b.reason,
    put: (figures) => {
      const whole = { ...workbook, overrides: [...figures.values()] };
      const refused = new Map(
        crossChecks(whole).flatMap(({ path, sentence }) =>
          path.startsWith('overrides.') ? [[path.slice('overrides.'.length), sentence] as const] : []
        )
      );
      const overrides = whole.overrides.filter(({ constant }) => !refused.has(constant));
      return { workbook: constantRangesFollowing(workbook, { ...workbook, overrides }), refused };
    }
  });
}
