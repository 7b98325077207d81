/** Break-even questions and draws of the step from a scenario's twin. */
import { describe, expect, test } from 'vitest';
import type { CaseUse } from '#lib/calc/case/case-result.ts';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { explainDrawn } from '#lib/calc/what-if/explain-draws.ts';
import { explainer } from '#lib/calc/estimate/explain.ts';
import { explainAnswer, explainTurning } from '#lib/calc/what-if/explain-answers.ts';
import type { EstimateInput, Range } from '#lib/calc/input.ts';
import { joinSlices, runDraws } from '#lib/calc/uncertainty/run.ts';
import { againstTwin, standingFromLimit, withNumber } from '#lib/calc/what-if/changed-cell.ts';
import { drawnFigures, setUpRun, summaryOf } from '#lib/calc/what-if/draws.ts';
import type { Question } from '#lib/calc/what-if/questions.ts';
import { answerTo, cellsThatTurn, questionsOf, withAnswer } from '#lib/calc/what-if/questions.ts';
import { whatIfService } from '#lib/background/what-if-service.ts';
import type { Reply } from '#lib/background/what-if-messages.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';
import { fieldAt } from '#lib/workbook/field-at.ts';
import { allowedRange } from '#lib/workbook/range-around.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

// The demo's figures are invented: here they only give the machinery something to turn.
const workbook: Workbook = {
  ...departmentWorkbook(),
  scenarios: departmentWorkbook().scenarios.map((each) =>
    each.id === 'closed' ? { ...each, adoptionWithoutMachinePercent: 40 } : each
  )
};
const input = coreInput(workbook);
const memo = () => new CaseMemo<CaseUse>();
const rangeOf = (path: string): Range | null => {
  const field = fieldAt(path.replace('.any.', '.lap-chole.'));
  if (field?.kind !== 'number' && field?.kind !== 'money') return null;
  const { low, high } = allowedRange(field);
  return high === null ? null : { low, high };
};
const standing = (of: EstimateInput, scenarioId: string): number =>
  standingFromLimit(againstTwin(of, scenarioId, memo()), {
    paybackLimitYears: of.accounting.paybackLimitYears,
    discounted: false
  });

describe('a question about the step from the twin', () => {
  const asked = (scenarioId: string) =>
    questionsOf(input, { scenarioId, comparedWith: 'twin', memo: memo(), rangeOf });

  test('at which price the machine beats the twin is answered, and just so', () => {
    const question = asked('closed').find(({ subject }) => subject === 'price') as Question;
    const answer = answerTo(input, question, { discounted: false, memo: memo() });
    if (answer.kind !== 'found') throw new Error(answer.kind);
    const at = (value: number): number => {
      const as = { scenario: 'taken-over', part: 'taken-over-part' };
      const { document, scenarioId } = withAnswer(input, question, { value, as });
      return standing(document, scenarioId);
    };
    expect(answer.pays).toBe('below');
    expect(at(answer.value)).toBeGreaterThanOrEqual(0);
    expect(at(answer.value + 1)).toBeLessThan(0);
    expect(answer.paybackYears).toBeCloseTo(input.accounting.paybackLimitYears, 3);
    // The whole pays at a price at which the step from the twin does not.
    const whole = questionsOf(input, { scenarioId: 'closed', memo: memo(), rangeOf }).find(
      ({ subject }) => subject === 'price'
    ) as Question;
    const ofWhole = answerTo(input, whole, { discounted: false, memo: memo() });
    expect(ofWhole.kind === 'found' && ofWhole.value).toBeGreaterThan(answer.value);
    const working = explainAnswer(input, answer, { discounted: false, unit: 'currency' });
    expect(working.value).toBe(answer.value);
  });

  test('is not put to a scenario that stays on today’s machines', () => {
    const unasked = asked('habit');
    expect(unasked).toHaveLength(5);
    for (const each of unasked) expect('sentence' in each && each.sentence).toMatch(/today’s machines/);
  });

  test('turns at a cell by itself where the step does, and shows how', () => {
    const path = 'scenarios.closed.adoptionWithoutMachinePercent';
    const [cell] = cellsThatTurn(input, [{ path, now: 40, low: 0, high: 100 }], {
      scenarioId: 'closed',
      comparedWith: 'twin',
      discounted: false,
      memo: memo()
    });
    if (cell === undefined) throw new Error('The cell does not turn the step: this test builds on the demo.');
    const past = cell.turnsAt + (cell.turnsAt - cell.now) * 1e-3;
    expect(standing(withNumber(input, path, past), 'closed') >= 0).not.toBe(standing(input, 'closed') >= 0);
    const working = explainTurning(input, cell, {
      scenarioId: 'closed',
      comparedWith: 'twin',
      discounted: false,
      unit: '%'
    });
    expect(working.value).toBe(cell.turnsAt);
  });
});

test('what is printed on a bottle or a data sheet is not looked at for turning the answer, unless it has a range', () => {
  const lookedAt = (of: Workbook): number => {
    const replies: Reply[] = [];
    whatIfService()(
      {
        kind: 'questions',
        workbook: { ...of, caseMix: of.caseMix.slice(0, 1) },
        scenarioId: 'closed',
        discounted: false
      },
      (reply) => replies.push(reply)
    );
    const told = replies.findLast(({ kind }) => kind === 'looked-at');
    return told?.kind === 'looked-at' ? told.of : NaN;
  };
  const plainly = lookedAt({ ...workbook, ranges: {} });
  const ranges = {
    'agents.sevoflurane.bottleMl': { low: 240, high: 260 },
    'machines.m-closed.circuitVolumeL': { low: 4, high: 6 },
    'machines.m-closed.sampleMlPerMin': { low: 150, high: 250 },
    'machines.m-closed.minimumFlowLPerMin': { low: 0.2, high: 0.3 }
  };
  // Given a range, each is looked at besides: so without one it was not.
  expect(lookedAt({ ...workbook, ranges })).toBe(plainly + 4);
});

describe('draws', () => {
  const draws = 200;
  const sampled = {
    ...input,
    sampling: { ...input.sampling, draws, overBodyModels: false, overModelError: false }
  };
  const run = setUpRun(sampled, new Set());
  const figures = joinSlices([
    runDraws({ model: run.model, draws: run.draws, figureCount: run.figureCount })
  ]);
  const summary = summaryOf(sampled, run, figures);
  const closed = summary.scenarios.find(({ id }) => id === 'closed');

  test('take the twin and the scenario from the same draw', () => {
    const npv =
      figures[run.scenarioIds.indexOf('closed') * run.figuresPerScenario + drawnFigures.indexOf('npv')];
    // Draw by draw, the estimate of the drawn workbook gives both sides.
    let within = 0;
    const steps = Array.from({ length: draws }, (_, draw) => {
      const values = run.draws.valuesOf(draw);
      const drawn = run.inputs.reduce(
        (document, { path }, place) => withNumber(document, path, values[place] as number),
        sampled
      );
      if (draw >= 8) return null;
      const scenario = estimate(drawn).scenarios.find(({ id }) => id === 'closed');
      expect(npv?.[draw]).toBe(Number(scenario?.againstBaseline.npv));
      return Number(scenario?.machineAdds?.npv);
    });
    const twinAt = run.scenarioIds.length * run.figuresPerScenario + 3 * run.twinsOf.indexOf('closed');
    steps.slice(0, 8).forEach((step, draw) => {
      const twin = figures[twinAt]?.[draw] ?? NaN;
      expect((npv?.[draw] ?? NaN) - twin).toBeCloseTo(step ?? NaN, 4);
    });
    for (const payback of figures[twinAt + 2] ?? [])
      if (payback <= sampled.accounting.paybackLimitYears) within += 1;
    expect(closed?.machineAdds?.withinLimit.probability).toBe(within / draws);
    const sharePositive = (of: (draw: number) => number): number =>
      Array.from({ length: draws }, (_, draw) => of(draw)).filter((worth) => worth > 0).length / draws;
    const [wholeNpv, twinNpv] = [npv as Float64Array, figures[twinAt] as Float64Array];
    const ofWhole = sharePositive((draw) => wholeNpv[draw] as number);
    const ofTwin = sharePositive((draw) => twinNpv[draw] as number);
    const ofStep = sharePositive((draw) => (wholeNpv[draw] as number) - (twinNpv[draw] as number));
    expect(new Set([ofWhole, ofTwin, ofStep]).size).toBeGreaterThan(1);
    expect(closed?.npvAboveZero.probability).toBe(ofWhole);
    expect(closed?.withoutMachine?.npvAboveZero.probability).toBe(ofTwin);
    expect(closed?.machineAdds?.npvAboveZero.probability).toBe(ofStep);
    expect(summary.scenarios.find(({ id }) => id === 'habit')?.machineAdds).toBeNull();
  });

  test('tell what knowing is worth over today, scenarios and twins', () => {
    const { options, best, worthOfAll, inputs } = summary.worthOfKnowing;
    expect(options).toEqual([
      'today',
      'habit',
      'circle',
      'closed',
      'circle:without-machine',
      'closed:without-machine'
    ]);
    expect(options).toContain(best);
    expect(worthOfAll).toBeGreaterThanOrEqual(0);
    expect(inputs.map(({ paths }) => paths)).toEqual(run.inputs.map(({ path }) => [path]));
    for (const { worth } of inputs) {
      expect(worth).toBeGreaterThanOrEqual(0);
      expect(worth).toBeLessThanOrEqual(worthOfAll + 1e-9);
    }
  });

  test('open their working: the step, the twin, and the worth of knowing', () => {
    const explained = {
      input: sampled,
      explain: explainer(sampled),
      summary,
      wholeCells: new Set<string>(),
      unitOf: () => '1',
      nameOf: (paths: readonly string[]) => `the cell ${paths.join(' and ')}`,
      optionName: (id: string) => id.toUpperCase()
    };
    const { worthOfKnowing } = summary;
    expect(explainDrawn(explained, 'worthOfKnowing.worthOfAll').value).toBe(worthOfKnowing.worthOfAll);
    expect(explainDrawn(explained, 'worthOfKnowing.inputs.0.noise').value).toBe(
      worthOfKnowing.inputs[0]?.noise
    );
    // A reader's names stand in the working, no paths and no ids.
    expect(JSON.stringify(explainDrawn(explained, 'worthOfKnowing.inputs.0.worth'))).toContain(
      `What it is worth to know “the cell ${worthOfKnowing.inputs[0]?.paths[0] ?? ''}”`
    );
    expect(JSON.stringify(explainDrawn(explained, 'worthOfKnowing.worthOfAll'))).toContain(
      `“${worthOfKnowing.best.toUpperCase()}”`
    );
    expect(explainDrawn(explained, 'closed.machineAdds.withinLimit').value).toBe(
      100 * (closed?.machineAdds?.withinLimit.probability ?? NaN)
    );
    for (const of of ['', 'withoutMachine.', 'machineAdds.'] as const) {
      const spread =
        of === '' ? closed : closed?.[of === 'withoutMachine.' ? 'withoutMachine' : 'machineAdds'];
      expect(explainDrawn(explained, `closed.${of}npvAboveZero`).value).toBe(
        100 * (spread?.npvAboveZero.probability ?? NaN)
      );
    }
    expect(explainDrawn(explained, 'closed.withoutMachine.npv.low').value).toBe(
      closed?.withoutMachine?.npv.low.value
    );
    expect(() => explainDrawn(explained, 'habit.machineAdds.npv.low')).toThrow('changes the machine');
    expect(() => explainDrawn(explained, 'worthOfKnowing.inputs.99.worth')).toThrow('worthOfAll, or inputs');
  });
});

test('an input that says nothing is worth no more than chance, and one that decides is worth more', async () => {
  const { valueOfInformation } = await import('#lib/calc/uncertainty/value-of-information.ts');
  const { latinShares } = await import('#lib/calc/uncertainty/latin-hypercube.ts');
  const count = 4000;
  const share = (dimension: number) => latinShares({ seed: 11, draws: count, dimension });
  const [deciding, idle] = [share(0), share(1)];
  const { inputs, worthOfAll } = valueOfInformation({
    // One option is 0, the other from −1000 to +1000 with the deciding input: knowing it is worth 250, a quarter of 1000.
    options: [new Float64Array(count), deciding.map((each) => 2000 * each - 1000)],
    inputs: [
      { paths: ['deciding'], values: deciding },
      { paths: ['idle'], values: idle }
    ],
    seed: 11
  });
  const [decides, says] = inputs as [(typeof inputs)[number], (typeof inputs)[number]];
  expect(worthOfAll).toBeCloseTo(250, 0);
  expect(decides.worth).toBeCloseTo(250, 0);
  expect(decides.noise).toBeLessThan(60);
  expect(says.worth).toBeLessThan(60);
});
