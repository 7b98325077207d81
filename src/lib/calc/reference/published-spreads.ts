/**
 * How far published figures may be off, by those who published them. No set rests on it: a workbook takes a range over, or
 * enters one of its own, and only draws feel it.
 */
import type { Constant, Evidence, Source } from './constant.ts';
import { noRangeBecause } from './ranged-constant.ts';
import { article } from './sources.ts';

/** Bounds as printed, or a standard deviation around whatever value is in force; relative: as a share of that value. */
type Width =
  | { readonly low: number; readonly high: number }
  | { readonly deviation: number }
  | { readonly relativeDeviation: number };

export interface PublishedSpread {
  /** Id of the constant. */
  readonly constant: string;
  /** The value that it was published for; another one in force has no spread of its own. */
  readonly of: number;
  readonly width: Width;
  /** What is printed, and how the range follows. */
  readonly words: string;
  readonly source: Source;
  readonly evidence: Evidence;
}

/** Half of what lies between the 5th and the 95th percentile of a normal distribution, in standard deviations. */
const halfOf90Percent = 1.645;
/** Half the width of a PERT distribution around its middle, in its standard deviations. */
const halfOfPert = 7 ** 0.5;

const asDeviation = 'The range is so wide that the draws have this standard deviation: √7 of it either way.';

const ar6Uncertainty: Source = {
  authors: 'IPCC',
  title: 'Sixth Assessment Report, Working Group I',
  year: 2021,
  locator: 'Table 7.15'
};
const warming = (subject: string, of: number, width: Width, printed: string): PublishedSpread => ({
  constant: `warming.AR6.100.${subject}`,
  of,
  width,
  words: `${printed}, from the 5th to the 95th percentile. ${asDeviation} Uncertainty of the reference, carbon dioxide, is part of it and common to all agents; here each is drawn by itself.`,
  source: ar6Uncertainty,
  evidence: 'memory'
});
const volatileWarming = (
  [
    ['desflurane', 2590],
    ['isoflurane', 539],
    ['sevoflurane', 195],
    ['enflurane', 654],
    ['halothane', 45]
  ] as const
).map(([agent, of]) =>
  warming(
    agent,
    of,
    { relativeDeviation: 0.38 / halfOf90Percent },
    '±38 % by analogy with two hydrofluorocarbons of like lifetime'
  )
);

const patients: Source = article({
  container: 'Anesth Analg',
  year: 2015,
  locator: '120:45-50',
  doi: '10.1213/ANE.0000000000000516'
});
const bloodGas = (
  [
    ['sevoflurane', 0.65, 0.06, 41],
    ['isoflurane', 1.46, 0.12, 41],
    ['desflurane', 0.45, 0.04, 38]
  ] as const
).map(([agent, of, deviation, count]): PublishedSpread => ({
  constant: `${agent}.blood-gas`,
  of,
  width: { deviation },
  words: `Standard deviation ${deviation} among ${count} patients, around their own mean. ${asDeviation} It is the scatter of patients: the mean of a department’s is better known.`,
  source: patients,
  evidence: 'read'
}));

const humanTissues: Source = {
  authors: 'Yasuda N et al.',
  title: 'Solubility in human tissues',
  year: 1989
};
const brain = (
  [
    ['desflurane', 1.3, 0.05],
    ['isoflurane', 1.6, 0.1],
    ['sevoflurane', 1.7, 0.09],
    ['halothane', 1.9, 0.17]
  ] as const
).map(([agent, of, deviation]): PublishedSpread => ({
  constant: `${agent}.vessel-rich-blood`,
  of,
  width: { deviation },
  words: `Standard deviation ${deviation} of brain over blood. ${asDeviation}`,
  source: humanTissues,
  evidence: 'read'
}));

const gasExchange: Source = {
  authors: 'Briesenick L et al.',
  title: 'Energy expenditure under general anaesthesia',
  container: 'Anesth Analg',
  year: 2023,
  doi: '10.1213/ane.0000000000006343'
};

export const publishedSpreads: readonly PublishedSpread[] = [
  ...volatileWarming,
  warming('nitrous-oxide', 273, { deviation: 130 / halfOf90Percent }, '±130'),
  ...bloodGas,
  ...brain,
  {
    constant: 'body.oxygen-consumption.coefficient',
    of: 7.5,
    width: { low: 7, high: 9.1 },
    words:
      '7.0, from the lower limit of energy expenditure under anaesthesia, to 9.1, of paralysed adults in the contrary study.',
    source: gasExchange,
    evidence: 'computed'
  },
  {
    constant: 'body.co2-production.coefficient',
    of: 6.7,
    width: { low: 6, high: 8 },
    words:
      '6.0, by oxygen at a respiratory quotient of 0.8, to 8.0, about the upper 95 % limit of what was measured.',
    source: article({
      container: 'Br J Anaesth',
      year: 2003,
      locator: '91:793-6',
      doi: '10.1093/bja/aeg270'
    }),
    evidence: 'computed'
  },
  {
    constant: 'pneumoperitoneum.intraperitoneal.co2-rise',
    of: 25,
    width: { low: 15, high: 31 },
    words:
      '15 to 31 % in three studies of intraperitoneal insufflation: this one, Acta Anaesthesiol Scand 1996;40:566-73, and a comparison with hernia repair.',
    source: article({
      container: 'Br J Anaesth',
      year: 2003,
      locator: '91:793-6',
      doi: '10.1093/bja/aeg270'
    }),
    evidence: 'read'
  }
];

/** A spread with the range that it gives the value in force. */
export interface SpreadOfConstant extends PublishedSpread {
  readonly low: number;
  readonly high: number;
}

/** The published spread of a constant as it is in force; null where none was found for it. */
export function publishedSpreadOf(constant: Constant): SpreadOfConstant | null {
  const spread = publishedSpreads.find((each) => each.constant === constant.id && each.of === constant.value);
  if (spread === undefined || noRangeBecause(constant) !== null) return null;
  const { width, of } = spread;
  const half =
    'deviation' in width
      ? halfOfPert * width.deviation
      : 'relativeDeviation' in width
        ? halfOfPert * width.relativeDeviation * of
        : null;
  const ends = half === null ? (width as { low: number; high: number }) : { low: of - half, high: of + half };
  // Three figures: no source knows more of a spread.
  const rounded = (value: number): number => Number(value.toPrecision(3));
  return { ...spread, low: rounded(ends.low), high: rounded(ends.high) };
}
