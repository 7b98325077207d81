/** Oxygen, air and piped nitrous oxide. */
import { constant } from './constant.ts';
import { derivedConstant } from './derived-constant.ts';
import { article } from './sources.ts';

const tariq2024 = article({
  authors: 'Tariq et al.',
  container: 'J Clean Prod',
  year: 2024,
  doi: '10.1016/j.jclepro.2024.141126'
});

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
    conditions: 'by volume',
    source: { title: 'Handbooks of chemistry (not noted which)', locator: 'composition of dry air' },
    evidence: 'memory',
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
    source: article({
      authors: 'Gaff et al.',
      container: 'Anaesth Intensive Care',
      year: 2024,
      locator: '52:127-30',
      doi: '10.1177/0310057X231198123'
    }),
    evidence: 'read',
    kind: 'pipe-loss',
    unusedBecause:
      'Shown for comparison with the site’s own loss, which follows from what it bought and used.'
  })
];
