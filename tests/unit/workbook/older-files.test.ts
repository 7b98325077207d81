/**
 * Files as earlier days saved them (tests/fixtures/workbooks, named by version and day) are opened for good. A file is
 * added when the shape of the document changes, and never altered: where one is refused, the schema needs a default or
 * the version a migration.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { readWorkbookFile, writeWorkbookFile } from '#lib/files/read/workbook-file.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { workbookVersion } from '#lib/workbook/workbook.ts';

const folder = new URL('../../fixtures/workbooks/', import.meta.url);
const names = readdirSync(folder);
const bytesOf = (name: string): Uint8Array => readFileSync(new URL(name, folder));

function opened(name: string): Workbook {
  const parsed = readWorkbookFile(bytesOf(name));
  expect(parsed).toMatchObject({ kind: 'workbook' });
  return (parsed as { workbook: Workbook }).workbook;
}

test('there is a file of every version so far, named by its version and day', () => {
  for (const name of names) {
    const { version } = JSON.parse(new TextDecoder().decode(bytesOf(name))) as { version: number };
    expect(name).toMatch(new RegExp(`^version-${version}-\\d{4}-\\d{2}-\\d{2}-[a-z-]+\\.json$`));
  }
  for (let version = 1; version <= workbookVersion; version++)
    expect(names.some((name) => name.startsWith(`version-${version}-`))).toBe(true);
});

describe.each(names)('%s', (name) => {
  test('opens, and what it says is there', () => {
    const document = JSON.parse(new TextDecoder().decode(bytesOf(name))) as { version: number };
    const workbook = opened(name);
    if (document.version === workbookVersion) expect(workbook).toMatchObject(document);
    expect(workbook.version).toBe(workbookVersion);
  });

  test('gives an estimate of every case group in every scenario', () => {
    const workbook = opened(name);
    const { scenarios } = estimate(coreInput(workbook));
    expect(scenarios.map(({ id }) => id)).toEqual(workbook.scenarios.map(({ id }) => id));
    for (const { cases, perYear, failed } of scenarios) {
      expect(failed).toEqual([]);
      expect(cases.map(({ caseId }) => caseId)).toEqual(workbook.caseMix.map(({ id }) => id));
      expect(Number(perYear.cost.total)).toBeGreaterThan(0);
      expect(perYear.co2eKg.total).toBeGreaterThan(0);
    }
  });

  test('saved today, it opens as the same', () => {
    const workbook = opened(name);
    expect(readWorkbookFile(writeWorkbookFile(workbook))).toEqual({ kind: 'workbook', workbook, notes: [] });
  });
});

test('machines that came year by year move theatres in the years in which some came, and are spares beyond them', () => {
  const document = JSON.parse(new TextDecoder().decode(bytesOf('version-1-2026-11-28-every-kind.json'))) as {
    scenarios: { id: string; unitsByYear?: number[] }[];
  };
  document.scenarios.find(({ id }) => id === 'everything')!.unitsByYear = [2, 0, 3, 1];
  const parsed = readWorkbookFile(new TextEncoder().encode(JSON.stringify(document)));
  if (parsed.kind !== 'workbook') throw new Error(`It is ${parsed.kind}.`);
  const { moves, spares } = parsed.workbook.scenarios.find(({ id }) => id === 'everything')!;
  // Of the four theatres two move at once and two in the second year; of the six machines two are left.
  expect(moves.map(({ year, theatres }) => [year, theatres])).toEqual([
    [0, 2],
    [2, 2]
  ]);
  expect(spares).toBe(2);
});
