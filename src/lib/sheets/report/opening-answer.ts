/**
 * The answer that the report opens with, in a word or a few and what decides it. A purchase is judged by two things: that
 * the whole pays against today, or against lawful practice where that is another, and that the machine pays against the
 * same practice without it.
 */
import type { ScenarioEstimate, StepFigures } from '#lib/calc/estimate-types.ts';
import { nothingAtStake } from '#lib/charts/ahead-in-words.ts';
import { formatMoney } from '#lib/numbers/format-number.ts';
import { yearsInWords } from '../parts/in-words.ts';
import { type Look, outlayInWords, yearInWords } from '../parts/options-in-words.ts';

export interface OpeningAnswer {
  readonly word:
    'Yes' | 'No' | 'Not within the limit as entered' | 'Not for the money alone' | 'No difference in money';
  /** What decides it, in whole sentences. */
  readonly because: string;
}

export interface OpeningAnswerGiven {
  readonly look: Look;
  readonly paybackLimitYears: number;
  readonly appraisalYears: number;
  /** Whether theatres lack a monitor that is required. */
  readonly lacksMonitors: boolean;
}

type Judged = Pick<StepFigures, 'npv' | 'investment' | 'simplePaybackYears'>;
type Answered = Pick<
  ScenarioEstimate,
  'againstBaseline' | 'againstLawful' | 'withoutMachine' | 'machineAdds'
>;

export function openingAnswer(scenario: Answered, given: OpeningAnswerGiven): OpeningAnswer {
  const { againstBaseline, againstLawful, machineAdds } = scenario;
  const { look } = given;
  const reference = againstLawful === null ? 'today’s practice' : 'lawful practice';
  const { word, because } =
    againstLawful === null && nothingAtStake(againstBaseline.years.map(({ net }) => net))
      ? ({
          word: 'No difference in money',
          because: 'it costs and saves the same as today, so other reasons decide.'
        } as const)
      : judged(scenario, { ...given, reference });
  const lawful =
    againstLawful === null
      ? ''
      : ` Beyond what the law asks for already it ${yearInWords(againstLawful, look)}.`;
  const adds =
    machineAdds === null || word === 'No difference in money'
      ? ''
      : ` The machine by itself ${yearInWords(machineAdds, look)} ${outlayInWords(machineAdds.investment, look)}.`;
  const first =
    given.lacksMonitors && word !== 'No' ? ' Required monitors that theatres lack come first.' : '';
  return { word, because: `${because}${lawful}${adds}${first}` };
}

function judged(
  { againstBaseline, againstLawful, withoutMachine, machineAdds }: Answered,
  given: OpeningAnswerGiven & { readonly reference: string }
): OpeningAnswer {
  const whole = againstLawful ?? againstBaseline;
  const { look, reference } = given;
  if (!pays(whole, given)) {
    const failed = failing(whole, given);
    const twin =
      withoutMachine !== null && againstLawful === null && pays(withoutMachine, given)
        ? ' The same agents and plan on today’s machines do pay for themselves within it.'
        : '';
    return { ...failed, because: failed.because + twin };
  }
  const paid = `against ${reference} ${paidInWords(whole, given)}`;
  if (machineAdds === null) return { word: 'Yes', because: `${paid}.` };
  if (pays(machineAdds, given))
    return {
      word: 'Yes',
      because: `${paid}, and so does the machine, against the same agents and plan without it.`
    };
  const behind = Number(machineAdds.npv);
  const decides =
    behind < 0
      ? `the same agents and plan on today’s machines are worth ${formatMoney(-behind, look)} more over ${yearsInWords(given.appraisalYears, look.locale)}`
      : 'what it costs beyond the same agents and plan on today’s machines does not come back within the limit';
  return {
    word: 'Not for the money alone',
    because: `${paid}, but the machine does not earn that; ${decides}.`
  };
}

/** Worth no less than what it is held against, and paid back within the limit where something is to be paid. */
const pays = (
  { npv, investment, simplePaybackYears }: Judged,
  { paybackLimitYears }: Pick<OpeningAnswerGiven, 'paybackLimitYears'>
): boolean =>
  Number(npv) >= 0 &&
  (Number(investment) <= 0 || (simplePaybackYears !== null && simplePaybackYears <= paybackLimitYears));

function paidInWords({ investment }: Judged, { look, paybackLimitYears }: OpeningAnswerGiven): string {
  return Number(investment) <= 0
    ? 'it takes no more money and pays'
    : `it pays for itself within the limit of ${yearsInWords(paybackLimitYears, look.locale)}`;
}

function failing(
  { npv, investment, simplePaybackYears }: Judged,
  { look, reference, paybackLimitYears, appraisalYears }: OpeningAnswerGiven & { readonly reference: string }
): OpeningAnswer {
  const { locale } = look;
  const limit = yearsInWords(paybackLimitYears, locale);
  const worth = `its net present value is ${formatMoney(-Number(npv), look)} below 0`;
  if (Number(investment) <= 0)
    return { word: 'No', because: `against ${reference} it takes no more money, but ${worth}.` };
  if (simplePaybackYears === null)
    return {
      word: 'No',
      because: `against ${reference} it is not paid back within the appraisal of ${yearsInWords(appraisalYears, locale)}.`
    };
  if (simplePaybackYears > paybackLimitYears)
    return {
      word: 'Not within the limit as entered',
      because: `against ${reference} it is paid back after ${yearsInWords(simplePaybackYears, locale)}, and the limit is ${limit}${Number(npv) < 0 ? `; ${worth}` : ''}.`
    };
  return {
    word: 'No',
    because: `against ${reference} it is paid back within the limit of ${limit}, but ${worth}.`
  };
}
