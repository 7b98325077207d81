/** What a committee asks about the options, in sentences: which is best, what the machine adds, what needs no machine. */
import type { AgainstBaseline, Estimate, LadderStep, ScenarioEstimate } from '#lib/calc/estimate-types.ts';
import type { StepFigures } from '#lib/calc/estimate-types.ts';
import { avoidedInWords, savingInWords } from '#lib/numbers/change-in-words.ts';
import { formatMass, formatMoney } from '#lib/numbers/format-number.ts';
import type { Option } from './option-list.ts';
import { takenOptions } from './option-list.ts';
import { yearsInWords } from './in-words.ts';

export interface Look {
  readonly currency: string;
  readonly locale: string;
}

type YearFigures = Pick<AgainstBaseline, 'yearlySaving' | 'co2eAvoidedKg'>;

/** `saves €1,761 and avoids 2.01 t CO₂e a year`. */
export function yearInWords({ yearlySaving, co2eAvoidedKg }: YearFigures, look: Look): string {
  const money = savingInWords(yearlySaving, look);
  const air = avoidedInWords(co2eAvoidedKg, { of: 'CO₂e', locale: look.locale });
  return `${money.direction === 'same' ? 'saves nothing' : money.text} and ${air.direction === 'same' ? 'avoids nothing' : air.text} a year`;
}

export function outlayInWords(investment: string, look: Look): string {
  const amount = Number(investment);
  if (amount === 0) return 'for no more money';
  return `for ${formatMoney(Math.abs(amount), look)} ${amount > 0 ? 'more' : 'less'}`;
}

/** What comes of a step's money: `; that is not paid back within the appraisal, and …`. */
function returnInWords(
  step: Pick<StepFigures, 'investment' | 'simplePaybackYears' | 'npv'>,
  look: Look
): string {
  const npv = Number(step.npv);
  const worth =
    npv === 0
      ? 'the net present value stays the same'
      : `the net present value is ${formatMoney(Math.abs(npv), look)} ${npv < 0 ? 'lower' : 'higher'}`;
  if (Number(step.investment) <= 0) return worth;
  return step.simplePaybackYears === null
    ? `that is not paid back within the appraisal, and ${worth}`
    : `that is paid back after ${yearsInWords(step.simplePaybackYears, look.locale)}, and ${worth}`;
}

/** What a scenario would do without its machine, and what the machine adds; empty where it changes none. */
export function machineInWords(
  { withoutMachine, machineAdds }: Pick<ScenarioEstimate, 'withoutMachine' | 'machineAdds'>,
  { name, look }: { readonly name: string; readonly look: Look }
): readonly string[] {
  if (withoutMachine === null || machineAdds === null) return [];
  const outlay = Number(withoutMachine.investment);
  const forHowMuch = outlay > 0 ? ` for ${formatMoney(withoutMachine.investment, look)}` : '';
  return [
    `Without the machine, ${name} ${yearInWords(withoutMachine, look)}${forHowMuch}: the same agents and the same plan on today’s machines, each flow raised to what they need.`,
    `The machine itself ${yearInWords(machineAdds, look)} ${outlayInWords(machineAdds.investment, look)}; ${returnInWords(machineAdds, look)}.`
  ];
}

/**
 * Which option is worth most, which is the dearest whose every step pays, and what a dearer one buys in addition: the
 * chosen one, if its step is not taken, or else the next. Empty where the options were not compared.
 */
export function verdictInWords(
  {
    options,
    increments,
    chosenId
  }: {
    readonly options: readonly Option[];
    readonly increments: Estimate['increments'];
    readonly chosenId: string;
  },
  {
    look,
    paybackLimitYears,
    appraisalYears
  }: { readonly look: Look; readonly paybackLimitYears: number; readonly appraisalYears: number }
): readonly string[] {
  const [today, ...others] = options;
  if (increments === null || today === undefined || others.length === 0) return [];
  const { locale } = look;
  const found = (id: string | undefined): Option | undefined => options.find((option) => option.id === id);
  const best = others.reduce<Option>(
    (most, option) => (Number(option.against.npv) > Number(most.against.npv) ? option : most),
    today
  );
  const years = yearsInWords(appraisalYears, locale);
  const first =
    best === today
      ? `No option has a net present value above 0 over ${years}: by money alone, today’s practice stays.`
      : `${best.name} has the highest net present value of all options, ${formatMoney(best.against.npv, look)} over ${years}: it ${yearInWords(best.against, look)}.`;

  const limit = yearsInWords(paybackLimitYears, locale);
  const last = found(takenOptions(increments).at(-1));
  const second =
    last === undefined
      ? ''
      : last === today
        ? `No step from today’s practice pays for itself within ${limit}.`
        : last === best
          ? `Each step up to it pays for itself within the limit of ${limit}.`
          : `The last step that pays for itself within the limit of ${limit} leads to ${last.name}.`;

  const places = new Map(increments.money.map(({ option }, place) => [option, place]));
  const dearer = increments.money.filter(
    ({ option, status }) =>
      status === 'not-taken' && (places.get(option) ?? 0) > (places.get(last?.id ?? '') ?? -1)
  );
  const step = dearer.find(({ option }) => option === chosenId) ?? dearer[0];
  const to = found(step?.option);
  const from = found(step?.against ?? undefined);
  const third =
    step === undefined || to === undefined || from === undefined
      ? ''
      : `Compared with it, ${to.name} ${yearInWords(
          {
            yearlySaving: step.extraYearlySaving,
            co2eAvoidedKg: to.against.co2eAvoidedKg - from.against.co2eAvoidedKg
          },
          look
        )} ${outlayInWords(step.extraInvestment, look)}; ${returnInWords(
          { ...step, investment: step.extraInvestment },
          look
        )}.`;
  return [first, second, third].filter((sentence) => sentence !== '');
}

/** What another agent does by itself, on today’s machines and flows; null where the scenario keeps today’s agents. */
export function agentChangeInWords(ladder: readonly LadderStep[] | null, look: Look): string | null {
  // The first rung starts from today's practice, so nothing else is changed yet.
  const [first] = ladder ?? [];
  if (first?.lever !== 'agent') return null;
  return `Another agent alone, on today’s machines and flows, ${yearInWords(first, look)}.`;
}

/** The nitrous oxide that is lost from the supply in every option alike; null where there is none, or a scenario changes it. */
export function nitrousOxideInWords(
  scenarios: readonly Pick<ScenarioEstimate, 'perYear'>[],
  locale: string
): string | null {
  const lostKg = scenarios.map(({ perYear }) => perYear.co2eKg.nitrousOxideLost);
  const [today = 0] = lostKg;
  if (today <= 0 || lostKg.some((each) => Math.abs(each - today) > 1e-9 * today)) return null;
  return `No scenario touches the nitrous oxide lost from the supply, ${formatMass(today, { of: 'CO₂e', locale })} a year.`;
}
