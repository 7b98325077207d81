/** `npm test`: does the set-up that is missing, then runs every check of the project and says how many passed. */
import './supported-node.mjs';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import util from 'node:util';
import { toolScript } from './project-folder.mjs';
import { runCommand } from './run-command.mjs';
import { reportSetUpError, setUpBuild, setUpDependencies, SetUpError } from './set-up.mjs';
import { countPlaywright, countVitest, say, total, withFailureOfTheRun } from './test-counts.mjs';

/** @typedef {import('./test-counts.mjs').Counts} Counts */

const staticChecks = ['format', 'lint', 'types'];
const vitestKinds = ['unit', 'whole', 'published', 'property'];
const allStages = [...staticChecks, ...vitestKinds, 'e2e'];

const usage = `Usage: npm test -- [--only STAGE,STAGE …] [--no-install]
  --only        of ${allStages.join(', ')}: these stages alone
  --no-install  stop where something would have to be installed first`;

const options = readOptions();
if (options) {
  try {
    await setUpDependencies(options);
    if (!options.mayInstall) await expectTools(options.stages);
    await runStages(options.stages);
  } catch (error) {
    reportSetUpError(error);
  }
}

/** @returns {{ stages: string[], mayInstall: boolean } | null} null where the process is to end */
function readOptions() {
  try {
    const { values } = util.parseArgs({
      options: {
        only: { type: 'string', multiple: true },
        'no-install': { type: 'boolean' },
        help: { type: 'boolean', short: 'h' }
      }
    });
    if (values.help) {
      console.log(usage);
      return null;
    }
    const only = values.only?.flatMap((names) => names.split(',')) ?? allStages;
    const unknown = only.find((name) => !allStages.includes(name));
    if (unknown !== undefined) throw new Error(`--only: there is no stage ${JSON.stringify(unknown)}`);
    return {
      stages: allStages.filter((name) => only.includes(name)),
      mayInstall: !values['no-install']
    };
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : error}\n${usage}`);
    process.exitCode = 2;
    return null;
  }
}

/**
 * @param {readonly string[]} chosen
 * @throws {SetUpError} where a program that these stages need is missing and would be installed
 */
async function expectTools(chosen) {
  const { missingTools } = await import('./missing-tools.mjs');
  const missing = await missingTools({
    office: vitestKinds.some((name) => chosen.includes(name)),
    postgres: chosen.includes('unit'),
    browser: chosen.includes('e2e')
  });
  if (missing.length > 0) {
    throw new SetUpError(
      `${missing.join(' and ')} would have to be installed first, and --no-install was given. Install what is ` +
        'missing, or run the command without --no-install.'
    );
  }
}

/** @param {readonly string[]} chosen */
async function runStages(chosen) {
  const reports = mkdtempSync(path.join(os.tmpdir(), 'vapour-ledger-test-'));
  /** @type {Record<string, Counts>} */
  const results = {};
  try {
    for (const check of staticChecks.filter((name) => chosen.includes(name))) {
      heading(check);
      const status = await runStaticCheck(check);
      results[check] = { passed: status === 0 ? 1 : 0, failed: status === 0 ? 0 : 1, skipped: 0 };
    }
    const kinds = vitestKinds.filter((name) => chosen.includes(name));
    if (kinds.length > 0) {
      heading(kinds.join(', '));
      Object.assign(results, await runVitest(kinds, path.join(reports, 'vitest.json')));
    }
    if (chosen.includes('e2e')) {
      heading('e2e');
      results['e2e'] = await runEndToEnd(path.join(reports, 'playwright.json'));
    }
  } finally {
    rmSync(reports, { recursive: true, force: true });
  }

  heading('summary');
  for (const [name, counts] of Object.entries(results)) console.log(`${name.padEnd(10)} ${say(counts)}`);
  const sum = total(Object.values(results));
  console.log(`\n${say(sum)}`);
  process.exitCode = sum.failed > 0 || sum.passed === 0 ? 1 : 0;
}

/** @param {string} name */
function heading(name) {
  console.log(`\n── ${name} ──`);
}

/** @param {string} check @returns {Promise<number>} exit status */
async function runStaticCheck(check) {
  const node = process.execPath;
  // Both tools look again only at files that changed; their caches know versions and settings.
  if (check === 'format') {
    const cache = ['--cache', '--cache-strategy', 'content', '--cache-location', '.cache/prettier'];
    return runCommand(node, [toolScript('prettier'), '--check', '--log-level', 'warn', ...cache, '.']);
  }
  // Lint and types read the settings that the framework writes; a fresh checkout has none yet.
  const sync = await runCommand(node, [toolScript('@sveltejs/kit', 'svelte-kit'), 'sync'], {
    output: 'on-failure'
  });
  if (check === 'lint') {
    const cache = ['--cache', '--cache-strategy', 'content', '--cache-location', '.cache/eslint'];
    return sync || runCommand(node, [toolScript('eslint'), '--max-warnings', '0', ...cache, '.']);
  }
  const pages = await runCommand(node, [
    ...[toolScript('svelte-check'), '--tsconfig', './tsconfig.json', '--fail-on-warnings']
  ]);
  // The service worker lives in a world of other globals than the pages, so it is checked apart.
  const serviceWorker = await runCommand(node, [
    ...[toolScript('typescript', 'tsc'), '--project', './tsconfig.service-worker.json']
  ]);
  return sync || pages || serviceWorker;
}

/**
 * @param {readonly string[]} kinds
 * @param {string} report
 * @returns {Promise<Record<string, Counts>>}
 */
async function runVitest(kinds, report) {
  const { setUpOffice } = await import('./office.mjs');
  const office = await setUpOffice();
  if (!office) {
    console.log(
      'LibreOffice was not found, and could not be installed here: the test that recalculates an exported ' +
        'spreadsheet with it is skipped. Install libreoffice-calc, or let SOFFICE name it, to run that test too.'
    );
  }
  const { setUpPostgres } = await import('./postgres.mjs');
  const postgres = kinds.includes('unit') ? await setUpPostgres() : null;
  if (kinds.includes('unit') && !postgres) {
    console.log(
      'PostgreSQL was not found, and could not be installed here: the test that groups a case log on it is skipped. ' +
        'Install postgresql, or let POSTGRES_BIN name the folder of its programs, to run that test too.'
    );
  }
  const status = await runCommand(
    process.execPath,
    [
      ...[toolScript('vitest'), 'run', '--allowOnly=false', ...kinds.map((kind) => `tests/${kind}/`)],
      // The limit is there for tests that hang. A busy computer must not fail a sound one.
      ...['--testTimeout=300000', '--hookTimeout=300000'],
      ...['--reporter=default', '--reporter=json', `--outputFile.json=${report}`]
    ],
    { env: { SOFFICE: office ?? '', POSTGRES_BIN: postgres ? path.dirname(postgres) : '' } }
  );
  const counts = existsSync(report) ? countVitest(JSON.parse(readFileSync(report, 'utf8')), kinds) : {};
  for (const kind of kinds) {
    if (!counts[kind]?.passed) console.log(`No test passed under tests/${kind}.`);
  }
  const hasNamedFailure = Object.values(counts).some(({ failed }) => failed > 0);
  return Object.fromEntries(
    kinds.map((kind, index) => [
      kind,
      // An error outside any test belongs to no kind; the first one bears it, unless a test has failed anyway.
      withFailureOfTheRun(
        counts[kind] ?? { passed: 0, failed: 0, skipped: 0 },
        index === 0 && !hasNamedFailure ? status : 0
      )
    ])
  );
}

/** @param {string} report @returns {Promise<Counts>} */
async function runEndToEnd(report) {
  const { setUpBrowser } = await import('./browser.mjs');
  try {
    await setUpBuild();
    const browser = await setUpBrowser();
    const status = await runCommand(
      process.execPath,
      [toolScript('@playwright/test', 'playwright'), 'test', '--reporter=list,json'],
      { env: { CHROMIUM_PATH: browser, PLAYWRIGHT_JSON_OUTPUT_FILE: report } }
    );
    const none = { passed: 0, failed: 0, skipped: 0 };
    const counts = existsSync(report) ? countPlaywright(JSON.parse(readFileSync(report, 'utf8'))) : none;
    return withFailureOfTheRun(counts, status);
  } catch (error) {
    // Without a build or a browser these tests cannot run; the other stages are still worth their answer.
    console.error(error instanceof Error ? error.message : error);
    return { passed: 0, failed: 1, skipped: 0 };
  }
}
