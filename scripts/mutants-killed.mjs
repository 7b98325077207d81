import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { inWords, keyOf, sampleOf, survivorsAfter } from './mutant-sample.mjs';
import { projectFolder } from './project-folder.mjs';
import { sampleVariable } from './sampled-mutants-only.mjs';

/** What decides the figures: reckoning, year, money, case and the document. */
const rooms = /^src\/lib\/(calc\/(reckoning|year|money|case)(\/|\.ts$)|workbook\/)/;

/** The share of mutants that the tests have to notice. */
const leastPercent = 75;

const survivorsFile = path.join(projectFolder, 'tests/mutation/survivors.json');

/**
 * Has the mutation library break the sources, one mutant at a time, and says which of them no test notices.
 *
 * @param {{ count: number, seed: number, of: string }} wanted how many mutants are drawn (Infinity for all), and a part
 *   of the paths of the files to break
 * @returns {Promise<number>} the exit status: 1 where less than the least share was noticed
 */
export async function tryMutants(wanted) {
  const files = readdirSync(path.join(projectFolder, 'src/lib'), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map((entry) => path.join(entry.parentPath, entry.name))
    .filter((file) => rooms.test(fromProject(file)) && fromProject(file).includes(wanted.of));
  if (files.length === 0) {
    console.error(`No file of these rooms has ${JSON.stringify(wanted.of)} in its path.`);
    return 2;
  }
  const texts = new Map(files.map((file) => [file, readFileSync(file, 'utf8')]));
  const all = await mutantsOf(texts);
  const sample = sampleOf(all, texts, wanted);
  console.log(`${all.length} mutants of ${files.length} files; ${sample.length} of them are tried.\n`);

  const wordsByKey = new Map(
    sample.map((mutant) => [keyOf(mutant), inWords(mutant, texts.get(mutant.fileName) ?? '')])
  );
  const results = await run(sample, [...wordsByKey.keys()]);

  const tried = results.flatMap(({ status, ...mutant }) => {
    const words = wordsByKey.get(keyOf(mutant));
    return words === undefined ? [] : [{ status, words }];
  });
  const withStatus = (/** @type {readonly string[]} */ ...statuses) =>
    tried.filter(({ status }) => statuses.includes(status)).map(({ words }) => words);
  const killed = withStatus('Killed', 'Timeout');
  const survived = withStatus('Survived', 'NoCoverage');
  const listed = existsSync(survivorsFile) ? JSON.parse(readFileSync(survivorsFile, 'utf8')) : [];
  const survivors = survivorsAfter(listed, { killed, survived });
  writeFileSync(survivorsFile, `${JSON.stringify(survivors, null, 2)}\n`);

  for (const { file, mutator, code, becomes, reason } of survivors)
    console.log(
      `${file}, ${mutator}: ${short(code)}  →  ${short(becomes)}${reason && `\n  because: ${reason}`}`
    );
  const judged = killed.length + survived.length;
  const percent = judged === 0 ? 100 : (100 * killed.length) / judged;
  console.log(
    `\n${killed.length} noticed, ${survived.length} survived: ${percent.toFixed(1)} %, at least ${leastPercent} % is asked ` +
      `for. ${tried.length - judged} were not judged, as they act or fail while a module is loaded.\n` +
      `Survivors, with room for the reason why one may: ${path.relative(projectFolder, survivorsFile)}`
  );
  return percent < leastPercent ? 1 : 0;
}

/** @param {string} code */
const short = (code) => (code.length > 100 ? `${code.slice(0, 99)}…` : code);

/** @param {string} file */
const fromProject = (file) => path.relative(projectFolder, file).split(path.sep).join('/');

/**
 * What stands in no function and holds none runs once, when its module is loaded: data and texts, whose mutants survive
 * for nothing.
 *
 * @param {any} place in the syntax tree
 * @returns {string | undefined} why it is not broken
 */
function isData(place) {
  if (place.isFunction() || place.getFunctionParent() !== null) return undefined;
  let holdsFunction = false;
  place.traverse({
    Function(/** @type {any} */ inner) {
      holdsFunction = true;
      inner.stop();
    }
  });
  return holdsFunction ? undefined : 'It is data.';
}

/**
 * @param {ReadonlyMap<string, string>} texts by file
 * @returns {Promise<import('./mutant-sample.mjs').Mutant[]>}
 */
async function mutantsOf(texts) {
  const { Instrumenter } = await import('@stryker-mutator/instrumenter');
  const silent = () => undefined;
  const logger = { info: silent, debug: silent, warn: silent, isDebugEnabled: () => false };
  const instrumenter = new Instrumenter(/** @type {any} */ (logger));
  const { mutants } = await instrumenter.instrument(
    [...texts].map(([name, content]) => ({ name, content, mutate: true })),
    /** @type {any} */ ({ ignorers: [{ shouldIgnore: isData }], plugins: null, excludedMutations: [] })
  );
  return mutants.filter(({ status }) => status !== 'Ignored');
}

/**
 * @param {readonly import('./mutant-sample.mjs').Mutant[]} mutants to try
 * @param {readonly string[]} keys of the same
 */
async function run(mutants, keys) {
  const { Stryker } = await import('@stryker-mutator/core');
  const sample = path.join(projectFolder, '.cache/mutant-sample.json');
  mkdirSync(path.dirname(sample), { recursive: true });
  writeFileSync(sample, JSON.stringify(keys));
  process.env[sampleVariable] = sample;
  // The spreadsheet test starts an office program each time; it is about the file, not about what is changed here.
  process.env['SOFFICE'] = '';
  process.chdir(projectFolder);
  const results = await new Stryker({
    // No other lines: what each test reaches is noted for every mutant that is made, thousands for thousands.
    mutate: mutants.map(
      ({ fileName, location: { start, end } }) => `${fromProject(fileName)}:${start.line + 1}-${end.line + 1}`
    ),
    testRunner: 'vitest',
    vitest: { configFile: 'tests/mutation/vitest.config.ts' },
    plugins: [
      '@stryker-mutator/vitest-runner',
      pathToFileURL(path.join(projectFolder, 'scripts/sampled-mutants-only.mjs')).href
    ],
    checkers: ['sample'],
    coverageAnalysis: 'perTest',
    // As `isData`, for functions that are called while a module is loaded.
    ignoreStatic: true,
    ignorePatterns: ['.cache', 'build', 'coverage', 'test-results', 'playwright-report', 'docs'],
    tempDirName: '.cache/mutants',
    reporters: [process.stdout.isTTY ? 'progress' : 'progress-append-only'],
    // Whoever waits for thousands of tests has time; only a test that hangs is cut off.
    dryRunTimeoutMinutes: 120,
    thresholds: { high: 90, low: leastPercent, break: null },
    allowConsoleColors: process.stdout.isTTY
  }).runMutationTest();
  return results.map(({ fileName, mutatorName, replacement, location, status }) => ({
    fileName: path.resolve(fileName),
    mutatorName,
    replacement: replacement ?? '',
    // A report counts from 1.
    location: {
      start: { line: location.start.line - 1, column: location.start.column - 1 },
      end: { line: location.end.line - 1, column: location.end.column - 1 }
    },
    status
  }));
}
