/** A scenario that makes a share of a case group intravenous or regional: added up by hand. */
import { describe, expect, test } from 'vitest';
import type { CaseRow, Scenario } from '#lib/calc/input.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import {
  closedMachine,
  expectFigures,
  hernia,
  hip,
  low,
  neck,
  nitrousOxideKgPerL,
  oldMachine,
  oneCase,
  pricedTechniques,
  published,
  scenarioOf,
  today,
  usual,
  warningsOf,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';
import { bringing } from '../fixtures/one-group.ts';

/** Of 200 hernias half follow: of these 100, 30 become intravenous and 10 regional. */
const changing: Scenario = {
  ...today,
  id: 'changing',
  name: 'Another technique',
  baseline: false,
  adoptionPercent: 50,
  intravenousPercentByCase: { hernia: 30 },
  regionalPercentByCase: { hernia: 10 }
};
const workbookWith = (scenario: Scenario = changing, changes: Partial<Workbook> = {}): Workbook =>
  wholeWorkbook({ scenarios: [today, scenario], ...pricedTechniques, ...changes });
const of = (scenario: Scenario = changing, changes: Partial<Workbook> = {}) =>
  scenarioOf(workbookWith(scenario, changes), scenario);

const as = (technique: CaseRow['technique'], plan = usual, machine = oldMachine) =>
  oneCase(wholeWorkbook(), {
    row: { ...hernia, technique },
    plan,
    machine,
    agent: technique === 'volatile' ? hernia.agent : null
  });

describe('cases that change to another technique', () => {
  const [volatile, intravenous] = [as('volatile'), as('intravenous')];
  const { perYear } = of();
  const onToday = of(today);

  test('use no agent, and those that stay or do not follow use what they did', () => {
    // 100 do not follow and 60 keep their technique.
    expectFigures(perYear.agents.sevoflurane?.liquidMl, 160 * volatile.liquidMl);
  });

  test('use gas and absorbent where they are intravenous, and none where they are regional', () => {
    const neckCase = oneCase(wholeWorkbook(), { row: neck, plan: usual, machine: oldMachine });
    expectFigures(
      [perYear.oxygenM3 * 1000, perYear.absorbentKg],
      [
        160 * volatile.oxygenL + 30 * intravenous.oxygenL + 50 * neckCase.oxygenL,
        160 * volatile.absorbentKg + 30 * intravenous.absorbentKg + 50 * neckCase.absorbentKg
      ]
    );
    expectFigures(onToday.perYear.electricityKWh - perYear.electricityKWh, (10 * 60 * 90) / 60 / 1000);
  });

  test('are counted, with the propofol that is drawn up and wasted and the sensors that are used', () => {
    // 30 hernias of an hour and 50 necks of two hours, 8 mg/kg/h at 78 kg; 40 % of what is drawn up is wasted.
    const givenG = ((30 + 50 * 2) * 8 * 78) / 1000;
    expectFigures(
      [
        perYear.intravenousCases,
        perYear.regionalCases,
        perYear.propofolDrawnUpG,
        perYear.propofolWastedG,
        perYear.eegSensors
      ],
      [80, 10 + 80, givenG / 0.6, (givenG / 0.6) * 0.4, 0.8 * 80]
    );
  });

  test('cost their drugs, lines, sensors and regional sets', () => {
    const intravenousCost = 30 * (((8 * 78) / 1000 / 0.6) * 6 + 3 + 12.5 + 0.8 * 20);
    expectFigures(Number(perYear.cost.drugs) - Number(onToday.perYear.cost.drugs), intravenousCost + 10 * 31);
  });

  test('emit what an hour of intravenous drugs emits, and what is given for a regional case', () => {
    expectFigures(
      perYear.co2eKg.intravenous,
      (30 + 50 * 2) * published.intravenousKgCo2ePerH + (10 + 80) * 0.5
    );
    expectFigures(
      of(changing, { regional: { ...pricedTechniques.regional, kgCo2ePerCase: null } }).perYear.co2eKg
        .intravenous,
      (30 + 50 * 2) * published.intravenousKgCo2ePerH
    );
  });

  test('keep their nitrous oxide where they are intravenous', () => {
    expectFigures(
      perYear.nitrousOxideKg,
      (160 * volatile.nitrousOxideL + 30 * intravenous.nitrousOxideL) * nitrousOxideKgPerL
    );
  });

  test('save and avoid what today has beyond that', () => {
    const { yearlySaving, co2eAvoidedKg } = of().againstBaseline;
    expectFigures(
      [yearlySaving, co2eAvoidedKg],
      [
        Number(onToday.perYear.cost.total) - Number(perYear.cost.total),
        onToday.perYear.co2eKg.total - perYear.co2eKg.total
      ]
    );
  });

  test('need no investment', () => {
    expectFigures(of().againstBaseline.investment, 0);
  });

  test('are counted where the vapour goes as if all followed', () => {
    expectFigures(of().vapourOnOwnPlan.takenUpMl, 200 * 0.6 * volatile.takenUpMl);
  });
});

test('a group that becomes intravenous altogether is told of by such a case', () => {
  const all = { ...changing, intravenousPercentByCase: { hernia: 100 }, regionalPercentByCase: {} };
  const [one] = of(all).cases;
  expect([one?.technique, one?.agent]).toEqual(['intravenous', null]);
  expectFigures(
    [one?.oxygenL, one?.liquidMl, one?.cost],
    [
      as('intravenous').oxygenL,
      0,
      (as('intravenous').oxygenL / 1000) * 0.9 +
        (as('intravenous').airL / 1000) * 0.05 +
        as('intravenous').nitrousOxideL * nitrousOxideKgPerL * 4 +
        as('intravenous').absorbentKg * 9 +
        ((8 * 78) / 1000 / 0.6) * 6 +
        3 +
        12.5 +
        0.8 * 20
    ]
  );
});

test('a group of which a part changes is told of by a case that keeps its technique', () => {
  const [one] = of().cases;
  expect([one?.technique, one?.agent]).toEqual(['volatile', 'sevoflurane']);
});

test('the plan and the machine of the scenario hold for cases by every technique', () => {
  const both: Scenario = {
    ...changing,
    ...bringing('closed', 'low'),
    adoptionPercent: 100,
    regionalPercentByCase: {}
  };
  const [volatile, intravenous] = [as('volatile', low, closedMachine), as('intravenous', low, closedMachine)];
  const neckCase = oneCase(wholeWorkbook(), { row: neck, plan: low, machine: closedMachine });
  expectFigures(
    of(both).perYear.oxygenM3 * 1000,
    140 * volatile.oxygenL + 60 * intravenous.oxygenL + 50 * neckCase.oxygenL
  );
});

test('with the shares empty or 0 every figure is that of today, to the last digit', () => {
  const none = { ...changing, intravenousPercentByCase: { hernia: 0 }, regionalPercentByCase: {} };
  expect(of(none).perYear).toEqual(of(today).perYear);
});

test('the technique is a lever of its own, and its part with the others makes the whole', () => {
  const both: Scenario = { ...changing, ...bringing('closed', 'low'), regionalPercentByCase: {} };
  const found = of(both);
  expect(found.attribution?.map(({ lever }) => lever)).toEqual(['technique', 'flow', 'machine']);
  expectFigures(
    found.attribution?.reduce((sum, part) => sum + Number(part.yearlySaving), 0),
    Number(found.againstBaseline.yearlySaving)
  );
  // Alone it is the lever that is left of a scenario that changes nothing else.
  expectFigures(
    of().attribution?.map(({ lever, co2eAvoidedKg }) => [lever, co2eAvoidedKg]),
    [['technique', of().againstBaseline.co2eAvoidedKg]]
  );
});

test('the twin without the machine keeps the technique', () => {
  const both: Scenario = { ...changing, ...bringing('closed', 'low'), regionalPercentByCase: {} };
  const twin: Scenario = { ...both, machinesStay: true };
  expectFigures(of(both).withoutMachine?.co2eAvoidedKg, of(twin).againstBaseline.co2eAvoidedKg);
});

test('monitoring asks for processed EEG where cases with a blocker become intravenous', () => {
  const only = {
    caseMix: [hernia, hip],
    site: { ...wholeWorkbook().site, monitoringStandard: 'association-of-anaesthetists' }
  } as const;
  const asks = (scenario: Scenario): boolean =>
    of(scenario, only).monitoring.some(({ item, applies }) => item === 'processed-eeg' && applies === 'yes');
  expect([asks(today), asks(changing)]).toEqual([false, true]);
});

describe('said to the reader', () => {
  const said = (workbook: Workbook): string => warningsOf(workbook).join('\n');
  test('that drugs without a price look free', () => {
    const unpriced = wholeWorkbook({ scenarios: [today, changing] });
    expect(said(unpriced)).toContain('makes cases intravenous, and intravenous anaesthesia has no price yet');
    expect(said(unpriced)).toContain('makes cases regional, and regional anaesthesia has no price yet');
    expect(said(workbookWith())).not.toContain('no price yet');
  });
  test('that emissions of regional anaesthesia are left out where none are given', () => {
    const regional = { ...pricedTechniques.regional, kgCo2ePerCase: null };
    expect(said(workbookWith(changing, { regional }))).toContain('left out of the emissions');
    expect(said(workbookWith())).not.toContain('makes cases regional');
  });
  test('that nitrous oxide is given on', () => {
    expect(said(workbookWith())).toContain(
      '“Hernia repair” that become intravenous under “Another technique” are still given'
    );
    const caseMix = [{ ...hernia, nitrousOxidePercent: 0 }, neck, hip];
    expect(said(workbookWith(changing, { caseMix }))).not.toContain('still given');
  });
});

describe('refused', () => {
  const issuesOf = (scenario: Scenario): readonly string[] => {
    const read = parseWorkbook(JSON.parse(JSON.stringify(workbookWith(scenario))) as unknown);
    return 'issues' in read ? read.issues.map(({ path, sentence }) => `${path}: ${sentence}`) : [];
  };
  test('more than all cases, a technique that is there already, a group that is not, and today itself', () => {
    const cases: readonly [Scenario, string][] = [
      [
        { ...changing, intravenousPercentByCase: { hernia: 95 } },
        'scenarios.changing.intravenousPercentByCase.hernia: Technique: 105 % of “Hernia repair” would become'
      ],
      [
        { ...changing, intravenousPercentByCase: { neck: 5 } },
        'scenarios.changing.intravenousPercentByCase.neck: Technique: “Neck surgery” is intravenous already'
      ],
      [
        { ...changing, regionalPercentByCase: { knee: 5 } },
        'scenarios.changing.regionalPercentByCase.knee: “knee” is not the id of a case group'
      ]
    ];
    for (const [scenario, sentence] of cases) expect(issuesOf(scenario).join('\n')).toContain(sentence);
    const now = parseWorkbook(
      JSON.parse(
        JSON.stringify(wholeWorkbook({ scenarios: [{ ...today, intravenousPercentByCase: { hernia: 5 } }] }))
      ) as unknown
    );
    expect(JSON.stringify(now)).toContain('stands for today, where each case group is done as Case mix says');
  });
});

test('what propofol emits in its making, by the published figures, is far below what purchases of an hour do', () => {
  // 7.55 mg/kg/h for an hour at 70 kg (Struys et al., Eur J Anaesthesiol): 528.5 mg; 21 kg CO2e a kilogram of active
  // ingredient (Parvatker et al., ACS Sustain Chem Eng 2019;7:6580, from memory): 0.011 kg, where an hour by purchases,
  // syringes and waste among them, has 0.4.
  const row = {
    ...hernia,
    weightKg: 70,
    minutes: 60,
    casesPerYear: 1,
    technique: 'intravenous' as const,
    agent: null,
    targetMac: null
  };
  const workbook = wholeWorkbook({ caseMix: [row] });
  const [only] = estimate(coreInput(workbook)).scenarios;
  const givenG = (only?.perYear.propofolDrawnUpG ?? NaN) - (only?.perYear.propofolWastedG ?? NaN);
  expect(givenG * 1000).toBeCloseTo(528.5, 6);
  expect((givenG / 1000) * 21).toBeCloseTo(0.011, 3);
});
