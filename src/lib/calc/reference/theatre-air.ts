/** Air changes that guides ask of theatres, and what was measured in recovery rooms. */
import { constant } from './constant.ts';
import type { Source } from './constant.ts';

const ashrae170: Source = { authors: 'ASHRAE', title: 'Standard 170', locator: 'Standard 170' };
const comparison = 'To compare with on Theatre air; no figure is computed from it.';

export const theatreAirConstants = [
  constant({
    id: 'air-changes.united-kingdom',
    name: 'Air changes of an operating theatre, United Kingdom',
    value: 22,
    printed: '22',
    unit: '1/h',
    source: { title: 'HTM 03-01', year: 2021, locator: 'operating theatre' },
    evidence: 'memory',
    kind: 'air-changes',
    alternatives: [
      {
        value: 25,
        source: { title: 'HTM 03-01, edition of 2007', year: 2007, locator: 'operating theatre' },
        evidence: 'memory',
        whyNot: 'The older edition.'
      }
    ],
    preferredBecause: 'The newer edition.',
    unusedBecause: comparison
  }),
  constant({
    id: 'air-changes.united-states',
    name: 'Air changes of an operating theatre, United States',
    value: 20,
    printed: '20',
    unit: '1/h',
    conditions: '4 of them of outdoor air',
    source: ashrae170,
    evidence: 'memory',
    kind: 'air-changes',
    unusedBecause: comparison
  }),
  constant({
    id: 'air-changes.recovery-room.united-states',
    name: 'Air changes of a recovery room, United States',
    value: 6,
    printed: '6',
    unit: '1/h',
    conditions: '2 of them of outdoor air; the UK figure of 15 is not universal',
    source: ashrae170,
    evidence: 'second-hand',
    kind: 'air-changes',
    unusedBecause: comparison
  }),
  constant({
    id: 'recovery-room-air.sevoflurane',
    name: 'Sevoflurane measured in recovery-room air, median',
    value: 0.12,
    printed: '0.12 (maximum 0.96)',
    unit: 'ppm',
    conditions: 'two units',
    source: {
      authors: 'Heiderich S, Thoben C, Dennhardt N et al.',
      title:
        'Low anaesthetic waste gas concentrations in postanaesthesia care unit: A prospective observational study',
      container: 'Eur J Anaesthesiol',
      year: 2018,
      locator: '35:534-8'
    },
    evidence: 'read',
    kind: 'measured-air',
    unusedBecause: comparison
  })
];
