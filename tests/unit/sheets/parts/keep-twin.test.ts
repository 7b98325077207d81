import { expect, it } from 'vitest';
import { bringing } from '../../../fixtures/one-group.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';
import { limits, type Workbook } from '#lib/workbook/workbook.ts';
import { keepTwin } from '#lib/sheets/parts/keep-twin.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';

/** A share of its own without the machine, machines that come over two years and machines traded in: all that the twin leaves off. */
const demo: Workbook = {
  ...departmentWorkbook(),
  scenarios: departmentWorkbook().scenarios.map((scenario) =>
    scenario.id === 'closed'
      ? {
          ...scenario,
          adoptionWithoutMachinePercent: 70,
          ...bringing('m-closed', 'closed', { byYear: [2, 2] })
        }
      : scenario
  )
};

const keptOf = (workbook: Workbook, id: string) => {
  const kept = keepTwin(workbook, id);
  if ('sentence' in kept) throw new Error(kept.sentence);
  return kept;
};

it('makes a scenario whose figures are those of the twin', () => {
  const twin = estimate(coreInput(demo)).scenarios.find(({ id }) => id === 'closed')?.withoutMachine;
  const { workbook, id } = keptOf(demo, 'closed');
  const kept = estimate(coreInput(workbook)).scenarios.find((scenario) => scenario.id === id);
  expect(twin).toBeTruthy();
  expect(kept?.againstBaseline).toEqual(twin);
});

it('puts it last, so that each scenario keeps its colour, marked in its name, and leaves all else as it was', () => {
  const { workbook, id, name } = keptOf(demo, 'circle');
  expect(name).toBe('Circle system B, minimal flow without the machine (made by the tool)');
  expect(workbook.scenarios.map((scenario) => scenario.id)).toEqual([
    'today',
    'habit',
    'circle',
    'closed',
    id
  ]);
  expect({ ...workbook, scenarios: workbook.scenarios.filter((scenario) => scenario.id !== id) }).toEqual(
    demo
  );
});

it('keeps the mark on a name as long as names may be', () => {
  const long = {
    ...demo,
    scenarios: demo.scenarios.map((scenario) =>
      scenario.id === 'closed' ? { ...scenario, name: 'A'.repeat(200) } : scenario
    )
  };
  const { name } = keptOf(long, 'closed');
  expect(name).toHaveLength(200);
  expect(name).toMatch(/A without the machine \(made by the tool\)$/);
});

it('gives a workbook that opens again', () => {
  const { workbook } = keptOf(demo, 'closed');
  expect(parseWorkbook(JSON.parse(JSON.stringify(workbook)))).toHaveProperty('workbook', workbook);
});

it('has an id of its own when made twice', () => {
  const once = keptOf(demo, 'closed');
  expect(keptOf(once.workbook, 'closed').id).not.toBe(once.id);
});

it('says why there is no twin, or no room for it', () => {
  expect(keepTwin(demo, 'habit')).toEqual({
    sentence: 'This scenario changes no machine, so it has no twin without one.'
  });
  const [first] = demo.scenarios;
  const full = {
    ...demo,
    scenarios: [
      ...demo.scenarios,
      ...Array.from({ length: limits.scenarios - demo.scenarios.length }, (_, at) => ({
        ...first!,
        id: `more-${at}`,
        baseline: false
      }))
    ]
  };
  expect(keepTwin(full, 'closed')).toHaveProperty('sentence', expect.stringMatching(/holds at most/));
});
