import { explainer } from './explain.ts';
import { estimate } from './estimate.ts';
import { isAttributionRoom, isListOfIncrements } from './explain-attribution.ts';
import { figurePaths } from './figure-paths.ts';
import type { CaseRow, EstimateInput } from '../input.ts';
import { take } from '../reference/reference-set.ts';
import type { Working } from '../working/working.ts';
import { nameOf } from '../working/working-text.ts';

/** A kind of figure that a constant enters, with one of its kind to look at. */
export interface ConstantUse {
  /** The figure's name and where it stands, e.g. `Yearly cost, all lines`. */
  readonly name: string;
  readonly path: string;
}

/**
 * For each constant that some figure's working reaches, the kinds of figures that it enters. Of case groups that
 * follow the same formulas one is looked at, so that a large workbook takes little longer than a small one.
 */
export function constantUses(input: EstimateInput): ReadonlyMap<string, readonly ConstantUse[]> {
  const few = {
    ...input,
    caseMix: oneOfEachKind(input.caseMix, take(input.reference, 'child.weight-limit').value)
  };
  const explain = explainer(few);
  const uses = new Map<string, Map<string, ConstantUse>>();
  const reached = new Map<Working, ReadonlySet<string>>();

  for (const path of figurePaths(estimate(few))) {
    const kind = kindOf(path);
    if (kind === null) continue;
    const working = explain(path);
    for (const id of constantsUnder(working, reached)) {
      const known = uses.get(id) ?? new Map<string, ConstantUse>();
      uses.set(id, known);
      if (!known.has(kind)) known.set(kind, { name: nameOf(working), path });
    }
  }
  // Several kinds of figures may go by one name: it is told once.
  return new Map(
    [...uses].map(([id, byKind]) => [
      id,
      [...new Map([...byKind.values()].map((use) => [use.name, use])).values()]
    ])
  );
}

/**
 * A figure's path without its scenario and case; null for the years of the cash flow, which repeat one another, and for
 * what is made of other runs, which ask for the same constants.
 */
function kindOf(path: string): string | null {
  const [scenario, room = '', first, ...rest] = path.split('.');
  if (first === 'years' || isAttributionRoom(room) || (scenario === 'increments' && isListOfIncrements(room)))
    return null;
  return room === 'cases' ? `cases.${rest.join('.')}` : [room, first, ...rest].join('.');
}

function oneOfEachKind(rows: readonly CaseRow[], childKg: number): readonly CaseRow[] {
  return [
    ...new Map(
      rows.map((row) => [
        [
          row.technique,
          row.agent,
          row.pneumoperitoneum,
          row.weightKg < childKg,
          row.nitrousOxidePercent > 0,
          row.measuredMlPerCase === null
        ].join(),
        row
      ])
    ).values()
  ];
}

function constantsUnder(working: Working, known: Map<Working, ReadonlySet<string>>): ReadonlySet<string> {
  const before = known.get(working);
  if (before !== undefined) return before;
  const ids = new Set<string>();
  if (working.kind === 'constant' || working.kind === 'default') ids.add(working.constant.id);
  if (working.kind === 'step' || working.kind === 'method')
    for (const input of Object.values(working.inputs).flat() as readonly Working[])
      for (const id of constantsUnder(input, known)) ids.add(id);
  known.set(working, ids);
  return ids;
}
