/** The scenarios as steps of a marginal abatement chart: how much each avoids, and at what cost per tonne. */
import type { Decimal } from './decimal.ts';

export interface AbatementOption {
  readonly id: string;
  readonly costPerTonne: Decimal;
  /** Tonnes of CO2e avoided in a year. */
  readonly tonnes: number;
}

/** One step: as wide as what it avoids, from `fromTonnes` to `toTonnes`, and as high as its cost per tonne. */
export interface AbatementStep extends AbatementOption {
  readonly fromTonnes: number;
  readonly toTonnes: number;
}

/**
 * The options that avoid something, cheapest tonne first (of equal cost, the wider first), laid side by side.
 *
 * Scenarios of one workbook are as a rule alternatives: the steps compare them, their widths do not add up to a plan.
 */
export function abatementSteps(options: readonly AbatementOption[]): AbatementStep[] {
  const sorted = options
    .filter(({ tonnes }) => tonnes > 0)
    .sort((a, b) => a.costPerTonne.cmp(b.costPerTonne) || b.tonnes - a.tonnes);
  let reached = 0;
  return sorted.map((option) => {
    const fromTonnes = reached;
    reached += option.tonnes;
    return { ...option, fromTonnes, toTonnes: reached };
  });
}
