import type { Locator, Page } from '@playwright/test';

/** A cell of a grid by the name of its row and column. */
export async function gridCell(
  page: Page,
  { grid, row, column }: { grid: string; row: string; column: string }
): Promise<Locator> {
  const table = page.getByRole('grid', { name: grid, exact: true });
  const header = table.getByRole('columnheader', { name: column }).first();
  const index = await header.getAttribute('data-header');
  return table.getByRole('row').filter({ hasText: row }).locator(`[role=gridcell][data-column="${index}"]`);
}

/** A figure of the bottom line by its path in the estimate. */
export function bottomFigure(page: Page, path: string): Locator {
  return page.getByRole('contentinfo', { name: 'Bottom line' }).locator(`[data-figure="${path}"]`);
}

/** Today's yearly cost, as the bottom line shows it. */
export const todaysCost = (page: Page): Locator => bottomFigure(page, 'today.perYear.cost.total');
