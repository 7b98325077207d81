import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { applyChange } from './apply-change.mjs';
import { copyProject } from './project-copy.mjs';
import { toolScript } from './project-folder.mjs';
import { readSources } from './read-sources.mjs';
import { runCommand } from './run-command.mjs';

/** @typedef {import('./apply-change.mjs').Change} Change */

/**
 * What became of a change: which test went red by it; or that none did; or that it was not made, or that the tests do
 * not tell, and why.
 *
 * @typedef {{ kind: 'noticed', test: string } | { kind: 'survived' } | { kind: 'void', why: string }} Outcome
 */

/** Where the tests stand that are there to notice such changes, so that they come first. */
const firstTests = 'tests/whole';

/**
 * Makes each change by itself in a copy of the project, and runs the tests that it can reach until one goes red.
 *
 * @param {readonly Change[]} changes
 * @param {(change: Change, outcome: Outcome, seconds: number) => void} onOutcome
 */
export async function tryChanges(changes, onOutcome) {
  const copy = copyProject();
  const sources = readSources(copy);
  /** Test files that are green without any change; a red one elsewhere proves nothing. @type {Map<string, boolean>} */
  const greenWithout = new Map();

  for (const change of changes) {
    const began = Date.now();
    const made = applyChange(sources, change);
    /** @type {Outcome} */
    let outcome;
    if ('problem' in made) outcome = { kind: 'void', why: `it was not made: ${made.problem}` };
    else {
      for (const [file, text] of made.changed) writeFileSync(path.join(copy, file), text);
      const red = await firstRed(copy, [...made.changed.keys()]);
      for (const file of made.changed.keys())
        writeFileSync(path.join(copy, file), /** @type {string} */ (sources.get(file)));
      if (red === null) outcome = { kind: 'survived' };
      else if (red.test === null)
        outcome = { kind: 'void', why: `tests could not be run with it: ${red.file}` };
      else {
        if (!greenWithout.has(red.file))
          greenWithout.set(red.file, (await runTests(copy, ['run', red.file])) === null);
        outcome = greenWithout.get(red.file)
          ? { kind: 'noticed', test: `${red.file}: ${red.test}` }
          : { kind: 'void', why: `${red.file} is red without any change: mend that first` };
      }
    }
    onOutcome(change, outcome, (Date.now() - began) / 1000);
  }
}

/**
 * @typedef {{ file: string, test: string | null }} Red a test that failed; without a name where its file did not load
 *
 * @param {string} copy
 * @param {readonly string[]} changed
 * @returns {Promise<Red | null>}
 */
async function firstRed(copy, changed) {
  const ofThatName = changed.map((file) => path.basename(file).replace(/\..*/, '.test.'));
  return (
    (await runTests(copy, ['run', `${firstTests}/`])) ??
    (await runTests(copy, ['run', ...ofThatName])) ??
    (await runTests(copy, ['related', ...changed, '--run', `--exclude=${firstTests}/**`]))
  );
}

/**
 * @param {string} copy
 * @param {readonly string[]} args of the test runner
 * @returns {Promise<Red | null>} the first test that failed; null where all passed
 */
async function runTests(copy, args) {
  const report = path.join(copy, '.cache/red.json');
  rmSync(report, { force: true });
  mkdirSync(path.dirname(report), { recursive: true });
  const status = await runCommand(
    process.execPath,
    [
      ...[toolScript('vitest'), ...args, '--bail=1', '--passWithNoTests', '--silent'],
      ...['--reporter=json', `--outputFile=${report}`]
    ],
    // The spreadsheet test starts an office program each time; it is about the file, not about what is changed here.
    { cwd: copy, output: 'to-nowhere', env: { SOFFICE: '', SEED: '' } }
  );
  if (status === 0) return null;
  if (!existsSync(report)) return { file: `the test runner ended with status ${status}`, test: null };
  /** @type {{ name: string, status: string, assertionResults: { status: string, fullName: string }[] }[]} */
  const files = JSON.parse(readFileSync(report, 'utf8')).testResults;
  const named = files.flatMap(({ name, assertionResults }) =>
    assertionResults
      .filter((result) => result.status === 'failed')
      .map(({ fullName }) => ({ file: path.relative(copy, name), test: fullName }))
  );
  const broken = files.find((file) => file.status === 'failed');
  return (
    named[0] ?? { file: broken ? path.relative(copy, broken.name) : 'an error outside any test', test: null }
  );
}
