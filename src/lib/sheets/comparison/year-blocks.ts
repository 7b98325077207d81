/**
 * A year of each scenario in three short blocks: quantities, money, emissions. Of each block what changes comes first, the
 * lines that are the same in all scenarios apart from it; today is the reference, and each figure has its change beside it.
 */
import type {
  AgainstBaseline,
  Co2eLine,
  CostLine,
  ScenarioEstimate,
  ScenarioYear
} from '#lib/calc/estimate-types.ts';
import type { Agent } from '#lib/calc/input.ts';
import { formatDecimals, notGiven } from '#lib/numbers/format-number.ts';
import { sameDecimals } from '#lib/numbers/same-decimals.ts';

export interface YearCell {
  readonly scenarioId: string;
  /** In the estimate; null where there is no figure. */
  readonly path: string | null;
  readonly text: string;
  /** From today’s figure to this one, signed; null: of today itself, or where either has no figure. */
  readonly change: string | null;
}

export interface YearRow {
  readonly key: string;
  readonly name: string;
  /** Of a row about one agent. */
  readonly agent: Agent | null;
  /** Today first. */
  readonly cells: readonly YearCell[];
  readonly isTotal: boolean;
}

export interface YearBlock {
  readonly title: string;
  readonly changing: readonly YearRow[];
  /** Lines that are the same in all scenarios, those that are nothing in all of them last. */
  readonly same: readonly YearRow[];
  /** Names of the lines in `same` that are nothing in all scenarios. */
  readonly nothing: readonly string[];
}

interface Line {
  readonly key: string;
  readonly name: string;
  readonly agent?: Agent;
  /** Below the scenario’s id. */
  readonly path: string;
  readonly value: (scenario: ScenarioEstimate) => number | null;
  readonly isTotal?: boolean;
  /** Counted against today already: no change stands beside it, and today has none. */
  readonly isAgainst?: boolean;
  readonly isMoney?: boolean;
}

export interface YearBlocksGiven {
  /** Today first. */
  readonly scenarios: readonly ScenarioEstimate[];
  readonly agentName: (agent: Agent) => string;
  readonly costNames: Readonly<Record<CostLine | 'total', string>>;
  readonly co2eNames: Readonly<Record<Co2eLine | 'total', string>>;
  readonly currency: string;
  readonly locale: string;
}

const amounts = [
  ['oxygenM3', 'Oxygen, m³'],
  ['airM3', 'Air, m³'],
  ['nitrousOxideKg', 'Nitrous oxide used, kg'],
  ['absorbentKg', 'Absorbent, kg'],
  ['electricityKWh', 'Electricity, kWh'],
  ['intravenousCases', 'Intravenous cases'],
  ['propofolDrawnUpG', 'Propofol drawn up, g'],
  ['propofolWastedG', 'Propofol wasted, g'],
  ['eegSensors', 'Sensors of processed EEG'],
  ['regionalCases', 'Regional cases']
] as const satisfies readonly (readonly [keyof ScenarioYear, string])[];

export function yearBlocks(given: YearBlocksGiven): readonly YearBlock[] {
  const { scenarios, costNames, co2eNames, currency } = given;
  const agents = [...new Set(scenarios.flatMap(({ perYear }) => Object.keys(perYear.agents) as Agent[]))];
  /** Whether a price or a value was put on what is not cash. */
  const hasShadow = scenarios.some(
    ({ perYear: { cost } }) => Number(cost.carbon) !== 0 || Number(cost.recovery) !== 0
  );
  const lineNames = <T extends string>(names: Readonly<Record<T, string>>) =>
    Object.entries(names) as [T, string][];
  const against = (
    figure: keyof AgainstBaseline & ('yearlySaving' | 'co2eAvoidedKg' | 'departmentSharePercent'),
    name: string,
    more: { isMoney?: boolean; per?: number } = {}
  ): Line => ({
    key: figure,
    name,
    path: `againstBaseline.${figure}`,
    value: ({ againstBaseline }) => {
      const value = againstBaseline[figure];
      return value === null ? null : Number(value) / (more.per ?? 1);
    },
    isAgainst: true,
    isMoney: more.isMoney ?? false
  });

  const quantities = [
    ...agents.flatMap((agent): Line[] => [
      {
        key: `${agent}.litres`,
        name: `${given.agentName(agent)}, litres`,
        agent,
        path: `perYear.agents.${agent}.liquidMl`,
        value: ({ perYear }) => {
          const millilitres = perYear.agents[agent]?.liquidMl;
          return millilitres === undefined ? null : millilitres / 1000;
        }
      },
      {
        key: `${agent}.bottles`,
        name: `${given.agentName(agent)}, bottles`,
        agent,
        path: `perYear.agents.${agent}.bottles`,
        value: ({ perYear }) => perYear.agents[agent]?.bottles ?? null
      }
    ]),
    ...amounts.map(([key, name]): Line => ({
      key,
      name,
      path: `perYear.${key}`,
      value: ({ perYear }) => perYear[key]
    }))
  ];
  const money = [
    ...lineNames(costNames).map(([line, name]): Line => ({
      key: line,
      name,
      path: `perYear.cost.${line}`,
      value: ({ perYear }) => Number(perYear.cost[line]),
      isTotal: line === 'total',
      isMoney: true
    })),
    against('yearlySaving', 'Saves against today', { isMoney: true }),
    ...(hasShadow
      ? [
          {
            key: 'shadow.yearlySaving',
            name: 'Social view, not cash: saves against today',
            path: 'againstBaseline.shadow.yearlySaving',
            value: ({ againstBaseline }: ScenarioEstimate) => Number(againstBaseline.shadow.yearlySaving),
            isAgainst: true,
            isMoney: true
          }
        ]
      : [])
  ];
  const emissions = [
    ...lineNames(co2eNames).map(([line, name]): Line => ({
      key: line,
      name,
      path: `perYear.co2eKg.${line}`,
      value: ({ perYear }) => perYear.co2eKg[line] / 1000,
      isTotal: line === 'total'
    })),
    against('co2eAvoidedKg', 'Avoids against today', { per: 1000 }),
    ...(scenarios.some(({ againstBaseline }) => againstBaseline.departmentSharePercent !== null)
      ? [against('departmentSharePercent', 'Share of the department’s footprint, %')]
      : [])
  ];
  return [
    blockOf('Quantities', quantities, given),
    blockOf(`Money, ${currency}`, money, given),
    blockOf('Emissions, t CO₂e', emissions, given)
  ];
}

function blockOf(title: string, lines: readonly Line[], given: YearBlocksGiven): YearBlock {
  const valuesOf = ({ value }: Line) => given.scenarios.map((scenario) => value(scenario));
  // A total and what it comes to against today stand in any case.
  const stays = ({ isTotal, isAgainst }: Line): boolean => isTotal === true || isAgainst === true;
  const changing = lines.filter((line) => stays(line) || !areSame(valuesOf(line)));
  const same = lines.filter((line) => !changing.includes(line));
  const isNothing = (line: Line): boolean => valuesOf(line).every((value) => value === null || value === 0);
  const nothing = same.filter(isNothing);
  return {
    title,
    changing: changing.map((line) => rowOf(line, given)),
    same: [...same.filter((line) => !isNothing(line)), ...nothing].map((line) => rowOf(line, given)),
    nothing: nothing.map(({ name }) => name)
  };
}

/** Whether figures differ by no more than the noise of adding up in another order. */
function areSame([first, ...others]: readonly (number | null)[]): boolean {
  return others.every((each) =>
    each === null || first === null || first === undefined
      ? each === first
      : Math.abs(each - first) <= 1e-9 * Math.max(Math.abs(each), Math.abs(first))
  );
}

function rowOf(line: Line, { scenarios, locale }: YearBlocksGiven): YearRow {
  const values = scenarios.map((scenario) => line.value(scenario));
  const [today] = values;
  // Whole units from a thousand up, to the cent below.
  const decimals =
    line.isMoney === true
      ? Math.max(...values.map((value) => Math.abs(value ?? 0))) >= 999.995
        ? 0
        : 2
      : sameDecimals(values);
  const written = (value: number): string => formatDecimals(value, { locale, decimals });
  const changeOf = (value: number | null | undefined): string | null => {
    if (line.isAgainst === true || value === null || value === undefined) return null;
    if (today === null || today === undefined) return null;
    if (areSame([today, value])) return 'same';
    return value > today ? `+${written(value - today)}` : written(value - today);
  };
  return {
    key: line.key,
    name: line.name,
    agent: line.agent ?? null,
    isTotal: line.isTotal === true,
    cells: scenarios.map(({ id }, at): YearCell => {
      const value = values[at] ?? null;
      const isNone = value === null || (line.isAgainst === true && at === 0);
      return {
        scenarioId: id,
        path: isNone ? null : `${id}.${line.path}`,
        text: isNone ? notGiven : written(value),
        change: at === 0 ? null : changeOf(value)
      };
    })
  };
}
