import { expect, it } from 'vitest';
import { referenceSet2026 } from '#lib/calc/reference/reference-set-2026-1.ts';
import { evidenceGroups } from '#lib/sheets/parts/evidence-list.ts';

const all = [...referenceSet2026.constants.values()];
const everything = { text: '', evidence: 'all', own: false } as const;
const idsFor = (text: string) =>
  evidenceGroups(all, { ...everything, text }).flatMap(({ constants }) => constants.map(({ id }) => id));

it('lists every record once, the weakest evidence first', () => {
  const groups = evidenceGroups(all, everything);
  expect(groups.map(({ evidence }) => evidence)).toEqual(['memory', 'second-hand', 'computed', 'read']);
  expect(groups.flatMap(({ constants }) => constants)).toHaveLength(all.length);
});

it('puts what is named by the words sought before what only the title of a work mentions', () => {
  const ids = idsFor('desflurane partition');
  const mentioned = ids.indexOf('sevoflurane.blood-gas');
  expect(mentioned).toBeGreaterThan(0);
  expect(ids.slice(0, mentioned).every((id) => id.startsWith('desflurane.'))).toBe(true);
  expect(ids.slice(mentioned).some((id) => id.startsWith('desflurane.'))).toBe(false);
});

it('finds a record by its doi, and nothing where a word is nowhere', () => {
  expect(idsFor('10.1093/bja/46.7.495')).toContain('lung.functional-residual-capacity');
  expect(idsFor('desflurane nowhere-to-be-found')).toEqual([]);
});
