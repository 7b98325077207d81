/** How CO2 elimination rises in time while CO2 is insufflated, as set 2026-2 has it. */
import { constant } from './constant.ts';
import { retroperitoneal2003 } from './gas-exchange.ts';
import { mullet1993 } from './sources.ts';

const rise = (minute: number, value: number) =>
  constant({
    id: `insufflation.extraperitoneal.rise-at-${minute}`,
    name: `Rise of CO2 elimination after ${minute} min of extraperitoneal insufflation`,
    value,
    printed: String(value),
    unit: '%',
    conditions: '10 adults, retroperitoneal; straight lines between the times that were measured',
    source: retroperitoneal2003,
    evidence: 'read',
    kind: 'co2-rise'
  });

export const insufflationCourse = [
  constant({
    id: 'insufflation.begins',
    name: 'Minutes of insufflation before CO2 elimination rises',
    value: 8,
    printed: '8–10',
    unit: 'min',
    source: mullet1993,
    evidence: 'read',
    kind: 'course-minutes'
  }),
  constant({
    id: 'insufflation.plateau',
    name: 'Minutes of intraperitoneal insufflation until CO2 elimination no longer rises',
    value: 20,
    printed: '18–20',
    unit: 'min',
    conditions: '10 min after the rise begins',
    source: mullet1993,
    evidence: 'read',
    kind: 'course-minutes'
  }),
  rise(30, 38),
  rise(60, 46),
  rise(90, 63),
  constant({
    id: 'pneumoperitoneum.extraperitoneal.co2-rise',
    name: 'Rise of CO2 elimination in extraperitoneal insufflation',
    value: 76,
    printed: '76 (SE 5)',
    unit: '%',
    conditions: 'highest in 45 min; no plateau was reached',
    source: mullet1993,
    evidence: 'read',
    kind: 'co2-rise',
    unusedBecause:
      'Kept for comparison with the course in time that this set takes: 1.8 times the course at 45 min.'
  })
];
