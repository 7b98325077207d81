/** What a change of the whole input does to the figures that a reader knows: each before and after, scenario by scenario. */
import type { EstimateInput } from '../input.ts';
import type { ScenarioEstimate } from '../estimate-types.ts';
import { estimate } from './estimate.ts';

export interface MovedFigure {
  /** Name of the scenario, and of the figure in it. */
  readonly scenario: string;
  readonly figure: string;
  /** `money`: in the currency of the workbook. */
  readonly unit: string;
  readonly before: number;
  readonly after: number;
}

const figures: readonly {
  readonly figure: string;
  readonly unit: string;
  readonly of: (scenario: ScenarioEstimate) => number;
}[] = [
  {
    figure: 'Liquid agent in a year',
    unit: 'mL',
    of: ({ perYear }) => Object.values(perYear.agents).reduce((sum, { liquidMl }) => sum + liquidMl, 0)
  },
  { figure: 'Nitrous oxide in a year', unit: 'kg', of: ({ perYear }) => perYear.nitrousOxideKg },
  { figure: 'Absorbent in a year', unit: 'kg', of: ({ perYear }) => perYear.absorbentKg },
  { figure: 'CO2e in a year', unit: 'kg CO2e', of: ({ perYear }) => perYear.co2eKg.total },
  { figure: 'Cost in a year', unit: 'money', of: ({ perYear }) => Number(perYear.cost.total) },
  {
    figure: 'Saving in a year against today',
    unit: 'money',
    of: ({ againstBaseline }) => Number(againstBaseline.yearlySaving)
  }
];

/** The figures of every scenario under both inputs, which have the same scenarios. Runs every case twice. */
export function figuresOfMove(before: EstimateInput, after: EstimateInput): readonly MovedFigure[] {
  const now = estimate(before).scenarios;
  const then = estimate(after).scenarios;
  return before.scenarios.flatMap(({ id, name }) => {
    const one = now.find((scenario) => scenario.id === id);
    const other = then.find((scenario) => scenario.id === id);
    if (one === undefined || other === undefined) return [];
    return figures.map(({ figure, unit, of }) => ({
      scenario: name,
      figure,
      unit,
      before: of(one),
      after: of(other)
    }));
  });
}
