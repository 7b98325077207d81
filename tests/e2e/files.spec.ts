/** Files out and in, as a user does it: CSV, spreadsheet, case log, and a workbook from another reference set. */
import { readFile, writeFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { departmentWorkbook } from '../fixtures/department.ts';
import { expect, test } from './browser.ts';
import { gridCell, todaysCost } from './grid-cell.ts';

async function saved(page: Page, button: string, file: string): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: button, exact: true }).first().click();
  await (await download).saveAs(file);
  return file;
}

test('the case mix as CSV, changed outside and taken in place of itself', async ({ page }, info) => {
  await page.goto('./files/');
  const before = await todaysCost(page).textContent();
  const file = await saved(page, 'Case mix', info.outputPath('case-mix.csv'));
  const csv = await readFile(file, 'utf8');
  expect(csv).toContain('Laparoscopic cholecystectomy,420,75');
  await writeFile(
    file,
    csv.replace('Laparoscopic cholecystectomy,420,75', 'Laparoscopic cholecystectomy,840,75')
  );
  await page.getByLabel('A CSV or XLSX file, headings in its first row').setInputFiles(file);
  await page.getByLabel('The rows').selectOption({ label: 'take the place of those that stand there' });
  await expect(page.getByText(/0 rows would be added, 1 changed/)).toBeVisible();
  await page.getByRole('button', { name: 'Take over' }).click();
  await expect(page.getByText('0 rows added, 1 changed.')).toBeVisible();
  await expect(todaysCost(page)).not.toHaveText(before ?? '');
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
  await expect(todaysCost(page)).toHaveText(before ?? '');
});

test('a table of headings alone empties the list, as one step of undo; never one that is needed', async ({
  page
}, info) => {
  await page.goto('./files/');
  const before = await todaysCost(page).textContent();
  const file = info.outputPath('case-mix.csv');
  await writeFile(file, 'Case group,Cases,Minutes\n');
  const chooser = page.getByLabel('A CSV or XLSX file, headings in its first row');
  await chooser.setInputFiles(file);
  await expect(page.getByText('there is nothing to add')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Take over' })).toBeDisabled();
  const mode = page.getByLabel('The rows');
  await mode.selectOption({ label: 'take the place of those that stand there' });
  await expect(
    page.getByText(/This takes out all 13 rows of Case mix: Laparoscopic cholecystectomy; /)
  ).toBeVisible();
  await page.getByRole('button', { name: 'Take all out' }).click();
  await expect(page.getByText('Case mix is empty: all 13 rows taken out.')).toBeVisible();
  await expect(todaysCost(page)).not.toHaveText(before ?? '');
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
  await expect(todaysCost(page)).toHaveText(before ?? '');

  await writeFile(file, 'Machine,Kind\n');
  await chooser.setInputFiles(file);
  await mode.selectOption({ label: 'take the place of those that stand there' });
  await expect(page.getByText('a workbook needs at least one row of Machines')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Take over' })).toBeDisabled();
});

test('the spreadsheet is written, and its tables are read again', async ({ page }, info) => {
  await page.goto('./files/');
  const file = await saved(page, 'A spreadsheet with live formulas (XLSX)', info.outputPath('workbook.xlsx'));
  expect((await readFile(file)).subarray(0, 2).toString()).toBe('PK');
  await page.getByLabel('A CSV or XLSX file, headings in its first row').setInputFiles(file);
  await expect(page.getByLabel('Sheet of the file')).toBeVisible();
});

test('a file of another kind is refused with a sentence', async ({ page }, info) => {
  await page.goto('./files/');
  const file = info.outputPath('picture.csv');
  await writeFile(file, Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 1]));
  await page.getByLabel('A CSV or XLSX file, headings in its first row').setInputFiles(file);
  await expect(page.locator('main .wrong')).toBeVisible();
});

test('a log of single cases becomes case groups; what identifies somebody is left alone', async ({
  page
}, info) => {
  await page.goto('./files/');
  const file = info.outputPath('log.csv');
  const lines = Array.from({ length: 400 }, (_, index) => {
    const day = String(1 + (index % 28)).padStart(2, '0');
    const month = String(1 + (index % 12)).padStart(2, '0');
    const kind = index % 2 === 0 ? 'Hernia repair' : 'Knee arthroscopy';
    return `2025-${month}-${day},${kind},${60 + (index % 20)},${40 + (index % 30)},${70 + (index % 15)},sevoflurane,Person ${index}`;
  });
  await writeFile(file, ['Date,Procedure,Minutes,Age,Weight,Agent,Patient name', ...lines].join('\n'));
  await page.getByLabel('A log of anaesthetics, as CSV').setInputFiles(file);
  await expect(page.getByText('Left alone, as they may identify somebody')).toBeVisible();
  await page.getByRole('button', { name: 'Group the cases' }).click();
  await expect(page.getByText(/400 of 400 lines went into 2 groups/)).toBeVisible();
  await page.getByRole('button', { name: 'Take over' }).click();
  await page.getByRole('link', { name: 'Case mix', exact: true }).click();
  await expect(
    await gridCell(page, { grid: 'Case mix', row: 'Knee arthroscopy', column: 'Agent' })
  ).toContainText('Sevoflurane');
});

test('a log’s flow and millilitres are held against today, taken over or not, and undone in one step', async ({
  page
}, info) => {
  await page.goto('./files/');
  const file = info.outputPath('log.csv');
  const lines = Array.from({ length: 60 }, (_, index) => {
    const day = String(1 + (index % 28)).padStart(2, '0');
    return `2025-0${1 + (index % 9)}-${day},Ear surgery,90,sevoflurane,${(1.4 + (index % 3) / 10).toFixed(1)},${20 + (index % 5)}`;
  });
  await writeFile(
    file,
    ['Date,Procedure,Minutes,Agent,Mean fresh gas flow,Liquid agent used', ...lines].join('\n')
  );
  await page.getByLabel('A log of anaesthetics, as CSV').setInputFiles(file);
  await page.getByRole('button', { name: 'Group the cases' }).click();
  const section = page.getByRole('region', { name: 'What the log says of today' });
  const ofFlow = section.getByRole('checkbox', {
    name: 'Take the log’s mean flow as today’s flow plan (1 of 1 group)'
  });
  await expect(ofFlow).not.toBeChecked();
  await expect(section.getByRole('row', { name: /Ear surgery 1\.5 L\/min/ })).toBeVisible();
  const ofMillilitres = section.getByRole('checkbox', { name: /Take the log’s millilitres/ });
  await expect(ofMillilitres).toBeChecked();
  await expect(section.getByRole('columnheader', { name: 'With both' })).toBeVisible();
  await section.getByRole('button', { name: /^Spill of the log against the model’s, Ear surgery/ }).click();
  await expect(page.getByText('Spill of this practice against the model’s').first()).toBeVisible();
  await page.keyboard.press('Escape');
  await ofFlow.check();
  await ofMillilitres.uncheck();
  await page.getByRole('button', { name: 'Take over' }).click();
  await page.getByRole('link', { name: 'Case mix', exact: true }).click();
  const measured = () => gridCell(page, { grid: 'Case mix', row: 'Ear surgery', column: 'Measured' });
  await expect(await measured()).toHaveText('estimated');
  await page.getByRole('link', { name: 'Flow plans', exact: true }).click();
  await expect(page.getByText(/L\/min by the log/).first()).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect(page.getByText(/L\/min by the log/)).toHaveCount(0);
});

test('a workbook of an unknown reference set opens read-only, and is moved on request', async ({
  page
}, info) => {
  await page.goto('./case-mix/');
  const file = await saved(page, 'Save', info.outputPath('workbook.json'));
  const workbook = JSON.parse(await readFile(file, 'utf8')) as { referenceSet: string };
  await writeFile(file, JSON.stringify({ ...workbook, referenceSet: '2031-4' }));
  await page.getByLabel('Open a workbook from a file').setInputFiles(file);
  await expect(page.getByText(/“2031-4” was given; this version has 2026-1, 2026-2, 2026-3/)).toBeVisible();
  await page.getByRole('link', { name: 'Evidence' }).click();
  await expect(page.getByText(/is not in this version, so its values cannot be compared/)).toBeVisible();
  await page.getByRole('button', { name: 'Move to set 2026-3' }).click();
  await expect(page.getByText(/“2031-4” was given; this version has 2026-1, 2026-2, 2026-3/)).toBeHidden();
});

/** A department with this many case groups, opened from a file. */
async function openLarge(page: Page, rows: number, file: string): Promise<void> {
  const workbook = departmentWorkbook();
  const [first] = workbook.caseMix;
  const caseMix = Array.from({ length: rows }, (_, index) => ({
    ...first,
    id: `group-${index}`,
    name: `Group ${index}`,
    minutes: 30 + (index % 200)
  }));
  await writeFile(file, JSON.stringify({ ...workbook, caseMix, ranges: {} }));
  await page.getByLabel('Open a workbook from a file').setInputFiles(file);
  await expect(page.getByText(/Opened|is open/).first()).toBeVisible();
}

test('a large spreadsheet is written with progress, and can be cancelled', async ({ page }, info) => {
  await page.goto('./files/');
  await openLarge(page, 2000, info.outputPath('large.json'));
  await page.getByRole('link', { name: 'Files', exact: true }).click();
  const write = page.getByRole('button', { name: 'A spreadsheet with live formulas (XLSX)' });
  await write.click();
  await expect(page.getByLabel('How much of the spreadsheet is done')).toBeVisible();
  await expect(page.getByText(/Computing the cases of/)).toBeVisible();
  await expect(write).toBeDisabled();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await expect(write).toBeEnabled();
  await expect(page.getByLabel('How much of the spreadsheet is done')).toBeHidden();

  const file = await saved(page, 'A spreadsheet with live formulas (XLSX)', info.outputPath('large.xlsx'));
  expect((await readFile(file)).length).toBeGreaterThan(1_000_000);
  // Its own tables come back: the case mix holds what the workbook holds.
  await page.getByLabel('A CSV or XLSX file, headings in its first row').setInputFiles(file);
  await page.getByLabel('Sheet of the file').selectOption({ label: 'Case mix' });
  await expect(page.getByRole('combobox', { name: /^Into/ })).toHaveValue('caseMix');
  await page.getByLabel('The rows').selectOption({ label: 'take the place of those that stand there' });
  await expect(page.getByText(/0 rows would be added, 0 changed, 2000\s+stay as they are/)).toBeVisible();
});

test('plans of single groups and ranges go out and come in as tables of their own', async ({
  page
}, info) => {
  await page.goto('./files/');
  for (const table of ['Plans by case group', 'Purchases avoided', 'Ranges', 'Own figures', 'Machines']) {
    const file = await saved(page, table, info.outputPath(`${table}.csv`));
    await page.getByLabel('A CSV or XLSX file, headings in its first row').setInputFiles(file);
    const status = page.locator('main').getByRole('status');
    await expect(status.filter({ hasText: 'stay as they are' })).toBeVisible();
  }
});

test('files that are no tables are refused, and the open workbook stays as it is', async ({ page }, info) => {
  await page.goto('./files/');
  const before = await todaysCost(page).textContent();
  const written = await saved(page, 'A spreadsheet with live formulas (XLSX)', info.outputPath('whole.xlsx'));
  const whole = await readFile(written);
  const text = (content: string) => Buffer.from(content);
  const zeros = Buffer.alloc(200_000_000);
  const { deflateRawSync } = await import('node:zlib');
  const cases: readonly (readonly [string, Buffer, RegExp])[] = [
    ['picture.csv', Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 1]), /zero bytes|picture/],
    ['cut.xlsx', whole.subarray(0, whole.length / 2), /cut off or damaged/],
    ['bomb.xlsx', zipOf('xl/worksheets/sheet1.xml', zeros, deflateRawSync(zeros)), /unpacks to more than/],
    ['large.csv', Buffer.alloc(20_000_001, 'a,b\n'), /at most 20 MB/],
    [
      'wide.csv',
      text(`${Array.from({ length: 100_000 }, (_, index) => `c${index}`).join(',')}\n1\n`),
      /100000 columns; a table has at most 500/
    ],
    ['latin.csv', Buffer.from('Case group,Minutes\nAn\xe4mie,60\n', 'latin1'), /UTF-8/],
    ['twice.csv', text('Minutes,minutes\n1,2\n'), /both called/],
    ['empty.csv', text(''), /empty/],
    ['open-quote.csv', text('Case group,Minutes\n"Knee,60\n'), /never closed/]
  ];
  for (const [name, content, sentence] of cases) {
    const file = info.outputPath(name);
    await writeFile(file, content);
    await page.getByLabel('A CSV or XLSX file, headings in its first row').setInputFiles(file);
    await expect(page.locator('main .wrong'), name).toContainText(sentence);
  }
  await expect(todaysCost(page)).toHaveText(before ?? '');

  // As workbooks, too.
  const workbooks: readonly (readonly [string, Buffer, RegExp])[] = [
    ['text.json', text('Dear colleague'), /not a workbook: at line 1/],
    ['cut.json', text('{"format": "vapour-ledger-workbook", "version": 1,'), /cut off/],
    ['other.json', text('{"a": 1}'), /format|no workbook/i],
    ['future.json', text('{"format": "vapour-ledger-workbook", "version": 99}'), /99/],
    ['whole.xlsx', whole, /XLSX/]
  ];
  for (const [name, content, sentence] of workbooks) {
    const file = info.outputPath(name);
    await writeFile(file, content);
    await page.getByLabel('Open a workbook from a file').setInputFiles(file);
    await expect(page.getByText(sentence).first(), name).toBeVisible();
    await expect(todaysCost(page)).toHaveText(before ?? '');
  }
});

/** A ZIP archive of one file, as its format has it (APPNOTE 6.3), to be as hostile as is wanted. */
function zipOf(name: string, content: Buffer, packed: Buffer): Buffer {
  const label = Buffer.from(name);
  const common = Buffer.alloc(26);
  common.writeUInt16LE(20, 0);
  common.writeUInt16LE(8, 4);
  common.writeUInt32LE(packed.length, 14);
  common.writeUInt32LE(content.length, 18);
  common.writeUInt16LE(label.length, 22);
  const local = Buffer.concat([Buffer.from('PK\x03\x04'), common, label, packed]);
  const central = Buffer.concat([
    Buffer.from('PK\x01\x02'),
    Buffer.from([20, 0]),
    common,
    Buffer.alloc(14),
    label
  ]);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(1, 8);
  end.writeUInt16LE(1, 10);
  end.writeUInt32LE(central.length, 12);
  end.writeUInt32LE(local.length, 16);
  return Buffer.concat([local, central, end]);
}

test('a log with start and end times over midnight, half hours lost in a mix-up named', async ({
  page
}, info) => {
  await page.goto('./files/');
  const file = info.outputPath('times.csv');
  const lines = Array.from({ length: 60 }, (_, index) =>
    index === 7
      ? '2025-03-08;Knee arthroscopy;11:00;10:00;sevoflurane'
      : `2025-03-${String(1 + (index % 28)).padStart(2, '0')};Knee arthroscopy;23:30;00:45;sevoflurane`
  );
  await writeFile(file, ['Date;Procedure;Start;End;Agent', ...lines].join('\n'));
  await page.getByLabel('A log of anaesthetics, as CSV').setInputFiles(file);
  await page.getByRole('button', { name: 'Group the cases' }).click();
  await expect(page.getByText(/59 of 60 lines went into 1 group, over 28 days/)).toBeVisible();
  await expect(page.getByText(/they may be mixed up: 1 line \(9\)/)).toBeVisible();
  await page.getByRole('button', { name: 'Take over' }).click();
  await page.getByRole('link', { name: 'Case mix', exact: true }).click();
  await expect(
    await gridCell(page, { grid: 'Case mix', row: 'Knee arthroscopy', column: 'Minutes' })
  ).toContainText('75');
});
