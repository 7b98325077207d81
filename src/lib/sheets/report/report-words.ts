/** What the report asks, answers and assumes, in sentences. */
import type { AgainstBaseline } from '#lib/calc/estimate-types.ts';
import { aheadInWords, nothingAtStake } from '#lib/charts/ahead-in-words.ts';
import { avoidedInWords, savingInWords } from '#lib/numbers/change-in-words.ts';
import { formatMoney, formatNumber } from '#lib/numbers/format-number.ts';
import { accountingFields, monitoringStandardOptions } from '#lib/workbook/fields.ts';
import { optionsOf } from '#lib/workbook/read-text.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { whatComes } from '#lib/state/what-comes.ts';
import { yearsInWords } from '../parts/in-words.ts';

type Scenario = Workbook['scenarios'][number];

const named = (list: readonly { readonly id: string; readonly name: string }[], id: string): string =>
  list.find((entry) => entry.id === id)?.name ?? id;

function scenariosOf(workbook: Workbook, scenarioId: string): { scenario: Scenario; today: Scenario } {
  const scenario = workbook.scenarios.find(({ id }) => id === scenarioId);
  const today = workbook.scenarios.find(({ baseline }) => baseline);
  if (scenario === undefined || today === undefined)
    throw new Error(`The workbook has no scenario “${scenarioId}” beside its baseline.`);
  return { scenario, today };
}

/** What is to be decided. */
export function questionOf(workbook: Workbook, scenarioId: string): string {
  const { scenario } = scenariosOf(workbook, scenarioId);
  const coming = whatComes(workbook, scenario);
  if (coming === null)
    return `Should the department go over to “${scenario.name}” with the machines that it has?`;
  const { machine: main, theatres } = coming;
  const all = workbook.theatreGroups.reduce((sum, { theatres }) => sum + theatres, 0);
  const kinds = new Set(scenario.moves.map(({ machine }) => machine));
  const phased = new Set(scenario.moves.map(({ year }) => year)).size > 1;
  const plan = named(workbook.flowPlans, scenario.plans[main] ?? '');
  const machine = kinds.size === 1 ? named(workbook.machines, main) : 'machines of several kinds';
  const units = theatres + scenario.spares;
  const part = theatres < all ? `, for ${theatres} of the ${all} theatres` : '';
  const how = scenario.moves.every(({ payment }) => payment === null) ? 'buy' : 'take on';
  const bought = `${units}\u00a0×\u00a0${machine}${part}${phased ? ', over several years,' : ''}`;
  return kinds.size === 1
    ? `Should the department ${how} ${bought} and follow the flow plan “${plan}”, in place of today’s practice?`
    : `Should the department ${how} ${bought}, in place of today’s practice?`;
}

/** What a year of the scenario does, when it is paid back and what it is worth. */
export function answerOf(workbook: Workbook, scenarioId: string, { against, locale }: Found): string {
  const { scenario } = scenariosOf(workbook, scenarioId);
  const { currency, accounting } = workbook;
  const look = { currency, locale };
  const cost = savingInWords(against.yearlySaving, look);
  const carbon = avoidedInWords(against.co2eAvoidedKg, { of: 'CO₂e', locale });
  const money = cost.direction === 'same' ? 'costs the same' : cost.text;
  const air = carbon.direction === 'same' ? 'emits the same' : carbon.text;
  const years = yearsInWords(accounting.appraisalYears, locale);
  const rate = formatNumber(accounting.discountRatePercent, { unit: '%', locale });
  return [
    `Against today’s practice ${scenario.name} ${money} and ${air} a year.`,
    returnOf(workbook, { against, locale }),
    `Its net present value over ${years}, at ${rate} a year, is ${formatMoney(against.npv, look)}.`,
    ...socialViewOf(workbook, { against, locale })
  ].join(' ');
}

interface Found {
  readonly against: AgainstBaseline;
  readonly locale: string;
}

/** What the carbon price and recovery minutes would make of it, apart from the cash; nothing where neither counts. */
function socialViewOf({ currency }: Workbook, { against, locale }: Found): string[] {
  const { shadow, yearlySaving, npv } = against;
  if (Number(shadow.yearlySaving) === Number(yearlySaving) && Number(shadow.npv) === Number(npv)) return [];
  const look = { currency, locale };
  const { direction, text } = savingInWords(shadow.yearlySaving, look);
  const saves = direction === 'same' ? 'costs the same' : text;
  return [
    `All of this is cash. In the social view, which counts the prices put on carbon and recovery minutes as well, it ${saves} a year, and its net present value is ${formatMoney(shadow.npv, look)}.`
  ];
}

function returnOf({ currency, accounting }: Workbook, { against, locale }: Found): string {
  const { simplePaybackYears: years, aheadForATime } = against;
  const investment = Number(against.investment);
  const ahead =
    aheadForATime.length === 0 ? '' : ` The sum stands ahead ${aheadInWords(aheadForATime, locale)}.`;
  const appraisal = yearsInWords(accounting.appraisalYears, locale);
  const nothing = nothingAtStake(against.years.map(({ net }) => net));
  if (investment <= 0)
    return (
      (investment === 0
        ? 'Nothing is invested beyond today’s practice.'
        : `Its purchases come to ${formatMoney(-investment, { currency, locale })} less than those of today’s practice.`) +
      (years === null && !nothing
        ? ` It does not pay for itself within the appraisal of ${appraisal}.`
        : '') +
      ahead
    );
  const amount = formatMoney(against.investment, { currency, locale });
  const atStart = against.years[0]?.investment ?? '0';
  const due =
    Number(atStart) === investment
      ? ''
      : `${formatMoney(atStart, { currency, locale })} falls due at the start; with what is bought and avoided later it takes ${amount} in all. `;
  if (years === null)
    return `${due}The ${amount} that it takes is not paid back within the appraisal of ${appraisal}.${ahead}`;
  const limit = yearsInWords(accounting.paybackLimitYears, locale);
  const place = years <= accounting.paybackLimitYears ? 'within' : 'past';
  const after = years === 0 ? 'at once' : `after ${yearsInWords(years, locale)}`;
  return `${due}The ${amount} that it takes is paid back ${after}, ${place} the limit of ${limit}.${ahead}`;
}

/** An assumption under the heading by which budget impact analyses are read. */
export interface Assumption {
  readonly about: string;
  readonly sentence: string;
}

/** The machines of today with the plan on each. */
const practiceOf = ({ theatreGroups, machines, flowPlans }: Workbook, { plans }: Scenario): string =>
  [...new Set(theatreGroups.map(({ machine }) => machine))]
    .map((machine) => `${named(machines, machine)}, flow plan “${named(flowPlans, plans[machine] ?? '')}”`)
    .join('; ');

/** What becomes of today's machines: it is printed with every answer. */
const lastingOf = ({ accounting }: Workbook): string =>
  accounting.counterfactual === 'machines-last'
    ? 'Today’s machines are taken to last through the appraisal.'
    : 'Today’s machines are replaced by their like at the end of their life, and only the difference counts.';

/** What the answer rests on, in the order in which such analyses are read. */
export function assumptionsOf(workbook: Workbook, scenarioId: string, locale: string): Assumption[] {
  const { scenario, today } = scenariosOf(workbook, scenarioId);
  const { accounting, caseMix, site } = workbook;
  const number = (value: number, unit?: string) =>
    formatNumber(value, { locale, figures: 7, ...(unit === undefined ? {} : { unit }) });
  const chosen = (key: keyof typeof accountingFields): string => {
    const field = accountingFields[key];
    return 'options' in field
      ? (optionsOf(field, workbook).find(({ id }) => id === String(accounting[key]))?.label ?? '')
      : '';
  };
  const { macSet, solubilityGroup } = workbook.accounting;
  const otherGroups =
    (macSet === 'mapleson' ? '' : ` MAC by “${chosen('macSet')}”.`) +
    (solubilityGroup === 'of-the-set' ? '' : ` Solubility in blood: “${chosen('solubilityGroup')}”.`);
  const others = workbook.scenarios.filter(({ id }) => id !== scenario.id && id !== today.id);
  const measured = caseMix.filter(({ measuredMlPerCase }) => measuredMlPerCase !== null).length;
  const cases = caseMix.reduce((sum, { casesPerYear }) => sum + casesPerYear, 0);
  const growth = (
    [
      ['agents', accounting.agentGrowthPercent],
      ['service', accounting.serviceGrowthPercent],
      ['the carbon price', accounting.carbonGrowthPercent]
    ] as const
  ).filter(([, percent]) => percent !== 0);
  const grows =
    growth.length === 0
      ? 'no price grows beyond inflation'
      : growth.map(([what, percent]) => `${what} by ${number(percent, '%')} a year`).join(', ') +
        ' beyond inflation';
  const residual = accounting.residualValue === 'none' ? 'nothing' : 'what is left of it in a straight line';
  const carbon =
    Number(accounting.carbonPricePerTonne) === 0
      ? ''
      : ` A shadow price of ${formatMoney(accounting.carbonPricePerTonne, { currency: workbook.currency, locale })} a tonne of CO₂e stands beside the cash, in the social view alone.`;
  const standard = monitoringStandardOptions.find(({ id }) => id === site.monitoringStandard)?.label ?? '';
  return [
    {
      about: 'Perspective',
      sentence: `The department’s own cost: agents, gases, absorbent, service, electricity and what is entered beside them. What patients gain or lose is not counted.${carbon}`
    },
    {
      about: 'Horizon',
      sentence: `${yearsInWords(accounting.appraisalYears, locale)}, later money discounted at ${number(accounting.discountRatePercent, '%')} a year; at its end a machine counts for ${residual}.`
    },
    {
      about: 'Prices',
      sentence: `Of ${workbook.priceYear}, in ${workbook.currency}; ${grows}.`
    },
    {
      about: 'Comparators',
      sentence:
        `Today’s practice: ${practiceOf(workbook, today)}. ${lastingOf(workbook)}` +
        (others.length === 0 ? '' : ` Looked at as well: ${others.map(({ name }) => name).join('; ')}.`)
    },
    {
      about: 'Cases',
      sentence: `${number(cases)} anaesthetics a year in ${number(caseMix.length)} case groups, the same every year. ${number(scenario.adoptionPercent, '%')} of those that the scenario changes follow it; the others do today’s plan on the machine that stands in their theatre.`
    },
    {
      about: 'Agent use',
      sentence:
        `Computed for each case group as a circle system with the body model “${chosen('bodyModel')}”.${otherGroups}` +
        (measured === 0
          ? ' No measured use of the department’s own is entered.'
          : ` In ${measured} of ${caseMix.length} groups the department’s own measured use takes its place.`)
    },
    {
      about: 'Emissions',
      sentence: `${chosen('warmingSet')}, ${chosen('warmingHorizonYears')}.`
    },
    {
      about: 'Monitoring',
      sentence: `${standard}, and what low flow and pneumoperitoneum ask for on top. Local rules and the responsible clinician come first.`
    }
  ];
}
