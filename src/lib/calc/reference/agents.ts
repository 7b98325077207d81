/** What the reference knows of each inhaled agent: mass, density, partition, potency, metabolism, vaporiser. */
import { constant } from './constant.ts';
import type { Alternative, Constant, Evidence, Source } from './constant.ts';
import {
  biro2014,
  carpenter1986,
  horwitz2016,
  ipccAr6,
  mapleson1996,
  millerComparison,
  millerSixthTable,
  usLabel
} from './sources.ts';

const nameOf = (subject: string): string => subject.replace('-', ' ');

/** The part of a record that differs from agent to agent; the rest is said once per quantity. */
interface Row {
  readonly value: number;
  readonly printed?: string;
  readonly source: Source;
  readonly evidence: Evidence;
  readonly conditions?: string;
  readonly alternatives?: readonly Alternative[];
  readonly preferredBecause?: string;
  readonly unusedBecause?: string;
}

function perAgent(
  quantity: {
    readonly id: string;
    readonly name: string;
    readonly unit: string;
    readonly kind: string;
    readonly conditions?: string;
    readonly unusedBecause?: string;
  },
  rows: Readonly<Record<string, Row>>
): Constant[] {
  const { id, name, ...shared } = quantity;
  return Object.entries(rows).map(([subject, row]) =>
    constant({
      ...shared,
      printed: String(row.value),
      ...row,
      id: `${subject}.${id}`,
      name: `${name} of ${nameOf(subject)}`
    })
  );
}

const safetyCard = (agent: string, card: string): Source => ({
  authors: 'International Programme on Chemical Safety',
  title: `International Chemical Safety Card, ${agent}`,
  locator: `${card}, molecular mass`
});

const handbook: Source = { title: 'Handbook table (edition not noted)', locator: 'molar mass' };

const molarMass = perAgent(
  { id: 'molar-mass', name: 'Molar mass', unit: 'g/mol', kind: 'molar-mass' },
  {
    sevoflurane: { value: 200.05, source: usLabel('sevoflurane', 'physical constants'), evidence: 'read' },
    isoflurane: { value: 184.5, source: usLabel('isoflurane', 'molecular weight'), evidence: 'read' },
    desflurane: {
      value: 168.04,
      source: ipccAr6,
      evidence: 'read',
      alternatives: [
        {
          value: 168,
          printed: '168.0',
          source: usLabel('desflurane', 'molecular weight'),
          evidence: 'read',
          whyNot: 'The same mass printed to fewer places.'
        }
      ],
      preferredBecause: 'It is printed to more places; the two agree within rounding.'
    },
    halothane: {
      value: 197.38,
      printed: '197.4',
      source: handbook,
      evidence: 'read',
      conditions: 'the handbook prints 197.4; the second place follows from the atomic weights of C2HBrClF3'
    },
    enflurane: { value: 184.5, source: safetyCard('enflurane', 'ICSC 0887'), evidence: 'read' },
    'nitrous-oxide': {
      value: 44.01,
      printed: '44.0',
      source: handbook,
      evidence: 'read',
      conditions: 'the handbook prints 44.0; the second place follows from the atomic weights of N2O'
    }
  }
);

const liquidDensity = perAgent(
  { id: 'liquid-density', name: 'Liquid density', unit: 'g/mL', kind: 'liquid-density', conditions: '20 °C' },
  {
    sevoflurane: {
      value: 1.52,
      printed: '1.520–1.525',
      source: usLabel('sevoflurane', 'physical constants'),
      evidence: 'read'
    },
    isoflurane: {
      value: 1.5,
      printed: '1.50',
      source: { title: 'Isoflurane label data, carried from 25 °C to 20 °C', locator: 'physical constants' },
      evidence: 'memory',
      alternatives: [
        {
          value: 1.496,
          source: usLabel('isoflurane', 'description: specific gravity 25°/25 °C'),
          evidence: 'read',
          whyNot:
            'A specific gravity at 25 °C, warmer than a vaporiser in theatre: 1.492 g/mL at that temperature.'
        }
      ],
      preferredBecause: 'It holds at theatre temperature; the two differ by 0.3 %.'
    },
    desflurane: {
      value: 1.465,
      source: usLabel('desflurane', 'physical constants'),
      evidence: 'memory',
      alternatives: [
        {
          value: 1.454,
          source: { title: 'Reference works (not noted which)', locator: 'density at 20 °C; 1.477 at 15 °C' },
          evidence: 'read',
          whyNot: 'It gives 0.8 % less vapour per millilitre and its work was not noted.'
        }
      ],
      preferredBecause: 'It is the label figure; the choice moves the vapour yield by 0.8 %.'
    },
    halothane: {
      value: 1.86,
      printed: '1.86–1.871',
      source: { title: 'Chemical references (not noted which)', locator: 'density at 20 °C' },
      evidence: 'memory',
      alternatives: [
        {
          value: 1.87,
          printed: '1.872–1.877',
          source: {
            authors: 'Ministry of Health, Indonesia',
            title: 'Monograph of halothane in the pharmacopoeia (in Indonesian)',
            locator: 'specific gravity at 20 °C'
          },
          evidence: 'read',
          whyNot: 'It gives 0.5 % more vapour per millilitre; the values of a published set stay as they are.'
        },
        {
          value: 1.87,
          source: {
            authors: 'NIOSH',
            title: 'Pocket Guide to Chemical Hazards, publication 2005-151',
            year: 2005,
            locator: 'halothane, specific gravity'
          },
          evidence: 'read',
          whyNot: 'The same figure, printed without a temperature.'
        }
      ],
      preferredBecause:
        'It has stood in this set from the start, and so keeps the answers of old workbooks; the next set should take the pharmacopoeia’s.'
    },
    enflurane: {
      value: 1.517,
      source: usLabel('enflurane', 'description: specific gravity 25°/25 °C'),
      evidence: 'read',
      conditions: 'a specific gravity at 25 °C (1.513 g/mL there), taken as g/mL at theatre temperature',
      alternatives: [
        {
          value: 1.5167,
          source: { title: 'Reference works (not noted which)', locator: 'density at 25 °C' },
          evidence: 'second-hand',
          whyNot: 'It holds at 25 °C; it rounds to the value in use.'
        }
      ],
      preferredBecause: 'It is the label figure; the two agree within rounding.'
    }
  }
);

const vapourPerLiquid = perAgent(
  {
    id: 'vapour-per-liquid-published',
    name: 'Published vapour per millilitre of liquid',
    unit: 'mL/mL',
    kind: 'vapour-per-liquid',
    conditions: 'about 20 °C',
    unusedBecause:
      'A check value: the core computes its own from density, molar mass, temperature and pressure.'
  },
  {
    sevoflurane: { value: 184, source: biro2014, evidence: 'read' },
    isoflurane: { value: 195, source: biro2014, evidence: 'read' },
    desflurane: { value: 210, source: biro2014, evidence: 'read' },
    halothane: { value: 229, source: biro2014, evidence: 'read' }
  }
);

const at37: { readonly unit: string; readonly conditions: string } = { unit: '1', conditions: '37 °C' };
const nitrousOxideUptake =
  'Kept for a reader who wants to judge what is left out: with this set the uptake of nitrous oxide is neglected.';
const miller = (value: number): Row => ({
  value,
  source: millerComparison,
  evidence: 'read'
});
const onRecovery1992: Source = {
  title: 'Blood concentrations of sevoflurane and isoflurane on recovery from anaesthesia',
  container: 'Br J Anaesth',
  year: 1992,
  locator: '69:259-62',
  doi: '10.1093/bja/69.3.259'
};
const surgicalPatients: Source = {
  title:
    'Blood/gas partition coefficients for isoflurane, sevoflurane, and desflurane in a clinically relevant patient population',
  container: 'Anesth Analg',
  year: 2015,
  locator: '120:45-50',
  doi: '10.1213/ANE.0000000000000516'
};
/** The largest measurement that was found: 120 adults before an operation, by headspace gas chromatography. */
const measuredInPatients = (value: number, sd: string, patients: number): Alternative => ({
  value,
  printed: `${value} (SD ${sd})`,
  source: surgicalPatients,
  evidence: 'read',
  whyNot: `Measured in ${patients} patients, but without the tissue/blood coefficients that would belong to it. Override to see what it does.`
});
const oneTable =
  'It stands in one table with the tissue/blood coefficients used here, so that the set is consistent.';
const millerAgainst6th = (value: number, sixth: number, others: readonly Alternative[] = []): Row => ({
  ...miller(value),
  alternatives: [
    {
      value: sixth,
      source: millerSixthTable,
      evidence: 'read',
      whyNot: 'Another table of the same textbook; its companion tissue/blood coefficients were not noted.'
    },
    ...others
  ],
  preferredBecause: oneTable
});

const bloodGas = perAgent(
  { id: 'blood-gas', name: 'Blood/gas partition coefficient', kind: 'blood-gas', ...at37 },
  {
    sevoflurane: {
      ...miller(0.65),
      alternatives: [
        measuredInPatients(0.74, '0.06', 41),
        {
          value: 0.65,
          printed: '0.65 (SD 0.05)',
          source: onRecovery1992,
          evidence: 'read',
          whyNot: 'The same figure, measured in 16 patients.'
        }
      ],
      preferredBecause: oneTable
    },
    isoflurane: millerAgainst6th(1.46, 1.4, [
      measuredInPatients(1.45, '0.12', 41),
      {
        value: 1.36,
        printed: '1.36 (SD 0.09)',
        source: onRecovery1992,
        evidence: 'read',
        whyNot: 'Measured in 16 patients, without tissue/blood coefficients.'
      }
    ]),
    desflurane: {
      ...miller(0.45),
      alternatives: [measuredInPatients(0.57, '0.04', 38)],
      preferredBecause: oneTable
    },
    halothane: millerAgainst6th(2.54, 2.5),
    enflurane: millerAgainst6th(1.9, 1.8),
    'nitrous-oxide': { ...millerAgainst6th(0.46, 0.47), unusedBecause: nitrousOxideUptake }
  }
);

const vesselRichBlood = perAgent(
  {
    id: 'vessel-rich-blood',
    name: 'Brain/blood partition coefficient, taken for the vessel-rich group,',
    kind: 'lean-tissue-blood',
    ...at37
  },
  {
    sevoflurane: miller(1.7),
    isoflurane: miller(1.6),
    desflurane: miller(1.3),
    halothane: miller(1.9),
    enflurane: miller(1.5),
    'nitrous-oxide': { ...miller(1.1), unusedBecause: nitrousOxideUptake }
  }
);

const muscleBlood = perAgent(
  { id: 'muscle-blood', name: 'Muscle/blood partition coefficient', kind: 'lean-tissue-blood', ...at37 },
  {
    sevoflurane: miller(3.1),
    isoflurane: miller(2.9),
    desflurane: { ...miller(2), printed: '2.0' },
    halothane: miller(3.4),
    enflurane: miller(1.7),
    'nitrous-oxide': { ...miller(1.2), unusedBecause: nitrousOxideUptake }
  }
);

const fatBlood = perAgent(
  { id: 'fat-blood', name: 'Fat/blood partition coefficient', kind: 'fat-blood', ...at37 },
  {
    sevoflurane: miller(48),
    isoflurane: miller(45),
    desflurane: miller(27),
    halothane: miller(51),
    enflurane: miller(36),
    'nitrous-oxide': { ...miller(2.3), unusedBecause: nitrousOxideUptake }
  }
);

const mapleson = (value: number, limitsPercent: number): Row => ({
  value,
  source: mapleson1996,
  evidence: 'read',
  conditions: `101.325 kPa; 95 % limits about ${limitsPercent} %`
});

const mac40 = [
  ...perAgent(
    { id: 'mac40', name: 'MAC at 40 years', unit: '%', kind: 'mac40.volatile' },
    {
      sevoflurane: {
        ...mapleson(1.8, 7),
        alternatives: [
          {
            value: 2.1,
            source: usLabel('sevoflurane', 'MAC at 40 years'),
            evidence: 'read',
            whyNot:
              'It is 17 % above the meta-analysis: the largest known spread. Override to see what it does.'
          }
        ],
        preferredBecause:
          'One meta-analysis gives the age slope and all agents at 40 years, so that agents compare fairly.'
      },
      isoflurane: mapleson(1.17, 7),
      desflurane: mapleson(6.6, 10),
      halothane: mapleson(0.75, 7),
      enflurane: mapleson(1.63, 17)
    }
  ),
  ...perAgent(
    { id: 'mac40', name: 'MAC at 40 years', unit: '%', kind: 'mac40.nitrous-oxide' },
    { 'nitrous-oxide': mapleson(104, 7) }
  )
];

const macAgeSlope = constant({
  id: 'mac.age-slope',
  name: 'Slope of the logarithm (base 10) of MAC over age',
  value: -0.00269,
  printed: '−0.00269',
  unit: '1/y',
  conditions: 'age above 1 year, all agents; about 6 % per decade',
  source: mapleson1996,
  evidence: 'read',
  kind: 'mac-age-slope'
});

const metabolised = perAgent(
  {
    id: 'metabolised',
    name: 'Metabolised share of what is taken up',
    unit: '%',
    kind: 'metabolised-share',
    conditions: 'of uptake'
  },
  {
    sevoflurane: {
      value: 5,
      printed: '2–5',
      source: {
        authors: 'Behne M, Wilke HJ, Harder S',
        title: 'Clinical pharmacokinetics of sevoflurane',
        container: 'Clin Pharmacokinet',
        year: 1999,
        locator: '36:13-26'
      },
      evidence: 'read'
    },
    isoflurane: { value: 0.2, source: usLabel('desflurane', 'comparison of metabolism'), evidence: 'read' },
    desflurane: { value: 0.02, source: usLabel('desflurane', 'metabolism'), evidence: 'read' },
    halothane: {
      value: 46,
      source: carpenter1986,
      evidence: 'read',
      conditions: 'of uptake, by mass balance',
      alternatives: [
        {
          value: 20,
          printed: '15–20',
          source: carpenter1986,
          evidence: 'read',
          whyNot: 'Counted from recovered metabolites, which misses what was not collected.'
        }
      ],
      preferredBecause: 'A mass balance counts all that did not come out again.'
    },
    enflurane: {
      value: 8.5,
      source: carpenter1986,
      evidence: 'read',
      conditions: 'of uptake, by mass balance',
      alternatives: [
        {
          value: 2.4,
          source: carpenter1986,
          evidence: 'read',
          whyNot: 'Counted from recovered metabolites, which misses what was not collected.'
        }
      ],
      preferredBecause: 'A mass balance counts all that did not come out again.'
    }
  }
);

const otherVaporisers: Source = {
  title: 'Administration of Sevoflurane Using Other Agent-Specific Vaporizers',
  year: 1998,
  locator: 'abstract, Ovid accession 00045391-199811000-00005'
};
const highestDialUsed = (value: number): Row => ({
  value,
  source: otherVaporisers,
  evidence: 'read',
  conditions: 'the highest dial setting that was used'
});

const vaporiserMaximum = perAgent(
  { id: 'vaporiser-maximum', name: 'Highest vaporiser setting', unit: '%', kind: 'vaporiser-maximum' },
  {
    sevoflurane: {
      value: 8,
      source: {
        title: 'Prescribing information, sevoflurane, Thailand',
        locator: 'dosage: induction, inspired concentrations of up to 8 %'
      },
      evidence: 'read',
      conditions: 'the highest inspired concentration that the label names for induction'
    },
    isoflurane: highestDialUsed(5),
    desflurane: { value: 18, source: horwitz2016, evidence: 'read' },
    halothane: highestDialUsed(5),
    enflurane: highestDialUsed(7)
  }
);

export const agentConstants = [
  ...molarMass,
  ...liquidDensity,
  ...vapourPerLiquid,
  ...bloodGas,
  ...vesselRichBlood,
  ...muscleBlood,
  ...fatBlood,
  ...mac40,
  macAgeSlope,
  ...metabolised,
  ...vaporiserMaximum
];
