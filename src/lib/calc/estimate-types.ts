/** What the core gives: the estimate of version 1, plain numbers and decimal strings, ready for JSON. */
import type { Agent, Lever, MonitorItem, Technique } from './input.ts';
import type { CaseMethod, CaseWarning, FlowClass } from './case/case-result.ts';
import type { ReconciliationFinding } from './year/reconciliation.ts';

export interface AgentYear {
  liquidMl: number;
  bottles: number;
  cost: string;
  /** Estimate ÷ purchases of the baseline; null where no purchases were given. */
  estimateOverPurchase: number | null;
}

export interface CostLines {
  agents: string;
  gases: string;
  absorbent: string;
  /** Of intravenous and regional anaesthesia, with lines, sensors and material. */
  drugs: string;
  /** Canisters and fees of capture; its devices are an investment. */
  capture: string;
  service: string;
  electricity: string;
  other: string;
  /** Beside the cash: emissions at the carbon price. */
  carbon: string;
  /** Beside the cash: value of recovery minutes saved, zero or negative. */
  recovery: string;
  /** Cash: all lines but carbon and recovery. */
  total: string;
}
export type CostLine = Exclude<keyof CostLines, 'total'>;
/** Lines that nobody is billed for, or paid: they stand beside the cash and are in no total of it. */
export type ShadowLine = 'carbon' | 'recovery';
export type CashLine = Exclude<CostLine, ShadowLine>;

export interface Co2eLines {
  agents: number;
  nitrousOxide: number;
  nitrousOxideLost: number;
  gases: number;
  absorbent: number;
  electricity: number;
  intravenous: number;
  /** Of making agents, machines and consumables, as far as figures are entered. */
  manufacture: number;
  total: number;
}
export type Co2eLine = Exclude<keyof Co2eLines, 'total'>;

export interface ScenarioYear {
  agents: Partial<Record<Agent, AgentYear>>;
  oxygenM3: number;
  airM3: number;
  nitrousOxideKg: number;
  absorbentKg: number;
  electricityKWh: number;
  intravenousCases: number;
  /** Of them, what is wasted is in `propofolWastedG`. */
  propofolDrawnUpG: number;
  propofolWastedG: number;
  eegSensors: number;
  regionalCases: number;
  cost: CostLines;
  co2eKg: Co2eLines;
}

export interface CaseEstimate {
  caseId: string;
  flowPlan: string;
  /** Of the case that is told of: one that keeps the row’s technique, where any does. */
  technique: Technique;
  agent: Agent | null;
  method: CaseMethod;
  liquidMl: number;
  takenUpMl: number;
  spilledMl: number;
  leftMl: number;
  floorMl: number;
  constantDialMl: number;
  constantDialVapourAddedMl: number;
  minutesToTarget: number | null;
  minutesBelowTarget: number;
  macHours: number;
  meanFlowLPerMin: number;
  flowClasses: FlowClass[];
  oxygenL: number;
  airL: number;
  nitrousOxideL: number;
  absorbentKg: number;
  co2eKg: number;
  cost: string;
  warnings: CaseWarning[];
}

/** A figure that could not be computed, and why. */
export interface FailedCell {
  path: string;
  sentence: string;
}

/** One row of the year-by-year table, money against the baseline. */
export interface YearRow {
  year: number;
  investment: string;
  /** Of it, what is paid for machines that are not bought. */
  payments: string;
  savings: Record<CostLine, string>;
  /** Cash: of all lines but carbon and recovery, as are all sums. */
  saving: string;
  net: string;
  cumulative: string;
  discounted: string;
  cumulativeDiscounted: string;
}

/**
 * Why a sum that stood at 0 or above fell below it: machines replaced at the end of their life, more bought later, or a
 * yearly cost beyond today's.
 */
export type FallCause = 'replacement' | 'later-purchase' | 'payment' | 'yearly-cost';

/** A time during which the cumulative cash flow stands at 0 or above, and after which it falls below 0. */
export interface AheadForATime {
  fromYears: number;
  untilYears: number;
  cause: FallCause;
}

/** A scenario against today's practice. All money is cash but that of `shadow`. */
export interface AgainstBaseline {
  yearlySaving: string;
  co2eAvoidedKg: number;
  /** Year by year with the machines that stand in it, undiscounted. */
  co2eAvoidedOverAppraisalKg: number;
  /** Of the department's footprint; null where that was not given, or is 0. */
  departmentSharePercent: number | null;
  investment: string;
  /**
   * The time after which the cumulative cash flow stays at or above 0 to the end of the appraisal, in years; 0: at once.
   * null: not within the appraisal, or nothing is invested and nothing saved.
   */
  simplePaybackYears: number | null;
  /** The same of the discounted cash flow. */
  discountedPaybackYears: number | null;
  /** Times at which a reader may take it for paid back, and it is not: in their order, none where there are none. */
  aheadForATime: AheadForATime[];
  npv: string;
  irrPercent: number | null;
  /** All rates at which the net present value is 0, where there is more than one. */
  irrAllPercent: number[];
  /** −NPV over the tonnes of the appraisal; null where none is avoided, or money is saved as well. */
  costPerTonneAvoided: string | null;
  /** The social view: cash together with the carbon price and the value of recovery minutes. */
  shadow: { yearlySaving: string; npv: string };
  equivalentAnnualCost: string | null;
  benefitCostRatio: number | null;
  totalCostOfOwnership: string;
  /** What machines are worth at the end, beyond today's: in the cash flow of the last year, and in no payback. */
  worthAtEnd: string;
  /** Year 0 first, up to the end of the appraisal. */
  years: YearRow[];
  /** The years 0 to 5 as a budget has them: above 0 is to be found. */
  budget: BudgetRow[];
  /** Capital charge and tax, in no other figure; null where both are off. */
  charges: { npvAfterTax: string; years: ChargesRow[] } | null;
}

/** Cash of a budget year beyond today's practice: above 0 it has to be found. */
export interface BudgetRow {
  year: number;
  /** Bought and paid once, less what is avoided or traded in. */
  once: string;
  /** Running cost, payments for machines that are not bought among it. */
  running: string;
  total: string;
}

/** What is charged in a year beyond today's practice. */
export interface ChargesRow {
  year: number;
  writtenOff: string;
  capitalCharge: string;
  /** Paid in this year, on the year before. */
  tax: string;
}

/** What one change of a scenario earns; the parts of all its changes add up to its `againstBaseline`. */
export interface LeverPart {
  lever: Lever;
  yearlySaving: string;
  co2eAvoidedKg: number;
  npv: string;
}

/** One rung of the ladder: what this change adds to those before it. */
export interface LadderStep extends LeverPart {
  investment: string;
}

/** The step from one alternative to another, every figure from the difference of their yearly cash flows. */
export interface StepFigures {
  yearlySaving: string;
  co2eAvoidedKg: number;
  investment: string;
  npv: string;
  simplePaybackYears: number | null;
  discountedPaybackYears: number | null;
  irrPercent: number | null;
}

/** An alternative of the list by outlay, in its order. */
export interface MoneyIncrement {
  /** Id of a scenario, or of its twin: the scenario’s id with `:without-machine`. */
  option: string;
  /** Ids of alternatives that are the same in outlay, net present value and tonnes. */
  sameAs: string[];
  status: 'today' | 'taken' | 'not-taken';
  /** The alternative that this step starts from: the last one taken. */
  against: string | null;
  /** Discounted outlay beyond today’s practice, by which the list is ordered. */
  presentValueOfOutlay: string;
  extraInvestment: string;
  extraYearlySaving: string;
  npv: string;
  simplePaybackYears: number | null;
  irrPercent: number | null;
  /** The two tests that a step must pass; null: today, where the list starts. */
  npvIsEnough: boolean | null;
  paybackIsWithinLimit: boolean | null;
}

/** An alternative of the list by tonnes, the cheapest first. */
export interface TonnesIncrement {
  option: string;
  /** Ids of alternatives that are the same in cost and tonnes. */
  sameAs: string[];
  status: 'first' | 'step' | 'dominated' | 'extendedly-dominated';
  /** The alternative compared with: the step before; of a dominated one, the one that beats it. */
  against: string | null;
  /** What beats it: one alternative, or two that do so together; of a step none. */
  beatenBy: string[];
  /** Its net present value with the sign of a cost, against today. */
  netPresentCost: string;
  /** Tonnes avoided over the appraisal, not discounted, against today. */
  tonnes: number;
  extraCost: string;
  extraTonnes: number;
  costPerTonne: string | null;
}

export type MonitoringLevel = 'required' | 'caution' | 'recommended' | 'suggested' | 'available';

export interface MonitoringNeed {
  /** A monitor, or a measure that is not a device (then no price and no stock). */
  item:
    | MonitorItem
    | 'anaesthesia-provider'
    | 'leak-test'
    | 'absorbent-check'
    | 'sevoflurane-flow-caution'
    | 'co2-at-intubation';
  level: MonitoringLevel;
  /** The standard's own word, e.g. `shall`. */
  word: string;
  /** Id of the document that asks for it, e.g. `cas`, `low-flow`. */
  standard: string;
  /** Whether the chosen standard asks, or what comes on top of any standard. */
  layer: 'standard' | 'laparoscopy' | 'low-flow' | 'label';
  /** Id of the rule. */
  rule: string;
  /** When the rule applies, in words. */
  trigger: string;
  /** `when-triggered`: only the patient on the day can tell; `why` then holds the rows in which it may happen. */
  applies: 'yes' | 'when-triggered';
  detail: string;
  evidence: string;
  /** Ids of the case-mix rows that trigger it. */
  why: string[];
  /** null: cannot tell, as the stock was not given, or a measure that is no device. */
  theatresMissing: number | null;
  cost: string | null;
}

/** Liquid agent of a year by where its vapour goes, if every case follows the scenario's own plan; the model's own figures. */
export interface VapourOnOwnPlan {
  takenUpMl: number;
  spilledMl: number;
  leftMl: number;
  togetherMl: number;
}

/** Where the mass of an agent goes in the settled year: delivered = metabolised + caught + vented. */
export interface AgentFateOfYear {
  deliveredKg: number;
  metabolisedKg: number;
  /** What stays caught. */
  caughtKg: number;
  ventedKg: number;
  /** Of the vented: caught first, and lost again. */
  caughtAndLostKg: number;
}

/** Emissions for a case, an hour and a MAC-hour; null: there is none to divide by. */
export interface Intensity {
  co2eKgPerCase: number | null;
  co2eKgPerHour: number | null;
  /** Of agents alone, over the MAC-hours that they make. */
  agentCo2eKgPerMacHour: number | null;
}

export interface IntensityOfScenario {
  /** Of the settled year: all lines of the total over all cases and their hours. */
  year: Intensity;
  /** That beyond today’s, of it, in per cent; null: there is nothing to compare with. Of today itself 0. */
  changePercent: Intensity;
  /** Of each agent alone, in the settled year, over the cases that it is given in. */
  agents: Partial<Record<Agent, Intensity>>;
  /** By case group: one of its cases on the scenario’s own plan, without what is lost from pipes. */
  cases: Record<string, Intensity>;
}

/** Lines of what was emitted in making what a year takes. */
export type MakingKind = 'makingAgents' | 'makingMachines' | 'makingConsumables';

/** Lines of the total, and what is told beside it. */
export type LedgerKind =
  | Exclude<Co2eLine, 'manufacture'>
  | MakingKind
  | 'regional'
  | 'lostAtFilling'
  | 'electricityByContract'
  | 'medicalAir';

/** A line of the ledger of emissions; null: not given, so missing and never 0. */
export interface LedgerLine {
  kind: LedgerKind;
  /** The agent, or the id of the absorbent or the machine. */
  subject: string | null;
  activity: number | null;
  activityUnit: string;
  factor: number | null;
  co2eKg: number | null;
  isInTotal: boolean;
}

/** A workplace limit of the chosen place, and the estimate beside it. */
export interface LimitHeldAgainst {
  /** Id of the limit's record, e.g. `exposure-limit.united-kingdom.isoflurane`. */
  limit: string;
  ppm: number;
  /** At the temperature that the limit refers to. */
  mgPerM3: number;
  /** `working-day`: against the mean; `while-given`: against the highest case group. */
  averaging: 'working-day' | 'while-given';
  /** null: there is no estimate. */
  sharePercent: number | null;
}

/** What one substance comes to in the air of theatres; null where a cell of the room is empty, and never 0 then. */
export interface TheatreAirLine {
  subject: Agent | 'nitrous-oxide';
  /** Id of the case group in which most escapes. */
  highestCase: string | null;
  escapingLPerMin: number | null;
  steadyPpm: number | null;
  endOfCasePpm: number | null;
  meanPpm: number | null;
  heldAgainst: LimitHeldAgainst[];
  /** Said where the chosen place has no limit on record: no all-clear. */
  noLimit: string | null;
  /** From clean air: through one case of that group, and after it. */
  course: { minute: number; ppm: number }[];
}

export interface RecoveryAirLine {
  subject: Agent;
  /** Of the hours in which the room is open. */
  meanPpm: number | null;
  heldAgainst: LimitHeldAgainst[];
  noLimit: string | null;
}

/** An estimate for planning, of the settled year; no substitute for measurement. */
export interface TheatreAir {
  rooms: {
    /** Ids of the theatre group, and of the machine that stands in these of its theatres. */
    theatreGroup: string;
    machine: string;
    /** Titles of the cells without which nothing is told. */
    missing: string[];
    lines: TheatreAirLine[];
  }[];
  recovery: { missing: string[]; lines: RecoveryAirLine[] };
}

/** What a source restricts and a scenario does all the same: never advice to do it. */
export interface Caution {
  id: 'sevoflurane-low-flow';
  level: 'caution';
  /** Id of the scenario. */
  scenario: string;
  /** Ids of the case-mix rows that it is about. */
  rows: string[];
  /** Cases a year that are done in theatres where the plan is beyond the label, before adoption is applied. */
  casesPerYear: number;
  /** The whole of it for a reader, counts included. */
  sentence: string;
  /** The source in one line, and how it is known. */
  source: string;
  evidence: string;
}

/** A law or policy on an agent that today's practice gives. */
export interface Restriction {
  id: string;
  agent: string;
  kind: 'law' | 'policy';
  /** False where it comes after the price year, within the appraisal. */
  inForce: boolean;
  /** The whole of it for a reader. */
  sentence: string;
  /** The source in one line, and how it is known. */
  source: string;
  evidence: string;
}

/** What a year of service costs, over a way's own life. */
export interface CostOfWay {
  lifeYears: number;
  presentValue: string;
  equivalentAnnualCost: string;
}

/** The machines of one move, paid for as entered and bought, over equal service. */
export interface WaysToPay {
  /** Place of the move among the scenario's. */
  move: number;
  /** Id of the machine. */
  machine: string;
  units: number;
  asEntered: CostOfWay;
  bought: CostOfWay;
  /** What is paid in each year of the term and what it is for; the parts add up. */
  fees: {
    year: number;
    fee: string;
    machine: string;
    service: string;
    consumables: string;
    growth: string;
  }[];
}

export interface ScenarioEstimate {
  id: string;
  perYear: ScenarioYear;
  cases: CaseEstimate[];
  againstBaseline: AgainstBaseline;
  /** By lever, those that the scenario uses; of the baseline none. null: a run that it needs failed. */
  attribution: LeverPart[] | null;
  /** The same levers one after the other, in the order of `levers`; `ladderInOrder` gives any other. */
  ladder: LadderStep[] | null;
  /** Its twin on today’s machines; null where the scenario changes no machine, or the run failed. */
  withoutMachine: AgainstBaseline | null;
  /** What the scenario has over its twin. */
  machineAdds: StepFigures | null;
  /** From lawful practice to it: what it brings beyond what the law asks for already; null where there is none to compare with. */
  againstLawful: StepFigures | null;
  /** Why there is no attribution, twin or step, where a run failed. */
  attributionFailed: string | null;
  /** Machines that are paid for as they are used, beside the same machines bought. */
  waysToPay: WaysToPay[];
  monitoring: MonitoringNeed[];
  /** Required monitors that theatres lack, each counted once. */
  monitoringGaps: number;
  /** How required monitors could be placed so that fewest theatres lack one: a proposal, no figure rests on it. */
  placing: { item: MonitorItem; from: string; to: string; number: number }[];
  cautions: Caution[];
  vapourOnOwnPlan: VapourOnOwnPlan;
  agentFate: Partial<Record<Agent, AgentFateOfYear>>;
  /** The same by the id of the theatre group; the groups add up to it. */
  agentFateByGroup: Record<string, Partial<Record<Agent, AgentFateOfYear>>>;
  /** What the settled year's emissions are made of, and what stands beside their total. */
  ledger: LedgerLine[];
  intensity: IntensityOfScenario;
  theatreAir: TheatreAir;
  failed: FailedCell[];
}

/** Today's use of an agent in the theatres beside what was bought; null: not given, and never 0. */
export interface AgentReconciliation {
  /** Usable liquid bought for the theatres. */
  purchasedMl: number | null;
  /** By the model, scaled to no purchases; null: no case is given it. */
  estimatedMl: number | null;
  estimateOverPurchase: number | null;
  finding: ReconciliationFinding;
}

export interface NitrousOxideReconciliation {
  boughtKg: number | null;
  usedKg: number;
  /** What is left of it: lost from the pipes. */
  lostKg: number | null;
  lostPercent: number | null;
}

export interface Estimate {
  format: 'vapour-ledger-estimate';
  version: 2;
  title: string;
  /** Whether the figures are invented: then they are evidence for nothing. */
  invented: boolean;
  currency: string;
  referenceSet: string;
  scenarios: ScenarioEstimate[];
  reconciliation: {
    agents: Partial<Record<Agent, AgentReconciliation>>;
    nitrousOxide: NitrousOxideReconciliation;
  };
  /** Today, the scenarios and their twins as alternatives of which one is chosen; null: a run failed. */
  increments: { money: MoneyIncrement[]; tonnes: TonnesIncrement[] } | null;
  /** The list over all scenarios. */
  monitoring: MonitoringNeed[];
  /** Of all scenarios, today included. */
  cautions: Caution[];
  /** What law and policy where the hospital is say of today's agents; none where the jurisdiction is not given. */
  restrictions: Restriction[];
  /** What a reader must know, the sentences of the cautions first. */
  warnings: string[];
}
