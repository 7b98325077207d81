/** Intravenous anaesthesia, as far as its emissions go. No dosing advice. */
import { constant } from './constant.ts';
import { article } from './sources.ts';

export const intravenousConstants = [
  constant({
    id: 'intravenous.co2e',
    name: 'Emissions of the drugs of total intravenous anaesthesia',
    value: 0.4,
    printed: '0.4',
    unit: 'kg CO2e/h',
    conditions: 'adult; procurement-based, 35 242 procedures',
    source: {
      title: 'Carbon footprint of general anaesthesia in adults',
      container: 'Br J Anaesth',
      year: 2025
    },
    evidence: 'second-hand',
    kind: 'intravenous-emissions'
  }),
  constant({
    id: 'intravenous.propofol-rate',
    name: 'Propofol used in maintenance',
    value: 7.55,
    printed: '7.55 (SD 1.75)',
    unit: 'mg/kg/h',
    conditions: 'adult, with remifentanil; an average for planning, no dosing advice',
    source: {
      authors: 'Struys et al.',
      title: 'Article in Eur J Anaesthesiol (volume not noted)',
      container: 'Eur J Anaesthesiol',
      locator: 'maintenance rate'
    },
    evidence: 'read',
    kind: 'propofol-rate',
    unusedBecause:
      'Shown for comparison: the line for intravenous anaesthesia takes the procurement figure per hour.'
  }),
  constant({
    id: 'intravenous.propofol-co2e',
    name: 'Emissions of making propofol',
    value: 21,
    printed: '21',
    unit: 'kg CO2e/kg',
    conditions: 'active ingredient alone',
    source: article({
      authors: 'Parvatker et al.',
      container: 'ACS Sustain Chem Eng',
      year: 2019,
      locator: '7:6580'
    }),
    evidence: 'memory',
    kind: 'propofol-emissions',
    unusedBecause:
      'Shown for comparison: the line for intravenous anaesthesia takes the procurement figure per hour.'
  })
];
