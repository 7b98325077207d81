/** Uncertainty runs: a draw is the estimate with the drawn values in their cells, and its working says where they are from. */
import { describe, expect, test } from 'vitest';
import { writeCell } from '#lib/calc/cell-path.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { explainer } from '#lib/calc/estimate/explain.ts';
import { explainDrawn } from '#lib/calc/what-if/explain-draws.ts';
import type { BodyModel, Scenario } from '#lib/calc/input.ts';
import { joinSlices, runDraws } from '#lib/calc/uncertainty/run.ts';
import { drawnFigures, setUpRun, summaryOf } from '#lib/calc/what-if/draws.ts';
import type { Working } from '#lib/calc/working/working.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { lowFlow, today, wholeWorkbook } from '../fixtures/whole-workbook.ts';
import { bringing, keeping } from '../fixtures/one-group.ts';

const others: readonly Scenario[] = [
  lowFlow,
  { ...lowFlow, id: 'agent', ...keeping('old', 'usual'), agentSwitch: { sevoflurane: 'desflurane' } },
  { ...lowFlow, id: 'machine', ...bringing('closed', 'usual') }
];
const minutes = 'caseMix.hernia.minutes';
const price = 'agents.sevoflurane.bottlePrice';
const workbook = wholeWorkbook({
  scenarios: [today, ...others],
  ranges: { [minutes]: { low: 50, high: 80 }, [price]: { low: 100, high: 150 } },
  sampling: {
    draws: 10,
    seed: 1,
    shape: 'pert',
    minutesTogether: false,
    overBodyModels: true,
    overModelError: false,
    overSpillShare: false
  }
});
const input = coreInput(workbook);
const run = setUpRun(input, new Set());

/** The figures of the whole estimate of the workbook with these values in their cells, in the order of a draw. */
function estimated({ bodyModel, price: bottlePrice, minutes: long }: Drawn): number[] {
  const changed = [
    ['accounting.bodyModel', bodyModel] as const,
    [price, String(bottlePrice)] as const,
    [minutes, long] as const
  ].reduce((to, [path, value]) => writeCell(to, path, value), workbook);
  return estimate(coreInput(changed))
    .scenarios.slice(1)
    .flatMap(({ againstBaseline: { yearlySaving, co2eAvoidedKg, npv, simplePaybackYears, years } }) => [
      Number(yearlySaving),
      co2eAvoidedKg,
      Number(npv),
      simplePaybackYears ?? Infinity,
      ...years.map(({ cumulative }) => Number(cumulative))
    ]);
}

interface Drawn {
  readonly bodyModel: BodyModel;
  readonly price: number;
  readonly minutes: number;
}

describe('a draw gives what the estimate gives for its values', () => {
  test('its inputs are the body model, then the ranges by path', () => {
    expect(run.inputs.map(({ path }) => path)).toEqual(['accounting.bodyModel', price, minutes]);
    expect(run.scenarioIds).toEqual(['low-flow', 'agent', 'machine']);
  });

  test.each<Drawn>([
    { bodyModel: 'eger', price: 118, minutes: 60 },
    { bodyModel: 'eger', price: 130, minutes: 60 },
    { bodyModel: 'two-fat', price: 118, minutes: 60 },
    { bodyModel: 'eger', price: 118, minutes: 71.5 },
    { bodyModel: 'reference-adult', price: 149, minutes: 52 },
    { bodyModel: 'eger', price: 118, minutes: 60 }
  ])('$bodyModel, $price a bottle, $minutes min', (drawn) => {
    const choice = ['eger', 'reference-adult', 'two-fat'].indexOf(drawn.bodyModel);
    const ofScenarios = run.scenarioIds.length * run.figuresPerScenario;
    const figures = run.model([choice, drawn.price, drawn.minutes])?.slice(0, ofScenarios);
    expect(figures).toEqual(estimated(drawn));
  });
});

describe('the working of a swing', () => {
  const figures = joinSlices([
    runDraws({ model: run.model, draws: run.draws, figureCount: run.figureCount, from: 0, to: 10 })
  ]);
  const summary = summaryOf(input, run, figures);
  const explained = {
    input,
    explain: explainer(input),
    summary,
    wholeCells: new Set<string>(),
    unitOf: () => '1',
    nameOf: (paths: readonly string[]) => paths.join(' and '),
    optionName: (id: string) => id
  };
  const swings = summary.scenarios[0]?.swings ?? [];
  const indexOf = (path: string) => swings.findIndex(({ paths }) => paths.includes(path));

  test.each([
    ['low', price, 0, 100],
    ['high', price, 1, 150],
    ['low', minutes, 0, 50],
    ['high', minutes, 1, 80]
  ] as const)('names the %s end of the range of %s, and ends at its figure', (end, path, outcome, value) => {
    for (const figure of drawnFigures) {
      const working = explainDrawn(explained, `low-flow.swings.${indexOf(path)}.${outcome}.${figure}`);
      const shown = swings[indexOf(path)]?.outcomes[outcome]?.figures?.[figure];
      expect(Number(working.value ?? Infinity)).toBe(shown);
      // No emission depends on a price.
      if (figure === 'co2eAvoidedKg') continue;
      const cells = cellsOf(working);
      expect(Number(cells.get(`ranges.${path}.${end}`))).toBe(value);
      expect(cells.has(path)).toBe(false);
      expect(cells.has(`ranges.${path}.${end === 'low' ? 'high' : 'low'}`)).toBe(false);
    }
  });
});

/** The cells that a working starts from, with their values. */
function cellsOf(working: Working): Map<string, unknown> {
  const cells = new Map<string, unknown>();
  const seen = new Set<Working>();
  const visit = (node: Working): void => {
    if (seen.has(node)) return;
    seen.add(node);
    if (node.kind === 'cell') cells.set(node.path, node.value);
    if ('inputs' in node) Object.values(node.inputs).flat().forEach(visit);
  };
  visit(working);
  return cells;
}
