import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { readCell, writeCell } from '#lib/calc/cell-path.ts';
import { exampleFile } from '#lib/batch/example-file.ts';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { departmentWorkbook } from '../../fixtures/department.ts';
import { editCells, keptSentences } from '#lib/workbook/edit-cells.ts';
import { setRange } from '#lib/workbook/edit-ranges.ts';
import { deletePhases, insertPhases, movePhases } from '#lib/workbook/edit-phases.ts';
import {
  deleteRows,
  duplicateRows,
  freshId,
  insertRows,
  moveRows,
  orderRows
} from '#lib/workbook/edit-rows.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { limits } from '#lib/workbook/workbook.ts';

const plainCopy = (workbook: unknown): Record<string, unknown> =>
  JSON.parse(JSON.stringify(workbook)) as Record<string, unknown>;

/** The issues of the demo with one value changed, as `path: sentence`. */
function issuesWith(path: string, value: unknown): string[] {
  const parsed = parseWorkbook(writeCell(plainCopy(departmentWorkbook()), path, value));
  return parsed.kind === 'refused' ? parsed.issues.map((issue) => `${issue.path}: ${issue.sentence}`) : [];
}

describe('parsing', () => {
  test('blank and demo are sound, and come back as they were', () => {
    for (const workbook of [blankWorkbook(), demoWorkbook(), departmentWorkbook()])
      expect(parseWorkbook(plainCopy(workbook))).toEqual({ kind: 'workbook', workbook, notes: [] });
  });

  test('fields that may be absent get their defaults', () => {
    const document = plainCopy(departmentWorkbook());
    for (const field of ['sampling', 'overrides', 'keptTexts', 'invented']) delete document[field];
    delete (document['accounting'] as Record<string, unknown>)['bodyModel'];
    const parsed = parseWorkbook(document);
    expect(parsed.kind === 'workbook' && parsed.workbook.accounting.bodyModel).toBe('eger');
    expect(parsed.kind === 'workbook' && parsed.workbook.overrides).toEqual([]);
  });

  test.each([
    [
      'a negative price',
      'gases.oxygenPerM3',
      '-3',
      'gases.oxygenPerM3: Oxygen: “-3” was given; allowed is an amount of money of 0 or more.'
    ],
    [
      'a flow of 0',
      'flowPlans.usual.phases.0.flowLPerMin',
      0,
      'flowPlans.usual.phases.0.flowLPerMin: Fresh gas flow: 0 was given; allowed is a number above 0 to 20 L/min.'
    ],
    [
      'a dial of 100 %',
      'flowPlans.usual.phases.0.dialPercent',
      100,
      'Dial: 100 was given; allowed is a number above 0 to below 100 %'
    ],
    [
      'a weight of 0',
      'caseMix.lap-chole.weightKg',
      0,
      'caseMix.lap-chole.weightKg: Weight: 0 was given; allowed is a number from 1 to 300 kg.'
    ],
    ['an age below 1', 'caseMix.lap-chole.ageYears', 0.5, 'the published MAC formula holds from 1 year'],
    [
      'a pressure outside 50 to 110 kPa',
      'site.ambientPressureKPa',
      49,
      'allowed is a number from 50 to 110 kPa'
    ],
    [
      'an unknown machine',
      'scenarios.closed.moves.0.machine',
      'm-none',
      'scenarios.closed.moves.0.machine: Machine that comes: “m-none” is not in the list; allowed is one of m-old, m-closed, m-circle.'
    ],
    [
      'an unknown plan of one row',
      'scenarios.closed.flowPlanByCase',
      { hip: 'none' },
      'scenarios.closed.flowPlanByCase.hip'
    ],
    [
      'an agent without a price',
      'caseMix.lap-chole.agent',
      'halothane',
      'has no entry among the agents on Prices'
    ],
    ['a second baseline', 'scenarios.closed.baseline', true, '2 scenarios are marked as the baseline'],
    ['no open phase', 'flowPlans.usual.phases.1.minutes', 30, '0 phases of “Usual practice” have no minutes'],
    [
      'a fixed dial without a setting',
      'flowPlans.usual.phases.0.vaporiser',
      'dial',
      'a fixed dial needs a number above 0'
    ],
    [
      'a low above its high',
      'ranges',
      { 'caseMix.lap-chole.minutes': { low: 90, high: 60 } },
      'low 90 and high 60 were given'
    ],
    [
      'a mode outside its range',
      'ranges',
      { 'caseMix.lap-chole.minutes': { low: 80, high: 90 } },
      'it has to hold the cell’s own value, 75'
    ],
    [
      'a range beyond what its cell may hold',
      'ranges',
      { 'caseMix.lap-chole.minutes': { low: 0, high: 90 } },
      'Range: Minutes: 0 was given; allowed is a number from 0.1'
    ],
    [
      'a price that may fall below nothing',
      'ranges',
      { 'machines.m-closed.unitPrice': { low: -1, high: 90000 } },
      'Range: Price: “-1” was given'
    ],
    [
      'a range of a setting',
      'ranges',
      { 'accounting.appraisalYears': { low: 5, high: 15 } },
      'is how the calculation is set'
    ],
    ['a horizon of 0', 'accounting.appraisalYears', 0, 'allowed is a whole number from 1 to 60 years'],
    ['a horizon above 60', 'accounting.appraisalYears', 61, 'allowed is a whole number from 1 to 60 years'],
    ['a discount rate of -21 %', 'accounting.discountRatePercent', -21, 'allowed is a number from -20'],
    ['a field of another version', 'site.windows', 3, 'no such field in a workbook of version 2'],
    [
      'the literature of 2012 over 20 years',
      'accounting',
      { ...departmentWorkbook().accounting, warmingSet: 'literature-2012', warmingHorizonYears: 20 },
      'holds literature-2012 for 100 years'
    ],
    [
      'more theatres than there are',
      'scenarios.closed.moves.0.theatres',
      5,
      'Theatres: 5 was given; “Theatres” has 4.'
    ],
    [
      'an override without a reason',
      'overrides',
      [{ constant: 'sevoflurane.mac40', value: 2, unit: '%', reason: '' }],
      'overrides.sevoflurane.mac40'
    ]
  ])('%s is refused with a sentence that names the place', (_, path, value, expected) => {
    expect(issuesWith(path, value).join('\n')).toContain(expected);
  });

  test('a volatile case at the first year, from which the published MAC formula holds, is taken', () => {
    expect(issuesWith('caseMix.lap-chole.ageYears', 1)).toEqual([]);
  });

  test.each([['a text'], [7], [undefined], [null], [[]]])('%j is no workbook, and is not opened', (given) => {
    expect(parseWorkbook(given)).toMatchObject({
      kind: 'refused',
      issues: [{ path: 'workbook', sentence: expect.stringContaining('allowed is a workbook.') }]
    });
  });

  test('a repeated id is refused', () => {
    const demo = departmentWorkbook();
    const [first] = demo.caseMix;
    const parsed = parseWorkbook(plainCopy({ ...demo, caseMix: [...demo.caseMix, first] }));
    expect(parsed.kind === 'refused' && parsed.issues[0]?.sentence).toContain('stands more than once');
  });

  test('too many rows, another format, a newer version and no object are refused', () => {
    const demo = departmentWorkbook();
    const sentence = (document: unknown) => {
      const parsed = parseWorkbook(document);
      return parsed.kind === 'refused' ? (parsed.issues[0]?.sentence ?? '') : '';
    };
    const many = Array.from({ length: limits.caseMix + 1 }, (_, index) => ({
      ...demo.caseMix[0],
      id: `row-${index}`
    }));
    expect(sentence(plainCopy({ ...demo, caseMix: many }))).toContain(
      '2001 were given; allowed are at most 2000'
    );
    expect(sentence({ ...plainCopy(demo), format: 'other' })).toContain(
      'allowed is “vapour-ledger-workbook”'
    );
    expect(sentence({ ...plainCopy(demo), version: 3 })).toContain('Open the file with a newer release');
    expect(sentence([])).toContain('a list was given');
    expect(sentence(null)).toContain('an empty value was given');
  });

  test('a reference set that this version does not have is told apart from a fault', () => {
    const parsed = parseWorkbook({ ...plainCopy(departmentWorkbook()), referenceSet: '2031-4' });
    expect(parsed.kind).toBe('unknown-reference');
  });
});

test('the example workbook that ships beside the app is the demo', async () => {
  // After a change of the demo, `npm run example` writes it anew.
  const shipped = await readFile(new URL('../../../static/examples/invented-hospital.json', import.meta.url));
  expect(new TextDecoder().decode(shipped)).toBe(new TextDecoder().decode(exampleFile()));
});

describe('cells by path', () => {
  test('reads and writes by ids and indices, sharing what lies off the path', () => {
    const demo = departmentWorkbook();
    expect(readCell(demo, 'flowPlans.usual.phases.1.flowLPerMin')).toBe(2);
    expect(readCell(demo, 'agents.sevoflurane.bottlePrice')).toBe('118.00');
    expect(readCell(demo, 'caseMix.nobody.minutes')).toBeUndefined();
    const changed = writeCell(demo, 'caseMix.hip.minutes', 100);
    expect(readCell(changed, 'caseMix.hip.minutes')).toBe(100);
    expect(changed.caseMix[0]).toBe(demo.caseMix[0]);
    expect(changed.machines).toBe(demo.machines);
    expect(readCell(demo, 'caseMix.hip.minutes')).toBe(90);
  });
});

describe('edits', () => {
  const edit = (workbook: Workbook, path: string, text: string) =>
    editCells(workbook, [{ path, text }], 'en-GB');

  test('a text is read by the field: units, choices by label or beginning, yes and no', () => {
    const demo = departmentWorkbook();
    const after = (path: string, text: string) => readCell(edit(demo, path, text).workbook, path);
    expect(after('caseMix.hip.minutes', '1h15')).toBe(75);
    expect(after('caseMix.lap-hernia.agent', 'desf')).toBe('desflurane');
    expect(after('caseMix.hip.neuromuscularBlock', 'yes')).toBe(true);
    expect(after('accounting.warmingHorizonYears', '20 years')).toBe(20);
    expect(after('scenarios.closed.adoptionFirstYearsPercent', '50, 80')).toEqual([50, 80]);
    expect(after('scenarios.closed.flowPlanByCase.hip', 'Low flow')).toBe('low');
  });

  test('a bad text stays in its cell with its sentence, and the last good value in force', () => {
    const { workbook, refused } = edit(departmentWorkbook(), 'caseMix.hip.minutes', 'long');
    expect(readCell(workbook, 'caseMix.hip.minutes')).toBe(90);
    expect(workbook.keptTexts).toEqual({ 'caseMix.hip.minutes': 'long' });
    expect(refused[0]?.sentence).toContain('“long” is not a number');
    expect(keptSentences(workbook, 'en-GB')['caseMix.hip.minutes']).toContain('“long” is not a number');
    expect(edit(workbook, 'caseMix.hip.minutes', '95').workbook.keptTexts).toEqual({});
  });

  test('a bad text stays in a cell that was empty, of a list by id too', () => {
    const path = 'scenarios.habit.agentSwitch.desflurane';
    const { workbook } = edit(departmentWorkbook(), path, 'wxyz');
    expect(keptSentences(workbook, 'en-GB')[path]).toContain('“wxyz”');
    expect(keptSentences({ ...workbook, scenarios: [] }, 'en-GB')[path]).toBeUndefined();
  });

  test('a value that would break something elsewhere is refused too', () => {
    const { workbook, refused } = edit(departmentWorkbook(), 'caseMix.lap-chole.ageYears', '0.5');
    expect(readCell(workbook, 'caseMix.lap-chole.ageYears')).toBe(50);
    expect(refused[0]?.sentence).toContain('so a volatile case needs 1 to 120 years');
  });

  test('a sentence writes numbers as they are typed there, with all their digits', () => {
    const sentence = (path: string, text: string, workbook = departmentWorkbook()) =>
      editCells(workbook, [{ path, text }], 'de-DE').refused[0]?.sentence;
    expect(sentence('caseMix.hip.minutes', '1440,25')).toContain(
      '1440,25 was given; allowed is a number from 0,1 to 1440 min'
    );
    expect(sentence('site.electricityPricePerKWh', '-12,50')).toContain('“-12,50” was given');
    expect(sentence('caseMix.lap-chole.ageYears', '0,5')).toContain('Age: 0,5 was given');
    const kept = edit(departmentWorkbook(), 'caseMix.hip.minutes', '1440.25').workbook;
    expect(keptSentences(kept, 'fr-FR')['caseMix.hip.minutes']).toContain('from 0,1 to 1440 min');
  });

  test('so does one about a range', () => {
    const path = 'caseMix.hip.minutes';
    const sentence = (low: string, high: string) => {
      const changed = setRange(departmentWorkbook(), path, { low, high, locale: 'de-DE' });
      return 'sentence' in changed ? changed.sentence : '';
    };
    expect(sentence('0,05', '100')).toContain('Low: Minutes: 0,05 was given; allowed is a number from 0,1');
    expect(sentence('99,5', '95,25')).toBe('Range: low 99,5 and high 95,25 were given; low is at most high.');
    expect(sentence('91,5', '95')).toContain('Range: 91,5 to 95 was given');
  });

  test('one about a file prints them plainly, wherever it is read', () => {
    const document = writeCell(plainCopy(departmentWorkbook()), 'caseMix.hip.minutes', 1440.25);
    expect(parseWorkbook(document)).toMatchObject({
      issues: [{ sentence: expect.stringContaining('1440.25 was given; allowed is a number from 0.1 to') }]
    });
  });

  test('of many texts the good ones go in and the bad ones stay', () => {
    const { workbook, refused } = editCells(
      departmentWorkbook(),
      [
        { path: 'caseMix.hip.minutes', text: '100' },
        { path: 'caseMix.hip.weightKg', text: '-2' },
        { path: 'theatreGroups.main.machine', text: 'Machines of today' }
      ],
      'en-GB'
    );
    expect(readCell(workbook, 'caseMix.hip.minutes')).toBe(100);
    expect(readCell(workbook, 'theatreGroups.main.machine')).toBe('m-old');
    expect(refused.map(({ path }) => path)).toEqual(['caseMix.hip.weightKg']);
  });

  test('an empty text clears to “not given”, or is refused where a value is needed', () => {
    const demo = departmentWorkbook();
    expect(readCell(edit(demo, 'machines.m-old.powerW', '').workbook, 'machines.m-old.powerW')).toBeNull();
    expect(edit(demo, 'caseMix.hip.minutes', '').refused[0]?.sentence).toContain('an empty value was given');
  });
});

describe('rows', () => {
  const done = (changed: { workbook: Workbook } | { sentence: string }): Workbook => {
    if ('sentence' in changed) throw new Error(changed.sentence);
    return changed.workbook;
  };

  test('new, duplicated, moved and deleted rows leave a sound workbook', () => {
    let workbook = departmentWorkbook();
    workbook = done(insertRows(workbook, { list: 'caseMix', at: 1, count: 2 }));
    expect(workbook.caseMix[1]?.id).toBe('case');
    workbook = done(duplicateRows(workbook, { list: 'caseMix', rows: [0] }));
    expect(workbook.caseMix[1]?.name).toBe('Laparoscopic cholecystectomy (copy)');
    workbook = done(moveRows(workbook, { list: 'caseMix', rows: [0], by: 2 }));
    expect(workbook.caseMix[2]?.id).toBe('lap-chole');
    workbook = done(deleteRows(workbook, { list: 'caseMix', rows: [2] }));
    expect(Object.keys(workbook.ranges)).not.toContain('caseMix.lap-chole.minutes');
    for (const list of [
      'machines',
      'flowPlans',
      'scenarios',
      'absorbents',
      'agents',
      'monitorPrices',
      'theatreGroups'
    ] as const)
      workbook = done(insertRows(workbook, { list, at: 0, count: 1 }));
    expect(parseWorkbook(plainCopy(workbook)).kind).toBe('workbook');
  });

  test('rows in another order keep their ranges and texts, and none is lost', () => {
    const demo = departmentWorkbook();
    const order = demo.caseMix.map((_, index) => demo.caseMix.length - 1 - index);
    const ordered = done(orderRows(demo, { list: 'caseMix', order }));
    expect(ordered).toEqual({ ...demo, caseMix: [...demo.caseMix].reverse() });
    expect(() => orderRows(demo, { list: 'caseMix', order: order.slice(1) })).toThrow(
      'names each of them once'
    );
    expect(() => orderRows(demo, { list: 'caseMix', order: order.map(() => 0) })).toThrow('names each');
  });

  test('what is in use is not deleted, and the baseline never', () => {
    const demo = departmentWorkbook();
    expect(deleteRows(demo, { list: 'machines', rows: [0] })).toEqual({
      sentence: 'This machine is in use by Theatres; choose another there first.'
    });
    expect(deleteRows(demo, { list: 'absorbents', rows: [0] })).toMatchObject({
      sentence: expect.stringMatching(/^This absorbent is in use by /)
    });
    expect(deleteRows(demo, { list: 'scenarios', rows: [0] })).toHaveProperty('sentence');
    expect(deleteRows(demo, { list: 'agents', rows: [0] })).toHaveProperty('sentence');
  });

  test('a list that is full takes no more', () => {
    const demo = departmentWorkbook();
    expect(insertRows(demo, { list: 'caseMix', at: 0, count: limits.caseMix })).toHaveProperty('sentence');
  });

  test('ids are made from names and unlike all others', () => {
    expect(freshId('Hüfte & Knie', [])).toBe('hufte-knie');
    expect(freshId('Hüfte & Knie', ['hufte-knie'])).toBe('hufte-knie-2');
    expect(freshId('胆囊', [])).toBe('row');
  });

  test('phases come and go, the open one stays', () => {
    const demo = departmentWorkbook();
    const longer = done(insertPhases(demo, { plan: 'usual', at: 1, count: 1 }));
    expect(longer.flowPlans[0]?.phases.map((phase) => phase.minutes)).toEqual([10, 5, null]);
    const moved = done(movePhases(longer, { plan: 'usual', rows: [2], by: -1 }));
    expect(moved.flowPlans[0]?.phases.map((phase) => phase.minutes)).toEqual([10, null, 5]);
    expect(deletePhases(demo, { plan: 'usual', rows: [1] })).toHaveProperty('sentence');
  });
});
