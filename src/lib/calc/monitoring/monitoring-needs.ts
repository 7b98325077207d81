/** Which monitoring a standard asks for, given what is done in the theatres, and where it lacks. */
import type { MonitoringNeed } from '../estimate-types.ts';
import type { MonitorPrice, MonitoringStandard } from '../input.ts';
import { circumstances } from '../reference/standards/monitoring-rule.ts';
import type {
  MonitoringDocument,
  MonitoringRule,
  RuleItem,
  RuleLevel
} from '../reference/standards/monitoring-rule.ts';
import { layers, standards } from '../reference/standards/standards.ts';
import { kindOf, meets } from './circumstance.ts';
import type { MonitoredCase } from './circumstance.ts';
import { theatresMissing } from './theatres-missing.ts';
import type { EquippedPlace } from './theatres-missing.ts';

/** A need before money: its cost is `theatresMissing` × `unitPrice`, worked out in the room that holds money. */
export interface UnpricedNeed extends Omit<MonitoringNeed, 'cost'> {
  /** Decimal as text; null where no price was given, or no device is bought for the item. */
  readonly unitPrice: string | null;
  /** Indices of the places in which it is asked for. */
  readonly places: readonly number[];
}

/** Theatres with one machine, and the cases that are done there. */
export interface MonitoredPlace extends EquippedPlace {
  readonly cases: readonly MonitoredCase[];
}

export interface MonitoringQuestion<P extends MonitoredPlace = MonitoredPlace> {
  readonly standard: MonitoringStandard;
  /** WHO-WFSA facility level 1 to 3; null: all three. Other standards know no levels. */
  readonly facilityLevel: number | null;
  readonly places: readonly P[];
  readonly prices: readonly MonitorPrice[];
}

const levelOfFacility: Readonly<Record<RuleLevel, number>> = {
  required: 1,
  caution: 1,
  recommended: 2,
  suggested: 3,
  available: 3
};

/**
 * The needs of a case mix: the rules of the chosen standard, then those of laparoscopy, low flow and labels, each with
 * the rows that trigger it and the theatres that lack it. A rule that no row can meet is left out. One that only the
 * patient on the day can trigger is listed as `when-triggered`, with the rows in which that may happen.
 * @param question standard, facility level, theatres by machine with their cases (flows in L/min) and stock, and prices.
 */
export function monitoringNeeds(question: MonitoringQuestion): UnpricedNeed[] {
  const kinds = question.places.map(({ cases }) => kindsOf(cases));
  return rulesAsked(question).flatMap(({ document, rule }) => need(document, rule, question, kinds));
}

interface RuleOfDocument {
  readonly document: MonitoringDocument;
  readonly rule: MonitoringRule;
}

const rulesOf = (documents: readonly MonitoringDocument[]): readonly RuleOfDocument[] =>
  documents.flatMap((document) => document.rules.map((rule) => ({ document, rule })));
const rulesOfStandard = Object.fromEntries(
  Object.entries(standards).map(([standard, documents]) => [standard, rulesOf([...documents, ...layers])])
) as Readonly<Record<MonitoringStandard, readonly RuleOfDocument[]>>;

/** The rules that the chosen standard and the layers on top of it hold, at the facility's level. */
export function rulesAsked({ standard, facilityLevel }: MonitoringQuestion): readonly RuleOfDocument[] {
  const rules = rulesOfStandard[standard];
  if (standard !== 'who-wfsa' || facilityLevel === null) return rules;
  return rules.filter(
    ({ document, rule }) => document.layer !== 'standard' || levelOfFacility[rule.level] <= facilityLevel
  );
}

/** The price of what is bought for an item, decimal as text; null where none was given. */
export const unitPriceOf = (item: RuleItem, { prices }: MonitoringQuestion): string | null =>
  prices.find((entry) => entry.item === item)?.unitPrice ?? null;

/** Rows of one kind, of which a rule is asked once. */
interface Kinds {
  readonly samples: readonly MonitoredCase[];
  /** For each row, in its order, the index of its kind. */
  readonly ofRow: readonly number[];
}

function kindsOf(cases: readonly MonitoredCase[]): Kinds {
  const known = new Map<number, number>();
  const samples: MonitoredCase[] = [];
  const ofRow = cases.map((row) => {
    const kind = kindOf(row);
    const index = known.get(kind) ?? samples.length;
    if (index === samples.length) {
      known.set(kind, index);
      samples.push(row);
    }
    return index;
  });
  return { samples, ofRow };
}

/** Of each place the rows that a rule certainly asks something of; where there is none in any, those in which it may. */
interface Asked {
  readonly applies: 'yes' | 'when-triggered';
  readonly rows: readonly (readonly string[])[];
}

function askedBy(
  rule: MonitoringRule,
  { places }: MonitoringQuestion,
  kinds: readonly Kinds[]
): Asked | null {
  const answers = kinds.map(({ samples }) => samples.map((sample) => meets(sample, rule.when)));
  const rowsThat = (answer: 'yes' | 'cannot-tell'): string[][] =>
    places.map(({ cases }, place) => {
      const [here, { ofRow }] = [answers[place] as readonly string[], kinds[place] as Kinds];
      if (!here.includes(answer)) return [];
      return cases.filter((_, row) => here[ofRow[row] as number] === answer).map(({ caseId }) => caseId);
    });
  const met = rowsThat('yes');
  if (met.some((rows) => rows.length > 0)) return { applies: 'yes', rows: met };
  const open = rowsThat('cannot-tell');
  return open.some((rows) => rows.length > 0) ? { applies: 'when-triggered', rows: open } : null;
}

function need(
  document: MonitoringDocument,
  rule: MonitoringRule,
  question: MonitoringQuestion,
  kinds: readonly Kinds[]
): UnpricedNeed[] {
  const asked = askedBy(rule, question, kinds);
  if (asked === null) return [];
  const places = question.places.flatMap((_, place) => ((asked.rows[place] ?? []).length > 0 ? [place] : []));
  return [
    {
      item: rule.item,
      level: rule.level,
      word: rule.word,
      standard: document.id,
      layer: document.layer,
      rule: rule.id,
      trigger: rule.when.map((circumstance) => circumstances[circumstance]).join('; '),
      applies: asked.applies,
      detail: rule.detail,
      evidence: rule.evidence,
      why: [...new Set(asked.rows.flat())],
      places,
      theatresMissing: theatresMissing(rule.item, {
        asking: places.map((place) => question.places[place] as MonitoredPlace)
      }),
      unitPrice: unitPriceOf(rule.item, question)
    }
  ];
}
