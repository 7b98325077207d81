/** No test may pass or fail by chance, by the clock or by how busy the computer is. */
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { coreFolders } from '../../core-folders.ts';

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

/** What a file leaves behind, the next one of its process would find, in an order that nobody has chosen. */
const leavesBehind: readonly (readonly [what: string, how: RegExp])[] = [
  ['puts something in the place of a module', /vi\.(mock|doMock|hoisted|resetModules)\(/],
  [
    'changes the world around it',
    /vi\.(stubGlobal|stubEnv|useFakeTimers|spyOn)\(|process\.chdir\(|process\.env\S* *=[^=]/
  ],
  ['runs in a page', /@vitest-environment/]
];

test.each(leavesBehind)('no test %s where files share what is loaded', (_what, how) => {
  const sharing = files.filter((file) => coreFolders.some((folder) => file.startsWith(`${folder}/`)));
  for (const folder of coreFolders)
    expect(
      sharing.some((file) => file.startsWith(`${folder}/`)),
      folder
    ).toBe(true);
  expect(sharing.filter((file) => how.test(readFileSync(path.join(tests, file), 'utf8')))).toEqual([]);
});
