/** What today's use beside the purchases likely means, in words. */
import type { NitrousOxideReconciliation } from '#lib/calc/estimate-types.ts';
import { pipeLosses } from '#lib/calc/reference/pipe-losses.ts';
import { likelyCauses, reconciliationBounds } from '#lib/calc/reference/reconciliation-practice.ts';
import { citation, evidenceWords } from '#lib/calc/working/citation.ts';
import type { ReconciliationFinding } from '#lib/calc/year/reconciliation.ts';

export interface Finding {
  readonly sentence: string;
  /** Whether one of the figures must be wrong. */
  readonly isWarning: boolean;
}

const { low, high } = reconciliationBounds;
const usual = `${low} to ${high} is usual (common practice, no source)`;

const lessBought = 'Less was bought for the theatres than their cases use by the estimate.';

const findings: Readonly<Record<ReconciliationFinding, Finding>> = {
  'not-given': { sentence: 'No purchases are given.', isWarning: false },
  'not-used': {
    sentence:
      'No case group is given it. Usual causes: used outside the theatres, put in stock, or cases missing from the case mix.',
    isWarning: false
  },
  'all-elsewhere': {
    sentence: 'Nothing of it is left for the theatres, so there is nothing to compare with.',
    isWarning: true
  },
  'far-below': { sentence: `Usual causes: ${likelyCauses.lessUsed}.`, isWarning: false },
  agrees: { sentence: `In agreement: ${usual}.`, isWarning: false },
  'more-than-bought': {
    sentence: `${lessBought} ${usual.charAt(0).toUpperCase()}${usual.slice(1)}; beyond it look for ${likelyCauses.moreUsed}.`,
    isWarning: true
  },
  'far-above': { sentence: `${lessBought} Usual causes: ${likelyCauses.moreUsed}.`, isWarning: true }
};

export const findingInWords = (finding: ReconciliationFinding): Finding => findings[finding];

/** Relative difference below which two masses are told apart by rounding alone. */
const rounding = 1e-9;

/** What the loss of nitrous oxide likely means. */
export function nitrousOxideInWords({ boughtKg, usedKg, lostKg }: NitrousOxideReconciliation): Finding {
  if (boughtKg === null || lostKg === null)
    return {
      sentence:
        usedKg > 0
          ? 'No purchases are given, so no loss is counted. That is not 0.'
          : 'No purchases are given, and no case group is given any.',
      isWarning: false
    };
  if (usedKg > boughtKg * (1 + rounding))
    return {
      sentence: `Less was bought than the cases use by the estimate, so nothing is counted as lost. Usual causes: ${likelyCauses.moreNitrousOxideUsed}.`,
      isWarning: true
    };
  if (lostKg === 0) return { sentence: 'All that was bought is used by the estimate.', isWarning: false };
  return {
    sentence:
      'What no patient was given is counted as lost: leaks of pipes and outlets, cylinders that go back part full, and cases missing from the case mix.',
    isWarning: false
  };
}

/** What others found lost, one sentence, each with its source. */
export const pipeLossesInWords = `Published shares lost from pipes: ${pipeLosses
  .map(
    ({ where, lost, source, evidence }) =>
      `${where} ${lost} (${citation(source)}, ${evidenceWords[evidence]})`
  )
  .join('; ')}.`;
