import type { TableId } from '#lib/files/tables/tables.ts';

/** The tables of the workbook, as they are called on screen. */
export const tableNames: Readonly<Record<TableId, string>> = {
  theatreGroups: 'Theatres',
  caseMix: 'Case mix',
  flowPlans: 'Flow plans',
  machines: 'Machines',
  scenarios: 'Scenarios',
  moves: 'Machines that come',
  plansByCase: 'Plans by case group',
  avoidedPurchases: 'Purchases avoided',
  agents: 'Agents',
  absorbents: 'Absorbents',
  monitorPrices: 'Prices of monitors',
  ranges: 'Ranges',
  notes: 'Source notes',
  ownFigures: 'Own figures',
  settings: 'Settings'
};
