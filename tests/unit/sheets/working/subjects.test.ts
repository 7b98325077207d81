/** The working names its parts after what they are about. */
import { expect, it } from 'vitest';
import { explainer } from '#lib/calc/estimate/explain.ts';
import { inputsOf } from '#lib/calc/working/working-text.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';
import { subjectsOf } from '#lib/sheets/working/subjects.ts';

const workbook = departmentWorkbook();
const explain = explainer(coreInput(workbook));

function subjects(path: string): readonly string[] {
  const inputs = inputsOf(explain(path)).map(({ input }) => input);
  return subjectsOf(inputs, workbook);
}

it('the year’s emissions of an agent are the agent’s, not those of the first case group', () => {
  expect(subjects('today.perYear.co2eKg.agents')).toEqual(['sevoflurane', 'desflurane']);
});

it('the two parts of a year are told by their cases', () => {
  expect(subjects('closed.perYear.agents.sevoflurane.liquidMl')).toEqual([
    'cases on the scenario’s plan',
    'cases that do today’s plan'
  ]);
});

it('the parts of a sum over case groups are the case groups', () => {
  const named = subjects('today.perYear.agents.sevoflurane.liquidMl');
  expect(named[0]).toBe('Laparoscopic cholecystectomy');
  expect(new Set(named).size).toBe(named.length);
  expect(named).not.toContain('');
});

it('lines that have names of their own get no other', () => {
  expect(new Set(subjects('today.perYear.co2eKg.total'))).toEqual(new Set(['']));
});
