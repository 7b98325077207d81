/** Break-even answers as sentences. */
import type { Answer, Question } from '#lib/calc/what-if/questions.ts';
import { formatFull, formatMoney } from '#lib/numbers/format-number.ts';
import { yearsInWords } from '#lib/numbers/years-in-words.ts';

export interface Words {
  readonly currency: string;
  readonly locale: string;
  readonly limitYears: number;
  /** The agent of an agent price, in small letters. */
  readonly agent: string;
}

/** A value of what is asked for, with its unit: `€23,104.50`, `0.42 L/min`. */
export function valueInWords({ subject }: Question, value: number, { currency, locale }: Words): string {
  switch (subject) {
    case 'price':
    case 'agent-price':
      return formatMoney(value, { currency, locale, cents: !Number.isInteger(value) || value < 1000 });
    case 'flow':
      return formatFull(value, { locale, unit: 'L/min' });
    case 'adoption':
      return formatFull(value, { locale, unit: '%' });
    case 'cases':
      return `${formatFull(value, { locale })} cases`;
  }
}

const what: Readonly<Record<Question['subject'], (words: Words) => string>> = {
  price: () => 'a purchase price',
  flow: () => 'a maintenance flow',
  adoption: () => 'an adoption',
  cases: () => 'a year’s work',
  'agent-price': ({ agent }) => `a price for a bottle of ${agent}`
};

export const askedInWords: Readonly<Record<Question['subject'], string>> = {
  price: 'What purchase price?',
  flow: 'What maintenance flow?',
  adoption: 'What adoption?',
  cases: 'How many cases a year?',
  'agent-price': 'What agent price?'
};

export const yearsOf = yearsInWords;

/** The answer as one or two sentences. */
export function answerInWords(answer: Answer, words: Words): string {
  const { question } = answer;
  const value = (of: number): string => valueInWords(question, of, words);
  const limit = yearsOf(words.limitYears, words.locale);
  const looked = `${value(question.low)} to ${value(question.high)}`;
  switch (answer.kind) {
    case 'always':
      return `It pays within ${limit} at every value looked at, ${looked}.`;
    case 'never':
      return `No value does: at none from ${looked} has it paid for itself within ${limit}.`;
    case 'nothing':
      return `Nothing is invested and nothing saved at any value looked at, ${looked}, so there is nothing to pay back.`;
    case 'failed':
      return `There is no answer: ${answer.sentence}`;
    case 'found':
      return foundInWords(answer, words).join('');
  }
}

/** The answer to a question that has one, with the value that was found apart: before it, the value, after it. */
export function foundInWords(
  answer: Extract<Answer, { kind: 'found' }>,
  words: Words
): readonly [string, string, string] {
  const { question, paybackYears } = answer;
  const value = (of: number): string => valueInWords(question, of, words);
  const limit = yearsOf(words.limitYears, words.locale);
  const side = answer.pays === 'above' ? 'or more' : 'or less';
  const reached = ` ${side} it has paid for itself within ${limit} (now ${value(roundedNow(question))}).`;
  const jump =
    paybackYears === null || Math.abs(paybackYears - words.limitYears) < 0.05
      ? ''
      : paybackYears === 0
        ? ' There it pays at once.'
        : ` There the payback is ${yearsOf(paybackYears, words.locale)}: the answer turns by a jump, as when a monitor becomes due or machines are replaced.`;
  return [`With ${what[question.subject](words)} of `, value(answer.value), `${reached}${jump}`];
}

/** Today's value as it is shown: a sum of cases may carry the noise of adding up. */
const roundedNow = ({ now }: Question): number => Number(now.toPrecision(12));

/** What taking an answer over is called: `Closed-circuit A, purchase price €23,104.50`. */
export function scenarioNameFor(
  question: Question,
  { name, value }: { name: string; value: string }
): string {
  const short = { price: 'price', flow: 'flow', adoption: 'adoption', cases: '', 'agent-price': '' }[
    question.subject
  ];
  return `${name}, ${short} ${value}`;
}
