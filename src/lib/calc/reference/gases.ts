/** Oxygen, air and piped nitrous oxide. */
import { constant } from './constant.ts';
import { derivedConstant } from './derived-constant.ts';
import type { Source } from './constant.ts';

const tariq2024: Source = {
  authors: 'Tariq M, Siddhantakar A, Sherman JD, Cimprich A, Young SB',
  title: 'Life cycle assessment of medical oxygen',
  container: 'J Clean Prod',
  year: 2024,
  doi: '10.1016/j.jclepro.2024.141126'
};

const perBedDay = constant({
  id: 'oxygen.co2e-per-bed-day',
  name: 'Emissions of bulk oxygen per bed-day',
  value: 0.49,
  printed: '0.49',
  unit: 'kg CO2e/d',
  conditions: 'at 2 L/min',
  source: tariq2024,
  evidence: 'read',
  kind: 'oxygen-per-bed-day'
});

const bedDayFlow = constant({
  id: 'oxygen.bed-day-flow',
  name: 'Oxygen flow of that bed-day',
  value: 2,
  printed: '2',
  unit: 'L/min',
  source: tariq2024,
  evidence: 'read',
  kind: 'oxygen-flow'
});

export const gasConstants = [
  constant({
    id: 'air.oxygen-fraction',
    name: 'Oxygen in dry air',
    value: 20.95,
    printed: '20.95',
    unit: '%',
    conditions: 'by volume; the source prints 20.946',
    source: {
      authors: 'IUPAC',
      title: 'Glossary of atmospheric chemistry terms (Gold Book)',
      container: 'Pure Appl Chem',
      year: 1990,
      locator: '62:2167, p. 2172; C01214, composition of pure air'
    },
    evidence: 'read',
    kind: 'oxygen-in-air'
  }),
  perBedDay,
  bedDayFlow,
  derivedConstant(
    {
      id: 'oxygen.co2e',
      name: 'Emissions of bulk oxygen',
      printed: '0.17',
      unit: 'kg CO2e/m3',
      conditions: 'from 0.49 kg per bed-day at 2 L/min',
      source: tariq2024,
      kind: 'oxygen-emissions'
    },
    [perBedDay, bedDayFlow]
  ),
  constant({
    id: 'nitrous-oxide.pipe-loss',
    name: 'Share of piped nitrous oxide that is lost before it reaches a patient',
    value: 83.5,
    printed: '83.5 (50–96)',
    unit: '%',
    conditions: 'piped supply',
    source: {
      authors: 'Gaff et al.',
      title: 'A weighing method for measuring nitrous oxide leakage from hospital manifold-pipeline networks',
      container: 'Anaesth Intensive Care',
      year: 2024,
      locator: '52:127-30',
      doi: '10.1177/0310057X231198123'
    },
    evidence: 'read',
    kind: 'pipe-loss',
    unusedBecause: 'Shown as a guide beside what the site bought, from which its own loss follows.',
    guideFor: 'gases.nitrousOxideBoughtKgPerYear'
  })
];
