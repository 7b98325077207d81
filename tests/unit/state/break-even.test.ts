import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { BreakEvenQuestions } from '#lib/state/break-even.svelte.ts';
import type { Ask, WhatIfPort } from '#lib/background/what-if-messages.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function setting() {
  const ports: (WhatIfPort & { readonly asked: Ask[]; isClosed: boolean })[] = [];
  const questions = new BreakEvenQuestions(() => {
    const port = {
      asked: [] as Ask[],
      isClosed: false,
      post: (ask: Ask) => void port.asked.push(ask),
      onreply: () => undefined,
      onfail: () => undefined,
      close: () => void (port.isClosed = true)
    };
    ports.push(port);
    return port;
  });
  return { questions, ports };
}

const workbook = demoWorkbook();
const answer = { subject: 'price', sentence: 'This scenario buys no machine.' } as const;

test('answers of one scenario never stand under the name of another', async () => {
  const { questions, ports } = setting();
  questions.ask(workbook, { scenarioId: 'closed', discounted: false });
  await vi.advanceTimersByTimeAsync(1000);
  ports[0]?.onreply({ kind: 'answer', answer });
  ports[0]?.onreply({
    kind: 'turning',
    cells: [{ path: 'a', now: 1, turnsAt: 2, shareOfWay: 0.5, low: 0, high: 3 }]
  });
  expect(questions.answers).toHaveLength(1);
  expect(questions.turning).toHaveLength(1);

  questions.ask(workbook, { scenarioId: 'circle', discounted: false });
  expect([questions.answers, questions.turning, questions.pending]).toEqual([[], null, true]);
});

test('is asked once the workbook has come to rest, and what is being solved then is ended', async () => {
  const { questions, ports } = setting();
  for (const scenarioId of ['closed', 'circle']) {
    questions.ask(workbook, { scenarioId, discounted: true });
    await vi.advanceTimersByTimeAsync(300);
  }
  await vi.advanceTimersByTimeAsync(1000);
  expect(ports.map(({ asked }) => asked)).toEqual([
    [{ kind: 'questions', workbook, scenarioId: 'circle', discounted: true }]
  ]);
  questions.ask(workbook, { scenarioId: 'closed', discounted: true });
  expect(ports[0]?.isClosed).toBe(true);
});

test('a worker that fails says so in its sentence, and nothing is waited for any longer', async () => {
  const { questions, ports } = setting();
  questions.ask(workbook, { scenarioId: 'closed', discounted: false });
  await vi.advanceTimersByTimeAsync(1000);
  expect(questions.pending).toBe(true);
  ports[0]?.onfail('The browser ended it.');
  expect([questions.failure, questions.pending]).toEqual(['The browser ended it.', false]);
});

test('explains a found value by the workbook and the scenario that were asked about, and nothing before', () => {
  const { questions } = setting();
  const cell = {
    path: 'agents.sevoflurane.bottlePrice',
    now: 100,
    turnsAt: 120,
    shareOfWay: 0.5,
    low: 80,
    high: 200
  };
  expect(() => questions.explainTurning(cell, 'currency')).toThrow('Nothing was asked');
  questions.ask(workbook, { scenarioId: 'closed', discounted: false });
  const simple = questions.explainTurning(cell, 'currency');
  expect(simple).toMatchObject({ value: 120, unit: 'currency' });
  questions.ask(workbook, { scenarioId: 'habit', discounted: false });
  expect(questions.explainTurning(cell, 'currency')).not.toEqual(simple);
  questions.stop();
});
