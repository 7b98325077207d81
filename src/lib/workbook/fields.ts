/** Every field of the workbook, list by list, in the order in which the grids show them. */
import {
  activityGrades,
  agents,
  airways,
  bodyModels,
  macSets,
  solubilityGroups,
  levers,
  machineKinds,
  monitorItems,
  monitoringStandards,
  pneumoperitoneums,
  techniques,
  vaporiserModes,
  warmingSets
} from '#lib/calc/input.ts';
import type { Agent } from '#lib/calc/input.ts';
import { jurisdictions } from '#lib/calc/reference/agent-restrictions.ts';
import { airLimitPlaces, airLimitPlaceTitles } from '#lib/calc/reference/exposure-limit-terms.ts';
import type { Limit } from '#lib/calc/limits.ts';
import { absorbentLimits, machineLimits, phaseLimits, rowLimits, siteLimits } from '#lib/calc/limits.ts';
import type {
  ChoiceField,
  ChoiceOption,
  Field,
  FlagField,
  MoneyField,
  NumberField,
  TextField
} from './field.ts';

const options = <Id extends string>(
  ids: readonly Id[],
  labels: Record<Id, string>
): readonly ChoiceOption[] => ids.map((id) => ({ id, label: labels[id] }));

export const agentOptions = options(agents, {
  sevoflurane: 'Sevoflurane',
  isoflurane: 'Isoflurane',
  desflurane: 'Desflurane',
  halothane: 'Halothane',
  enflurane: 'Enflurane'
});

export const jurisdictionOptions = options(jurisdictions, {
  'european-union': 'European Union',
  england: 'England',
  scotland: 'Scotland',
  elsewhere: 'Elsewhere'
});

export const techniqueOptions = options(techniques, {
  volatile: 'Volatile',
  intravenous: 'Intravenous',
  regional: 'Regional'
});

export const pneumoperitoneumOptions = options(pneumoperitoneums, {
  none: 'None',
  intraperitoneal: 'Intraperitoneal',
  gynaecological: 'Gynaecological',
  extraperitoneal: 'Extraperitoneal'
});

export const airwayOptions = options(airways, {
  'tracheal-tube': 'Tracheal tube',
  supraglottic: 'Supraglottic',
  mask: 'Mask',
  none: 'None'
});

export const vaporiserOptions = options(vaporiserModes, {
  hold: 'Hold the target',
  dial: 'Fixed dial',
  off: 'Off'
});

export const machineKindOptions = options(machineKinds, {
  'closed-circuit': 'Closed circuit',
  circle: 'Circle system',
  other: 'Other'
});

export const leverOptions = options(levers, {
  agent: 'Agent',
  technique: 'Technique',
  flow: 'Flow',
  machine: 'Machine',
  adoption: 'Adoption',
  capture: 'Capture',
  'nitrous-oxide': 'Nitrous oxide',
  scavenging: 'Scavenging pumps'
});

export const bodyModelOptions = options(bodyModels, {
  eger: 'Adult of three tissue groups',
  'reference-adult': 'Reference adult, organ tables',
  'two-fat': 'Reference adult, two fat tissues'
});

export const macSetOptions = options(macSets, {
  mapleson: 'Mapleson 1996, by age',
  'sevoflurane-label': 'Label of sevoflurane, for sevoflurane',
  textbook: 'Textbook, 30 to 55 years'
});
export const solubilityGroupOptions = options(solubilityGroups, {
  'of-the-set': 'The reference set’s own',
  patients: 'Measured in 120 patients'
});

export const warmingSetOptions = options(warmingSets, {
  AR6: 'IPCC AR6 (2021)',
  AR5: 'IPCC AR5 (2013)',
  'literature-2012': 'Literature 2012',
  'literature-2021': 'AR6, lifetime of sevoflurane corrected',
  custom: 'Figures of your own'
});

export const monitoringStandardOptions = options(monitoringStandards, {
  'who-wfsa': 'WHO-WFSA (2018)',
  asa: 'ASA basic monitoring',
  'association-of-anaesthetists': 'Association of Anaesthetists (2021)',
  cas: 'CAS (2023)',
  anzca: 'ANZCA PG18 (2017)',
  jsa: 'JSA (2019)'
});

export const monitorItemOptions = options(monitorItems, {
  'pulse-oximetry': 'Pulse oximetry',
  'non-invasive-blood-pressure': 'Non-invasive blood pressure',
  ecg: 'ECG',
  capnography: 'Capnography',
  'inspired-oxygen': 'Inspired oxygen with low alarm',
  'agent-concentration': 'Agent concentration',
  'nitrous-oxide-concentration': 'Nitrous oxide concentration',
  'airway-pressure': 'Airway pressure',
  'exhaled-volume': 'Exhaled volume',
  'disconnect-alarm': 'Disconnect alarm',
  temperature: 'Temperature',
  neuromuscular: 'Neuromuscular monitoring',
  'processed-eeg': 'Processed EEG',
  'arterial-blood-gas': 'Arterial blood gas'
});

const number = (
  title: string,
  unit: string,
  min: number,
  max: number,
  words: string,
  more: Partial<NumberField> = {}
): NumberField => ({ kind: 'number', title, unit, min, max, words, ...more });

/** A number within limits that stand elsewhere. */
const within = (
  { unit, from, to, above, below }: Limit,
  title: string,
  words: string,
  more: Partial<NumberField> = {}
): NumberField => ({
  ...number(title, unit, from, to, words, more),
  ...(above ? { aboveMin: true } : {}),
  ...(below ? { belowMax: true } : {})
});

const money = (title: string, per: string, words: string, more: Partial<MoneyField> = {}): MoneyField => ({
  kind: 'money',
  title,
  per,
  words,
  ...more
});

const text = (title: string, words: string, maxLength = 200): TextField => ({
  kind: 'text',
  title,
  words,
  maxLength
});

const flag = (title: string, words: string): FlagField => ({ kind: 'flag', title, words });

const choice = (title: string, of: ChoiceField['options'], words: string) =>
  ({ kind: 'choice', title, options: of, words }) as const;

export const airLimitOptions = options(airLimitPlaces, airLimitPlaceTitles);

type Fields = Readonly<Record<string, Field>>;

export const workbookFields = {
  title: text('Title', 'What this workbook is called.'),
  currency: text('Currency', 'Three-letter code of the currency of all prices.', 3),
  priceYear: number('Price year', '', 1990, 2100, 'The year whose prices these are.', { whole: true })
} as const satisfies Fields;

/** What is true of the workbook as a whole. */
export const markFields = {
  invented: flag('Invented', 'Whether its figures are invented: every page and file that shows them says so.')
} as const satisfies Fields;

export const activityGradeOptions = options(activityGrades, {
  measured: 'Measured or invoiced',
  records: 'From records',
  estimated: 'Estimated',
  assumed: 'Assumed'
});

const knownBy = (title: string, what: string): ChoiceField => ({
  kind: 'choice',
  title,
  words: `How ${what} known, for whoever reviews the emissions; no figure rests on it.`,
  options: activityGradeOptions,
  optional: true,
  empty: 'not given'
});

const noAir = {
  optional: true,
  empty: 'not given: no concentration is told',
  besideTheAnswer: true
} as const;

export const siteFields = {
  theatreTemperatureC: within(
    siteLimits.theatreTemperatureC,
    'Theatre temperature',
    'Gas volumes are stated at this temperature.'
  ),
  ambientPressureKPa: within(
    siteLimits.ambientPressureKPa,
    'Ambient pressure',
    'MAC is a partial pressure: at altitude the same effect needs a higher concentration.'
  ),
  monitoringStandard: choice(
    'Monitoring standard',
    monitoringStandardOptions,
    'The published standard that the department follows; local rules come first.'
  ),
  facilityLevel: number('Facility level', '', 1, 3, 'WHO-WFSA level of the facility.', {
    whole: true,
    optional: true,
    empty: 'all three levels are shown'
  }),
  electricityPricePerKWh: money('Electricity', 'per kWh', 'Price of electricity.'),
  electricityKgCo2ePerKWh: number(
    'Electricity, emissions',
    'kg CO₂e/kWh',
    0,
    2,
    'Emissions of the electricity that the site buys.'
  ),
  electricityMarketKgCo2ePerKWh: number(
    'Electricity, emissions by contract',
    'kg CO₂e/kWh',
    0,
    2,
    'Emissions of the electricity by what was contracted (market-based); shown on Emissions beside the total.',
    { optional: true, empty: 'not given', besideTheAnswer: true }
  ),
  medicalAirKWhPerM3: number(
    'Medical air',
    'kWh/m³',
    0,
    2,
    'Electricity to compress and dry a cubic metre of air; shown on Emissions beside the total. A rule of thumb for a 7 bar plant is 0.10 to 0.20, from memory.',
    { optional: true, empty: 'not given', besideTheAnswer: true }
  ),
  consumablesKgCo2ePerCase: number(
    'Consumables',
    'kg CO₂e/case',
    0,
    1000,
    'Emissions of circuits, filters and other consumables of a general anaesthetic, and of their waste; absorbent has a cell of its own on Prices.',
    { optional: true, empty: 'left out, and said' }
  ),
  baseYear: number(
    'Base year',
    '',
    1990,
    2100,
    'The year that today stands for; an inventory counts it with the same set of potentials as every later year.',
    { whole: true, optional: true, empty: 'not given' }
  ),
  casesKnownBy: knownBy('Cases are', 'the numbers of cases are'),
  durationsKnownBy: knownBy('Durations are', 'the minutes of the cases are'),
  bottlesKnownBy: knownBy('Bottles bought are', 'the bottles of agent bought are'),
  nitrousOxideKnownBy: knownBy('Nitrous oxide bought is', 'the nitrous oxide bought is'),
  electricityKnownBy: knownBy('Electricity is', 'what machines draw is'),
  departmentFootprintTonnes: number(
    'Department’s footprint',
    't CO₂e/year',
    0,
    1e6,
    'The department’s own yearly footprint, to show what share of it is saved.',
    { optional: true, empty: 'no share is shown' }
  ),
  jurisdiction: {
    kind: 'choice',
    title: 'Where the hospital is',
    words: 'Whose law and policy on restricted agents are shown.',
    options: jurisdictionOptions,
    optional: true,
    empty: 'not given'
  },
  lawfulAgentInstead: {
    kind: 'choice',
    title: 'Given in place of a restricted agent',
    words: 'What today’s practice would give if it kept to the law, to show the saving against that.',
    options: agentOptions,
    optional: true,
    empty: 'not given'
  },
  lawfulSharePercent: number(
    'Not exempt',
    '%',
    0,
    100,
    'Share of today’s cases with a restricted agent that the law gives no exemption.'
  ),
  airLimitsOf: {
    kind: 'choice',
    title: 'Limits of theatre air of',
    words: 'Whose workplace limits the estimate of theatre air is held against. The text in force decides.',
    options: airLimitOptions,
    optional: true,
    empty: 'not chosen'
  },
  recoveryRoomVolumeM3: number(
    'Recovery room, volume',
    'm³',
    10,
    5000,
    'Volume of the recovery room.',
    noAir
  ),
  recoveryAirChangesPerH: number(
    'Recovery room, air changes',
    '1/h',
    0.1,
    100,
    'Air changes an hour in the recovery room.',
    noAir
  ),
  recoveryHoursPerYear: number(
    'Recovery room, open',
    'h/year',
    1,
    8784,
    'Hours a year in which the recovery room is open.',
    noAir
  ),
  recoveryGivenOffPercent: number(
    'Breathed out there',
    '%',
    0,
    100,
    'Share of what patients took up that they breathe out in the recovery room; all of it is the upper bound.',
    { besideTheAnswer: true }
  )
} as const satisfies Fields;

export const theatreGroupFields = {
  name: text('Theatre group', 'Theatres that are alike: the same machine of today, the same room.'),
  theatres: number('Theatres', '', 1, 500, 'How many operating theatres it has.', { whole: true }),
  machine: choice('Machine of today', 'machines', 'The machine that stands in each of them today.'),
  machineAgeYears: number(
    'Age of the machines',
    'years',
    0,
    60,
    'How old today’s machines are; it tells when their life ends, where they are to be replaced then.',
    { optional: true, empty: 'not known' }
  ),
  staffedHoursPerTheatre: number(
    'Staffed',
    'h/year',
    0,
    8784,
    'Hours a year for which one theatre is staffed, to hold the cases against.',
    { optional: true, empty: 'no capacity is told' }
  ),
  roomVolumeM3: number('Room volume', 'm³', 10, 2000, 'Volume of one theatre, for Theatre air.', noAir),
  airChangesPerH: number(
    'Air changes',
    '1/h',
    0.1,
    100,
    'Air changes an hour in a theatre, for Theatre air.',
    noAir
  ),
  scavengingPercent: number(
    'Scavenging',
    '%',
    0,
    100,
    'Share of the spilled gas that the scavenging takes away, for Theatre air; what leaks it does not reach.',
    noAir
  ),
  airMixingPercent: number(
    'Mixing',
    '%',
    10,
    100,
    'Share of the air changes that reaches the air that is breathed, for Theatre air; 100 is a well-mixed room.',
    { besideTheAnswer: true }
  ),
  scavengingPumpKW: number(
    'Power of scavenging',
    'kW per theatre',
    0,
    20,
    'Electrical power of the pumps of anaesthetic gas scavenging, for one theatre: that of the plant over the theatres that it serves.',
    { optional: true, empty: 'not counted' }
  ),
  scavengingPumpHoursPerWeek: number(
    'Pumps run',
    'h/week',
    0,
    168,
    'Hours a week in which they run today; 168 is day and night.',
    { optional: true, empty: 'not counted' }
  )
} as const satisfies Fields;

/** Theatres of a group that have a monitor today. */
export const monitorInPlaceField = {
  ...number('Theatres that have it', '', 0, 500, 'Theatres of the group that have the monitor today.', {
    whole: true
  }),
  optional: true,
  empty: 'not counted'
} as const satisfies Field;

/** Share of a case group that is done in a theatre group. */
export const shareOfCasesField = {
  ...number(
    'Share of the cases',
    '%',
    0,
    100,
    'Share of the case group that is done in these theatres; groups without one have what is left, in proportion to their theatres.'
  ),
  optional: true,
  empty: 'in proportion'
} as const satisfies Field;

/** The plan that cases follow on a machine in one scenario. */
export const planOnMachineField = {
  kind: 'choice',
  title: 'Flow plan on a machine',
  words: 'The plan that cases follow on this machine in this scenario.',
  options: 'flowPlans',
  optional: true,
  empty: 'today’s plan'
} as const satisfies Field;

export const moveFields = {
  theatreGroup: choice('In', 'theatreGroups', 'The theatre group to which the machine comes.'),
  machine: choice('Machine that comes', 'machines', 'It takes the place of the one that stands there.'),
  year: number('Year', '', 0, 60, 'Years from now, 0 for now: paid then, in use from the year after.', {
    whole: true
  }),
  theatres: number('Theatres', '', 1, 500, 'In how many theatres of the group.', {
    whole: true,
    optional: true,
    empty: 'all that are left'
  })
} as const satisfies Fields;

export const paymentFields = {
  kind: choice(
    'Paid for by',
    [
      { id: 'lease', label: 'Lease or rental' },
      { id: 'managed', label: 'Managed service' }
    ],
    'How the machines are paid for that are not bought.'
  ),
  perUnitPerYear: money('Payment', 'per unit and year', 'What is paid for one machine in the first year.'),
  includesService: flag('Service is in it', 'Whether the payment includes the yearly service.'),
  includesConsumables: flag(
    'Absorbent is in it',
    'Whether the payment includes the absorbent that is used on these machines.'
  ),
  growthPercent: number('Grows', '%/year', -50, 50, 'Growth of the payment from year to year.'),
  inAdvance: flag('In advance', 'Paid at the start of each year; otherwise at its end.'),
  termYears: number('Term', 'years', 1, 60, 'How long payments run.', { whole: true }),
  atEnd: choice(
    'At the end of the term',
    [
      { id: 'return', label: 'Returned' },
      { id: 'buy', label: 'Bought' },
      { id: 'renew', label: 'Renewed' }
    ],
    'What happens to the machine then; one that is returned needs another to come in its place.'
  ),
  endPricePerUnit: money('Price at the end', 'per unit', 'What one costs where it is bought then.')
} as const satisfies Fields;

export const accountingFields = {
  warmingSet: choice('Warming potentials', warmingSetOptions, 'Published set of global warming potentials.'),
  warmingHorizonYears: {
    kind: 'choice',
    title: 'Horizon',
    numeric: true,
    words: 'Years over which warming is compared; sets other than AR6 are published for 100 years.',
    options: [
      { id: '20', label: '20 years' },
      { id: '100', label: '100 years' },
      { id: '500', label: '500 years' }
    ]
  },
  bodyModel: choice(
    'Body model',
    bodyModelOptions,
    'Body compartments that take up the agent: one set recalled from a textbook, two composed of published organ tables.'
  ),
  macSet: choice(
    'MAC',
    macSetOptions,
    'Set of MAC by age that targets go by. Where it does not hold for an agent or an age, Mapleson’s stands in, and the case says so.'
  ),
  solubilityGroup: choice(
    'Solubility in blood',
    solubilityGroupOptions,
    'Blood/gas partition coefficients. Those of patients are of sevoflurane, desflurane and isoflurane.'
  ),
  discountRatePercent: number('Discount rate', '%', -20, 100, 'Real rate at which later money counts less.'),
  appraisalYears: number('Appraisal', 'years', 1, 60, 'Years over which the purchase is judged.', {
    whole: true
  }),
  paybackLimitYears: number(
    'Payback limit',
    'years',
    0,
    60,
    'A purchase has to have paid for itself by then.',
    {
      aboveMin: true
    }
  ),
  residualValue: choice(
    'Residual value',
    [
      { id: 'none', label: 'None' },
      { id: 'straight-line', label: 'Straight line' }
    ],
    'What a machine counts for at the end of the appraisal.'
  ),
  counterfactual: choice(
    'Today’s machines',
    [
      { id: 'machines-last', label: 'Last through the appraisal' },
      { id: 'replaced-at-end-of-life', label: 'Are replaced at the end of their life' }
    ],
    'What becomes of today’s machines where they stay: one choice for all scenarios, and for today.'
  ),
  capitalChargePercent: number(
    'Capital charge',
    '%/year',
    0,
    20,
    'What the department is charged on machines that are not written off; it stands beside the cash and changes no other figure. 0: none.'
  ),
  taxPercent: number(
    'Tax',
    '%',
    0,
    60,
    'Rate of tax, paid a year later, with machines written off over their life; it stands beside the cash. 0: none, as in a public hospital.'
  ),
  agentGrowthPercent: number(
    'Agent prices grow',
    '%/year',
    -50,
    50,
    'Growth of agent prices beyond inflation.'
  ),
  serviceGrowthPercent: number(
    'Service prices grow',
    '%/year',
    -50,
    50,
    'Growth of service prices beyond inflation.'
  ),
  carbonPricePerTonne: money(
    'Carbon price',
    'per t CO₂e',
    'A shadow price of carbon: shown beside the saving, never in it; 0 leaves it out.'
  ),
  carbonGrowthPercent: number('Carbon price grows', '%/year', -50, 50, 'Growth of the carbon price.'),
  recoveryMinuteValue: money(
    'Recovery minute',
    'per minute',
    'Value of a minute of recovery time: shown beside the saving, never in it; 0 leaves it out, as the evidence that flow changes it is weak.'
  )
} as const satisfies Fields;

/** Warming potentials of the user’s own, for the set “Figures of your own”. */
export const warmingFields: Readonly<Record<Agent | 'nitrous-oxide', NumberField>> = Object.fromEntries(
  [...agents, 'nitrous-oxide' as const].map((subject) => [
    subject,
    number(
      `Warming potential of ${subject.replace('-', ' ')}`,
      'kg CO₂e/kg',
      0,
      50000,
      'Your own figure; it counts where the warming potentials are figures of your own.'
    )
  ])
) as Record<Agent | 'nitrous-oxide', NumberField>;

export const agentFields = {
  agent: choice('Agent', agentOptions, 'The agent, by its international name.'),
  bottleMl: number('Bottle', 'mL', 1, 5000, 'Liquid in a bottle.'),
  bottlePrice: money('Bottle price', 'per bottle', 'What the pharmacy pays for a bottle.'),
  unusablePercent: number(
    'Unusable',
    '%',
    0,
    50,
    'Share of a bottle that stays in it or is spilled at filling.'
  ),
  bottlesBoughtPerYear: number(
    'Bottles bought',
    'a year',
    0,
    1e6,
    'Bottles really bought in a year, to hold the estimate against.',
    {
      optional: true,
      empty: 'not compared with purchases'
    }
  ),
  bottlesUsedElsewherePerYear: number(
    'Of them, used elsewhere',
    'a year',
    0,
    1e6,
    'Bottles of those bought that were used outside the theatres, as in obstetrics or intensive care, or went into stock: today’s use is held against the others.',
    { optional: true, empty: 'all are used in theatres' }
  ),
  scaleToPurchases: flag(
    'Scale to purchases',
    'Scale this agent’s use in every scenario so that today’s meets the purchases.'
  ),
  manufactureKgCo2ePerKg: number(
    'Making it',
    'kg CO₂e/kg',
    0,
    10000,
    'Emissions of making a kilogram, by a source of your own. It depends on the route of synthesis and may not be small: that of sevoflurane, as used in one health service in 2018, was found to be not smaller than that of desflurane (Hu et al., Resour Conserv Recycl 2021;167:105411; the abstract, which we read, has no number).',
    { optional: true, empty: 'left out, and said' }
  )
} as const satisfies Fields;

export const gasFields = {
  oxygenPerM3: money('Oxygen', 'per m³', 'Price of piped oxygen, as gas.'),
  airPerM3: money('Medical air', 'per m³', 'Price of medical air.'),
  nitrousOxidePerKg: money('Nitrous oxide', 'per kg', 'Price of nitrous oxide.'),
  nitrousOxideBoughtKgPerYear: number(
    'Nitrous oxide bought',
    'kg/year',
    0,
    1e6,
    'Nitrous oxide really bought in a year; what is bought and not used counts as lost from the pipes.',
    { optional: true, empty: 'losses are not counted' }
  )
} as const satisfies Fields;

export const intravenousFields = {
  propofolMgPerKgPerH: number(
    'Propofol given',
    'mg/kg/h',
    0,
    30,
    'Mean dose of maintenance; 7.55 (SD 1.75) was measured in adults with remifentanil (Struys et al., Eur J Anaesthesiol). Induction is left out: a volatile case has it as well.'
  ),
  propofolWastedPercent: number(
    'Propofol wasted',
    '% of what is drawn up',
    0,
    95,
    'Share drawn up that no patient gets; 20 to 50 % is what audits give (from memory).'
  ),
  propofolPricePerG: money('Price of propofol', 'per g', 'Price of a gram, in the sizes that you use.'),
  otherDrugsPerH: money(
    'Other intravenous drugs',
    'per hour',
    'Drugs of an hour beyond what a volatile case gets as well.'
  ),
  disposablesPerCase: money(
    'Lines and syringes',
    'per case',
    'Pump lines, syringes and getting rid of them, beyond what a volatile case takes.'
  ),
  eegSensorPrice: money('Sensor of processed EEG', 'each', 'Price of one.'),
  eegSensorCasesPercent: number(
    'Cases with a sensor',
    '% of intravenous',
    0,
    100,
    'Share of the intravenous cases in which one is used; Monitoring says what the chosen standard asks for.'
  )
} as const satisfies Fields;

export const regionalFields = {
  pricePerCase: money(
    'Regional drugs and material',
    'per case',
    'Local anaesthetic, needle or set, and getting rid of them.'
  ),
  kgCo2ePerCase: number(
    'Regional, emissions',
    'kg CO₂e/case',
    0,
    1000,
    'Emissions of drugs and material of one case; no published figure is in use.',
    { optional: true, empty: 'left out, and said' }
  )
} as const satisfies Fields;

export const absorbentFields = {
  name: text('Name', 'What the absorbent is called, by its kind.'),
  capacityLPerKg: within(
    { ...absorbentLimits.capacityLPerKg, unit: 'L CO₂/kg' },
    'Capacity',
    'Carbon dioxide that a kilogram takes up in clinical use.'
  ),
  pricePerKg: money('Price', 'per kg', 'Price of the absorbent.'),
  kgCo2ePerKg: number(
    'Emissions',
    'kg CO₂e/kg',
    0,
    100,
    'Emissions of making it; no published figure was found.',
    {
      optional: true,
      empty: 'left out, and the report says so'
    }
  )
} as const satisfies Fields;

export const caseFields = {
  name: text('Case group', 'What is done; use a group of alike cases, never a patient.'),
  casesPerYear: number('Cases', 'a year', 0, 1e6, 'Cases of this group in a year.'),
  minutes: within(rowLimits.minutes, 'Minutes', 'Mean anaesthetic time with the breathing system in use.'),
  ageYears: within(rowLimits.ageYears, 'Age', 'Typical age; the MAC formula holds from 1 year.'),
  weightKg: within(rowLimits.weightKg, 'Weight', 'Typical weight; flows and compartments scale with it.'),
  technique: choice('Technique', techniqueOptions, 'Volatile, intravenous or regional anaesthesia.'),
  agent: {
    kind: 'choice',
    title: 'Agent',
    words: 'The volatile agent; needed where the technique is volatile.',
    options: agentOptions,
    optional: true,
    empty: 'none'
  },
  targetMac: within(
    rowLimits.targetMac,
    'Target',
    'End-tidal target as a multiple of age-adjusted MAC, nitrous oxide included.',
    {
      optional: true,
      empty: 'none'
    }
  ),
  nitrousOxidePercent: within(
    rowLimits.nitrousOxidePercent,
    'Nitrous oxide',
    'Nitrous oxide to be held in the circuit.'
  ),
  inspiredOxygenPercent: within(
    rowLimits.inspiredOxygenPercent,
    'Inspired oxygen',
    'Inspired oxygen to be held.'
  ),
  pneumoperitoneum: choice(
    'Pneumoperitoneum',
    pneumoperitoneumOptions,
    'Carbon dioxide insufflation, which raises the carbon dioxide to be absorbed.'
  ),
  neuromuscularBlock: flag('Blocker', 'Whether a neuromuscular blocker is given.'),
  airway: choice('Airway', airwayOptions, 'How the airway is held.'),
  measuredMlPerCase: number(
    'Measured',
    'mL/case',
    0,
    2000,
    'Your own measured liquid agent per case today, e.g. from a machine’s log; it replaces the estimate.',
    { optional: true, empty: 'estimated' }
  )
} as const satisfies Fields;

export const planFields = { name: text('Flow plan', 'What the plan is called.') } as const satisfies Fields;

export const phaseFields = {
  name: text('Phase', 'What the phase is called, e.g. wash-in.'),
  minutes: within(phaseLimits.minutes, 'Minutes', 'How long the phase lasts.', {
    optional: true,
    empty: 'the rest of the case'
  }),
  flowLPerMin: within(phaseLimits.flowLPerMin, 'Fresh gas flow', 'Carrier flow set on the flowmeters.'),
  flowAsNeeded: flag(
    'Flow as needed',
    'On a machine that can, the flow follows what patient and circuit take, and vapour is injected; on any other the flow beside it is set.'
  ),
  vaporiser: choice('Vaporiser', vaporiserOptions, 'Hold the target, sit at a fixed dial, or off.'),
  dialPercent: within(
    phaseLimits.dialPercent,
    'Dial',
    'The setting with a fixed dial; an upper limit where the target is held.',
    {
      optional: true,
      empty: 'up to the vaporiser’s maximum'
    }
  )
} as const satisfies Fields;

export const machineFields = {
  name: text('Machine', 'A plain name; no maker’s name is needed.'),
  kind: choice('Kind', machineKindOptions, 'How it returns gas to the patient.'),
  circuitVolumeL: within(machineLimits.circuitVolumeL, 'Circuit volume', 'Circle, absorber, bag and hoses.', {
    optional: true,
    empty: 'the published default'
  }),
  leakMlPerMin: within(machineLimits.leakMlPerMin, 'Leak', 'Leak of the breathing system.'),
  sampleMlPerMin: within(machineLimits.sampleMlPerMin, 'Gas sample', 'Flow that the gas monitor draws.'),
  sampleReturned: flag('Sample returned', 'Whether the sampled gas goes back into the circuit.'),
  minimumFlowLPerMin: within(
    machineLimits.minimumFlowLPerMin,
    'Least flow',
    'The least fresh gas flow that the machine gives.'
  ),
  canFlowAsNeeded: flag(
    'Flow as needed',
    'Whether it can let the flow follow what patient and circuit take, and inject the vapour.'
  ),
  spillShareInspiredFraction: within(
    machineLimits.spillShareInspiredFraction,
    'Spilled as inspired gas',
    'Share of the gas that leaves the circuit as it is breathed in, 0 to 1: about 0.33, the dead space, where the relief valve sits on the expiratory side; the rest leaves as it is breathed out.',
    { optional: true, empty: '1, all gas mixed' }
  ),
  absorbent: choice('Absorbent', 'absorbents', 'Absorbent that the machine uses.'),
  powerW: number('Power', 'W', 0, 5000, 'Electrical power in use.', {
    optional: true,
    empty: 'the published default'
  }),
  unitPrice: money('Price', 'per unit', 'Purchase price of one.'),
  tradeInPerUnit: money('Trade-in', 'per unit', 'What is paid for an old one handed in.'),
  installationPerUnit: money('Installation', 'per unit', 'Installation and training.'),
  servicePerUnitPerYear: money('Service', 'per unit and year', 'Yearly service.'),
  lifeYears: number(
    'Life',
    'years',
    1,
    40,
    'Planning life; replaced then, where the appraisal runs longer.',
    {
      whole: true
    }
  ),
  manufactureKgCo2ePerUnit: number(
    'Making one',
    'kg CO₂e',
    0,
    1e6,
    'Emissions of making one, of which each year of its life carries its share; an inventory counts them whole in the year of purchase. No published figure was found. Left empty for machines of today, only those that come are counted.',
    { optional: true, empty: 'left out, and said' }
  )
} as const satisfies Fields;

export const scenarioFields = {
  name: text('Scenario', 'What the scenario is called.'),
  machinesStay: flag(
    'Machines stay',
    'Nothing is bought: theatres to which the machine would come follow the plan on the one that stands there.'
  ),
  adoptionPercent: number(
    'Adoption',
    '%',
    0,
    100,
    'Share of the cases that follow the plan; the others do today’s plan on the machine that stands in their theatre.'
  ),
  adoptionFirstYearsPercent: {
    kind: 'list',
    title: 'Adoption in the first years',
    words: 'Per cent of the cases in year 1, 2 and so on, until the adoption is reached, e.g. 50, 80.',
    max: 100,
    maxLength: 60,
    empty: 'at once'
  },
  adoptionWithoutMachinePercent: number(
    'Adoption without the machine',
    '%',
    0,
    100,
    'Share of the cases that would follow the plan on today’s machines: what a machine adds is told against it.',
    { optional: true, empty: 'the same' }
  ),
  capturePercent: number(
    'Capture',
    '%',
    0,
    100,
    'Share of the agent that leaves by the exhaust which is captured, in every case. What leaks and what patients take up is out of reach, so of what is delivered less is caught, and the less the lower the flow: of desflurane 62 % was at 0.5 L/min, 86 % at 3 L/min (Jänchen et al. 1998). Published shares are mostly of what is delivered.'
  ),
  caughtLostPercent: number(
    'Lost again',
    '% of what is caught',
    0,
    100,
    'Share of what is caught that is lost again, from canisters in storage or where they are emptied. 3 % were measured from 20 full canisters in storage (Gibb et al.); what is lost later nobody has published.',
    { optional: true, empty: 'none' }
  ),
  caughtBecomes: choice(
    'What becomes of it',
    [
      { id: 'destroyed', label: 'Destroyed' },
      { id: 'recovered', label: 'Recovered for use' },
      { id: 'not-known', label: 'Not known' }
    ],
    'What becomes of the agent that is caught and not lost again. It counts as kept out of the air in each case; where it is not known, that is said beside the saving. Agent that is recovered is not taken off what is bought.'
  ),
  captureDevicePrice: money(
    'Devices',
    'per theatre',
    'Price of the capture device of one theatre, paid once, now, for every theatre.'
  ),
  captureFeePerYear: money('Fee', 'a year', 'What the service of the capture devices costs a year.'),
  canisterPrice: money(
    'Canister',
    'each',
    'What is charged for one full canister, its exchange and transport with it.'
  ),
  canisterHoldsG: number(
    'A canister holds',
    'g of agent',
    0,
    100000,
    'Agent that a full canister holds: with its price it says what each gram that is caught costs.',
    { optional: true, aboveMin: true, empty: 'not counted' }
  ),
  scavengingPumpHoursPerWeek: number(
    'Pumps run',
    'h/week',
    0,
    168,
    'Hours a week in which scavenging pumps run, in every theatre group at most as long as today. They must run whenever anaesthetic gas is given; local rules decide.',
    { optional: true, empty: 'as today' }
  ),
  nitrousOxideSupply: choice(
    'Nitrous oxide',
    [
      { id: 'as-today', label: 'As today' },
      { id: 'pipes', label: 'Pipes, leaks mended' },
      { id: 'cylinders', label: 'Cylinders, pipes closed' },
      { id: 'none', label: 'None' }
    ],
    'How nitrous oxide reaches the machines, for every case; None where no case is given any.'
  ),
  nitrousOxideSupplyYear: number(
    'Supply changes in year',
    '',
    0,
    60,
    'Years from now at whose end the supply of nitrous oxide changes, 0 for now.',
    { whole: true }
  ),
  nitrousOxideLossPercent: number(
    'Then lost',
    '%',
    0,
    95,
    'Share of the nitrous oxide bought that is lost then. Of cylinders no measurement was found: 0 to 5 % is plausible; of pipes 50 to 96 % were measured.'
  ),
  nitrousOxideSupplyCost: money(
    'Change of supply',
    '',
    'Paid once, in the year in which the supply changes.'
  ),
  spares: number(
    'Spares',
    '',
    0,
    500,
    'Machines bought beyond those that go to theatres, with the last that come and of their kind.',
    { whole: true }
  ),
  oneOffCost: money('One-off cost', '', 'Training and other cost once, now.'),
  yearlyExtraCost: money('Extra cost', 'a year', 'Any other yearly cost; a minus sign for a saving.', {
    signed: true
  }),
  extraCostLever: choice(
    'Extra cost is for',
    leverOptions,
    'What the one-off cost, the extra cost and the recovery minutes belong to, when the saving is taken apart.'
  ),
  recoveryMinutesSavedPerCase: number(
    'Recovery saved',
    'min/case',
    -120,
    120,
    'Recovery minutes saved per case; counts only where a minute has a value.'
  )
} as const satisfies Fields;

/** The plan of one case group in one scenario, where it departs from the scenario's. */
export const planByCaseField = {
  kind: 'choice',
  title: 'Flow plan of a case group',
  words: 'The plan of this case group in this scenario, where it is not that of the machine.',
  options: 'flowPlans',
  optional: true,
  empty: 'as on the machine'
} as const satisfies Field;

/** The agent given instead of another in one scenario. */
export const agentSwitchField = {
  kind: 'choice',
  title: 'Agent given instead',
  words: 'The agent given instead of this one in this scenario.',
  options: agentOptions,
  optional: true,
  empty: 'no change'
} as const satisfies Field;

/** The share of a case group that becomes intravenous in one scenario. */
export const toIntravenousField = {
  ...number(
    'Becomes intravenous',
    '%',
    0,
    100,
    'Share of this case group that becomes intravenous in this scenario, of the cases that follow it.'
  ),
  optional: true,
  empty: 'none'
} as const satisfies Field;

/** The share of a case group that becomes regional in one scenario. */
export const toRegionalField = {
  ...toIntravenousField,
  title: 'Becomes regional',
  words:
    'Share of this case group that becomes regional in this scenario, with no machine in use, of the cases that follow it.'
} as const satisfies Field;

/** A purchase that a scenario makes unnecessary. */
export const avoidedPurchaseFields = {
  year: number('Year', '', 0, 60, 'Years from now, 0 for now.', { whole: true }),
  units: number('Units', '', 0, 500, 'How many need not be bought.', { whole: true }),
  unitPrice: money('Price', 'per unit', 'What one would have cost.')
} as const satisfies Fields;

export const monitorPriceFields = {
  item: choice('Monitor', monitorItemOptions, 'The monitor.'),
  unitPrice: money('Price', 'per theatre', 'Price of one.')
} as const satisfies Fields;

export const samplingFields = {
  draws: number('Draws', '', 100, 100000, 'How many what-ifs are drawn.', { whole: true }),
  seed: number('Seed', '', 0, 4294967295, 'The same seed gives the same bands.', { whole: true }),
  shape: choice(
    'Shape',
    [
      { id: 'pert', label: 'PERT' },
      { id: 'triangular', label: 'Triangular' }
    ],
    'How values between low and high are weighted.'
  ),
  minutesTogether: flag('Minutes together', 'All cases longer or shorter together.'),
  overBodyModels: flag(
    'Over body models',
    'Draw over the three body models instead of keeping the chosen one.'
  ),
  overModelError: flag(
    'Over the model’s error',
    'Draw the model’s own error too, as large as it is against published measurements: one factor on what patients take up, one on what is spilled.'
  ),
  overSpillShare: flag(
    'Over where gas is spilled',
    'Draw which share of the spilled gas leaves as inspired gas, 0.33 to 1, for all machines together whose cell for it is empty.'
  )
} as const satisfies Fields;
