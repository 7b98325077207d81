/**
 * Results of cases as one list of numbers and one of the words in them. Between threads that crosses without being
 * copied object by object, which would take as long as solving the cases.
 */
import type { CaseMethod, CaseResult, CaseWarning, FlowClass } from '../case/case-result.ts';
import { caseQuantities } from '../case/case-result.ts';

export interface PackedCases {
  readonly numbers: Float64Array<ArrayBuffer>;
  readonly words: readonly string[];
}

const figures = [
  ...caseQuantities,
  'targetFraction',
  'neededFlowLPerMin',
  'absorbentHoursPerKg',
  'lowestFlowLPerMin'
] as const satisfies readonly Exclude<keyof CaseResult, 'method' | 'phases' | 'warnings'>[];

/** A plain result's figures are bare numbers. */
const bare = (figure: CaseResult[(typeof figures)[number]]) => figure as unknown as number | null;

/** Packs plain results; null stands for a case that could not be estimated. */
export function packCases(results: readonly (CaseResult | null)[]): PackedCases {
  const places = new Map<string, number>();
  const place = (word: string): number => {
    const known = places.get(word) ?? places.size;
    places.set(word, known);
    return known;
  };
  const numbers: number[] = [];
  // No figure is ever NaN, which so can stand for null.
  for (const result of results) {
    if (result === null) {
      numbers.push(NaN);
      continue;
    }
    numbers.push(place(result.method));
    for (const figure of figures) numbers.push(bare(result[figure]) ?? NaN);
    numbers.push(result.phases.length);
    for (const phase of result.phases)
      numbers.push(
        place(phase.name),
        phase.minutes,
        phase.plannedFlowLPerMin,
        phase.flowLPerMin,
        place(phase.flowClass),
        phase.oxygenFraction
      );
    numbers.push(result.warnings.length);
    for (const { code, sentence } of result.warnings) numbers.push(place(code), place(sentence));
  }
  return { numbers: Float64Array.from(numbers), words: [...places.keys()] };
}

/** The results that were packed. */
export function unpackCases({ numbers, words }: PackedCases): (CaseResult | null)[] {
  const results: (CaseResult | null)[] = [];
  let at = 0;
  const number = (): number => numbers[at++]!;
  const word = <T extends string>(): T => words[number()] as T;
  const several = <T>(make: () => T): T[] => Array.from({ length: number() }, make);
  while (at < numbers.length) {
    if (Number.isNaN(numbers[at])) {
      at++;
      results.push(null);
      continue;
    }
    const method = word<CaseMethod>();
    const of = {} as Record<(typeof figures)[number], number | null>;
    for (const figure of figures) {
      const value = number();
      of[figure] = Number.isNaN(value) ? null : value;
    }
    const phases = several(() => ({
      name: word(),
      minutes: number(),
      plannedFlowLPerMin: number(),
      flowLPerMin: number(),
      flowClass: word<FlowClass>(),
      oxygenFraction: number()
    }));
    const warnings = several(() => ({ code: word<CaseWarning['code']>(), sentence: word() }));
    results.push({ method, ...of, phases, warnings } as unknown as CaseResult);
  }
  return results;
}
