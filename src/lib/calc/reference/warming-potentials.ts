/** Global warming potentials by set and horizon: kg CO2e per kg vented. */
import { constant } from './constant.ts';
import type { Alternative, Evidence, Source } from './constant.ts';
import { article, ipccAr5, ipccAr6, sulbaekAndersen2012 } from './sources.ts';

const nameOf = (subject: string): string => subject.replace('-', ' ');

interface Potential {
  readonly set: string;
  readonly horizonYears: number;
  readonly subject: string;
  readonly value: number;
  readonly conditions: string;
  readonly source: Source;
  readonly evidence: Evidence;
}

const ar6 = [
  { subject: 'desflurane', lifetimeY: '14.1', horizons: { 20: 7020, 100: 2590, 500: 741 } },
  { subject: 'isoflurane', lifetimeY: '3.5', horizons: { 20: 1930, 100: 539, 500: 154 } },
  { subject: 'sevoflurane', lifetimeY: '1.9', horizons: { 20: 702, 100: 195, 500: 55.7 } },
  { subject: 'enflurane', lifetimeY: '4.42', horizons: { 20: 2320, 100: 654, 500: 186 } },
  { subject: 'halothane', lifetimeY: '1.0', horizons: { 20: 162, 100: 45, 500: 12.8 } },
  { subject: 'nitrous-oxide', lifetimeY: '109', horizons: { 20: 273, 100: 273, 500: 130 } }
].flatMap(({ subject, lifetimeY, horizons }) =>
  Object.entries(horizons).map(([horizon, value]): Potential => ({
    set: 'AR6',
    horizonYears: Number(horizon),
    subject,
    value,
    conditions: `lifetime ${lifetimeY} y`,
    source: ipccAr6,
    evidence: 'read'
  }))
);

const over100Years = (
  set: string,
  values: Readonly<Record<string, number>>,
  conditions: string,
  source: Source
): Potential[] =>
  Object.entries(values).map(([subject, value]) => ({
    set,
    horizonYears: 100,
    subject,
    value,
    conditions,
    source,
    evidence: 'second-hand'
  }));

const ar5 = over100Years(
  'AR5',
  {
    desflurane: 1790,
    isoflurane: 491,
    sevoflurane: 216,
    enflurane: 583,
    halothane: 41,
    'nitrous-oxide': 265
  },
  'without climate-carbon feedback',
  ipccAr5
);

const literature2012 = over100Years(
  'literature-2012',
  { desflurane: 2540, isoflurane: 510, sevoflurane: 130, 'nitrous-oxide': 298 },
  'the set behind most papers of 2012–2023; for nitrous oxide the AR4 value, which AR5 also gives with feedback',
  sulbaekAndersen2012
);

const correctedLifetime: Alternative = {
  value: 144,
  source: article({
    authors: 'Sulbaek Andersen MP, Nielsen OJ, Sherman JD',
    container: 'Environ Sci Technol',
    year: 2021,
    locator: '55:10189'
  }),
  evidence: 'memory',
  whyNot:
    'A lifetime of 1.4 y, corrected by its authors; the assessment report is the set that reports are asked for.'
};

/** What the other sets say for the same subject and horizon. */
function alternativesTo({ set, subject, horizonYears }: Potential): Alternative[] {
  if (set !== 'AR6' || horizonYears !== 100) return [];
  const others = [...ar5, ...literature2012]
    .filter((other) => other.subject === subject)
    .map(({ set: other, value, source, evidence }) => ({
      value,
      source,
      evidence,
      whyNot: `The older set ${other}: choose it as the warming set, to compare with figures that were made with it.`
    }));
  return subject === 'sevoflurane' ? [...others, correctedLifetime] : others;
}

export const warmingPotentials = [...ar6, ...ar5, ...literature2012].map((potential) => {
  const { set, horizonYears, subject, value, conditions, source, evidence } = potential;
  const alternatives = alternativesTo(potential);
  return constant({
    id: `warming.${set}.${horizonYears}.${subject}`,
    name: `Warming potential of ${nameOf(subject)} over ${horizonYears} years, set ${set}`,
    value,
    printed: String(value),
    unit: 'kg CO2e/kg',
    conditions,
    source,
    evidence,
    kind: `warming-potential.${subject === 'nitrous-oxide' ? 'nitrous-oxide' : 'volatile'}`,
    ...(alternatives.length === 0
      ? {}
      : { alternatives, preferredBecause: 'The newest assessment report, with all agents on one method.' })
  });
});
