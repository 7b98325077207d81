/** How we know a value: read in the source itself, in a text that quotes it, recalled, or computed from other records. */
export type Evidence = 'read' | 'second-hand' | 'memory' | 'computed';

/** Where a value is from. `common practice, no source` is said in `title`, with the other fields left out. */
export interface Source {
  /** Authors or issuing body. */
  readonly authors?: string;
  readonly title: string;
  /** Journal, book or series. */
  readonly container?: string;
  readonly year?: number;
  /** Volume and page, table, chapter, section: where in the work. */
  readonly locator?: string;
  readonly doi?: string;
}

/** Another published value for the same quantity, and why it is not the one in use. */
export interface Alternative {
  readonly value: number;
  /** The value as its source prints it, where that says more than the number, e.g. `15–20`. */
  readonly printed?: string;
  readonly source: Source;
  readonly evidence: Evidence;
  readonly whyNot: string;
}

/** Cells that have published guides. */
export type GuidedCells =
  | 'machines.leakMlPerMin'
  | 'machines.sampleMlPerMin'
  | 'machines.lifeYears'
  | 'absorbents.capacityLPerKg'
  | 'scenarios.capturePercent'
  | 'gases.nitrousOxideBoughtKgPerYear'
  | 'site.electricityKgCo2ePerKWh'
  | 'accounting.discountRatePercent'
  | 'accounting.carbonPricePerTonne';

/** A published number with everything a reader needs to judge it. Built only by `constant()`. */
export interface Constant {
  /** Stable, e.g. `sevoflurane.molar-mass`. */
  readonly id: string;
  /** What it is, e.g. `Molar mass of sevoflurane`. */
  readonly name: string;
  readonly value: number;
  /** The value as its source prints it, e.g. `1.520–1.525`. */
  readonly printed: string;
  readonly unit: string;
  /** Under which conditions it holds; an empty string where there are none. */
  readonly conditions: string;
  readonly source: Source;
  readonly evidence: Evidence;
  /** Kind of quantity; each kind has a plausible range in `plausible-ranges.ts`. */
  readonly kind: string;
  readonly alternatives: readonly Alternative[];
  /** Why this value is preferred where there are alternatives. */
  readonly preferredBecause?: string;
  /** Ids of the constants that a computed one is derived from. */
  readonly parents?: readonly string[];
  /** How a computed one follows from its parents, e.g. `V_fat / 2, where V_fat is body.reference-adult.fat.volume`. */
  readonly derivation?: string;
  /** The cells beside which it is shown as a guide, as `list.field` or `part.field` of the workbook. */
  readonly guideFor?: GuidedCells;
  /** Why the record is kept although no computation takes it: a check value, a comparison, a figure shown as a guide. */
  readonly unusedBecause?: string;
  /** Present where the user put another value in place of the published one. */
  readonly override?: {
    readonly publishedValue: number;
    readonly reason: string;
    /** True where it is computed from another that was overridden. */
    readonly follows?: true;
  };
}

/** Thrown by `constant()` for a record that lacks what a constant must have. A programmer's mistake, not the user's. */
export class IncompleteConstantError extends Error {
  constructor(id: string, missing: string) {
    super(`Constant “${id}” cannot be built: ${missing}.`);
    this.name = 'IncompleteConstantError';
  }
}

type Definition = Omit<Constant, 'alternatives' | 'override' | 'conditions'> & {
  readonly conditions?: string;
  readonly alternatives?: readonly Alternative[];
};

/**
 * Builds a constant.
 * @throws IncompleteConstantError without a finite value, a unit, a source with a title and (unless it is common
 *   practice) a locator, doi or year, or where a computed value names no parents or alternatives lack a reason.
 */
export function constant(definition: Definition): Constant {
  const { id, value, unit, source, evidence } = definition;
  if (!Number.isFinite(value)) throw new IncompleteConstantError(id, 'its value is not a finite number');
  if (unit === '') throw new IncompleteConstantError(id, 'it has no unit');
  if (source.title.trim() === '') throw new IncompleteConstantError(id, 'its source has no title');
  const common = source.title === 'common practice, no source';
  if (!common && source.locator === undefined && source.doi === undefined && source.year === undefined)
    throw new IncompleteConstantError(id, 'its source has neither locator, doi nor year');
  if (evidence === 'computed' && (definition.parents ?? []).length === 0)
    throw new IncompleteConstantError(id, 'it is computed but names no parents');
  if ((definition.alternatives ?? []).length > 0 && definition.preferredBecause === undefined)
    throw new IncompleteConstantError(id, 'it has alternatives but does not say why it is preferred');
  return Object.freeze({ conditions: '', alternatives: [], ...definition });
}
