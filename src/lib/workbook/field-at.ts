import { ownEntry } from '#lib/calc/own-entry.ts';
import type { Field } from './field.ts';
import {
  absorbentFields,
  accountingFields,
  agentFields,
  agentSwitchField,
  caseFields,
  gasFields,
  intravenousFields,
  machineFields,
  markFields,
  monitorInPlaceField,
  monitorPriceFields,
  moveFields,
  paymentFields,
  phaseFields,
  planByCaseField,
  planFields,
  planOnMachineField,
  regionalFields,
  samplingFields,
  scenarioFields,
  shareOfCasesField,
  siteFields,
  theatreGroupFields,
  toIntravenousField,
  toRegionalField,
  warmingFields,
  workbookFields
} from './fields.ts';

const byRoom: Readonly<Record<string, Readonly<Record<string, Field>>>> = {
  site: siteFields,
  accounting: accountingFields,
  gases: gasFields,
  intravenous: intravenousFields,
  regional: regionalFields,
  sampling: samplingFields,
  agents: agentFields,
  absorbents: absorbentFields,
  caseMix: caseFields,
  flowPlans: planFields,
  machines: machineFields,
  scenarios: scenarioFields,
  monitorPrices: monitorPriceFields,
  theatreGroups: theatreGroupFields
};

/** In a cell, a warming potential may be left out. */
const warmingCells: Readonly<Record<string, Field>> = Object.fromEntries(
  Object.entries(warmingFields).map(([subject, field]) => [
    subject,
    { ...field, optional: true, empty: 'none of your own' }
  ])
);

/** The field behind a cell's path; undefined where the path names no cell that a text can be typed into. */
export function fieldAt(path: string): Field | undefined {
  const parts = path.split('.');
  const key = parts.at(-1) ?? '';
  if (parts.length === 1) return ownEntry<Field>({ ...workbookFields, ...markFields }, key);
  if (parts[0] === 'accounting' && parts[1] === 'customWarming') return ownEntry(warmingCells, key);
  if (parts[0] === 'flowPlans' && parts[2] === 'phases') return ownEntry<Field>(phaseFields, key);
  if (parts[0] === 'scenarios' && parts[2] === 'flowPlanByCase') return planByCaseField;
  if (parts[0] === 'scenarios' && parts[2] === 'agentSwitch') return agentSwitchField;
  if (parts[0] === 'scenarios' && parts[2] === 'intravenousPercentByCase') return toIntravenousField;
  if (parts[0] === 'scenarios' && parts[2] === 'regionalPercentByCase') return toRegionalField;
  if (parts[0] === 'scenarios' && parts[2] === 'plans') return planOnMachineField;
  if (parts[0] === 'scenarios' && parts[2] === 'moves')
    return ownEntry<Field>(parts[4] === 'payment' ? paymentFields : moveFields, key);
  if (parts[0] === 'theatreGroups' && parts[2] === 'monitors') return monitorInPlaceField;
  if (parts[0] === 'caseMix' && parts[2] === 'theatreGroups') return shareOfCasesField;
  const room = ownEntry(byRoom, parts[0] ?? '');
  return room !== undefined && parts.length <= 3 ? ownEntry(room, key) : undefined;
}
