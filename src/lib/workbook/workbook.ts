/** The document that the user edits, version 2, as a checked shape: structure here, limits in `fields.ts`. */
import * as z from 'zod/mini';
import type { EstimateInput, MonitorItem } from '#lib/calc/input.ts';
import { agents, monitorItems } from '#lib/calc/input.ts';
import type { Override } from '#lib/calc/reference/reference-set.ts';
import { tooLongForCell } from './cell-text-limits.ts';
import type { Field } from './field.ts';
import { quoted, refuse } from './field.ts';
import {
  absorbentFields,
  accountingFields,
  agentFields,
  avoidedPurchaseFields,
  caseFields,
  gasFields,
  intravenousFields,
  regionalFields,
  toIntravenousField,
  toRegionalField,
  machineFields,
  monitorInPlaceField,
  monitorPriceFields,
  moveFields,
  paymentFields,
  phaseFields,
  planFields,
  samplingFields,
  scenarioFields,
  shareOfCasesField,
  siteFields,
  theatreGroupFields,
  warmingFields,
  workbookFields
} from './fields.ts';
import type { SourceNote, SourceNotes } from './source-note.ts';
import { sourceNoteFault } from './source-note.ts';
import { unpricedTechniques } from './unpriced-techniques.ts';

export const workbookFormat = 'vapour-ledger-workbook';
export const workbookVersion = 2;

/** The most that a workbook may hold; beyond it a file is refused. */
export const limits = {
  caseMix: 2000,
  flowPlans: 50,
  scenarios: 50,
  phases: 12,
  machines: 50,
  theatreGroups: 50,
  moves: 200,
  absorbents: 20,
  avoidedPurchases: 61
} as const;

/** The document. Every list entry carries a stable id, so that a cell keeps its path whatever moves. */
export type Workbook = Omit<EstimateInput, 'reference' | 'potentials' | 'modelError'> & {
  readonly format: typeof workbookFormat;
  readonly version: typeof workbookVersion;
  /** Id of the reference set that it was made with. */
  readonly referenceSet: string;
  /** Constants of the user's choosing, each with its reason. */
  readonly overrides: readonly Override[];
  /** Texts that could not be read, kept as typed, by cell path; the last good value stays in force. */
  readonly keptTexts: Readonly<Record<string, string>>;
  /**
   * Cells of rows that came with a text which could not be taken, by path: nobody has given them a valid value yet, so
   * their rows take part in nothing. Left out in a workbook that never had one.
   */
  readonly neverGiven?: readonly string[];
  /** Where figures come from, by cell path; left out in a workbook that never had one. No figure rests on them. */
  readonly notes?: SourceNotes;
};

/** Something wrong in a document: where, and a sentence that says what was given and what is allowed. */
export interface Issue {
  readonly path: string;
  readonly sentence: string;
}

const leaf = (field: Field) =>
  z.custom<unknown>((value) => refuse(field, value) === null, {
    error: (issue) => refuse(field, issue.input) ?? ''
  });

const shape = (fields: Readonly<Record<string, Field>>) =>
  Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, leaf(field)]));

/** Entries for some keys, each of which may be left out. */
const optional = (keys: readonly string[], entry: ReturnType<typeof leaf>) =>
  Object.fromEntries(keys.map((key) => [key, z.optional(entry)]));

const idPattern = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const id = z.custom<string>(
  (value) => typeof value === 'string' && idPattern.test(value) && value.length <= 80,
  {
    error: (issue) =>
      `Id: ${quoted(issue.input)} was given; allowed are small letters, digits and single hyphens.`
  }
);

/** A text that no field describes. */
const anyText = z.custom<string>((value) => typeof value === 'string' && tooLongForCell(value) === null, {
  error: ({ input }) =>
    typeof input === 'string'
      ? `Text: ${tooLongForCell(input) ?? ''}.`
      : `${quoted(input)} was given; allowed is a text.`
});

const anyNumber = leaf({ kind: 'number', title: 'Value', unit: '', min: -1e12, max: 1e12, words: '' });

const listOf = <S extends z.core.$ZodType>(what: string, entry: S, most: number, least = 0) =>
  z.array(entry).check(
    z.refine((list: readonly unknown[]) => list.length <= most, {
      error: (issue) =>
        `${what}: ${(issue.input as readonly unknown[]).length} were given; allowed are at most ${most}.`
    }),
    z.refine((list: readonly unknown[]) => list.length >= least, {
      error: () => `${what}: none was given; at least ${least} is needed.`
    })
  );

const monitorItem = z.custom<MonitorItem>((value) => monitorItems.includes(value as MonitorItem), {
  error: (issue) => `Monitor: ${quoted(issue.input)} was given; allowed is one of ${monitorItems.join(', ')}.`
});

const phase = z.strictObject({
  ...shape(phaseFields),
  flowAsNeeded: z._default(leaf(phaseFields.flowAsNeeded), false)
});

const samplingShape: Readonly<Record<string, z.core.$ZodType>> = {
  ...shape(samplingFields),
  overModelError: z._default(leaf(samplingFields.overModelError), false),
  overSpillShare: z._default(leaf(samplingFields.overSpillShare), false)
};

const schema = z.strictObject({
  format: z.literal(workbookFormat),
  version: z.literal(workbookVersion),
  referenceSet: anyText,
  invented: z._default(z.boolean(), false),
  ...shape(workbookFields),
  site: z.strictObject({
    ...shape(siteFields),
    jurisdiction: z._default(leaf(siteFields.jurisdiction), null),
    lawfulAgentInstead: z._default(leaf(siteFields.lawfulAgentInstead), null),
    lawfulSharePercent: z._default(leaf(siteFields.lawfulSharePercent), 100),
    electricityMarketKgCo2ePerKWh: z._default(leaf(siteFields.electricityMarketKgCo2ePerKWh), null),
    medicalAirKWhPerM3: z._default(leaf(siteFields.medicalAirKWhPerM3), null),
    consumablesKgCo2ePerCase: z._default(leaf(siteFields.consumablesKgCo2ePerCase), null),
    baseYear: z._default(leaf(siteFields.baseYear), null),
    casesKnownBy: z._default(leaf(siteFields.casesKnownBy), null),
    durationsKnownBy: z._default(leaf(siteFields.durationsKnownBy), null),
    bottlesKnownBy: z._default(leaf(siteFields.bottlesKnownBy), null),
    nitrousOxideKnownBy: z._default(leaf(siteFields.nitrousOxideKnownBy), null),
    electricityKnownBy: z._default(leaf(siteFields.electricityKnownBy), null),
    airLimitsOf: z._default(leaf(siteFields.airLimitsOf), null),
    recoveryRoomVolumeM3: z._default(leaf(siteFields.recoveryRoomVolumeM3), null),
    recoveryAirChangesPerH: z._default(leaf(siteFields.recoveryAirChangesPerH), null),
    recoveryHoursPerYear: z._default(leaf(siteFields.recoveryHoursPerYear), null),
    recoveryGivenOffPercent: z._default(leaf(siteFields.recoveryGivenOffPercent), 100)
  }),
  accounting: z.strictObject({
    ...shape(accountingFields),
    bodyModel: z._default(leaf(accountingFields.bodyModel), 'eger'),
    macSet: z._default(leaf(accountingFields.macSet), 'mapleson'),
    solubilityGroup: z._default(leaf(accountingFields.solubilityGroup), 'of-the-set'),
    residualValue: z._default(leaf(accountingFields.residualValue), 'none'),
    counterfactual: z._default(leaf(accountingFields.counterfactual), 'machines-last'),
    capitalChargePercent: z._default(leaf(accountingFields.capitalChargePercent), 0),
    taxPercent: z._default(leaf(accountingFields.taxPercent), 0),
    customWarming: z._default(
      z.strictObject(
        Object.fromEntries(
          Object.entries(warmingFields).map(([subject, field]) => [subject, z.optional(leaf(field))])
        )
      ),
      {}
    )
  }),
  theatreGroups: listOf(
    'Theatre groups',
    z.strictObject({
      id,
      ...shape(theatreGroupFields),
      machineAgeYears: z._default(leaf(theatreGroupFields.machineAgeYears), null),
      staffedHoursPerTheatre: z._default(leaf(theatreGroupFields.staffedHoursPerTheatre), null),
      airMixingPercent: z._default(leaf(theatreGroupFields.airMixingPercent), 100),
      scavengingPumpKW: z._default(leaf(theatreGroupFields.scavengingPumpKW), null),
      scavengingPumpHoursPerWeek: z._default(leaf(theatreGroupFields.scavengingPumpHoursPerWeek), null),
      monitors: z._default(z.strictObject(optional(monitorItems, leaf(monitorInPlaceField))), {})
    }),
    limits.theatreGroups,
    1
  ),
  agents: listOf(
    'Agents',
    z.strictObject({
      ...shape(agentFields),
      bottlesUsedElsewherePerYear: z._default(leaf(agentFields.bottlesUsedElsewherePerYear), null),
      manufactureKgCo2ePerKg: z._default(leaf(agentFields.manufactureKgCo2ePerKg), null)
    }),
    agents.length
  ),
  gases: z.strictObject(shape(gasFields)),
  intravenous: z._default(z.strictObject(shape(intravenousFields)), unpricedTechniques.intravenous),
  regional: z._default(z.strictObject(shape(regionalFields)), unpricedTechniques.regional),
  absorbents: listOf('Absorbents', z.strictObject({ id, ...shape(absorbentFields) }), limits.absorbents, 1),
  caseMix: listOf(
    'Case groups',
    z.strictObject({
      id,
      ...shape(caseFields),
      theatreGroups: z.pipe(
        z._default(z.nullable(z.record(z.string(), leaf(shareOfCasesField))), null),
        z.transform((shares) => shares ?? {})
      )
    }),
    limits.caseMix
  ),
  flowPlans: listOf(
    'Flow plans',
    z.strictObject({ id, ...shape(planFields), phases: listOf('Phases', phase, limits.phases, 1) }),
    limits.flowPlans,
    1
  ),
  machines: listOf(
    'Machines',
    z.strictObject({
      id,
      ...shape(machineFields),
      canFlowAsNeeded: z._default(leaf(machineFields.canFlowAsNeeded), false),
      spillShareInspiredFraction: z._default(leaf(machineFields.spillShareInspiredFraction), null),
      manufactureKgCo2ePerUnit: z._default(leaf(machineFields.manufactureKgCo2ePerUnit), null),
      monitors: listOf('Monitors', monitorItem, monitorItems.length)
    }),
    limits.machines,
    1
  ),
  scenarios: listOf(
    'Scenarios',
    z.strictObject({
      id,
      ...shape(scenarioFields),
      moves: z._default(
        listOf(
          'Machines that come',
          z.strictObject({
            ...shape(moveFields),
            theatres: z._default(leaf(moveFields.theatres), null),
            payment: z._default(z.nullable(z.strictObject(shape(paymentFields))), null)
          }),
          limits.moves
        ),
        []
      ),
      plans: z.record(z.string(), anyText),
      spares: z._default(leaf(scenarioFields.spares), 0),
      caughtLostPercent: z._default(leaf(scenarioFields.caughtLostPercent), null),
      caughtBecomes: z._default(leaf(scenarioFields.caughtBecomes), 'not-known'),
      captureDevicePrice: z._default(leaf(scenarioFields.captureDevicePrice), '0'),
      captureFeePerYear: z._default(leaf(scenarioFields.captureFeePerYear), '0'),
      canisterPrice: z._default(leaf(scenarioFields.canisterPrice), '0'),
      canisterHoldsG: z._default(leaf(scenarioFields.canisterHoldsG), null),
      scavengingPumpHoursPerWeek: z._default(leaf(scenarioFields.scavengingPumpHoursPerWeek), null),
      nitrousOxideSupply: z._default(leaf(scenarioFields.nitrousOxideSupply), 'as-today'),
      nitrousOxideSupplyYear: z._default(leaf(scenarioFields.nitrousOxideSupplyYear), 0),
      nitrousOxideLossPercent: z._default(leaf(scenarioFields.nitrousOxideLossPercent), 2),
      nitrousOxideSupplyCost: z._default(leaf(scenarioFields.nitrousOxideSupplyCost), '0'),
      adoptionFirstYearsPercent: z._default(leaf(scenarioFields.adoptionFirstYearsPercent), null),
      adoptionWithoutMachinePercent: z._default(leaf(scenarioFields.adoptionWithoutMachinePercent), null),
      extraCostLever: z._default(leaf(scenarioFields.extraCostLever), 'flow'),
      machinesStay: z._default(leaf(scenarioFields.machinesStay), false),
      baseline: z.boolean(),
      flowPlanByCase: z._default(z.record(z.string(), anyText), {}),
      agentSwitch: z._default(z.record(z.string(), anyText), {}),
      intravenousPercentByCase: z._default(z.record(z.string(), leaf(toIntravenousField)), {}),
      regionalPercentByCase: z._default(z.record(z.string(), leaf(toRegionalField)), {}),
      avoidedPurchases: z._default(
        listOf('Avoided purchases', z.strictObject(shape(avoidedPurchaseFields)), limits.avoidedPurchases),
        []
      )
    }),
    limits.scenarios,
    1
  ),
  monitorPrices: listOf('Monitors', z.strictObject(shape(monitorPriceFields)), monitorItems.length),
  ranges: z.record(z.string(), z.strictObject({ low: anyNumber, high: anyNumber })),
  sampling: z._default(z.strictObject(samplingShape), {
    draws: 10000,
    seed: 20260101,
    shape: 'pert',
    minutesTogether: false,
    overBodyModels: true,
    overModelError: false,
    overSpillShare: false
  }),
  overrides: z._default(
    listOf(
      'Overrides',
      z.strictObject({ constant: anyText, value: anyNumber, unit: anyText, reason: anyText }),
      500
    ),
    []
  ),
  keptTexts: z._default(z.record(z.string(), anyText), {}),
  neverGiven: z.optional(listOf('Cells without a value', anyText, limits.caseMix * 20)),
  notes: z.optional(
    z.record(
      z.string(),
      z.pipe(
        z.custom<SourceNote>((value) => sourceNoteFault(value) === null, {
          error: ({ input }) => sourceNoteFault(input) ?? ''
        }),
        z.transform(({ text, date, grade }) => ({ text, date: date ?? null, grade: grade ?? null }))
      )
    )
  )
});

/** The path of a value in a document, with ids in place of the indices of keyed lists. */
function pathWithIds(document: unknown, parts: readonly PropertyKey[]): string {
  let here: unknown = document;
  return parts
    .map((part) => {
      const next = (here as Record<PropertyKey, unknown> | null | undefined)?.[part];
      const entry = next as { id?: unknown; agent?: unknown; item?: unknown } | null | undefined;
      const key = Array.isArray(here) ? (entry?.id ?? entry?.agent ?? entry?.item) : undefined;
      here = next;
      return typeof key === 'string' && key !== '' ? key : String(part);
    })
    .join('.');
}

/** What is said of a structural mismatch that no field's own sentence covers. */
function structuralSentence(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'unrecognized_keys':
      return `${issue.keys.map((key) => `“${key}”`).join(', ')}: no such field in a workbook of version ${workbookVersion}.`;
    case 'invalid_type':
      return `${quoted(issue.input)} was given; allowed is ${issue.expected === 'array' ? 'a list' : `a value of the kind ${issue.expected}`}.`;
    case 'invalid_value':
      return `${quoted(issue.input)} was given; allowed is ${issue.values.map(String).join(' or ')}.`;
    default:
      return issue.message;
  }
}

/**
 * Checks the structure and each single value of a parsed document; what one part says of another is checked in
 * `cross-checks.ts`.
 * @returns the workbook with the defaults of fields that may be absent, or every issue found.
 */
export function checkShape(
  document: unknown
): { readonly workbook: Workbook } | { readonly issues: readonly Issue[] } {
  const result = schema.safeParse(document, { reportInput: true });
  if (result.success) return { workbook: result.data as unknown as Workbook };
  return {
    issues: result.error.issues.map((issue) => ({
      path: pathWithIds(document, issue.path) || 'workbook',
      sentence: issue.code === 'custom' && issue.message !== '' ? issue.message : structuralSentence(issue)
    }))
  };
}
