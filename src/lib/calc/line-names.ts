/** What the lines of cost and of CO2e are called, and reported as: once for table, chart, spreadsheet, CSV and report. */
import type { CashLine, Co2eLine, CostLine, ShadowLine } from './estimate-types.ts';

export const cashLineTitles: Readonly<Record<CashLine, string>> = {
  agents: 'Agents',
  gases: 'Carrier gases',
  absorbent: 'Absorbent',
  drugs: 'Intravenous and regional drugs',
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
  intravenous: 'Intravenous and regional drugs'
};

/** Reporting class of each line, as a sustainability lead files them. */
export const reportingClasses: Readonly<Record<Co2eLine, string>> = {
  agents:
    'Direct emission: desflurane, isoflurane and sevoflurane are fluorinated gases; file them where your scheme asks for anaesthetic gases, halothane and enflurane outside the scopes',
  nitrousOxide: 'Direct emission, Kyoto basket',
  nitrousOxideLost: 'Direct emission, Kyoto basket',
  gases: 'Supply chain',
  absorbent: 'Supply chain',
  electricity: 'Purchased energy',
  intravenous: 'Supply chain'
};
