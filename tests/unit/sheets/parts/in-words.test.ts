import { expect, test } from 'vitest';
import type { AgainstBaseline } from '#lib/calc/estimate-types.ts';
import { answerInWords } from '#lib/sheets/payback/break-even-words.ts';
import { outlayName, paybackInWords } from '#lib/sheets/parts/in-words.ts';
import { drawnFigureInWords } from '#lib/sheets/parts/uncertainty-words.ts';

const payback = (simplePaybackYears: number | null, nets: readonly string[], discounted?: boolean) =>
  paybackInWords(
    {
      simplePaybackYears,
      discountedPaybackYears: 7.5,
      years: nets.map((net) => ({ net }))
    } as unknown as AgainstBaseline,
    { locale: 'en-GB', ...(discounted === undefined ? {} : { discounted }) }
  );

test('a payback is in years, at once, not within the appraisal, or there is nothing to pay back', () => {
  expect(payback(5.1362, ['-100', '30'])).toBe('5.1\u00a0years');
  expect(payback(5.1362, ['-100', '30'], true)).toBe('7.5\u00a0years');
  expect(payback(0, ['0', '30'])).toBe('at once');
  expect(payback(null, ['-100', '30'])).toBe('not within the appraisal');
  // Nothing is invested on balance and nothing saved in an average year, and yet there is something to pay back.
  expect(payback(null, ['-100', '100', '-1', '0'])).toBe('not within the appraisal');
  expect(payback(null, ['0', '0.00', '-0'])).toBe('nothing to pay back');
});

test('a payback of 0 in a draw is said as at once', () => {
  const look = { currency: 'EUR', locale: 'en-GB', appraisalYears: 10 };
  expect(drawnFigureInWords('paybackYears', 0, look)).toBe('at once');
  expect(drawnFigureInWords('paybackYears', Infinity, look)).toBe('not within 10\u00a0years');
});

test('a question where there is nothing to pay back is answered so', () => {
  const question = {
    subject: 'adoption',
    scenarioId: 'a',
    path: 'p',
    now: 50,
    low: 0,
    high: 100,
    comparedWith: 'today'
  } as const;
  const words = { currency: 'EUR', locale: 'en-GB', limitYears: 5, agent: 'sevoflurane' };
  expect(answerInWords({ kind: 'nothing', question }, words)).toBe(
    'Nothing is invested and nothing saved at any value looked at, 0\u00a0% to 100\u00a0%, so there is nothing to pay back.'
  );
  expect(
    answerInWords({ kind: 'found', question, value: 0.01, pays: 'above', paybackYears: 0 }, words)
  ).toMatch(/ There it pays at once\.$/);
});

test('what is bought is called one thing: due at the start, unless something is bought later', () => {
  const run = (investment: string, ...bought: string[]) => ({
    investment,
    years: bought.map((each) => ({ investment: each })) as unknown as AgainstBaseline['years']
  });
  expect(outlayName([run('100.00', '100', '0'), run('0', '0', '0')])).toBe('Due at the start');
  expect(outlayName([run('100', '100', '0'), run('150', '100', '50')])).toBe('Investment in all');
});
