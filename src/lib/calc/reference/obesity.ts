/**
 * How lung and lean tissue grow with a weight above a body mass index of 30, as set 2026-2 has it. A case has no height
 * of its own, so one is assumed.
 */
import { constant } from './constant.ts';
import type { Source } from './constant.ts';
import { article } from './sources.ts';

const janmahasatian2005: Source = {
  authors: 'Janmahasatian S et al.',
  title: 'Lean body weight',
  container: 'Clin Pharmacokinet',
  year: 2005,
  locator: 'formulas for man and woman'
};

const lean = (id: string, name: string, value: number) =>
  constant({
    id: `lean-weight.${id}`,
    name: `Lean body weight: ${name}`,
    value,
    printed: String(value),
    unit: '1',
    conditions: '9270 W / (6680 + 216 BMI) in men, 9270 W / (8780 + 244 BMI) in women',
    source: janmahasatian2005,
    evidence: 'second-hand',
    kind: 'lean-weight-coefficient'
  });

export const obesityConstants = [
  lean('numerator', 'numerator', 9270),
  lean('man.offset', 'constant part in men', 6680),
  lean('man.slope', 'part by body mass index in men', 216),
  lean('woman.offset', 'constant part in women', 8780),
  lean('woman.slope', 'part by body mass index in women', 244),
  constant({
    id: 'obesity.assumed-height',
    name: 'Height assumed where a weight is judged',
    value: 1.7,
    printed: '1.7',
    unit: 'm',
    conditions: 'adults; a case group has no height',
    source: { title: 'Planning value of this project', locator: 'between the means of men and women' },
    evidence: 'memory',
    kind: 'body-height'
  }),
  constant({
    id: 'obesity.body-mass-index',
    name: 'Body mass index above which lung and lean tissue no longer grow with weight',
    value: 30,
    printed: '30',
    unit: 'kg/m2',
    source: {
      title: 'World Health Organization, Technical Report Series 894',
      year: 2000,
      locator: 'obesity'
    },
    evidence: 'memory',
    kind: 'body-mass-index'
  }),
  constant({
    id: 'obesity.residual-capacity-share',
    name: 'Functional residual capacity left per 10 kg/m2 more',
    value: 75,
    printed: '75',
    unit: '%',
    conditions: 'awake, index 30 against 20; 373 patients; exponential fall',
    source: article({ container: 'Chest', year: 2006, locator: '130:827-33' }),
    evidence: 'read',
    kind: 'lung-share'
  })
];
