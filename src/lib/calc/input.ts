/**
 * What the core takes: the workbook's figures, checked, with the reference set in place of its name. Field for field
 * the workbook of version 2, so that a cell's path means the same on both sides. Money is a decimal string.
 */
import type { Jurisdiction } from './reference/agent-restrictions.ts';
import type { Constant } from './reference/constant.ts';
import type { AirLimitPlace } from './reference/exposure-limit-terms.ts';
import type { ReferenceSet } from './reference/reference-set.ts';

export const agents = ['sevoflurane', 'isoflurane', 'desflurane', 'halothane', 'enflurane'] as const;
export type Agent = (typeof agents)[number];

export const bodyModels = ['eger', 'reference-adult', 'two-fat'] as const;
export type BodyModel = (typeof bodyModels)[number];

/** Published sets of MAC by age. */
export const macSets = ['mapleson', 'sevoflurane-label', 'textbook'] as const;
export type MacSet = (typeof macSets)[number];

/** Groups of blood/gas partition coefficients: the reference set's own, or those measured in 120 patients. */
export const solubilityGroups = ['of-the-set', 'patients'] as const;
export type SolubilityGroup = (typeof solubilityGroups)[number];

export const warmingSets = ['AR6', 'AR5', 'literature-2012', 'literature-2021', 'custom'] as const;
export type WarmingSet = (typeof warmingSets)[number];

export const monitoringStandards = [
  'who-wfsa',
  'asa',
  'association-of-anaesthetists',
  'cas',
  'anzca',
  'jsa'
] as const;
export type MonitoringStandard = (typeof monitoringStandards)[number];

export const monitorItems = [
  'pulse-oximetry',
  'non-invasive-blood-pressure',
  'ecg',
  'capnography',
  'inspired-oxygen',
  'agent-concentration',
  'nitrous-oxide-concentration',
  'airway-pressure',
  'exhaled-volume',
  'disconnect-alarm',
  'temperature',
  'neuromuscular',
  'processed-eeg',
  'arterial-blood-gas'
] as const;
export type MonitorItem = (typeof monitorItems)[number];

export const techniques = ['volatile', 'intravenous', 'regional'] as const;
export type Technique = (typeof techniques)[number];

export const pneumoperitoneums = ['none', 'intraperitoneal', 'gynaecological', 'extraperitoneal'] as const;
export type Pneumoperitoneum = (typeof pneumoperitoneums)[number];

export const airways = ['tracheal-tube', 'supraglottic', 'mask', 'none'] as const;
export type Airway = (typeof airways)[number];

export const vaporiserModes = ['hold', 'dial', 'off'] as const;
export type VaporiserMode = (typeof vaporiserModes)[number];

export const machineKinds = ['closed-circuit', 'circle', 'other'] as const;
export type MachineKind = (typeof machineKinds)[number];

/** A decimal number as text, e.g. `118.00`. */
export type Money = string;

/** How the figures are known that a year's emissions are counted from, the best first. */
export const activityGrades = ['measured', 'records', 'estimated', 'assumed'] as const;
export type ActivityGrade = (typeof activityGrades)[number];

export interface Site {
  readonly theatreTemperatureC: number;
  readonly ambientPressureKPa: number;
  readonly monitoringStandard: MonitoringStandard;
  /** WHO-WFSA facility level 1 to 3; null: not given, all three levels shown. */
  readonly facilityLevel: number | null;
  readonly electricityPricePerKWh: Money;
  readonly electricityKgCo2ePerKWh: number;
  readonly departmentFootprintTonnes: number | null;
  /** Where the hospital is, for statements on restricted agents; null: not given, and nothing is said of them. */
  readonly jurisdiction: Jurisdiction | null;
  /** Given in place of an agent that a law restricts; null: no lawful practice is compared with. */
  readonly lawfulAgentInstead: Agent | null;
  /** Share of today's cases with a restricted agent that are not exempt. */
  readonly lawfulSharePercent: number;
  /** By contract (market-based), beside the total; null: not given. */
  readonly electricityMarketKgCo2ePerKWh: number | null;
  /** Electricity to compress and dry air, beside the total; null: not given. */
  readonly medicalAirKWhPerM3: number | null;
  /** Of making the consumables of a general anaesthetic; null: not given, and left out. */
  readonly consumablesKgCo2ePerCase: number | null;
  /** The year that today stands for, in an inventory; null: not given. No figure rests on it, or on how data are known. */
  readonly baseYear: number | null;
  readonly casesKnownBy: ActivityGrade | null;
  readonly durationsKnownBy: ActivityGrade | null;
  readonly bottlesKnownBy: ActivityGrade | null;
  readonly nitrousOxideKnownBy: ActivityGrade | null;
  readonly electricityKnownBy: ActivityGrade | null;
  /** Whose limits theatre air is held against; null: none is chosen, and it is held against none. */
  readonly airLimitsOf: AirLimitPlace | null;
  /** Of the room in which patients recover; null: not given, and no concentration is told. */
  readonly recoveryRoomVolumeM3: number | null;
  readonly recoveryAirChangesPerH: number | null;
  /** Hours a year in which it is open. */
  readonly recoveryHoursPerYear: number | null;
  /** Share of what patients took up that they breathe out there. */
  readonly recoveryGivenOffPercent: number;
}

/** Whether today's machines, where they stay, are bought again at the end of their life. One choice for all options. */
export const counterfactuals = ['machines-last', 'replaced-at-end-of-life'] as const;
export type Counterfactual = (typeof counterfactuals)[number];

export interface Accounting {
  readonly warmingSet: WarmingSet;
  readonly warmingHorizonYears: 20 | 100 | 500;
  /** Warming potentials of the user's own, kg CO2e per kg; needed where `warmingSet` is `custom`. */
  readonly customWarming: Readonly<Partial<Record<Agent | 'nitrous-oxide', number>>>;
  readonly discountRatePercent: number;
  readonly appraisalYears: number;
  readonly paybackLimitYears: number;
  readonly carbonPricePerTonne: Money;
  readonly agentGrowthPercent: number;
  readonly serviceGrowthPercent: number;
  readonly carbonGrowthPercent: number;
  readonly recoveryMinuteValue: Money;
  readonly bodyModel: BodyModel;
  readonly macSet: MacSet;
  readonly solubilityGroup: SolubilityGroup;
  /** What a machine is worth at the end of the appraisal: nothing, or its price less straight-line wear. */
  readonly residualValue: 'none' | 'straight-line';
  readonly counterfactual: Counterfactual;
  /** What a department is charged a year for capital that is not written off; 0: no charge. */
  readonly capitalChargePercent: number;
  /** Rate of tax on what is saved; 0: none is paid. */
  readonly taxPercent: number;
}

/** Theatres that are alike: the same machine of today, the same room. */
export interface TheatreGroup {
  readonly id: string;
  readonly name: string;
  readonly theatres: number;
  /** Id of the machine that stands in each of them today. */
  readonly machine: string;
  /** Age of the machines of today; null: not given. */
  readonly machineAgeYears: number | null;
  /** Hours a year for which one theatre is staffed; null: not given, and no capacity is told. */
  readonly staffedHoursPerTheatre: number | null;
  /** null: not given, as air changes and scavenging; no concentration is then told. */
  readonly roomVolumeM3: number | null;
  readonly airChangesPerH: number | null;
  readonly scavengingPercent: number | null;
  /** Share of the air changes that reaches the air that is breathed. */
  readonly airMixingPercent: number;
  /** Power of scavenging in one theatre; null: not given, and its electricity is not counted. */
  readonly scavengingPumpKW: number | null;
  /** Hours a week in which the pumps run today; null likewise. */
  readonly scavengingPumpHoursPerWeek: number | null;
  /** Theatres that have an item today; an item that is absent was not counted, and nobody can tell. */
  readonly monitors: Readonly<Partial<Record<MonitorItem, number>>>;
}

export interface AgentSupply {
  readonly agent: Agent;
  readonly bottleMl: number;
  readonly bottlePrice: Money;
  /** Share of a bottle that cannot be used (residue, spillage at filling). */
  readonly unusablePercent: number;
  readonly bottlesBoughtPerYear: number | null;
  /** Of these, those used outside the theatres (obstetrics, intensive care) or put in stock; null: none. */
  readonly bottlesUsedElsewherePerYear: number | null;
  readonly scaleToPurchases: boolean;
  /** Of making a kilogram of the liquid; null: not given, and left out. */
  readonly manufactureKgCo2ePerKg: number | null;
}

export interface GasSupply {
  readonly oxygenPerM3: Money;
  readonly airPerM3: Money;
  readonly nitrousOxidePerKg: Money;
  readonly nitrousOxideBoughtKgPerYear: number | null;
}

/** What intravenous anaesthesia takes, beyond what a volatile case uses as well. */
export interface IntravenousSupply {
  readonly propofolMgPerKgPerH: number;
  /** Share of what is drawn up that no patient gets. */
  readonly propofolWastedPercent: number;
  readonly propofolPricePerG: Money;
  /** Other drugs of an hour. */
  readonly otherDrugsPerH: Money;
  /** Pump lines, syringes and getting rid of them. */
  readonly disposablesPerCase: Money;
  readonly eegSensorPrice: Money;
  /** Share of the cases in which a sensor of processed EEG is used. */
  readonly eegSensorCasesPercent: number;
}

/** What regional anaesthesia takes. */
export interface RegionalSupply {
  /** Drugs, needle or set, and getting rid of them. */
  readonly pricePerCase: Money;
  /** null: not given, and not counted. */
  readonly kgCo2ePerCase: number | null;
}

export interface Absorbent {
  readonly id: string;
  readonly name: string;
  readonly capacityLPerKg: number;
  readonly pricePerKg: Money;
  readonly kgCo2ePerKg: number | null;
}

export interface CaseRow {
  readonly id: string;
  readonly name: string;
  readonly casesPerYear: number;
  readonly minutes: number;
  readonly ageYears: number;
  readonly weightKg: number;
  readonly technique: Technique;
  /** Given where the technique is volatile. */
  readonly agent: Agent | null;
  /** Multiple of age-adjusted MAC; given where the technique is volatile. */
  readonly targetMac: number | null;
  readonly nitrousOxidePercent: number;
  readonly inspiredOxygenPercent: number;
  readonly pneumoperitoneum: Pneumoperitoneum;
  readonly neuromuscularBlock: boolean;
  readonly airway: Airway;
  /** The user's own measured liquid per case under today's practice; replaces the estimate of the baseline. */
  readonly measuredMlPerCase: number | null;
  /**
   * Theatre group id → share of the cases that are done there. Groups without a share of their own have what is left, in
   * proportion to their theatres; empty: all cases in proportion.
   */
  readonly theatreGroups: Readonly<Record<string, number>>;
}

export interface Phase {
  readonly name: string;
  /** null: the rest of the case; exactly one phase of a plan. */
  readonly minutes: number | null;
  readonly flowLPerMin: number;
  /**
   * True: a machine that can lets the flow follow what patient and circuit take, from moment to moment, and injects the
   * vapour, so that no dial limits it. On any other the phase is run at `flowLPerMin`.
   */
  readonly flowAsNeeded: boolean;
  readonly vaporiser: VaporiserMode;
  /** With `dial` the setting, with `hold` an upper limit. */
  readonly dialPercent: number | null;
}

export interface FlowPlan {
  readonly id: string;
  readonly name: string;
  readonly phases: readonly Phase[];
}

export interface Machine {
  readonly id: string;
  readonly name: string;
  readonly kind: MachineKind;
  /** null: the cited default. */
  readonly circuitVolumeL: number | null;
  readonly leakMlPerMin: number;
  readonly sampleMlPerMin: number;
  readonly sampleReturned: boolean;
  readonly minimumFlowLPerMin: number;
  readonly canFlowAsNeeded: boolean;
  /**
   * Share of the spilled gas that leaves as inspired gas, 0 to 1; the rest leaves as it is breathed out. null: all of it,
   * as in a circuit in which gas mixes before it is spilled.
   */
  readonly spillShareInspiredFraction: number | null;
  /** null: the cited default. */
  readonly powerW: number | null;
  readonly unitPrice: Money;
  readonly tradeInPerUnit: Money;
  readonly installationPerUnit: Money;
  readonly servicePerUnitPerYear: Money;
  readonly lifeYears: number;
  /** Of making one, spread over its life; null: not given, and left out. */
  readonly manufactureKgCo2ePerUnit: number | null;
  readonly absorbent: string;
  readonly monitors: readonly MonitorItem[];
}

/** What a scenario may change, each of which is on or off by itself when a saving is taken apart. */
export const levers = [
  'agent',
  'technique',
  'flow',
  'machine',
  'adoption',
  'capture',
  'nitrous-oxide',
  'scavenging'
] as const;
export type Lever = (typeof levers)[number];

/** A purchase that the scenario makes unnecessary: old machines that would have been replaced anyway. */
export interface AvoidedPurchase {
  /** Years from now, 0 for now. */
  readonly year: number;
  readonly units: number;
  readonly unitPrice: Money;
}

/** How machines are paid for that are not bought. */
export interface Payment {
  readonly kind: 'lease' | 'managed';
  /** Of the first year. */
  readonly perUnitPerYear: Money;
  readonly includesService: boolean;
  /** Whether the absorbent is in it that is used on these machines. */
  readonly includesConsumables: boolean;
  readonly growthPercent: number;
  /** At the start of each year; otherwise at its end. */
  readonly inAdvance: boolean;
  readonly termYears: number;
  readonly atEnd: 'return' | 'buy' | 'renew';
  readonly endPricePerUnit: Money;
}

/** A machine that comes to theatres of a group. */
export interface Move {
  /** Id of the group. */
  readonly theatreGroup: string;
  /** Id of the machine that comes. */
  readonly machine: string;
  /** Years from the decision, 0 for now: paid then, and in use from the year after. */
  readonly year: number;
  /** How many theatres of the group; null: all that are left with another machine. */
  readonly theatres: number | null;
  /** null: bought. */
  readonly payment: Payment | null;
}

/** Pipes as they are, pipes whose leaks are mended, cylinders at the machines with the pipes closed, or none at all. */
export const nitrousOxideSupplies = ['as-today', 'pipes', 'cylinders', 'none'] as const;
export type NitrousOxideSupply = (typeof nitrousOxideSupplies)[number];

/** What becomes of agent that is caught and not lost again; `not-known` counts as caught, and is said. */
export const caughtBecoming = ['destroyed', 'recovered', 'not-known'] as const;
export type CaughtBecomes = (typeof caughtBecoming)[number];

export interface Scenario {
  readonly id: string;
  readonly name: string;
  readonly baseline: boolean;
  /** What comes where, and when; theatres that no move names keep the machine of today. */
  readonly moves: readonly Move[];
  /** Machine id → id of the plan that cases follow on it; on a machine without one, today's plan of the theatre. */
  readonly plans: Readonly<Record<string, string>>;
  /** Machines that are bought beyond those that go to theatres, with the last move and of its kind. */
  readonly spares: number;
  /** Case-mix row id → flow plan id, where a row departs from the plan of the machine. */
  readonly flowPlanByCase: Readonly<Record<string, string>>;
  /** Agent → agent given instead. */
  readonly agentSwitch: Readonly<Partial<Record<Agent, Agent>>>;
  /** Case-mix row id → share of its cases that become intravenous, of those that follow the scenario. */
  readonly intravenousPercentByCase: Readonly<Record<string, number>>;
  /** The same of those that become regional. */
  readonly regionalPercentByCase: Readonly<Record<string, number>>;
  readonly adoptionPercent: number;
  /** The shares of the first years, before `adoptionPercent` is reached; null: it is so from the first year on. */
  readonly adoptionFirstYearsPercent: readonly number[] | null;
  /** The share that would follow on today's machines; null: the same share, so adoption is nothing the machine brings. */
  readonly adoptionWithoutMachinePercent: number | null;
  /** Share of the agent that leaves by the exhaust which is captured; what leaks or is taken up is out of its reach. */
  readonly capturePercent: number;
  /** Share of what is caught that is lost again, in storage or where it is emptied; null: none is counted. */
  readonly caughtLostPercent: number | null;
  readonly caughtBecomes: CaughtBecomes;
  /** For each theatre, paid once, now. */
  readonly captureDevicePrice: Money;
  readonly captureFeePerYear: Money;
  /** Of a full one, with its exchange. */
  readonly canisterPrice: Money;
  /** Agent that a full canister holds; null: not given, and canisters are not counted. */
  readonly canisterHoldsG: number | null;
  /** Hours a week in which scavenging pumps run, at most; null: as today. */
  readonly scavengingPumpHoursPerWeek: number | null;
  /** How nitrous oxide reaches the machines; `as-today`: what is lost today goes on being lost. */
  readonly nitrousOxideSupply: NitrousOxideSupply;
  /** Years from the decision at whose end the supply changes, 0 for now. */
  readonly nitrousOxideSupplyYear: number;
  /** Of what is bought then. */
  readonly nitrousOxideLossPercent: number;
  /** Once, in that year. */
  readonly nitrousOxideSupplyCost: Money;
  readonly oneOffCost: Money;
  readonly yearlyExtraCost: Money;
  /** What the one-off cost, the yearly extra cost and the recovery minutes belong to. */
  readonly extraCostLever: Lever;
  readonly recoveryMinutesSavedPerCase: number;
  /** Nothing is bought: theatres that would move follow the plan on the machine that stands there. */
  readonly machinesStay: boolean;
  readonly avoidedPurchases: readonly AvoidedPurchase[];
}

export interface MonitorPrice {
  readonly item: MonitorItem;
  readonly unitPrice: Money;
}

/** What the user holds possible for one cell; the cell's own value is the mode. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** How the what-if draws are made. */
export interface Sampling {
  readonly draws: number;
  readonly seed: number;
  readonly shape: 'pert' | 'triangular';
  /** All cases longer or shorter together. */
  readonly minutesTogether: boolean;
  /** Draw over the three body models, instead of keeping the chosen one. */
  readonly overBodyModels: boolean;
  /** Draw the model's own error as well, as it is against what was measured. */
  readonly overModelError: boolean;
  /** Draw where gas is spilled, on machines that say nothing of it. */
  readonly overSpillShare: boolean;
}

/** Factors on the model's figures, for its own error. */
export interface ModelErrorFactors {
  readonly uptakeFactor: number;
  readonly spillFactor: number;
}

/** By agent, and of nitrous oxide, kg CO2e per kg. */
export type Potentials = Readonly<Partial<Record<Agent | 'nitrous-oxide', Constant>>>;

export interface EstimateInput {
  readonly title: string;
  /** True for the demo: every page and file that shows its figures says that they are invented. */
  readonly invented: boolean;
  readonly currency: string;
  readonly priceYear: number;
  readonly reference: ReferenceSet;
  readonly site: Site;
  readonly accounting: Accounting;
  readonly theatreGroups: readonly TheatreGroup[];
  readonly agents: readonly AgentSupply[];
  readonly gases: GasSupply;
  readonly intravenous: IntravenousSupply;
  readonly regional: RegionalSupply;
  readonly absorbents: readonly Absorbent[];
  readonly caseMix: readonly CaseRow[];
  readonly flowPlans: readonly FlowPlan[];
  readonly machines: readonly Machine[];
  readonly scenarios: readonly Scenario[];
  readonly monitorPrices: readonly MonitorPrice[];
  /** By cell path. */
  readonly ranges: Readonly<Record<string, Range>>;
  readonly sampling: Sampling;
  /** Beside the answer alone: potentials in place of the chosen set's. */
  readonly potentials?: Potentials;
  /** In a draw of an uncertainty run alone; left out, the model's figures are taken as they are. */
  readonly modelError?: ModelErrorFactors;
}
