/** What an anaesthesia workstation draws, leaks, samples and lasts. */
import { constant } from './constant.ts';
import { commonPractice } from './sources.ts';

export const machineConstants = [
  constant({
    id: 'machine.power',
    name: 'Electrical power of an anaesthesia workstation',
    value: 97,
    printed: '97 (58–136)',
    unit: 'W',
    conditions: 'in operation',
    source: {
      authors: 'Drinhaus H, Drinhaus J, Schumacher C, Schramm MJ, Wetsch WA',
      title: 'Energieverbrauch von Narkosegeräten und mögliche Einsparungen durch Vermeidung von Standby',
      container: 'Die Anaesthesiologie',
      year: 2024,
      locator: '73:244-50',
      doi: '10.1007/s00101-024-01388-3'
    },
    evidence: 'read',
    kind: 'machine-power'
  }),
  constant({
    id: 'machine.life',
    name: 'Planning life of an anaesthesia workstation',
    value: 10,
    printed: '10 (7–15)',
    unit: 'y',
    conditions: '7–15 years are met in practice',
    source: commonPractice,
    evidence: 'memory',
    kind: 'machine-life',
    unusedBecause: 'Shown as a guide beside the machine’s own life, which is an input.',
    guideFor: 'machines.lifeYears'
  }),
  constant({
    id: 'machine.leak-limit',
    name: 'Leak that a breathing system may have',
    value: 150,
    printed: '150',
    unit: 'mL/min',
    conditions: 'at 3 kPa',
    source: { authors: 'ISO', title: 'ISO 80601-2-13', locator: 'leakage of the breathing system' },
    evidence: 'memory',
    kind: 'machine-flow',
    unusedBecause: 'Shown as a guide beside the machine’s leak, which is an input.',
    guideFor: 'machines.leakMlPerMin'
  }),
  constant({
    id: 'machine.minimal-flow-leak-limit',
    name: 'Leak that a breathing system may have for minimal flow',
    value: 100,
    printed: '100',
    unit: 'mL/min',
    conditions: 'at 2 kPa',
    source: { title: 'Clinical reviews of low flow (not noted which)', locator: 'leak test' },
    evidence: 'memory',
    kind: 'machine-flow',
    unusedBecause: 'Shown as a guide beside the machine’s leak, which is an input.',
    guideFor: 'machines.leakMlPerMin'
  }),
  constant({
    id: 'machine.sample-flow',
    name: 'Sample flow of a sidestream gas monitor',
    value: 200,
    printed: '200 (150–250)',
    unit: 'mL/min',
    source: commonPractice,
    evidence: 'memory',
    kind: 'machine-flow',
    unusedBecause: 'Shown as a guide beside the machine’s sample flow, which is an input.',
    guideFor: 'machines.sampleMlPerMin'
  })
];
