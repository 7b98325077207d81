import { expect, test } from 'vitest';
import { ledgerKinds } from '#lib/calc/line-names.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { AgentSupply, Site } from '#lib/calc/input.ts';
import { activityInWords, baseYearInWords, lineKnownInWords } from '#lib/sheets/parts/activity-words.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { wholeWorkbook } from '../../../fixtures/whole-workbook.ts';

const base = wholeWorkbook();
const inputOf = (site: Partial<Site>, supply: Partial<AgentSupply> = {}) =>
  coreInput(
    wholeWorkbook({
      site: { ...base.site, ...site },
      agents: base.agents.map((each) => ({ ...each, ...supply }))
    })
  );
const given = {
  baseYear: 2024,
  casesKnownBy: 'records',
  durationsKnownBy: 'estimated',
  bottlesKnownBy: 'measured',
  nitrousOxideKnownBy: null,
  electricityKnownBy: 'assumed'
} as const;

test('the base year is told, or that it is not given', () => {
  expect(baseYearInWords(given)).toBe('Today stands for the base year 2024.');
  expect(baseYearInWords({ baseYear: null })).toMatch(/is not given/);
});

test('how each activity is known is told, and what is not given as not given', () => {
  expect(activityInWords(inputOf(given).site)).toBe(
    'How the activity is known: cases from records, durations estimated, bottles bought measured or invoiced, nitrous oxide bought not given, electricity assumed.'
  );
  expect(activityInWords(base.site)).toBe('How the activity is known is not given.');
});

test('a line is known as well as what it is counted from', () => {
  const knownOf = (kind: (typeof ledgerKinds)[number], supply: Partial<AgentSupply> = {}) =>
    lineKnownInWords(inputOf(given, supply), { kind, subject: 'sevoflurane' });
  expect(knownOf('regional')).toBe('cases from records');
  expect(knownOf('agents')).toBe('cases from records, durations estimated');
  expect(knownOf('agents', { scaleToPurchases: true })).toBe(
    'cases from records, durations estimated, bottles bought measured or invoiced'
  );
  expect(knownOf('nitrousOxideLost')).toMatch(/nitrous oxide bought not given$/);
  expect(knownOf('electricity')).toMatch(/electricity assumed$/);
});

test('every line says how its activity is known, or that it is not given', () => {
  for (const kind of ledgerKinds) {
    const words = lineKnownInWords(inputOf({}), { kind, subject: null });
    expect(words, kind).toBe(kind === 'makingMachines' ? 'machines as entered' : 'not given');
  }
});

test('no figure rests on it', () => {
  expect(JSON.stringify(estimate(inputOf(given)))).toBe(JSON.stringify(estimate(inputOf({}))));
});
