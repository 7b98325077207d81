import { expect, it } from 'vitest';
import { exposureLimitsFor } from '#lib/calc/reference/exposure-limits-for.ts';
import { referenceSet2026 } from '#lib/calc/reference/reference-set-2026-1.ts';

const idsFor = (subject: string) =>
  exposureLimitsFor(referenceSet2026, subject).map(({ id }) => id.replace('exposure-limit.', ''));

it('finds the limits of an agent and those for all halogenated agents', () => {
  expect(idsFor('desflurane')).toEqual([
    'united-states.halogenated-agents',
    'sweden.desflurane',
    'france.halogenated-agents'
  ]);
});

it('finds both limits of the United States for nitrous oxide, and none for halogenated agents', () => {
  const ids = idsFor('nitrous-oxide');
  expect(ids).toContain('united-states.nitrous-oxide');
  expect(ids).toContain('united-states.nitrous-oxide-over-8-h');
  expect(ids.filter((id) => id.includes('halogenated'))).toEqual([]);
});
