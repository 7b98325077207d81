/** What a case log's flow and millilitres say of today: the plans, the factor k and the year are added up by hand here. */
import { describe, expect, test } from 'vitest';
import type { Phase } from '#lib/calc/input.ts';
import type { CaseGroup, MeanAndSpread } from '#lib/files/case-log/group-cases.ts';
import type { AskedOfLog, LogAgainstToday } from '#lib/state/log-against-today.ts';
import { logAgainstToday } from '#lib/state/log-against-today.ts';
import { phasesAtMeanFlow } from '#lib/state/log-flow.ts';
import { workbookTaking } from '#lib/state/case-log-files.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import {
  expectFigures,
  hernia,
  low,
  lowFlow,
  oldMachine,
  oneCase,
  scenarioOf,
  today,
  usual,
  wholeWorkbook
} from '../../fixtures/whole-workbook.ts';

const phase = (minutes: number | null, flowLPerMin: number): Phase => ({
  ...(usual.phases[0] as Phase),
  minutes,
  flowLPerMin
});
const flowsOf = (phases: readonly Phase[]): readonly number[] => phases.map(({ flowLPerMin }) => flowLPerMin);
const mean = (value: number): MeanAndSpread => ({
  mean: value,
  deviation: null,
  low: null,
  high: null,
  cases: 9
});

describe('phases at a mean flow', () => {
  const phases = [phase(10, 6), phase(null, 2)];

  test('the open phase takes what the phases before it leave', () => {
    // 1.5 · 100 = 6 · 10 + 1 · 90
    expect(flowsOf(phasesAtMeanFlow(phases, { meanLPerMin: 1.5, caseMinutes: 100 }))).toEqual([6, 1]);
  });

  test('a flow is rounded to a tenth of a litre, so that groups of about one flow share a plan', () => {
    expect(flowsOf(phasesAtMeanFlow(phases, { meanLPerMin: 1.53, caseMinutes: 100 }))).toEqual([6, 1]);
  });

  test('where the phases before it take more than the mean, all change by one factor', () => {
    // 0.5 · 100 = 50 of (6 · 10 + 2 · 90) = 240
    expect(flowsOf(phasesAtMeanFlow(phases, { meanLPerMin: 0.5, caseMinutes: 100 }))).toEqual([1.3, 0.4]);
  });

  test('a case that ends before the open phase is told by the phases it has', () => {
    expect(flowsOf(phasesAtMeanFlow(phases, { meanLPerMin: 3, caseMinutes: 5 }))).toEqual([3, 1]);
  });

  test('a closing phase after the open one keeps its flow', () => {
    const closing = [phase(10, 6), phase(null, 2), phase(10, 10)];
    // 2.5 · 100 = 6 · 10 + F · 80 + 10 · 10
    expect(flowsOf(phasesAtMeanFlow(closing, { meanLPerMin: 2.5, caseMinutes: 100 }))).toEqual([6, 1.1, 10]);
  });
});

const group = (changes: Partial<CaseGroup>): CaseGroup => ({
  name: hernia.name,
  technique: 'volatile',
  agent: 'sevoflurane',
  cases: 9,
  casesPerYear: hernia.casesPerYear,
  minutes: mean(hernia.minutes),
  ageYears: null,
  weightKg: null,
  meanFlowLPerMin: null,
  liquidMl: null,
  ...changes
});
const workbook = { ...wholeWorkbook(), referenceSet: '2026-2' };
const source = { text: 'A log', date: '2026-11-28', grade: 'measured' } as const;

/** The log's millilitres are in the rows of the preview, as its table brought them. */
async function told(groupOf: CaseGroup, before: Workbook = workbook): Promise<LogAgainstToday> {
  const measured = groupOf.liquidMl?.mean ?? null;
  const preview: AskedOfLog['preview'] = {
    workbook: {
      ...before,
      caseMix: before.caseMix.map((row) =>
        row.id === hernia.id && measured !== null ? { ...row, measuredMlPerCase: measured } : row
      ),
      notes: measured === null ? {} : { [`caseMix.${hernia.id}.measuredMlPerCase`]: source }
    },
    keyOfLine: new Map([[1, hernia.id]])
  };
  const asked = { before, groups: [groupOf], preview, scenarioId: lowFlow.id, source };
  const found = await logAgainstToday(asked, { goesOn: async () => true, solve: async () => undefined });
  if (found === null) throw new Error('It was given up.');
  return found;
}
const take = async (groupOf: CaseGroup, flow: boolean, millilitres: boolean): Promise<Workbook> => {
  const taken = workbookTaking(await told(groupOf), { flow, millilitres });
  if (taken === null) throw new Error('Nothing to take.');
  return taken;
};
const planToday = (of: Workbook) => {
  const { flowPlanByCase } = of.scenarios.find(({ baseline }) => baseline)!;
  return of.flowPlans.find(({ id }) => id === flowPlanByCase[hernia.id]);
};

describe('the log’s mean flow', () => {
  const slow = group({ meanFlowLPerMin: mean(1.5) });
  const openLPerMin = Math.round(((1.5 * hernia.minutes - 60) / (hernia.minutes - 10)) * 10) / 10;

  test('is proposed as a plan of today with that flow, beside the plan’s own', async () => {
    const { flows } = await told(slow);
    expectFigures(flows[0]?.planLPerMin, (60 + 2 * (hernia.minutes - 10)) / hernia.minutes);
    expect(flowsOf(flows[0]?.phases ?? [])).toEqual([6, openLPerMin]);
  });

  test('taken over, the group’s cases of today follow it, and the flow says where it is from', async () => {
    const taken = await take(slow, true, true);
    const plan = planToday(taken);
    expect(flowsOf(plan?.phases ?? [])).toEqual([6, openLPerMin]);
    expect(taken.notes?.[`flowPlans.${plan?.id}.phases.1.flowLPerMin`]).toEqual(source);
    const one = oneCase(taken, { row: hernia, plan: plan!, machine: oldMachine });
    expectFigures(scenarioOf(taken, today).cases[0]?.liquidMl, one.liquidMl);
    expect(parseWorkbook(taken).kind).toBe('workbook');
  });

  test('refused, nothing but the rows comes', async () => {
    expect(await take(slow, false, true)).toMatchObject({
      flowPlans: workbook.flowPlans,
      scenarios: workbook.scenarios
    });
  });

  test('that the plan has already needs no plan of its own', async () => {
    const alike = group({ meanFlowLPerMin: mean((60 + 2 * (hernia.minutes - 10)) / hernia.minutes) });
    const { flows, years } = await told(alike);
    expect(flows[0]).toMatchObject({ phases: null, sentence: 'The plan has the log’s flow already.' });
    expect(years.map(({ taken }) => taken)).toEqual(['rows']);
  });

  test('is put into no plan whose flow follows the patient', async () => {
    const asNeeded = {
      ...workbook,
      flowPlans: [{ ...usual, phases: usual.phases.map((each) => ({ ...each, flowAsNeeded: true })) }, low]
    };
    const { flows } = await told(slow, asNeeded);
    expect(flows[0]?.phases).toBeNull();
    expect(flows[0]?.sentence).toMatch(/follows what the patient takes/);
  });

  test('finds no room in a full list of plans, and that is told', async () => {
    const full = {
      ...workbook,
      flowPlans: Array.from({ length: 50 }, (_, at) =>
        at < 2 ? [usual, low][at]! : { ...low, id: `p-${at}`, phases: [phase(null, 5 + at / 10)] }
      )
    };
    const { noRoom, flows } = await told(slow, full);
    expect(noRoom).toEqual(flows);
  });
});

describe('the log’s millilitres', () => {
  const model = oneCase(workbook, { row: hernia, plan: usual, machine: oldMachine });
  const heldMl = model.takenUpMl + model.leftMl;
  const measuredMl = heldMl + 1.25 * (model.liquidMl - heldMl);
  const measured = group({ liquidMl: mean(measuredMl) });

  test('give k, the spill against the model’s on today’s plan', async () => {
    const [one] = (await told(measured)).measured;
    expectFigures(one?.modelMl, model.liquidMl);
    expectFigures(one?.factor, 1.25);
    expectFigures(one?.working('factor').value, 1.25);
    expect(one?.warnings).toEqual([]);
  });

  test('give k of the log’s own plan where its flow is taken as well', async () => {
    const both = { ...measured, meanFlowLPerMin: mean(1.5) };
    const [one] = (await told(both)).measuredOnLogPlan;
    const plan = planToday(await take(both, true, true));
    const ofPlan = oneCase(workbook, { row: hernia, plan: plan!, machine: oldMachine });
    expectFigures(one?.modelMl, ofPlan.liquidMl);
    expectFigures(
      one?.factor,
      (measuredMl - ofPlan.takenUpMl - ofPlan.leftMl) / (ofPlan.liquidMl - ofPlan.takenUpMl - ofPlan.leftMl)
    );
  });

  test('far from the model are remarked on', async () => {
    const far = group({ liquidMl: mean(heldMl + 3 * (model.liquidMl - heldMl)) });
    expect((await told(far)).measured[0]?.warnings[0]).toMatch(/3\.0 times as much spills/);
  });

  test('refused, the rows keep what was measured before, with no note of the log', async () => {
    const taken = await take(measured, false, false);
    expect(taken.caseMix[0]?.measuredMlPerCase).toBeNull();
    expect(taken.notes).toEqual({});
  });

  test('the year is told of each: rows alone, with its flow, with its millilitres, with both', async () => {
    const { years } = await told({ ...measured, meanFlowLPerMin: mean(1.5) });
    expect(years.map(({ taken }) => taken)).toEqual(['rows', 'flow', 'millilitres', 'both']);
    for (const { workbook: of, year } of years) {
      const { perYear } = scenarioOf(of, today);
      const path = 'today.perYear.agents.sevoflurane.liquidMl';
      const liquid = year.figures.find((figure) => figure.path === path)?.value;
      expectFigures(liquid, perYear.agents.sevoflurane?.liquidMl ?? NaN);
      expectFigures(year.working(path).value, liquid ?? NaN);
      expectFigures(year.figures.at(-1)?.value, Number(scenarioOf(of, lowFlow).againstBaseline.yearlySaving));
    }
    const liquids = years.map(({ year }) => year.figures[0]?.value);
    expect(new Set(liquids).size).toBe(3);
  });

  test('an import that was left aside is given up', async () => {
    const asked = {
      before: workbook,
      groups: [measured],
      preview: { workbook, keyOfLine: new Map([[1, hernia.id]]) },
      scenarioId: lowFlow.id,
      source
    };
    const steps = { goesOn: async () => false, solve: async () => undefined };
    expect(await logAgainstToday(asked, steps)).toBeNull();
  });
});
