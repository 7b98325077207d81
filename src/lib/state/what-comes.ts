/** What machines a scenario brings, as the fleet has them once all have come. */
import { machineThatComes } from '#lib/calc/fleet/machine-that-comes.ts';
import { theatresMovedBy } from '#lib/calc/fleet/theatres-moved.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

export interface WhatComes {
  /** The machine that most theatres get. */
  readonly machine: string;
  /** How many theatres get a machine. */
  readonly theatres: number;
}

/** Null where no machine comes. */
export function whatComes(workbook: Workbook, scenario: Workbook['scenarios'][number]): WhatComes | null {
  const machine = machineThatComes(workbook, scenario);
  if (machine === null) return null;
  const theatres = [...theatresMovedBy(workbook, scenario).values()].reduce((sum, each) => sum + each, 0);
  return { machine, theatres };
}
