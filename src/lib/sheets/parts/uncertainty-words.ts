/** What an uncertainty run says, in words and as chart data. */
import { isModelError } from '#lib/calc/what-if/model-spread.ts';
import { drawnSpillShares, spillSharePath } from '#lib/calc/what-if/spill-spread.ts';
import { bodyModels } from '#lib/calc/input.ts';
import type { Band, BandPoint } from '#lib/calc/uncertainty/bands.ts';
import type { Likelihood } from '#lib/calc/uncertainty/acceptability.ts';
import type { DrawnFigure, ScenarioSpread, ScenarioSwing } from '#lib/calc/what-if/draws.ts';
import { formatFull, formatMoney, formatNumber, notGiven } from '#lib/numbers/format-number.ts';
import { yearsInWords } from '#lib/numbers/years-in-words.ts';
import { rangedFieldAt } from '#lib/workbook/ranged-field.ts';
import { bodyModelOptions } from '#lib/workbook/fields.ts';
import type { SwingRanges } from '#lib/charts/swing-ranges.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { cellsName } from '#lib/workbook/cell-name.ts';
import { unitOf } from './grid-of-list.ts';

interface Look {
  readonly currency: string;
  readonly locale: string;
  readonly appraisalYears: number;
}

export const figureNames: Readonly<Record<DrawnFigure, string>> = {
  yearlySaving: 'Saving a year',
  co2eAvoidedKg: 'CO₂e avoided a year',
  npv: 'Net present value',
  paybackYears: 'Payback'
};

/** One figure as it is read; a payback of Infinity is “not within 10 years”. */
export function drawnFigureInWords(figure: DrawnFigure, value: number, look: Look): string {
  const { currency, locale, appraisalYears } = look;
  if (Number.isNaN(value)) return notGiven;
  switch (figure) {
    case 'yearlySaving':
    case 'npv':
      return formatMoney(value, { currency, locale });
    case 'co2eAvoidedKg':
      return formatNumber(value / 1000, { unit: 't', locale });
    case 'paybackYears':
      if (value === Infinity) return `not within ${yearsInWords(appraisalYears, locale)}`;
      return value === 0 ? 'at once' : yearsInWords(value, locale);
  }
}

/** From one end to the other; one figure where both read the same. */
export function spanInWords(
  figure: DrawnFigure,
  { low, high }: { readonly low: number; readonly high: number },
  look: Look
): string {
  const [from, to] = [low, high].map((value) => drawnFigureInWords(figure, value, look));
  if (from === to) return from ?? '';
  return figure === 'paybackYears' && high === Infinity
    ? `${from} to more than ${yearsInWords(look.appraisalYears, look.locale)}`
    : `${from} to ${to}`;
}

/** How far chance may have moved a point of a band, as `± 120`; '' where it cannot be told. */
export function errorInWords(figure: DrawnFigure, { standardError }: BandPoint, look: Look): string {
  if (standardError === null) return '';
  const { locale } = look;
  switch (figure) {
    case 'yearlySaving':
    case 'npv':
      return `± ${formatNumber(standardError, { locale, figures: 2 })}`;
    case 'co2eAvoidedKg':
      return `± ${formatNumber(standardError / 1000, { unit: 't', locale, figures: 2 })}`;
    case 'paybackYears':
      return `± ${yearsInWords(standardError, locale)}`;
  }
}

/** `in about 7 of 10 draws`, `in 3 of 100 draws`, `in every draw`. */
export function shareInWords(share: number): string {
  if (Number.isNaN(share)) return 'in no draw that could be computed';
  if (share === 0) return 'in none of the draws';
  if (share === 1) return 'in every draw';
  if (share < 0.005) return 'in fewer than 1 of 100 draws';
  if (share > 0.995) return 'in more than 99 of 100 draws';
  if (share < 0.095 || share > 0.905) return `in about ${Math.round(share * 100)} of 100 draws`;
  return `in about ${Math.round(share * 10)} of 10 draws`;
}

/** The answer of a run for one scenario: how likely it pays in time, and what it saves. */
export function answerOfRun(
  spread: ScenarioSpread,
  { name, limitYears, look }: { name: string; limitYears: number; look: Look }
): string {
  const { withinLimit, bands } = spread;
  const limit = yearsInWords(limitYears, look.locale);
  const within = (figure: DrawnFigure): string =>
    spanInWords(figure, { low: bands[figure].low.value, high: bands[figure].high.value }, look);
  const share = shareInWords(withinLimit.probability);
  return (
    `${share.charAt(0).toUpperCase()}${share.slice(1)} ${name} has paid for itself within ${limit}${exactShare(withinLimit, look)}. ` +
    `Nine draws of ten save ${within('yearlySaving')} a year and avoid ${within('co2eAvoidedKg')} of CO₂e.`
  );
}

function exactShare({ probability, standardError }: Likelihood, { locale }: Look): string {
  if (Number.isNaN(probability) || probability === 0 || probability === 1) return '';
  const percent = formatNumber(probability * 100, { unit: '%', locale });
  const error = formatNumber(standardError * 100, { unit: '%', locale, figures: 2 });
  return ` (${percent}\u00a0±\u00a0${error})`;
}

/** True where nothing varied in a band: it is then one value. */
export const isWithoutWidth = ({ low, high }: Band): boolean => low.value === high.value;

/** The swings of one figure, as the chart of ranges takes them: ends of the answer with the values that give them. */
export function swingsForChart(
  swings: readonly ScenarioSwing[],
  {
    figure,
    workbook,
    locale,
    path: pathOf
  }: {
    figure: DrawnFigure;
    workbook: Workbook;
    locale: string;
    /** Name by which the answer at an outcome of a swing is asked for. */
    path: (swing: number, outcome: number) => string;
  }
): SwingRanges['swings'] {
  return swings.flatMap(({ paths, outcomes }, swing) => {
    const named = outcomes.map(({ values, figures }, outcome) => ({
      path: pathOf(swing, outcome),
      text: valueInWords(workbook, paths, values, locale),
      at: figureForChart(figure, figures?.[figure] ?? NaN)
    }));
    // Of more than two possibilities, those that give the least and the most are drawn.
    const ends =
      named.length === 2
        ? named
        : [...named]
            .sort((a, b) => (a.at ?? Infinity) - (b.at ?? Infinity))
            .filter((_, k, all) => k === 0 || k === all.length - 1);
    const [low, high] = ends;
    if (low === undefined || high === undefined) return [];
    const input = cellsName(workbook, paths);
    return [
      {
        input,
        low: low.text,
        high: high.text,
        atLow: low.at,
        atHigh: high.at,
        paths: [low.path, high.path] as const
      }
    ];
  });
}

/** Mass in tonnes; null for “never” and for what could not be computed. */
export function figureForChart(figure: DrawnFigure, value: number): number | null {
  if (!Number.isFinite(value)) return null;
  return figure === 'co2eAvoidedKg' ? value / 1000 : value;
}

function valueInWords(
  workbook: Workbook,
  paths: readonly string[],
  values: readonly number[],
  locale: string
): string {
  const [path = ''] = paths;
  const [value = NaN] = values;
  if (path === 'accounting.bodyModel') {
    const id = bodyModels[value];
    return bodyModelOptions.find((option) => option.id === id)?.label ?? String(id);
  }
  // A factor around 1 of the model’s own: nobody entered its figures.
  if (isModelError(path)) return formatNumber(value, { locale });
  if (path === spillSharePath) return formatFull(drawnSpillShares[value] ?? NaN, { locale });
  if (paths.length > 1) return 'each at this end of its range';
  const field = rangedFieldAt(workbook, path);
  const unit = field === undefined ? undefined : unitOf(field, workbook.currency);
  return formatFull(value, { locale, ...(unit === undefined ? {} : { unit }) });
}
