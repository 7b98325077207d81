import { describe, expect, test } from 'vitest';
import type { CaseUse } from '#lib/calc/case/case-result.ts';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { Range } from '#lib/calc/input.ts';
import { joinSlices, runDraws } from '#lib/calc/uncertainty/run.ts';
import { againstToday, numberAt, standingFromLimit, withNumber } from '#lib/calc/what-if/changed-cell.ts';
import type { DrawRun } from '#lib/calc/what-if/draws.ts';
import { drawnFigures, setUpRun, summaryOf, uncertainInputs } from '#lib/calc/what-if/draws.ts';
import type { Answer, Question } from '#lib/calc/what-if/questions.ts';
import { answerTo, cellsThatTurn, isOwnCell, questionsOf, withAnswer } from '#lib/calc/what-if/questions.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { crossChecks } from '#lib/workbook/cross-checks.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';
import { fieldAt } from '#lib/workbook/field-at.ts';
import { assumedRange, numericCells } from '#lib/workbook/numeric-cells.ts';
import { allowedRange } from '#lib/workbook/range-around.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { checkShape } from '#lib/workbook/workbook.ts';

// The demo's figures are invented: here they only give the machinery something to turn; no check rests on them.
const workbook = departmentWorkbook();
const input = coreInput(workbook);

const rangeOf = (path: string): Range | null => {
  const field = fieldAt(path.replace('.any.', '.lap-chole.'));
  if (field?.kind !== 'number' && field?.kind !== 'money') return null;
  const { low, high } = allowedRange(field);
  return high === null ? null : { low, high };
};
const asked = (scenarioId: string, from = input): readonly Question[] =>
  questionsOf(from, { scenarioId, memo: new CaseMemo<CaseUse>(), rangeOf }).filter((each) => 'path' in each);
const answers = (scenarioId: string, discounted = false): readonly Answer[] =>
  asked(scenarioId).map((question) =>
    answerTo(input, question, { discounted, memo: new CaseMemo<CaseUse>() })
  );

describe('a changed cell', () => {
  test('keeps its kind: money stays decimal text, a number stays a number', () => {
    expect(withNumber(input, 'agents.sevoflurane.bottlePrice', 1e-7).agents[0]?.bottlePrice).toBe(
      '0.0000001'
    );
    expect(withNumber(input, 'caseMix.breast.minutes', 90.5).caseMix[7]?.minutes).toBe(90.5);
    expect(numberAt(input, 'agents.sevoflurane.bottlePrice')).toBe(118);
    expect(numberAt(input, 'caseMix.breast.name')).toBeNull();
    expect(numberAt(input, 'caseMix.breast.measuredMlPerCase')).toBeNull();
  });

  test('stands at the limit as the year table says, at a year end and between two, while the sum only rises', () => {
    const figures = againstToday(input, 'closed', new CaseMemo<CaseUse>());
    const [at4, at5] = [4, 5].map((year) =>
      Number(estimate(input).scenarios[3]?.againstBaseline.years[year]?.cumulative)
    ) as [number, number];
    const at = (paybackLimitYears: number) =>
      standingFromLimit(figures, { paybackLimitYears, discounted: false });
    expect(at(4)).toBeCloseTo(at4, 6);
    expect(at(4.25)).toBeCloseTo(at4 + 0.25 * (at5 - at4), 6);
  });
});

describe('questions', () => {
  test('are not asked where they do not arise, and say why', () => {
    const habit = questionsOf(input, { scenarioId: 'habit', memo: new CaseMemo<CaseUse>(), rangeOf });
    expect(habit.flatMap((each) => ('sentence' in each ? each.subject : []))).toEqual(['price']);
    const empty = { ...input, caseMix: [] };
    const subjects = questionsOf(empty, {
      scenarioId: 'closed',
      memo: new CaseMemo<CaseUse>(),
      rangeOf
    }).flatMap((each) => ('sentence' in each ? each.subject : []));
    expect(subjects).toEqual(['cases', 'agent-price']);
  });

  test.each([false, true])(
    'every answer that is found pays by the limit, and just so (discounted: %s)',
    (discounted) => {
      const found = ['habit', 'circle', 'closed'].flatMap((id) => answers(id, discounted));
      expect(found.filter((answer) => answer.kind === 'found').length).toBeGreaterThan(5);
      for (const answer of found) {
        if (answer.kind !== 'found') continue;
        const { question, value, pays } = answer;
        const standing = (at: number): number => {
          const as = { scenario: 'taken-over', part: 'taken-over-part' };
          const { document, scenarioId } = withAnswer(input, question, { value: at, as });
          const paybackLimitYears = document.accounting.paybackLimitYears;
          return standingFromLimit(againstToday(document, scenarioId, new CaseMemo<CaseUse>()), {
            paybackLimitYears,
            discounted
          });
        };
        expect(value).toBeGreaterThanOrEqual(question.low);
        expect(value).toBeLessThanOrEqual(question.high);
        expect(standing(value)).toBeGreaterThanOrEqual(0);
        const smallStep = { price: 1, flow: 0.01, adoption: 0.1, cases: 2, 'agent-price': 0.1 }[
          question.subject
        ];
        expect(standing(value + (pays === 'above' ? -smallStep : smallStep))).toBeLessThan(0);
      }
    }
  );

  test('find no value at which a scenario that loses money pays, whatever it avoids in between', () => {
    const today = input.scenarios.find(({ baseline }) => baseline) as (typeof input.scenarios)[number];
    const losing = {
      ...today,
      id: 'losing',
      baseline: false,
      yearlyExtraCost: '9764',
      avoidedPurchases: [{ year: 2, units: 1, unitPrice: '35000' }]
    };
    const twin = { ...today, id: 'twin', baseline: false };
    const from = { ...input, scenarios: [...input.scenarios, losing, twin] };
    const kinds = (id: string) =>
      asked(id, from)
        .filter(({ subject }) => subject === 'adoption')
        .map(
          (question) => answerTo(from, question, { discounted: false, memo: new CaseMemo<CaseUse>() }).kind
        );
    // Ahead at the limit of 3 years, but not to the end.
    const early = { ...from, accounting: { ...from.accounting, paybackLimitYears: 3 } };
    expect(
      standingFromLimit(againstToday(early, 'losing', new CaseMemo<CaseUse>()), {
        paybackLimitYears: 3,
        discounted: false
      })
    ).toBeLessThan(0);
    expect(kinds('losing')).toEqual(['never']);
    expect(kinds('twin')).toEqual(['nothing']);
  });

  test('a range in which nothing pays, or everything does, is said to be such', () => {
    const question = asked('closed').find(({ subject }) => subject === 'price') as Question;
    const kindIn = (range: Range) =>
      answerTo(input, { ...question, ...range }, { discounted: false, memo: new CaseMemo<CaseUse>() }).kind;
    expect(kindIn({ low: 1e6, high: 2e6 })).toBe('never');
    expect(kindIn({ low: 0, high: 1 })).toBe('always');
  });
});

describe('an answer taken over', () => {
  const ranged: Workbook = {
    ...workbook,
    ranges: {
      ...workbook.ranges,
      'caseMix.breast.casesPerYear': { low: 240, high: 300 },
      'machines.m-closed.servicePerUnitPerYear': { low: 1500, high: 2000 }
    }
  };

  const scenarioIds = ['habit', 'circle', 'closed'];
  test.each(scenarioIds.flatMap((id) => asked(id)))(
    '$scenarioId, $subject: a sound workbook in which the payback is the limit',
    (question) => {
      const answer = answerTo(input, question, { discounted: false, memo: new CaseMemo<CaseUse>() });
      const as = {
        scenario: 'changed',
        part: 'copy',
        scenarioName: 'A scenario, changed',
        partName: 'Copy'
      };
      const takenOver = (value: number) => withAnswer(ranged, question, { value, as });
      const yearsAt = (value: number): number => {
        const { document, scenarioId } = takenOver(value);
        const { scenarios } = estimate(coreInput(document));
        const years = scenarios.find(({ id }) => id === scenarioId)?.againstBaseline.simplePaybackYears;
        return years ?? Infinity;
      };
      if (answer.kind !== 'found') {
        const within = [question.low, question.high].map((end) => yearsAt(end) <= 5);
        expect(within).toEqual(answer.kind === 'always' ? [true, true] : [false, false]);
        return;
      }
      const { document, scenarioId } = takenOver(answer.value);
      expect(checkShape(document)).toHaveProperty('workbook');
      expect(crossChecks(document)).toEqual([]);
      expect(document.scenarios).toHaveLength(isOwnCell(question) ? 5 : 4);
      const years = yearsAt(answer.value);
      expect(years).toBeLessThanOrEqual(5);
      expect(years).toBeCloseTo(answer.paybackYears as number, 9);
      // One step of what is shown further on, two where rows are rounded as well, and it is past the limit.
      const step = { price: 0.01, flow: 0.001, adoption: 0.01, cases: 2, 'agent-price': 0.01 }[
        question.subject
      ];
      expect(yearsAt(answer.value + (answer.pays === 'above' ? -step : step))).toBeGreaterThan(5);
      // What was there stays what it was: only shared cells may move the other scenarios.
      if (isOwnCell(question))
        expect(estimate(coreInput(document)).scenarios.filter(({ id }) => id !== scenarioId)).toEqual(
          estimate(coreInput(ranged)).scenarios
        );
    }
  );

  test('ranges go with the copy, and hold the value that was put in', () => {
    const price = asked('closed').find(({ subject }) => subject === 'price') as Question;
    const { document } = withAnswer(ranged, price, { value: 20_000, as: { scenario: 's', part: 'm' } });
    expect(document.ranges['machines.m.servicePerUnitPerYear']).toEqual({ low: 1500, high: 2000 });
    expect(document.ranges['machines.m.unitPrice']).toEqual({ low: 20_000, high: 36_000 });
    expect(document.ranges['machines.m-closed.unitPrice']).toEqual({ low: 26_000, high: 36_000 });
    expect(document.ranges['scenarios.s.adoptionPercent']).toEqual({ low: 60, high: 97 });
  });

  test('a plan that rows name for themselves is followed in its copy', () => {
    const own = {
      ...input,
      scenarios: input.scenarios.map((each) => ({
        ...each,
        flowPlanByCase: { breast: Object.values(each.plans)[0] ?? '' }
      }))
    };
    const flow = asked('closed', own).find(({ subject }) => subject === 'flow') as Question;
    const { document } = withAnswer(own, flow, { value: 0.4, as: { scenario: 's', part: 'p' } });
    expect(document.scenarios.find(({ id }) => id === 's')?.flowPlanByCase).toEqual({ breast: 'p' });
  });
});

describe('cells that turn the answer', () => {
  const cells = numericCells(workbook)
    .filter(({ path }) => /^(agents|scenarios|machines)\./.test(path))
    .map((cell) => ({
      path: cell.path,
      now: cell.value,
      ...(workbook.ranges[cell.path] ?? assumedRange(cell))
    }));

  test('stand at the limit where they turn, nearest first', () => {
    const turning = cellsThatTurn(input, cells, {
      scenarioId: 'closed',
      discounted: false,
      memo: new CaseMemo<CaseUse>()
    });
    expect(turning.length).toBeGreaterThan(0);
    expect(turning.map(({ shareOfWay }) => shareOfWay)).toEqual(
      turning.map(({ shareOfWay }) => shareOfWay).toSorted((a, b) => a - b)
    );
    const standing = (path: string, value: number) =>
      standingFromLimit(againstToday(withNumber(input, path, value), 'closed', new CaseMemo<CaseUse>()), {
        paybackLimitYears: input.accounting.paybackLimitYears,
        discounted: false
      });
    for (const { path, now, low, high, turnsAt } of turning) {
      expect(turnsAt).toBeGreaterThanOrEqual(low);
      expect(turnsAt).toBeLessThanOrEqual(high);
      const past = turnsAt + (turnsAt - now) * 1e-3;
      expect(standing(path, past) >= 0).not.toBe(standing(path, now) >= 0);
    }
  });

  test('are only those that concern the scenario or today, and end where another cell forbids', () => {
    const seen: number[] = [];
    cellsThatTurn(
      input,
      [
        { path: 'machines.m-circle.unitPrice', now: 21_000, low: 0, high: 1e6 },
        { path: 'caseMix.breast.nitrousOxidePercent', now: 0, low: 0, high: 79 }
      ],
      {
        scenarioId: 'closed',
        discounted: false,
        memo: new CaseMemo<CaseUse>(),
        onProgress: (_, of) => seen.push(of)
      }
    );
    expect(seen).toEqual([1]);
  });
});

describe('an uncertainty run', () => {
  const draws = 40;
  const sampled = { ...input, sampling: { ...input.sampling, draws } };
  const runOf = (run: DrawRun, slices: readonly (readonly [number, number])[]) =>
    joinSlices(
      slices.map(([from, to]) =>
        runDraws({ model: run.model, draws: run.draws, figureCount: run.figureCount, from, to })
      )
    );

  test('gives the same figures however it is cut, and in whatever order', () => {
    const whole = setUpRun(sampled, new Set());
    const all = runOf(whole, [[0, draws]]);
    const cut = runOf(setUpRun(sampled, new Set()), [
      [30, 40],
      [0, 17],
      [17, 30]
    ]);
    expect(cut).toEqual(all);
    expect(summaryOf(sampled, whole, cut)).toEqual(summaryOf(sampled, whole, all));
  });

  test('without width gives the plain answer in every draw', () => {
    const ranges = Object.fromEntries(
      Object.keys(input.ranges).map((path) => {
        const value = numberAt(input, path) as number;
        return [path, { low: value, high: value }];
      })
    );
    const still = {
      ...sampled,
      ranges,
      sampling: { ...sampled.sampling, draws: 5, overBodyModels: false, overModelError: false }
    };
    const run = setUpRun(still, new Set());
    const summary = summaryOf(still, run, runOf(run, [[0, 5]]));
    const plain = estimate(input).scenarios.filter(({ id }) => id !== 'today');
    summary.scenarios.forEach(({ bands, cumulative, swings }, index) => {
      const against = plain[index]?.againstBaseline;
      for (const end of ['low', 'middle', 'high'] as const) {
        expect(bands.yearlySaving[end].value).toBe(Number(against?.yearlySaving));
        expect(bands.co2eAvoidedKg[end].value).toBe(against?.co2eAvoidedKg);
        expect(bands.npv[end].value).toBe(Number(against?.npv));
        expect(bands.paybackYears[end].value).toBe(against?.simplePaybackYears ?? Infinity);
        expect(cumulative[end]).toEqual(against?.years.map((year) => Number(year.cumulative)));
      }
      expect(swings).toEqual([]);
    });
  });

  test('draws one path after the other, whatever the order in which ranges were given', () => {
    const turned = { ...sampled, ranges: Object.fromEntries(Object.entries(sampled.ranges).reverse()) };
    expect(uncertainInputs(turned)).toEqual(uncertainInputs(sampled));
    expect(uncertainInputs(sampled)[0]).toMatchObject({ choices: 3, mode: 0 });
  });

  test('ties minutes of case groups together only where asked to', () => {
    const tied = uncertainInputs({ ...sampled, sampling: { ...sampled.sampling, minutesTogether: true } });
    expect(tied.filter((each) => 'together' in each).map(({ path }) => path)).toEqual([
      'caseMix.lap-chole.minutes',
      'caseMix.lap-colon.minutes'
    ]);
    expect(uncertainInputs(sampled).some((each) => 'together' in each)).toBe(false);
  });

  test('rounds cells of whole numbers, and leaves out draws that make no sense, counted', () => {
    const ranges = {
      'caseMix.breast.nitrousOxidePercent': { low: 0, high: 79 },
      'theatreGroups.main.theatres': { low: 2, high: 6 }
    };
    const odd = { ...sampled, ranges };
    const run = setUpRun(odd, new Set(['theatreGroups.main.theatres']));
    const figures = runOf(run, [[0, draws]]);
    const { failed, scenarios } = summaryOf(odd, run, figures);
    expect(failed).toBe(figures[0]?.filter(Number.isNaN).length);
    const at = run.scenarioIds.indexOf('closed') * run.figuresPerScenario + drawnFigures.length;
    const firstYear = (figures[at] as Float64Array).filter((value) => !Number.isNaN(value));
    // The first year pays for 2, 3, 4, 5 or 6 machines and nothing else varies in it but monitors built into them.
    expect(new Set(firstYear).size).toBeLessThanOrEqual(5);
    expect(scenarios).toHaveLength(3);
  });
});
