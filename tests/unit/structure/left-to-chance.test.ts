/** No test may pass or fail by chance, by the clock or by how busy the computer is. */
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';

const tests = path.resolve(import.meta.dirname, '../..');
const files = readdirSync(tests, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => file.endsWith('.ts') && !/^(e2e|bench|seed)\//.test(file));

const leavesToChance: readonly (readonly [what: string, how: RegExp, instead: string])[] = [
  ['draws numbers of its own', /Math\.random\(/, 'take an arbitrary of fast-check, or a seeded generator'],
  [
    'has a seed of its own',
    /\bseed: *\w+[^{}]*numRuns|numRuns[^{}]*\bseed\b/,
    'the whole run has one (tests/seed)'
  ],
  [
    'reads the clock',
    /Date\.now\(|performance\.now\(|new Date\(\)/,
    'give the code a clock of the test’s own'
  ],
  ['waits for a while', /setTimeout\((resolve|\w+, *\d)/, 'use vi.useFakeTimers, or await what is to happen'],
  ['waits, but not for long', /vi\.(waitFor|waitUntil)\(|expect\.poll\(/, 'await what is to happen'],
  ['has a time limit of its own', /vi\.setConfig\(/, 'the one in vite.config.ts is for tests that hang']
];

describe.each(leavesToChance)('no test %s', (_what, how, instead) => {
  test(instead, () => {
    expect(files.filter((file) => how.test(readFileSync(path.join(tests, file), 'utf8')))).toEqual([]);
  });
});

test('all kinds of tests are looked at, but for those in the browser', () => {
  for (const kind of ['unit', 'property', 'published', 'fixtures'])
    expect(files.some((file) => file.startsWith(`${kind}/`))).toBe(true);
});
