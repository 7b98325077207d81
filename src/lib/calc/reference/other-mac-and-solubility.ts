/**
 * Other sets of MAC and of solubility that were published. In set 2026-2 they are kept for comparison, and a workbook takes
 * one over by entering its figures as figures of its own; later sets let a cell choose (`choice-of-groups.ts`).
 */
import { constant } from './constant.ts';
import type { Source } from './constant.ts';
import { article, millerComparison } from './sources.ts';

const unusedBecause =
  'One of a published set other than the one in use: enter the whole set as figures of your own to compute with it, never one figure of it alone.';

const labelOfSevoflurane: Source = {
  title: 'Sevoflurane product information, as reproduced in a drug directory',
  locator: 'section on the elderly'
};

const textbookMac = Object.entries({
  isoflurane: 1.15,
  enflurane: 1.63,
  halothane: 0.76,
  desflurane: 6,
  sevoflurane: 1.85,
  'nitrous-oxide': 104
}).map(([subject, value]) =>
  constant({
    id: `mac-textbook.${subject}`,
    name: `MAC of ${subject.replace('-', ' ')} at 30 to 55 years, textbook set`,
    value,
    printed: String(value),
    unit: '%',
    conditions: 'an age band: not MAC at 40 years',
    source: millerComparison,
    evidence: 'second-hand',
    kind: subject === 'nitrous-oxide' ? 'mac40.nitrous-oxide' : 'mac40.volatile',
    unusedBecause
  })
);

const labelMac = [
  constant({
    id: 'mac-label.sevoflurane.mac40',
    name: 'MAC of sevoflurane at 40 years, label',
    value: 2.1,
    printed: '2.1',
    unit: '%',
    conditions: 'with the label’s own slope by age',
    source: labelOfSevoflurane,
    evidence: 'second-hand',
    kind: 'mac40.volatile',
    unusedBecause
  }),
  constant({
    id: 'mac-label.sevoflurane.age-slope',
    name: 'Slope of log10 MAC of sevoflurane by age, label',
    value: -0.005,
    printed: '−0.005',
    unit: '1/y',
    conditions: 'from the label’s halving between 20 and 80 years; twice the slope in use',
    source: labelOfSevoflurane,
    evidence: 'second-hand',
    kind: 'mac-age-slope',
    unusedBecause
  })
];

const ofPatients = article({
  container: 'Anesth Analg',
  year: 2015,
  locator: '120:45-50',
  doi: '10.1213/ANE.0000000000000516'
});
const solubility = (
  [
    ['isoflurane', 1.45, '1.45 (SD 0.12)', 41],
    ['sevoflurane', 0.74, '0.74 (SD 0.06)', 41],
    ['desflurane', 0.57, '0.57 (SD 0.04)', 38]
  ] as const
).map(([agent, value, printed, patients]) =>
  constant({
    id: `blood-gas-of-patients.${agent}`,
    name: `Blood/gas partition coefficient of ${agent} in ${patients} patients`,
    value,
    printed,
    unit: '1',
    conditions: '37 °C; one laboratory for all three agents',
    source: ofPatients,
    evidence: 'read',
    kind: 'blood-gas',
    unusedBecause
  })
);

export const otherMacAndSolubility = [...textbookMac, ...labelMac, ...solubility];
