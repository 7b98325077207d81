/** What the lines of cost and of CO2e are called, and reported as: once for table, chart, spreadsheet, CSV and report. */
import type { CashLine, Co2eLine, CostLine, LedgerKind, ShadowLine } from './estimate-types.ts';

export const cashLineTitles: Readonly<Record<CashLine, string>> = {
  agents: 'Agents',
  gases: 'Carrier gases',
  absorbent: 'Absorbent',
  drugs: 'Intravenous and regional drugs',
  capture: 'Capture',
  service: 'Service',
  electricity: 'Electricity',
  other: 'Other yearly cost'
};

/** What nobody is billed for: beside the cash, and in no total of it. */
export const shadowLineTitles: Readonly<Record<ShadowLine, string>> = {
  carbon: 'Carbon price',
  recovery: 'Recovery time saved'
};

export const costLineTitles: Readonly<Record<CostLine, string>> = { ...cashLineTitles, ...shadowLineTitles };

/** `gases` is oxygen alone: no figure for the making of medical air is in use. */
export const co2eLineTitles: Readonly<Record<Co2eLine, string>> = {
  agents: 'Agents',
  nitrousOxide: 'Nitrous oxide used',
  nitrousOxideLost: 'Nitrous oxide lost from the pipes',
  gases: 'Oxygen',
  absorbent: 'Absorbent',
  electricity: 'Electricity',
  intravenous: 'Intravenous and regional drugs',
  manufacture: 'Manufacture'
};

/** Lines of the ledger: those of the total, and what stands beside it. */
export const ledgerKinds = [
  'agents',
  'nitrousOxide',
  'nitrousOxideLost',
  'gases',
  'absorbent',
  'electricity',
  'intravenous',
  'regional',
  'makingAgents',
  'makingMachines',
  'makingConsumables',
  'lostAtFilling',
  'electricityByContract',
  'medicalAir'
] as const satisfies readonly LedgerKind[];

export const ledgerTitles: Readonly<Record<LedgerKind, string>> = {
  agents: co2eLineTitles.agents,
  nitrousOxide: co2eLineTitles.nitrousOxide,
  nitrousOxideLost: co2eLineTitles.nitrousOxideLost,
  gases: co2eLineTitles.gases,
  absorbent: co2eLineTitles.absorbent,
  electricity: 'Electricity, by location',
  intravenous: 'Intravenous drugs',
  regional: 'Regional drugs and material',
  makingAgents: 'Making agents',
  makingMachines: 'Making machines',
  makingConsumables: 'Making consumables',
  lostAtFilling: 'Agent lost at filling',
  electricityByContract: 'Electricity, by contract',
  medicalAir: 'Medical air'
};

export interface InventoryClass {
  readonly class: 'direct' | 'energy indirect' | 'other indirect';
  /** Where it goes in the two common standards: a mapping of our own, read against a guide to them. */
  readonly ghgProtocol: string;
  readonly iso14064: string;
}

const direct: InventoryClass = { class: 'direct', ghgProtocol: 'scope 1', iso14064: 'category 1' };
const energy: InventoryClass = { class: 'energy indirect', ghgProtocol: 'scope 2', iso14064: 'category 2' };
const bought: InventoryClass = { class: 'other indirect', ghgProtocol: 'scope 3.1', iso14064: 'category 4' };

const capital: InventoryClass = { class: 'other indirect', ghgProtocol: 'scope 3.2', iso14064: 'category 4' };

/** Agents that are no HFC in the letter of the basket may be reported apart from the scopes, where a scheme asks so. */
export const inventoryClasses: Readonly<Record<LedgerKind, InventoryClass>> = {
  agents: direct,
  nitrousOxide: direct,
  nitrousOxideLost: direct,
  gases: bought,
  absorbent: bought,
  electricity: energy,
  intravenous: bought,
  regional: bought,
  makingAgents: bought,
  makingMachines: capital,
  makingConsumables: bought,
  lostAtFilling: direct,
  electricityByContract: energy,
  medicalAir: energy
};

/** What the boundary leaves out whatever is entered, by name. */
export const leftOutOfBoundary: readonly string[] = [
  'making monitors',
  'spent absorbent and its transport',
  'freight, cylinders and their return',
  'losses of the grid and making of fuels',
  'standby of machines between cases',
  'heating, lighting and ventilation of the theatres',
  'what a capture device and its canisters are made of, and destroying or recovering the agent that they hold'
];

/** What scavenging pumps draw is left out as far as it is not given. */
export const scavengingPumpsLeftOut = 'what scavenging pumps draw, where it is not given on Theatres';

/** Reporting class of each line, as a sustainability lead files them. */
export const reportingClasses: Readonly<Record<Co2eLine, string>> = {
  agents:
    'Direct emission: desflurane, isoflurane and sevoflurane are fluorinated gases; file them where your scheme asks for anaesthetic gases, halothane and enflurane outside the scopes',
  nitrousOxide: 'Direct emission, Kyoto basket',
  nitrousOxideLost: 'Direct emission, Kyoto basket',
  gases: 'Supply chain',
  absorbent: 'Supply chain',
  electricity: 'Purchased energy',
  intravenous: 'Supply chain',
  manufacture: 'Supply chain'
};
