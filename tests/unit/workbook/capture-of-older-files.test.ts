/** Files from before capture acted on what leaves by the exhaust: opened, they say that less is caught now. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';

const fixture = (name: string): { scenarios: { capturePercent: number; name: string }[] } =>
  JSON.parse(
    readFileSync(new URL(`../../fixtures/workbooks/${name}.json`, import.meta.url), 'utf8')
  ) as ReturnType<typeof fixture>;
const notesOf = (document: unknown): readonly string[] => {
  const parsed = parseWorkbook(document);
  if (parsed.kind !== 'workbook') throw new Error(`Not opened: ${JSON.stringify(parsed)}`);
  return parsed.notes.filter((note) => note.includes('captures'));
};

test.each(['version-1-2026-11-25-example', 'version-2-2026-11-28-example'])(
  'of %s, each scenario that captures is named with its share, and no other',
  (name) => {
    const document = fixture(name);
    expect(notesOf(document)).toEqual([]);
    const scenarios = document.scenarios.map((scenario, index) =>
      index === 1 ? { ...scenario, capturePercent: 45 } : scenario
    );
    expect(notesOf({ ...document, scenarios })).toEqual([
      `“${document.scenarios[1]?.name}” captures 45 %: of what leaves by the exhaust now, and no longer of what leaks or patients breathe out later, so less is caught and more is emitted.`
    ]);
  }
);

test('a file that says what of the caught is lost again has been saved since, and nothing is said', () => {
  const document = fixture('version-2-2026-11-28-example');
  for (const caughtLostPercent of [null, 3])
    expect(
      notesOf({
        ...document,
        scenarios: document.scenarios.map((each) => ({ ...each, capturePercent: 45, caughtLostPercent }))
      })
    ).toEqual([]);
});
