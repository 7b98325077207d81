/** An exposure limit as mass, at the temperature that its source refers to, and how it came about. */
import { limitAsMass } from '#lib/calc/reckoning/theatre-air.ts';
import type { AirSubject } from '#lib/calc/reckoning/theatre-air.ts';
import type { AirLimit } from '#lib/calc/reference/exposure-limit-terms.ts';
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { recorder, workingOf } from '#lib/calc/working/recorder.ts';
import type { Working } from '#lib/calc/working/working.ts';

interface Asked {
  readonly reference: ReferenceSet;
  readonly subject: AirSubject;
  readonly terms: AirLimit;
}

/** mg/m3. */
export const limitInMgPerM3 = ({ reference, subject, terms }: Asked): number =>
  plain.value(limitAsMass(plain, { reference }, subject, terms));

export const workingOfLimit = ({ reference, subject, terms }: Asked): Working =>
  workingOf(limitAsMass(recorder, { reference }, subject, terms));
