import { newPayment } from '#lib/workbook/edit-moves.ts';
import { describe, expect, test } from 'vitest';
import { mapColumns } from '#lib/workbook/match-headings.ts';
import { readCsv } from '#lib/files/read/csv-in.ts';
import type { ImportMode } from '#lib/files/import/import-request.ts';
import { importColumns, previewImport } from '#lib/files/import/preview-import.ts';
import { suggestTable } from '#lib/files/import/suggest-table.ts';
import type { TableId } from '#lib/files/tables/tables.ts';
import { columnsOf, tableIds } from '#lib/files/tables/tables.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { limits } from '#lib/workbook/workbook.ts';

function preview(
  table: TableId,
  csv: string,
  {
    mode = 'append',
    workbook = departmentWorkbook(),
    locale = 'en-GB'
  }: { mode?: ImportMode; workbook?: Workbook; locale?: string } = {}
) {
  const read = readCsv(new TextEncoder().encode(csv));
  if (read.kind === 'refused') throw new Error(read.sentence);
  const mapping = mapColumns(read.table.headers, importColumns(table, workbook));
  const result = previewImport(workbook, { table, file: read.table, mapping, mode, locale });
  expect(parseWorkbook(result.workbook).kind).toBe('workbook');
  return result;
}

describe('which column goes where', () => {
  const columns = columnsOf('caseMix', 'EUR');
  test.each([
    [
      ['Case group', 'Minutes (min)', 'Id'],
      ['name', 'minutes', 'id']
    ],
    [
      ['MINUTES [min]', 'weight (kg)', 'cases'],
      ['minutes', 'weightKg', 'casesPerYear']
    ],
    [
      ['weightKg', 'ageYears', 'casesPerYear'],
      ['weightKg', 'ageYears', 'casesPerYear']
    ],
    [
      ['Pneumo', 'Neuromuscular block'],
      ['pneumoperitoneum', 'neuromuscularBlock']
    ],
    [
      ['Surgeon', 'Minutes', 'Minutes, mean'],
      [null, 'minutes', null]
    ]
  ])('%j', (headers, keys) => {
    expect(mapColumns(headers, columns)).toEqual(keys);
  });
});

describe('rows of a list', () => {
  const csv =
    'Case group,Cases,Minutes,Weight,Technique,Agent\nKnee,120,1h10,82,volatile,Sevo\n"Hip, redo",30,about two hours,-1,hypnosis,\n';

  test('are added below, in what can be read, and the rest is named with line, column and sentence', () => {
    const { workbook, ...told } = preview('caseMix', csv);
    expect(told).toMatchObject({ added: 2, changed: 0, removed: [], refusedRows: [] });
    expect(told.refusedCells.map(({ line, column, text }) => [line, column, text])).toEqual([
      [3, 'Minutes', 'about two hours'],
      [3, 'Weight', '-1'],
      [3, 'Technique', 'hypnosis'],
      [3, 'Agent', '']
    ]);
    expect(told.refusedCells[1]?.sentence).toBe(
      'Weight: -1 was given; allowed is a number from 1 to 300 kg.'
    );
    expect(workbook.caseMix.at(-2)).toMatchObject({
      id: 'knee',
      casesPerYear: 120,
      minutes: 70,
      agent: 'sevoflurane'
    });
    expect(workbook.caseMix.at(-1)).toMatchObject({ id: 'hip-redo', name: 'Hip, redo', casesPerYear: 30 });
    expect(workbook.keptTexts).toMatchObject({
      'caseMix.hip-redo.minutes': 'about two hours',
      'caseMix.hip-redo.weightKg': '-1'
    });
    expect(told.notes[0]).toMatch(
      /^New rows get start values, to be checked, in columns that the file does not have: Age \(years\), Target/
    );
  });

  test('the workbook given is not touched', () => {
    const workbook = Object.freeze(departmentWorkbook());
    const before = JSON.stringify(workbook);
    preview('caseMix', csv, { workbook, mode: 'replace' });
    expect(JSON.stringify(workbook)).toBe(before);
  });

  test('in place of the list, rows of one name keep their id and ranges; others leave with theirs', () => {
    const { workbook, ...told } = preview(
      'caseMix',
      'Case group,Minutes\nLaparoscopic cholecystectomy,80\nKnee,70\n',
      { mode: 'replace' }
    );
    expect(told).toMatchObject({ added: 1, changed: 1 });
    expect(told.removed).toHaveLength(departmentWorkbook().caseMix.length - 1);
    expect(workbook.caseMix.map(({ id, minutes }) => [id, minutes])).toEqual([
      ['lap-chole', 80],
      ['knee', 70]
    ]);
    expect(Object.keys(workbook.ranges).filter((path) => path.startsWith('caseMix.'))).toEqual([
      'caseMix.lap-chole.minutes'
    ]);
  });

  test('a row that something refers to stays, and that is said', () => {
    const { workbook, notes } = preview('machines', 'Machine,Leak (mL/min)\nNew one,20\n', {
      mode: 'replace'
    });
    expect(workbook.machines.map(({ id }) => id)).toContain('m-old');
    expect(notes.find((note) => note.startsWith('“Machines of today” stays'))).toMatch(/in use by Theatres/);
  });

  test('rows beyond what a list holds are refused one by one', () => {
    const many = `Case group\n${Array.from({ length: 2000 }, (_, index) => `Group ${index}`).join('\n')}`;
    const { workbook, added, refusedRows } = preview('caseMix', many);
    const before = departmentWorkbook().caseMix.length;
    expect([workbook.caseMix.length, added, refusedRows.length]).toEqual([2000, 2000 - before, before]);
    expect(refusedRows[0]?.sentence).toMatch(/holds at most 2000 entries/);
  });

  test('rows that leave make room for those that come', () => {
    const groups = Array.from({ length: limits.caseMix }, (_, index) => `Group ${index}`);
    const { workbook, added, removed, refusedRows } = preview('caseMix', `Case group\n${groups.join('\n')}`, {
      mode: 'replace'
    });
    expect(removed).toHaveLength(departmentWorkbook().caseMix.length);
    expect([added, refusedRows]).toEqual([limits.caseMix, []]);
    expect(workbook.caseMix.map(({ name }) => name)).toEqual(groups);
  });

  test('numbers are read by the way they are written in the file', () => {
    const { workbook } = preview('caseMix', 'Case group;Minutes\nKnie;72,5\n', { locale: 'de-DE' });
    expect(workbook.caseMix.at(-1)?.minutes).toBe(72.5);
  });
});

describe('agents and monitors, which stand in their list once', () => {
  test('are met by what they are, and a doubled or unknown one is refused', () => {
    const { workbook, ...told } = preview(
      'agents',
      'Agent,Bottle price\nSevoflurane,99.50\nIsoflurane,30\nIsoflurane,31\nEther,5\nDesflurane,104.00\n',
      { mode: 'replace' }
    );
    expect(workbook.agents.map(({ agent, bottlePrice }) => [agent, bottlePrice])).toEqual([
      ['sevoflurane', '99.50'],
      ['isoflurane', '30'],
      ['desflurane', '104.00']
    ]);
    expect(told.refusedRows).toEqual([
      { line: 4, sentence: '“Isoflurane” stands in the file twice; the first is taken.' },
      {
        line: 5,
        sentence: expect.stringMatching(/“Ether” was given; allowed is one of Sevoflurane/) as string
      }
    ]);
  });

  test('are not changed by adding', () => {
    const { workbook, refusedRows } = preview('monitorPrices', 'Monitor,Price\nECG,1\n');
    expect(workbook).toEqual(departmentWorkbook());
    expect(refusedRows[0]?.sentence).toMatch(/is in the list already; replace the list/);
  });
});

describe('flow plans, one row for each phase', () => {
  test('are put together by name, with their open phase', () => {
    const { workbook, added } = preview(
      'flowPlans',
      'Flow plan,Phase,Minutes,Fresh gas flow,Vaporiser\nA,start,5,6,hold\nB,all,,1,hold\nA,rest,,0.5 L/min,off\n'
    );
    expect(added).toBe(2);
    expect(workbook.flowPlans.slice(-2)).toMatchObject([
      {
        id: 'a',
        phases: [
          { name: 'start', minutes: 5 },
          { name: 'rest', minutes: null, flowLPerMin: 0.5, vaporiser: 'off' }
        ]
      },
      { id: 'b', phases: [{ name: 'all', minutes: null, flowLPerMin: 1 }] }
    ]);
  });

  test('a plan without an open phase, or with two, is refused whole and the others taken', () => {
    const { workbook, refusedRows } = preview(
      'flowPlans',
      'Flow plan,Phase,Minutes,Fresh gas flow\nA,start,5,6\nB,all,,1\nC,x,,1\nC,y,,2\n'
    );
    expect(workbook.flowPlans.at(-1)?.id).toBe('b');
    expect(refusedRows.map(({ line, sentence }) => [line, sentence])).toEqual([
      [2, '0 phases of “A” have no minutes; exactly one lasts for the rest of the case.'],
      [4, '2 phases of “C” have no minutes; exactly one lasts for the rest of the case.'],
      [5, '2 phases of “C” have no minutes; exactly one lasts for the rest of the case.']
    ]);
  });
});

describe('a file of headings alone', () => {
  const empty = (table: TableId, csv: string, mode: ImportMode = 'replace') => {
    const demo = departmentWorkbook();
    const told = preview(table, csv, { mode, workbook: demo });
    return { ...told, isUnchanged: told.workbook === demo };
  };

  test('in place of a list that may be empty takes out all its rows, with what is said of them', () => {
    const { workbook, removed, empties } = empty('caseMix', 'Case group,Cases,Minutes\n');
    expect(removed).toEqual(departmentWorkbook().caseMix.map(({ name }) => name));
    expect(empties).toBe(true);
    expect(workbook.caseMix).toEqual([]);
    expect(workbook.scenarios.every(({ flowPlanByCase }) => Object.keys(flowPlanByCase).length === 0)).toBe(
      true
    );
    expect(Object.keys(workbook.ranges).some((path) => path.startsWith('caseMix.'))).toBe(false);
  });

  test('empties tables without a list of their own', () => {
    const { workbook, removed, empties } = empty('ranges', 'Cell,Low,High\n');
    expect(removed).toHaveLength(Object.keys(departmentWorkbook().ranges).length);
    expect(workbook.ranges).toEqual({});
    expect(empties).toBe(true);
  });

  test('leaves rows that something refers to, and says so', () => {
    const { workbook, empties, notes } = empty('agents', 'Agent,Bottle (mL)\n');
    expect(workbook.agents.map(({ agent }) => agent)).toContain('sevoflurane');
    expect(empties).toBe(false);
    expect(notes.join()).toMatch(/stays, though the file does not have it: This agent is in use by/);
  });

  test.each(['flowPlans', 'machines', 'scenarios', 'absorbents'] as const)(
    'never empties %s, of which one is needed',
    (table) => {
      const [first] = columnsOf(table, 'EUR').filter(({ field }) => field !== null);
      const told = empty(table, `${first?.header}\n`);
      expect(told).toMatchObject({ isUnchanged: true, removed: [], empties: false });
      expect(told.notes).toEqual([expect.stringContaining('a workbook needs at least one row')]);
    }
  );

  test('adds nothing, sets nothing, and is not taken for a table of which it has no heading', () => {
    expect(empty('caseMix', 'Case group\n', 'append')).toMatchObject({
      isUnchanged: true,
      notes: [expect.stringContaining('there is nothing to add')]
    });
    expect(empty('settings', 'Section,Setting,Value\n')).toMatchObject({
      isUnchanged: true,
      notes: [expect.stringContaining('every setting stays')]
    });
    expect(empty('caseMix', 'Prepared in spring\n')).toMatchObject({
      isUnchanged: true,
      notes: [expect.stringContaining('none of its headings is one of Case mix')]
    });
  });

  test('is said to empty the list also where rows are there and none can be taken', () => {
    expect(empty('monitorPrices', 'Monitor,Price\nTea,1\n')).toMatchObject({
      empties: true,
      refusedRows: [{ line: 2 }]
    });
  });
});

test('settings are found by section and name, and an unknown one is said', () => {
  const { workbook, ...told } = preview(
    'settings',
    'Section,Setting,Value\nSite,Theatre temperature (°C),22\nAccounting,Discount rate (%),3.5\nGases,Oxygen (EUR per m³),much\nSite,Ghosts,1\n'
  );
  expect(workbook.site.theatreTemperatureC).toBe(22);
  expect(told).toMatchObject({ changed: 2, unchanged: 1 });
  expect(told.refusedCells).toMatchObject([{ line: 4, column: 'Oxygen (EUR per m³)', text: 'much' }]);
  expect(told.refusedRows).toEqual([{ line: 5, sentence: 'There is no setting “Ghosts” in Site.' }]);
});

describe('what entries hold beside their cells', () => {
  test('monitors, agents given instead and who stands for today come with their rows', () => {
    const { workbook, changed, refusedCells } = preview(
      'scenarios',
      'Id,Stands for today,Agents given instead\ntoday,no,\nhabit,yes,Desflurane = Sevo; isoflurane → sevoflurane\ncircle,no,\n',
      { mode: 'replace' }
    );
    expect(refusedCells).toEqual([]);
    expect(changed).toBeGreaterThan(0);
    const habit = workbook.scenarios.find(({ id }) => id === 'habit');
    expect(habit).toMatchObject({
      baseline: true,
      agentSwitch: { desflurane: 'sevoflurane', isoflurane: 'sevoflurane' }
    });
    expect(workbook.scenarios.filter(({ baseline }) => baseline)).toHaveLength(1);
    const machines = preview('machines', 'Id,Monitors that it has\nm-closed,ECG; capnography\n', {
      mode: 'replace'
    });
    expect(machines.workbook.machines.find(({ id }) => id === 'm-closed')?.monitors).toEqual([
      'ecg',
      'capnography'
    ]);
  });

  test('a scenario that brings machines cannot stand for today, and that is said', () => {
    const { workbook, refusedCells } = preview(
      'scenarios',
      'Id,Stands for today\ntoday,no\nhabit,no\nclosed,yes\ncircle,no\n',
      { mode: 'replace' }
    );
    expect(refusedCells).toMatchObject([{ line: 4, text: 'yes' }]);
    expect(refusedCells[0]?.sentence).toMatch(/stands for today; nothing comes there/);
    expect(workbook.scenarios.find(({ baseline }) => baseline)?.id).toBe('today');
  });

  test('a part that cannot be read is refused with a sentence, and what was there stays', () => {
    const before = departmentWorkbook();
    const scenarios = preview(
      'scenarios',
      'Id,Stands for today,Agents given instead\ntoday,yes,desflurane\nclosed,yes,desflurane = xenon\n',
      { mode: 'replace' }
    );
    expect(scenarios.refusedCells.map(({ line, sentence }) => [line, sentence.split(';')[0]])).toEqual([
      [2, 'Agents given instead: “desflurane” was given'],
      [3, 'Agent: “xenon” was given'],
      [3, 'Stands for today: exactly one scenario does']
    ]);
    const today = (workbook: Workbook) => workbook.scenarios.find(({ baseline }) => baseline);
    expect(today(scenarios.workbook)).toEqual(today(before));
    const machines = preview('machines', 'Id,Monitors that it has\nm-closed,ECG; sundial\n', {
      mode: 'replace'
    });
    expect(machines.refusedCells[0]?.sentence).toMatch(/^Monitor: “sundial” was given/);
    expect(machines.workbook.machines.find(({ id }) => id === 'm-closed')).toEqual(
      before.machines.find(({ id }) => id === 'm-closed')
    );
  });

  test('an agent that cannot be given, as there is no price for it, is refused', () => {
    const { refusedCells } = preview(
      'scenarios',
      'Id,Agents given instead\nclosed,desflurane = halothane\n',
      { mode: 'replace' }
    );
    expect(refusedCells[0]?.sentence).toMatch(/“halothane” has no entry among the agents on Prices/);
  });
});

describe('tables that stand beside the lists', () => {
  test('plans of single case groups, by name or id', () => {
    const { workbook, added, refusedRows } = preview(
      'plansByCase',
      'Scenario,Case group,Flow plan\nclosed,lap-chole,usual\nClosed-circuit A,Breast surgery,nothing\n,,\nx,lap-chole,usual\n'
    );
    expect(added).toBe(1);
    expect(workbook.scenarios.find(({ id }) => id === 'closed')?.flowPlanByCase).toMatchObject({
      'lap-chole': 'usual'
    });
    expect(refusedRows).toEqual([
      { line: 3, sentence: '“nothing” is the name of no flow plan, or of more than one: give its id.' },
      { line: 5, sentence: '“x” is the name of no scenario, or of more than one: give its id.' }
    ]);
  });

  test('ranges, each around the value of its cell', () => {
    const { workbook, added, refusedRows } = preview(
      'ranges',
      'Cell,Low,High\ncaseMix.lap-chole.weightKg,70,95\ncaseMix.lap-chole.ageYears,90,100\nsite.nothing,1,2\ncaseMix.lap-chole.casesPerYear,few,2\n'
    );
    expect(added).toBe(1);
    expect(workbook.ranges['caseMix.lap-chole.weightKg']).toEqual({ low: 70, high: 95 });
    expect(refusedRows.map(({ line }) => line)).toEqual([3, 4, 5]);
    expect(refusedRows[0]?.sentence).toMatch(/it has to hold the cell’s own value/);
  });

  test('figures of one’s own, each with a reason and within reason', () => {
    const { workbook, refusedRows } = preview(
      'ownFigures',
      'Constant,Value,Unit,Reason\nmachine.power,120,W,measured\nmachine.power,130,W,again\nmachine.life,1000,years,wish\nno.such,1,W,x\n'
    );
    expect(workbook.overrides).toEqual([
      { constant: 'machine.power', value: 120, unit: 'W', reason: 'measured' }
    ]);
    expect(refusedRows.map(({ line }) => line)).toEqual([3, 4, 5]);
  });

  test('purchases avoided', () => {
    const { workbook, added, refusedRows } = preview(
      'avoidedPurchases',
      'Scenario,Year,Units,Price\nclosed,3,2,45000\nclosed,3,2,45000\nclosed,99,1,1\n'
    );
    expect(added).toBe(2);
    expect(workbook.scenarios.find(({ id }) => id === 'closed')?.avoidedPurchases).toHaveLength(
      2 + (departmentWorkbook().scenarios.find(({ id }) => id === 'closed')?.avoidedPurchases.length ?? 0)
    );
    expect(refusedRows[0]?.sentence).toMatch(/^Year: 99 was given/);
  });
});

test('a setting that does not fit something elsewhere turns nothing else away', () => {
  // The life of a machine that a scenario leases for seven years: the term elsewhere is what does not fit.
  const before = departmentWorkbook();
  const leased: Workbook = {
    ...before,
    scenarios: before.scenarios.map((scenario) => ({
      ...scenario,
      moves: scenario.moves.map((move) =>
        move.machine === 'm-closed' ? { ...move, payment: newPayment } : move
      )
    }))
  };
  const others = before.machines.filter(({ id }) => id !== 'm-closed').map(({ id }) => id);
  const rows = ['m-closed', ...others].map((id) => `${id},5`).join('\n');
  const { workbook, refusedCells } = preview('machines', `Id,Life (years)\n${rows}\n`, {
    mode: 'replace',
    workbook: leased
  });
  expect(refusedCells.map(({ line }) => line)).toEqual([2]);
  for (const id of others) expect(workbook.machines.find((each) => each.id === id)?.lifeYears).toBe(5);
});

test.each([...tableIds])('the table %s is known again by its headings', (table) => {
  const workbook = departmentWorkbook();
  const headers = importColumns(table, workbook).map(({ header }) => header);
  expect(suggestTable({ name: 'export (3).csv', headers }, workbook)).toBe(table);
});
