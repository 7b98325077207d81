/** Intravenous anaesthesia, as far as its emissions go. No dosing advice. */
import { constant } from './constant.ts';

export const intravenousConstants = [
  constant({
    id: 'intravenous.co2e',
    name: 'Emissions of the drugs of total intravenous anaesthesia',
    value: 0.4,
    printed: '0.4',
    unit: 'kg CO2e/h',
    conditions: 'adult; procurement-based, 35 242 procedures',
    source: {
      authors: 'Bernat M, Cuvillon P, Brieussel T et al.',
      title:
        'The carbon footprint of general anaesthesia in adult patients: a multicentre observational comparison of intravenous and inhalation anaesthetic strategies in 35,242 procedures',
      container: 'Br J Anaesth',
      year: 2025,
      locator: 'abstract'
    },
    evidence: 'read',
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
      'Kept for comparison: the line for intravenous anaesthesia takes the procurement figure per hour.'
  }),
  constant({
    id: 'intravenous.propofol-co2e',
    name: 'Emissions of making propofol',
    value: 21,
    printed: '21',
    unit: 'kg CO2e/kg',
    conditions: 'active ingredient alone',
    source: {
      authors: 'Parvatker A, Tunceroglu H, Sherman JD, Coish P, Anastas PT, Zimmerman JB, Eckelman MJ',
      title:
        'Cradle-to-gate Greenhouse Gas Emissions for Twenty Anesthetic Active Pharmaceutical Ingredients based on Process Scale-up and Process Design Calculations',
      container: 'ACS Sustain Chem Eng',
      year: 2019,
      locator: '7:6580',
      doi: '10.1021/acssuschemeng.8b05473'
    },
    evidence: 'memory',
    kind: 'propofol-emissions',
    unusedBecause:
      'Kept for comparison: the line for intravenous anaesthesia takes the procurement figure per hour.'
  })
];
