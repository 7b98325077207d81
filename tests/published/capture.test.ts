/** What an adsorber at the exhaust gets of the agent: Jänchen J et al. Eur J Anaesthesiol 1998;15:324-9. */
import { expect, test } from 'vitest';
import { publishedChecks } from '#lib/calc/published/published-checks.ts';
import { bodyModels } from '#lib/calc/input.ts';
import { referenceSets } from '#lib/calc/reference/reference-sets.ts';
import { testArea } from '../fixtures/published-area.ts';

testArea('capture', { 'cap-1': 62, 'cap-2': 86 }, { 'cap-1': 61.3, 'cap-2': 87.7 });

// Order only: 7 and 6 patients, and neither target nor wash-in is on record.
test.each(referenceSets.map((set) => [set.id, set] as const))(
  'less of the agent leaves by the exhaust at 0.5 than at 3 L/min, with every body model of set %s',
  (_, set) => {
    for (const share of [null, 0.33]) {
      const rows = publishedChecks(set, share).filter(({ area }) => area === 'capture');
      const [low, high] = ['cap-1', 'cap-2'].map((id) => rows.find((row) => row.id === id)?.model);
      for (const body of bodyModels) expect(low?.[body]).toBeLessThan((high?.[body] ?? NaN) - 15);
    }
  }
);
