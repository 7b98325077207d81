/** The trade's words, one sentence each, and the sheets on which a reader meets them. */
export interface GlossaryEntry {
  /** As it is written in a sentence. */
  readonly term: string;
  /** What else is written for it. */
  readonly also?: readonly string[];
  readonly words: string;
  /** Routes of the sheets on which its first use is marked. */
  readonly sheets: readonly string[];
}

export const glossary: readonly GlossaryEntry[] = [
  {
    term: 'MAC',
    words:
      'Minimum alveolar concentration, the end-tidal concentration at which half of patients of that age do not move at the cut.',
    sheets: ['/case-mix/', '/machines/', '/emissions/', '/evidence/', '/report/']
  },
  {
    term: 'end-tidal',
    words: 'Measured in the gas at the end of a breath out, close to what the blood in the lung holds.',
    sheets: ['/case-mix/', '/evidence/', '/report/']
  },
  {
    term: 'pneumoperitoneum',
    words:
      'Carbon dioxide blown into the abdomen for laparoscopy; some of it is absorbed and has to be breathed out.',
    sheets: ['/case-mix/', '/report/']
  },
  {
    term: 'fresh gas flow',
    words:
      'The gas that the machine adds to the breathing circuit in a minute; what the patient does not take up of it leaves through the exhaust and takes agent along.',
    sheets: ['/flow-plans/', '/machines/', '/report/']
  },
  {
    term: 'maintenance flow',
    words: 'The fresh gas flow after wash-in, in the phase that lasts for the rest of the case.',
    sheets: ['/payback/']
  },
  {
    term: 'wash-in',
    words: 'The first minutes of a case, in which a higher flow fills circuit and lung with agent.',
    sheets: ['/flow-plans/', '/case/', '/evidence/']
  },
  {
    term: 'flow class',
    also: ['minimal flow', 'low flow'],
    words:
      'By the fresh gas flow: metabolic below 0.25 L/min, minimal to 0.5, low to 1, medium to 2, high to 4, very high above.',
    sheets: ['/case/']
  },
  {
    term: 'vaporiser',
    words: 'The device that adds the vapour of a liquid agent to the fresh gas; its dial sets the share.',
    sheets: ['/flow-plans/', '/evidence/', '/report/']
  },
  {
    term: 'absorbent',
    words:
      'Granules that bind the carbon dioxide breathed out, so that gas can be breathed again; the lower the flow, the more of it is used.',
    sheets: ['/prices/', '/machines/', '/comparison/', '/case/', '/report/']
  },
  {
    term: 'circle system',
    also: ['circle'],
    words:
      'A breathing circuit in which gas breathed out is cleared of carbon dioxide and breathed in again.',
    sheets: ['/machines/', '/report/']
  },
  {
    term: 'sample gas',
    also: ['gas sample', 'sampled gas'],
    words:
      'Gas that a monitor draws from the circuit to measure it, some 0.2 L/min; where it is not returned, fresh gas has to make up for it.',
    sheets: ['/machines/', '/report/']
  },
  {
    term: 'scavenging',
    words: 'The suction that takes the exhaust of the breathing circuit out of the room.',
    sheets: ['/theatres/', '/theatre-air/']
  },
  {
    term: 'adoption',
    words:
      'The share of cases that really follow the new plan; the rest do today’s plan on the machine that stands in their theatre.',
    sheets: ['/scenarios/', '/payback/', '/report/']
  },
  {
    term: 'capture',
    words: 'The share of the agent leaving by the exhaust that a device there holds back.',
    sheets: ['/scenarios/', '/report/']
  },
  {
    term: 'CO₂e',
    words:
      'Carbon dioxide equivalent: the mass of carbon dioxide that would warm the climate as much over the chosen number of years.',
    sheets: ['/comparison/', '/uncertainty/', '/case/', '/report/']
  },
  {
    term: 'GWP',
    also: ['warming potential'],
    words:
      'Global warming potential: how many kilograms of carbon dioxide warm as much as one kilogram of the gas over 20, 100 or 500 years.',
    sheets: ['/comparison/', '/evidence/', '/report/']
  },
  {
    term: 'payback',
    words:
      'The time after which the savings have covered what was spent, and do so to the end of the years looked at.',
    sheets: ['/comparison/', '/payback/', '/uncertainty/', '/report/']
  },
  {
    term: 'NPV',
    also: ['net present value'],
    words:
      'Net present value: all savings less all spending over the appraisal, later years counting for less by the discount rate.',
    sheets: ['/payback/', '/uncertainty/', '/report/']
  },
  {
    term: 'discount rate',
    words: 'By how much less an amount counts for each year that it lies ahead.',
    sheets: ['/payback/', '/report/']
  },
  {
    term: 'IRR',
    also: ['internal rate of return'],
    words: 'Internal rate of return: the discount rate at which the net present value would be 0.',
    sheets: ['/payback/']
  },
  {
    term: 'percentile',
    words: 'The 5th percentile is the value below which 5 of 100 draws fall; the 50th is the middle one.',
    sheets: ['/uncertainty/']
  },
  {
    term: 'capnography',
    words: 'Continuous measurement of the carbon dioxide in the breath, shown as a curve.',
    sheets: ['/monitoring/', '/machines/']
  },
  {
    term: 'neuromuscular block',
    also: ['neuromuscular blocker', 'neuromuscular blockade', 'neuromuscular monitoring'],
    words: 'Relaxation of the muscles by a drug; how deep it is has to be measured.',
    sheets: ['/monitoring/', '/machines/', '/case-mix/']
  },
  {
    term: 'partition coefficient',
    words:
      'How much of an agent one tissue holds compared with another when the two are in balance, e.g. blood with gas.',
    sheets: ['/evidence/', '/report/']
  },
  {
    term: 'uptake',
    also: ['taken up'],
    words:
      'Agent that goes from the lung into blood and tissues, and so neither stays in the circuit nor leaves it.',
    sheets: ['/case/', '/comparison/', '/evidence/', '/report/']
  }
];

/** The words of a sheet, in the order in which they stand here. */
export const termsOn = (route: string): readonly GlossaryEntry[] =>
  glossary.filter(({ sheets }) => sheets.includes(route));
