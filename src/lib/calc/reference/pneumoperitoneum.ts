/** How much more CO2 the lung eliminates while CO2 is insufflated. */
import { constant } from './constant.ts';
import { mullet1993 } from './sources.ts';

export const pneumoperitoneumConstants = [
  {
    id: 'intraperitoneal',
    words: 'laparoscopic cholecystectomy',
    value: 25,
    printed: '25 (SE 4)',
    conditions: 'plateau after 20 min'
  },
  {
    id: 'gynaecological',
    words: 'gynaecological laparoscopy',
    value: 15,
    printed: '15 (SE 3)',
    conditions: ''
  },
  {
    id: 'extraperitoneal',
    words: 'extraperitoneal insufflation',
    value: 76,
    printed: '76 (SE 5)',
    conditions: 'no plateau was reached'
  }
].map(({ id, words, value, printed, conditions }) =>
  constant({
    id: `pneumoperitoneum.${id}.co2-rise`,
    name: `Rise of CO2 elimination in ${words}`,
    value,
    printed,
    unit: '%',
    conditions,
    source: mullet1993,
    evidence: 'read',
    kind: 'co2-rise'
  })
);
