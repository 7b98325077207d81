import { describe, expect, test } from 'vitest';
import { readCell } from '#lib/calc/cell-path.ts';
import { airLimitTemperatures } from '#lib/calc/reference/exposure-limit-terms.ts';
import { newestReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import type { Working } from '#lib/calc/working/working.ts';
import { everyBranchRecorded } from './formulas-in-use.ts';
import { bits } from './recorded.ts';

const leavesOf = <K extends Working['kind']>(kind: K) =>
  everyBranchRecorded.flatMap(({ workbook, leaves }) =>
    leaves
      .filter((leaf) => leaf.kind === kind)
      .map((leaf) => ({ leaf: leaf as Extract<Working, { kind: K }>, workbook }))
  );

describe('the leaves of every working', () => {
  test('are cells, constants, defaults and assumptions, and all four occur', () => {
    const kinds = new Set(everyBranchRecorded.flatMap(({ leaves }) => leaves.map(({ kind }) => kind)));
    expect([...kinds].sort()).toEqual(['assumption', 'cell', 'constant', 'default']);
  });

  test('that are cells hold what stands in the workbook at their path', () => {
    const wrong = leavesOf('cell').filter(({ leaf, workbook }) => {
      const given = readCell(workbook, leaf.path);
      const value = typeof leaf.value === 'object' ? Number(String(leaf.value)) : leaf.value;
      return given === null || given === undefined || Number(given) !== value;
    });
    expect([...new Set(wrong.map(({ leaf }) => `${leaf.path} = ${bits(leaf.value)}`))]).toEqual([]);
  });

  test('that are defaults stand for a cell that is empty in the workbook', () => {
    const wrong = leavesOf('default').filter(({ leaf, workbook }) => readCell(workbook, leaf.path) !== null);
    expect(wrong.map(({ leaf }) => leaf.path)).toEqual([]);
  });

  test('that are assumptions say in a sentence what is assumed', () => {
    for (const { leaf } of leavesOf('assumption')) expect(leaf.words).toMatch(/^[A-Z].*\.$/);
  });

  test('that are constants are records of the reference set or of the terms of limits, value and unit', () => {
    const temperatures = new Map(airLimitTemperatures.map((record) => [record.id, record]));
    for (const { leaf } of [...leavesOf('constant'), ...leavesOf('default')]) {
      const { id } = leaf.constant;
      const record = newestReferenceSet.constants.get(id) ?? temperatures.get(id);
      expect([leaf.value, leaf.unit], leaf.constant.id).toEqual([record?.value, record?.unit]);
    }
  });
});

describe('every constant of the reference set', () => {
  const reached = new Set(
    [...leavesOf('constant'), ...leavesOf('default')].map(({ leaf }) => leaf.constant.id)
  );
  const parents = new Set<string>();
  const addParents = (id: string): void => {
    for (const parent of newestReferenceSet.constants.get(id)?.parents ?? []) {
      parents.add(parent);
      addParents(parent);
    }
  };
  const all = [...newestReferenceSet.constants.values()];
  all.forEach(({ id }) => addParents(id));

  test('is reached by some figure, is a parent of another, or says why it is kept', () => {
    expect(reached.size).toBeGreaterThan(80);
    const idle = all.filter(
      ({ id, unusedBecause }) => !reached.has(id) && !parents.has(id) && !unusedBecause
    );
    expect(idle.map(({ id }) => id)).toEqual([]);
  });

  test('that says why it is kept is reached by no figure', () => {
    const used = all.filter(({ id, unusedBecause }) => unusedBecause !== undefined && reached.has(id));
    expect(used.map(({ id }) => id)).toEqual([]);
  });
});
