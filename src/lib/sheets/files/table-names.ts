import type { TableId } from '#lib/files/tables/tables.ts';

/** The tables of the workbook, as they are called on screen. */
export const tableNames: Readonly<Record<TableId, string>> = {
  caseMix: 'Case mix',
  flowPlans: 'Flow plans',
  machines: 'Machines',
  scenarios: 'Scenarios',
  plansByCase: 'Plans by case group',
  avoidedPurchases: 'Purchases avoided',
  agents: 'Agents',
  absorbents: 'Absorbents',
  monitors: 'Monitors',
  ranges: 'Ranges',
  ownFigures: 'Own figures',
  settings: 'Settings'
};
