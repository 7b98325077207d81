import type { AvoidedPurchase } from '#lib/calc/input.ts';
import { quoted } from '#lib/workbook/field.ts';
import { avoidedPurchaseFields } from '#lib/workbook/fields.ts';
import { readText } from '#lib/workbook/read-text.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { limits } from '#lib/workbook/workbook.ts';
import { entryNames } from '../tables/entry-names.ts';
import { importKeyed } from './import-keyed.ts';
import type { ImportPreview, ImportRequest } from './import-request.ts';
import { isSameAmount } from './place-texts.ts';

/** `previewImport` for purchases that scenarios make unnecessary. They have no ids: each is known by its place. */
export function importAvoidedPurchases(workbook: Workbook, request: ImportRequest): ImportPreview {
  const { locale, mode } = request;
  const scenarios = entryNames(workbook.scenarios);
  const taken = new Map(
    workbook.scenarios.map(({ id, avoidedPurchases }) => [
      id,
      mode === 'append' ? avoidedPurchases.length : 0
    ])
  );
  return importKeyed<AvoidedPurchase>(workbook, request, {
    before: new Map(
      workbook.scenarios.flatMap(({ id, avoidedPurchases }) =>
        avoidedPurchases.map((purchase, place) => [`${id} ${place}`, purchase] as const)
      )
    ),
    nameOf: (key) => {
      const [scenario = '', place = ''] = key.split(' ');
      return `${scenarios.textOf(scenario)}, purchase ${Number(place) + 1}`;
    },
    read: (textOf) => {
      const id = scenarios.idOf(textOf('scenario'));
      if (id === undefined)
        return {
          sentence: `${quoted(textOf('scenario'))} is the name of no scenario, or of more than one: give its id.`
        };
      const purchase: Record<string, unknown> = {};
      for (const [key, field] of Object.entries(avoidedPurchaseFields)) {
        const read = readText(textOf(key), { field, workbook, locale });
        if ('sentence' in read) return read;
        purchase[key] = read.value;
      }
      const place = taken.get(id) ?? 0;
      if (place >= limits.avoidedPurchases)
        return { sentence: `A scenario holds at most ${limits.avoidedPurchases} avoided purchases.` };
      taken.set(id, place + 1);
      return {
        key: `${id} ${place}`,
        name: `${textOf('scenario')}, purchase ${place + 1}`,
        value: purchase as unknown as AvoidedPurchase
      };
    },
    isSame: (a, b) => a.year === b.year && a.units === b.units && isSameAmount(a.unitPrice, b.unitPrice),
    put: (purchases) => ({
      workbook: {
        ...workbook,
        scenarios: workbook.scenarios.map((scenario) => ({
          ...scenario,
          avoidedPurchases: [...purchases].flatMap(([key, purchase]) =>
            key.split(' ')[0] === scenario.id ? [purchase] : []
          )
        }))
      },
      refused: new Map()
    })
  });
}
