import { describe, expect, test } from 'vitest';
import {
  countPlaywright,
  countVitest,
  say,
  total,
  withFailureOfTheRun
} from '../../../scripts/test-counts.mjs';

const counts = (passed: number, failed: number, skipped = 0) => ({ passed, failed, skipped });

describe('the counts of a run', () => {
  test('go by the folder of the test file, and a file that cannot be loaded counts as failed', () => {
    const file = (name: string, status: string, ...results: string[]) => ({
      name,
      status,
      assertionResults: results.map((result) => ({ status: result }))
    });
    const report = {
      testResults: [
        file('/x/tests/unit/a.test.ts', 'passed', 'passed', 'passed', 'pending'),
        file('/x/tests/unit/b.test.ts', 'failed', 'passed', 'failed'),
        file('/x/tests/unit/c.test.ts', 'failed'),
        file('C:\\x\\tests\\property\\d.test.ts', 'failed', 'passed')
      ]
    };
    expect(countVitest(report, ['unit', 'published', 'property'])).toEqual({
      unit: counts(3, 2, 1),
      published: counts(0, 0),
      property: counts(1, 1)
    });
  });

  test('of the browser count errors outside any test, and tests that pass only sometimes', () => {
    const stats = { expected: 5, unexpected: 1, flaky: 1, skipped: 2 };
    expect(countPlaywright({ stats, errors: [] })).toEqual(counts(5, 2, 2));
    expect(countPlaywright({ stats, errors: [{ message: 'no server' }] })).toEqual(counts(5, 3, 2));
  });

  test('never lose a failure', () => {
    expect(withFailureOfTheRun(counts(5, 0), 0)).toEqual(counts(5, 0));
    expect(withFailureOfTheRun(counts(5, 2), 1)).toEqual(counts(5, 2));
    expect(withFailureOfTheRun(counts(5, 0), 1)).toEqual(counts(5, 1));
    expect(withFailureOfTheRun(counts(0, 0), 0)).toEqual(counts(0, 1));
    expect(withFailureOfTheRun(counts(0, 0, 3), 0)).toEqual(counts(0, 1, 3));
  });

  test('are added up and said in one line', () => {
    expect(say(total([counts(1, 0), counts(2, 1)]))).toBe('3 passed, 1 failed');
    expect(say(total([counts(1, 0, 2), counts(2, 0)]))).toBe('3 passed, 0 failed, 2 skipped');
  });
});
