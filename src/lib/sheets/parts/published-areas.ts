/** The published checks as the Evidence sheet shows them: by what they are about, and how far off the model is. */
import type { CheckArea, PublishedCheck } from '#lib/calc/published/published-checks.ts';
import { isAccepted } from '#lib/calc/published/published-checks.ts';
import type { BodyModel } from '#lib/calc/input.ts';
import { bodyModels } from '#lib/calc/input.ts';
import { bodyModelOptions } from '#lib/workbook/fields.ts';

/** Areas in which the model stands against measurements, and what each chart of them is called, by unit. */
export const charted: readonly {
  readonly area: CheckArea;
  readonly unit: string;
  readonly quantity: string;
  readonly scale: 'linear' | 'log';
}[] = [
  { area: 'wash-in', unit: '1', quantity: 'End-tidal over inspired at 30 minutes', scale: 'linear' },
  { area: 'uptake', unit: 'mL', quantity: 'Liquid taken up', scale: 'linear' },
  { area: 'measured use', unit: 'mL/h', quantity: 'Liquid used in the first hour', scale: 'log' },
  { area: 'time to target', unit: 'min', quantity: 'Minutes to target', scale: 'linear' }
];

export const areaNames: Readonly<Record<CheckArea, string>> = {
  'wash-in': 'Wash-in',
  uptake: 'Uptake',
  'measured use': 'Measured use',
  'difference between flows': 'Difference between two flows',
  'dial mode': 'Fixed dial',
  'concentration ratio': 'End-tidal over fresh gas',
  'time to target': 'Time to target',
  'induction by mask': 'Induction by mask',
  circuit: 'Wash-in of an empty circuit',
  'liquid to vapour': 'Liquid to vapour',
  'constant dial': 'Published formula, by a fixed dial',
  'MAC and age': 'MAC and age',
  absorbent: 'Absorbent',
  capture: 'Capture at the exhaust',
  'gas exchange': 'Gas exchange',
  oxygen: 'Oxygen'
};

/** The author or body and the year of a citation, to stand beside a point. */
export const shortSource = (source: string): string => {
  const year = /\b(19|20)\d\d\b/.exec(source)?.[0];
  const author = /^[^.,;(]+/.exec(source)?.[0].replace(/ [A-Z]{1,3}$/, '') ?? source;
  return year === undefined || author.includes(year) ? author : `${author} ${year}`;
};

/** How the model stands to a row, e.g. `8 % below`; empty where there is nothing to divide by. */
export function differenceInWords(check: PublishedCheck, model: BodyModel): string {
  const figure = check.model[model];
  if (!Number.isFinite(figure) || check.published === 0) return '';
  const percent = 100 * (figure / check.published - 1);
  if (Math.abs(percent) < 0.5) return 'equal';
  return `${Number(Math.abs(percent).toPrecision(2))} % ${percent < 0 ? 'below' : 'above'}`;
}

/** What a reader must know of a row: whether it lies within the tolerance stated for it, and the cause where it does not. */
export function verdictInWords(check: PublishedCheck, model: BodyModel): string {
  const figure = check.model[model];
  if (!Number.isFinite(figure)) return 'The model gives no figure here.';
  const within = isAccepted(check, figure);
  const verdict = within
    ? `Within the tolerance (${check.tolerance}).`
    : `Off by more than the tolerance (${check.tolerance}).`;
  const cause = check.remark !== '' || within ? check.remark : nearerInWords(check, model);
  return [verdict, cause].filter((part) => part !== '').join(' ');
}

/** Where no cause is on record: whether the body model is it, as another of the three meets the figure. */
function nearerInWords(check: PublishedCheck, model: BodyModel): string {
  const met = bodyModels.filter((body) => body !== model && isAccepted(check, check.model[body]));
  return met.length === 0
    ? 'The cause is not known.'
    : `The body model is the likely cause: ${met.map(bodyModelName).join(' and ')} met it.`;
}

/** How many of the measurements the model meets; formulas, rules of thumb and own arithmetic are counted apart. */
export function metInWords(checks: readonly PublishedCheck[], model: BodyModel): string {
  const measured = checks.filter(({ kind }) => kind === 'measurement');
  const notCounted = checks.filter(({ kind }) => kind === 'measurement not counted');
  const others = checks.filter((check) => !measured.includes(check) && !notCounted.includes(check));
  const met = (rows: readonly PublishedCheck[]): string =>
    `${rows.filter((check) => isAccepted(check, check.model[model])).length} of ${rows.length}`;
  return `${met(measured)} measurements lie within the tolerance that is stated for each. Apart from them, so do ${met(others)} rows that nobody measured: published formulas, rules of thumb, and figures that were computed here. ${notCounted.length} measurements more are shown and not counted, as their conditions are not all told or the model takes its figures from them.`;
}

/** What a row's published figure is, to stand beside it; empty for a measurement. */
export const kindInWords = ({ kind }: PublishedCheck): string =>
  ({
    measurement: '',
    'measurement not counted': 'measured, not counted',
    formula: 'by a published formula',
    'rule of thumb': 'rule of thumb',
    'own arithmetic': 'computed here'
  })[kind];

/** Published findings that speak against buying for low flow: they stand beside the rows, as they print no millilitres. */
export const againstThePremise: readonly string[] = [
  'An automated closed circuit (desflurane, 10 patients) used more in 40 minutes than a simple manual sequence (24 patients), as it starts with high flow and flushes. De Cooman S et al. BMC Anesthesiol 2008;8:4, read as an abstract.',
  'Halothane use did not depend on flow between 0.5 and 3 L/min; that of isoflurane and enflurane differed only between 0.5 and 3 L/min. Coetzee JF, Stewart LJ. Br J Anaesth 2002;88:46-55, read as an abstract.',
  'Uptake from the 4th to the 60th minute was nearly constant, and went with neither age nor weight, against the model, which scales it with weight. Hendrickx JFA et al. Anesth Analg 1997;84:413-8, read as an abstract.'
];

/** A body model as a reader calls it. */
export const bodyModelName = (body: BodyModel): string =>
  bodyModelOptions.find(({ id }) => id === body)?.label ?? body;
