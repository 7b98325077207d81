import type { CaseRow, Machine, Move, Phase, Scenario, TheatreGroup } from '#lib/calc/input.ts';
import { blankWorkbook } from './blank.ts';
import type { Workbook } from './workbook.ts';

/** Every figure of the demo is invented: it shows what the tool does and is evidence for nothing. */
const adult: Omit<CaseRow, 'id' | 'name' | 'casesPerYear' | 'minutes'> = {
  ageYears: 50,
  weightKg: 78,
  technique: 'volatile',
  agent: 'sevoflurane',
  targetMac: 1,
  nitrousOxidePercent: 0,
  inspiredOxygenPercent: 40,
  pneumoperitoneum: 'none',
  neuromuscularBlock: true,
  airway: 'tracheal-tube',
  measuredMlPerCase: null,
  theatreGroups: {}
};

const caseMix: readonly CaseRow[] = [
  {
    ...adult,
    id: 'lap-chole',
    name: 'Laparoscopic cholecystectomy',
    casesPerYear: 420,
    minutes: 75,
    pneumoperitoneum: 'intraperitoneal',
    theatreGroups: { day: 20 }
  },
  {
    ...adult,
    id: 'lap-hernia',
    name: 'Laparoscopic hernia repair',
    casesPerYear: 260,
    minutes: 80,
    ageYears: 56,
    weightKg: 80,
    pneumoperitoneum: 'extraperitoneal',
    theatreGroups: { day: 50 }
  },
  {
    ...adult,
    id: 'lap-append',
    name: 'Laparoscopic appendicectomy',
    casesPerYear: 190,
    minutes: 60,
    ageYears: 28,
    weightKg: 72,
    pneumoperitoneum: 'intraperitoneal',
    theatreGroups: { main: 100 }
  },
  {
    ...adult,
    id: 'lap-colon',
    name: 'Laparoscopic bowel resection',
    casesPerYear: 130,
    minutes: 190,
    ageYears: 67,
    weightKg: 76,
    agent: 'isoflurane',
    targetMac: 0.9,
    pneumoperitoneum: 'intraperitoneal',
    theatreGroups: { main: 100 }
  },
  {
    ...adult,
    id: 'lap-gynae',
    name: 'Gynaecological laparoscopy',
    casesPerYear: 310,
    minutes: 70,
    ageYears: 36,
    weightKg: 68,
    pneumoperitoneum: 'gynaecological',
    theatreGroups: { day: 30 }
  },
  {
    ...adult,
    id: 'lap-bariatric',
    name: 'Laparoscopic weight-loss surgery',
    casesPerYear: 85,
    minutes: 110,
    ageYears: 44,
    weightKg: 128,
    agent: 'isoflurane',
    targetMac: 0.9,
    pneumoperitoneum: 'intraperitoneal',
    theatreGroups: { main: 100 }
  },
  {
    ...adult,
    id: 'open-abdomen',
    name: 'Open abdominal surgery',
    casesPerYear: 140,
    minutes: 165,
    ageYears: 64,
    weightKg: 77,
    theatreGroups: { main: 100 }
  },
  {
    ...adult,
    id: 'breast',
    name: 'Breast surgery',
    casesPerYear: 240,
    minutes: 85,
    ageYears: 58,
    weightKg: 70,
    neuromuscularBlock: false,
    airway: 'supraglottic'
  },
  {
    ...adult,
    id: 'fracture',
    name: 'Fracture fixation',
    casesPerYear: 280,
    minutes: 95,
    ageYears: 52,
    weightKg: 76,
    targetMac: 0.9,
    theatreGroups: { main: 100 }
  },
  {
    ...adult,
    id: 'lap-child',
    name: 'Child, laparoscopic appendicectomy',
    casesPerYear: 60,
    minutes: 55,
    ageYears: 9,
    weightKg: 30,
    pneumoperitoneum: 'intraperitoneal',
    theatreGroups: { main: 100 }
  },
  {
    ...adult,
    id: 'child-day',
    name: 'Child, day surgery',
    casesPerYear: 330,
    minutes: 35,
    ageYears: 4,
    weightKg: 17,
    neuromuscularBlock: false,
    airway: 'supraglottic',
    nitrousOxidePercent: 50,
    theatreGroups: { day: 100 }
  },
  {
    ...adult,
    id: 'thyroid',
    name: 'Neck surgery, intravenous',
    casesPerYear: 120,
    minutes: 120,
    technique: 'intravenous',
    agent: null,
    targetMac: null,
    theatreGroups: { main: 100 }
  },
  {
    ...adult,
    id: 'hip',
    name: 'Hip replacement, spinal',
    casesPerYear: 210,
    minutes: 90,
    ageYears: 72,
    technique: 'regional',
    agent: null,
    targetMac: null,
    neuromuscularBlock: false,
    airway: 'none',
    theatreGroups: { main: 100 }
  }
];

const phase = (name: string, minutes: number | null, flowLPerMin: number): Phase => ({
  name,
  minutes,
  flowLPerMin,
  flowAsNeeded: false,
  vaporiser: 'hold',
  dialPercent: null
});

const machine: Omit<Machine, 'id' | 'name'> = {
  kind: 'circle',
  circuitVolumeL: 7,
  leakMlPerMin: 120,
  sampleMlPerMin: 200,
  sampleReturned: false,
  minimumFlowLPerMin: 0.5,
  canFlowAsNeeded: false,
  spillShareInspiredFraction: null,
  powerW: 97,
  unitPrice: '0',
  tradeInPerUnit: '0',
  installationPerUnit: '0',
  servicePerUnitPerYear: '1450.00',
  lifeYears: 10,
  manufactureKgCo2ePerUnit: null,
  absorbent: 'soda-lime',
  monitors: ['inspired-oxygen', 'airway-pressure', 'exhaled-volume', 'disconnect-alarm']
};

const fullMonitoring: Machine['monitors'] = [
  ...machine.monitors,
  'capnography',
  'agent-concentration',
  'nitrous-oxide-concentration'
];

const scenario: Omit<Scenario, 'id' | 'name'> = {
  baseline: false,
  moves: [],
  plans: {},
  spares: 0,
  flowPlanByCase: {},
  agentSwitch: {},
  intravenousPercentByCase: {},
  regionalPercentByCase: {},
  adoptionPercent: 100,
  adoptionFirstYearsPercent: null,
  adoptionWithoutMachinePercent: null,
  capturePercent: 0,
  caughtLostPercent: null,
  caughtBecomes: 'not-known',
  captureDevicePrice: '0',
  captureFeePerYear: '0',
  canisterPrice: '0',
  canisterHoldsG: null,
  scavengingPumpHoursPerWeek: null,
  nitrousOxideSupply: 'as-today',
  nitrousOxideSupplyYear: 0,
  nitrousOxideLossPercent: 2,
  nitrousOxideSupplyCost: '0',
  oneOffCost: '0',
  yearlyExtraCost: '0',
  extraCostLever: 'flow',
  recoveryMinutesSavedPerCase: 0,
  machinesStay: false,
  avoidedPurchases: []
};

/** Bought for all theatres of a group that are left, now, unless said otherwise. */
const move = (theatreGroup: string, machineId: string, otherwise: Partial<Move> = {}): Move => ({
  theatreGroup,
  machine: machineId,
  year: 0,
  theatres: null,
  payment: null,
  ...otherwise
});

const inGroup: Omit<TheatreGroup, 'id' | 'name' | 'theatres' | 'machineAgeYears' | 'monitors'> = {
  machine: 'm-old',
  staffedHoursPerTheatre: 1500,
  roomVolumeM3: 110,
  airChangesPerH: 20,
  scavengingPercent: 95,
  airMixingPercent: 100,
  scavengingPumpKW: null,
  scavengingPumpHoursPerWeek: null
};

/** An invented hospital with invented prices, so that a first visit shows results at once. */
export function demoWorkbook(): Workbook {
  const blank = blankWorkbook();
  return {
    ...blank,
    // What it shows rests on this set: a newer one is a move, as for everybody.
    referenceSet: '2026-2',
    invented: true,
    title: 'Invented hospital, invented prices',
    site: {
      ...blank.site,
      jurisdiction: 'european-union',
      monitoringStandard: 'association-of-anaesthetists',
      electricityPricePerKWh: '0.25',
      electricityKgCo2ePerKWh: 0.3,
      departmentFootprintTonnes: 160
    },
    accounting: { ...blank.accounting, counterfactual: 'replaced-at-end-of-life' },
    theatreGroups: [
      {
        ...inGroup,
        id: 'main',
        name: 'Main theatres',
        theatres: 3,
        machineAgeYears: 8,
        monitors: {
          'pulse-oximetry': 3,
          'non-invasive-blood-pressure': 3,
          ecg: 3,
          capnography: 3,
          'agent-concentration': 2,
          temperature: 3,
          neuromuscular: 2,
          'processed-eeg': 1
        }
      },
      {
        ...inGroup,
        id: 'day',
        name: 'Day surgery',
        theatres: 1,
        machineAgeYears: 9,
        monitors: {
          'pulse-oximetry': 1,
          'non-invasive-blood-pressure': 1,
          ecg: 1,
          capnography: 0,
          'agent-concentration': 0,
          temperature: 1,
          neuromuscular: 0,
          'processed-eeg': 0
        }
      }
    ],
    agents: [
      {
        agent: 'sevoflurane',
        bottleMl: 250,
        bottlePrice: '118.00',
        unusablePercent: 1,
        bottlesBoughtPerYear: 232,
        bottlesUsedElsewherePerYear: null,
        scaleToPurchases: false,
        manufactureKgCo2ePerKg: null
      },
      {
        agent: 'isoflurane',
        bottleMl: 250,
        bottlePrice: '34.00',
        unusablePercent: 1,
        bottlesBoughtPerYear: 38,
        bottlesUsedElsewherePerYear: null,
        scaleToPurchases: false,
        manufactureKgCo2ePerKg: null
      }
    ],
    gases: {
      oxygenPerM3: '0.90',
      airPerM3: '0.05',
      nitrousOxidePerKg: '4.00',
      nitrousOxideBoughtKgPerYear: 180
    },
    intravenous: {
      ...blank.intravenous,
      propofolPricePerG: '5.00',
      otherDrugsPerH: '2.50',
      disposablesPerCase: '9.00',
      eegSensorPrice: '18.00',
      eegSensorCasesPercent: 70
    },
    regional: { ...blank.regional, pricePerCase: '26.00' },
    absorbents: [
      { id: 'soda-lime', name: 'Soda lime', capacityLPerKg: 120, pricePerKg: '9.00', kgCo2ePerKg: null },
      {
        id: 'alkali-free',
        name: 'Alkali-free lime',
        capacityLPerKg: 66,
        pricePerKg: '17.00',
        kgCo2ePerKg: null
      }
    ],
    caseMix,
    flowPlans: [
      {
        id: 'usual',
        name: 'Usual practice',
        phases: [phase('Wash-in', 10, 6), phase('Maintenance', null, 2)]
      },
      { id: 'low', name: 'Low flow', phases: [phase('Wash-in', 5, 6), phase('Maintenance', null, 1)] },
      {
        id: 'minimal',
        name: 'Minimal flow',
        phases: [phase('Wash-in', 4, 6), phase('Maintenance', null, 0.5)]
      },
      {
        id: 'closed',
        name: 'Closed circuit',
        phases: [phase('Wash-in', 3, 4), phase('Maintenance', null, 0.3)]
      }
    ],
    machines: [
      {
        ...machine,
        id: 'm-old',
        name: 'Machines of today',
        unitPrice: '18000.00',
        installationPerUnit: '800.00'
      },
      {
        ...machine,
        id: 'm-closed',
        name: 'Closed-circuit ventilator A',
        kind: 'closed-circuit',
        circuitVolumeL: 5,
        leakMlPerMin: 30,
        sampleReturned: true,
        minimumFlowLPerMin: 0.25,
        unitPrice: '29500.00',
        tradeInPerUnit: '2500.00',
        installationPerUnit: '1200.00',
        servicePerUnitPerYear: '1600.00',
        monitors: fullMonitoring
      },
      {
        ...machine,
        id: 'm-circle',
        name: 'Low-flow circle system B',
        circuitVolumeL: 5.5,
        leakMlPerMin: 60,
        sampleReturned: true,
        minimumFlowLPerMin: 0.4,
        unitPrice: '21000.00',
        tradeInPerUnit: '2500.00',
        installationPerUnit: '900.00',
        servicePerUnitPerYear: '1500.00',
        absorbent: 'alkali-free',
        monitors: fullMonitoring
      }
    ],
    scenarios: [
      { ...scenario, id: 'today', name: 'Today', baseline: true, plans: { 'm-old': 'usual' } },
      {
        ...scenario,
        id: 'habit',
        name: 'Low flow, same machines',
        plans: { 'm-old': 'low' },
        adoptionPercent: 70,
        oneOffCost: '3000.00'
      },
      {
        ...scenario,
        id: 'circle',
        name: 'Circle system B, minimal flow',
        moves: [move('main', 'm-circle'), move('day', 'm-circle')],
        plans: { 'm-circle': 'minimal' },
        adoptionPercent: 85,
        adoptionWithoutMachinePercent: 60,
        agentSwitch: { isoflurane: 'sevoflurane' },
        oneOffCost: '4000.00'
      },
      {
        ...scenario,
        id: 'closed',
        name: 'Closed-circuit A',
        moves: [move('main', 'm-closed', { theatres: 2 }), move('main', 'm-closed', { year: 2 })],
        plans: { 'm-closed': 'closed', 'm-old': 'low' },
        adoptionPercent: 90,
        adoptionWithoutMachinePercent: 60,
        agentSwitch: { isoflurane: 'sevoflurane' },
        oneOffCost: '5000.00'
      }
    ],
    monitorPrices: [
      { item: 'pulse-oximetry', unitPrice: '900.00' },
      { item: 'non-invasive-blood-pressure', unitPrice: '700.00' },
      { item: 'ecg', unitPrice: '800.00' },
      { item: 'capnography', unitPrice: '2600.00' },
      { item: 'agent-concentration', unitPrice: '3900.00' },
      { item: 'temperature', unitPrice: '350.00' },
      { item: 'neuromuscular', unitPrice: '1900.00' },
      { item: 'processed-eeg', unitPrice: '4200.00' }
    ],
    ranges: {
      'caseMix.lap-chole.minutes': { low: 60, high: 95 },
      'caseMix.lap-colon.minutes': { low: 150, high: 260 },
      'agents.sevoflurane.bottlePrice': { low: 85, high: 140 },
      'machines.m-closed.unitPrice': { low: 26000, high: 36000 },
      'scenarios.closed.adoptionPercent': { low: 60, high: 97 },
      'flowPlans.usual.phases.1.flowLPerMin': { low: 1.5, high: 3 }
    },
    sampling: { ...blank.sampling, overSpillShare: false }
  };
}
