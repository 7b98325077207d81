/** Warming potentials that set 2026-2 adds: AR5 over 20 years, and AR6 with the corrected lifetime of sevoflurane. */
import { constant } from './constant.ts';
import type { Evidence, Source } from './constant.ts';
import { article, ipccAr6 } from './sources.ts';

interface Added {
  readonly set: string;
  readonly years: number;
  readonly subject: string;
  readonly value: number;
  readonly conditions: string;
  readonly source: Source;
  readonly evidence: Evidence;
}

const ar5Table: Source = {
  authors: 'IPCC',
  title: 'Fifth Assessment Report, Working Group I',
  year: 2013,
  locator: 'Table 8.A.1'
};
const ar5Over20 = Object.entries({
  desflurane: 5550,
  isoflurane: 1800,
  sevoflurane: 795,
  enflurane: 2120,
  halothane: 151,
  'nitrous-oxide': 264
}).map(([subject, value]): Added => ({
  set: 'AR5',
  years: 20,
  subject,
  value,
  conditions: 'without climate-carbon feedback',
  source: ar5Table,
  evidence: 'memory'
}));

const corrected = article({
  authors: 'Sulbaek Andersen MP, Nielsen OJ, Sherman JD',
  container: 'Environ Sci Technol',
  year: 2021,
  locator: '55:10189'
});
/** Only sevoflurane's lifetime was corrected; the others are the assessment report's. */
const literature2021 = [
  { subject: 'sevoflurane', horizons: { 20: 517, 100: 144, 500: 41 } },
  { subject: 'desflurane', horizons: { 20: 7020, 100: 2590, 500: 741 } },
  { subject: 'isoflurane', horizons: { 20: 1930, 100: 539, 500: 154 } },
  { subject: 'enflurane', horizons: { 20: 2320, 100: 654, 500: 186 } },
  { subject: 'halothane', horizons: { 20: 162, 100: 45, 500: 12.8 } },
  { subject: 'nitrous-oxide', horizons: { 20: 273, 100: 273, 500: 130 } }
].flatMap(({ subject, horizons }) =>
  Object.entries(horizons).map(([years, value]): Added =>
    subject === 'sevoflurane'
      ? {
          set: 'literature-2021',
          years: Number(years),
          subject,
          value,
          conditions: 'AR6 times 1.4 y / 1.9 y, the corrected lifetime over that of the report',
          source: corrected,
          evidence: 'memory'
        }
      : {
          set: 'literature-2021',
          years: Number(years),
          subject,
          value,
          conditions: 'as in AR6',
          source: ipccAr6,
          evidence: 'read'
        }
  )
);

export const addedWarmingPotentials = [...ar5Over20, ...literature2021].map(
  ({ set, years, subject, value, conditions, source, evidence }) =>
    constant({
      id: `warming.${set}.${years}.${subject}`,
      name: `Warming potential of ${subject.replace('-', ' ')} over ${years} years, set ${set}`,
      value,
      printed: String(value),
      unit: 'kg CO2e/kg',
      conditions,
      source,
      evidence,
      kind: `warming-potential.${subject === 'nitrous-oxide' ? 'nitrous-oxide' : 'volatile'}`
    })
);
