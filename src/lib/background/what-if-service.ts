/** What a worker does when it is asked: the worker's whole code, apart from being one. */
import type { CaseUse } from '#lib/calc/case/case-result.ts';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import type { EstimateInput, Range } from '#lib/calc/input.ts';
import { buffersOf, joinSlices, runDraws } from '#lib/calc/uncertainty/run.ts';
import type { DrawRun } from '#lib/calc/what-if/draws.ts';
import { setUpRun, summaryOf } from '#lib/calc/what-if/draws.ts';
import { answerTo, cellsThatTurn, questionsOf } from '#lib/calc/what-if/questions.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { fieldAt } from '#lib/workbook/field-at.ts';
import { assumedRange, isReadOff, numericCells, wholeCells } from '#lib/workbook/numeric-cells.ts';
import { allowedRange } from '#lib/workbook/range-around.ts';
import type { Ask, Reply } from './what-if-messages.ts';

/**
 * Takes asks one after the other and replies; throws where one makes no sense. The buffers listed with a reply may be
 * handed over instead of copied.
 */
export function whatIfService(): (
  ask: Ask,
  reply: (reply: Reply, transfer?: readonly ArrayBufferLike[]) => void
) => void {
  let run: { readonly input: EstimateInput; readonly of: DrawRun } | null = null;

  const current = () => {
    if (run === null) throw new Error('Nothing is set up to be drawn.');
    return run;
  };
  return (ask, reply) => {
    switch (ask.kind) {
      case 'set-up': {
        const input = coreInput(ask.workbook);
        run = { input, of: setUpRun(input, wholeCells(ask.workbook)) };
        return;
      }
      case 'slice': {
        const { model, draws, figureCount } = current().of;
        const slice = runDraws({ model, draws, figureCount, from: ask.from, to: ask.to });
        reply({ kind: 'slice', slice }, buffersOf(slice));
        return;
      }
      case 'sum-up': {
        const { input, of } = current();
        reply({ kind: 'summary', summary: summaryOf(input, of, joinSlices(ask.slices)) });
        return;
      }
      case 'questions':
        answerQuestions(ask, reply);
    }
  };
}

function answerQuestions(
  { workbook, scenarioId, comparedWith = 'today', discounted }: Extract<Ask, { kind: 'questions' }>,
  reply: (reply: Reply) => void
): void {
  const input = coreInput(workbook);
  const memo = new CaseMemo<CaseUse>();
  for (const question of questionsOf(input, { scenarioId, comparedWith, memo, rangeOf }))
    reply({
      kind: 'answer',
      answer: 'sentence' in question ? question : answerTo(input, question, { discounted, memo })
    });
  const cells = numericCells(workbook)
    .map((cell) => ({ ...cell, whole: cell.field.kind === 'number' && cell.field.whole === true }))
    // What is counted or read off a label is known, unless the user gave it a range.
    .filter(({ path, whole }) => workbook.ranges[path] !== undefined || !(whole || isReadOff(path)))
    .map((cell) => ({
      path: cell.path,
      now: cell.value,
      whole: cell.whole,
      ...(workbook.ranges[cell.path] ?? assumedRange(cell))
    }))
    .filter(({ low, high }) => low < high);
  const onProgress = (done: number, of: number): void => {
    if (done % 5 === 0 || done === of) reply({ kind: 'looked-at', done, of });
  };
  const turning = cellsThatTurn(input, cells, { scenarioId, comparedWith, discounted, memo, onProgress });
  reply({ kind: 'turning', cells: turning });
}

/** The values that a cell's field allows; null where it has no highest. */
function rangeOf(path: string): Range | null {
  const field = fieldAt(path);
  if (field?.kind !== 'number' && field?.kind !== 'money') return null;
  const { low, high } = allowedRange(field);
  return high === null ? null : { low, high };
}
