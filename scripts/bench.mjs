/**
 * `npm run bench`: runs the measurements under tests/bench, each in a process of its own, and prints what they found.
 * Timings inform; they never fail the command. `npm run bench -- NAME` runs those whose file name contains NAME.
 */
import './supported-node.mjs';
import { fork } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { bundle } from './bundle.mjs';
import { projectFolder } from './project-folder.mjs';
import { reportSetUpError, setUpDependencies } from './set-up.mjs';

/** @typedef {import('../tests/bench/bench-row.ts').BenchRow} BenchRow */

try {
  await setUpDependencies();
  await runBenches(process.argv.slice(2));
} catch (error) {
  reportSetUpError(error);
}

/** @param {readonly string[]} names */
async function runBenches(names) {
  const files = readdirSync(path.join(projectFolder, 'tests/bench'))
    .filter((file) => file.endsWith('.ts'))
    .filter((file) => /export (async )?(function|const) bench\b/.test(readBench(file)))
    .filter((file) => names.length === 0 || names.some((name) => file.includes(name)));
  if (files.length === 0) {
    console.error(
      names.length > 0 ? `No file under tests/bench is called ${names.join(' or ')}.` : 'No bench was found.'
    );
    process.exitCode = 2;
    return;
  }
  const [processor] = os.cpus();
  console.log(
    `Node ${process.versions.node}, ${os.cpus().length} × ${processor?.model ?? 'unknown processor'}\n`
  );
  for (const file of files) {
    const script = await bundle({
      entry: `tests/bench/${file}`,
      sources: ['src/lib', 'tests/bench', 'tests/fixtures'],
      withPackages: false
    });
    console.log(path.basename(file, '.ts').replaceAll('-', ' '));
    try {
      console.log(table(await measure(script)));
    } catch (error) {
      console.log(`  did not finish: ${error instanceof Error ? error.message : error}\n`);
      process.exitCode = 1;
    }
  }
}

/** @param {string} file */
function readBench(file) {
  return readFileSync(path.join(projectFolder, 'tests/bench', file), 'utf8');
}

/**
 * Runs a bundled bench in a fresh process: what one leaves in the memory or in the compiler touches no other.
 *
 * @param {string} script
 * @returns {Promise<BenchRow[]>}
 */
function measure(script) {
  return new Promise((resolve, reject) => {
    const child = fork(path.join(projectFolder, 'scripts/measure.mjs'), [script], {
      cwd: projectFolder,
      env: { ...process.env, NODE_ENV: 'production' },
      // Memory can be measured only after a collection that was asked for.
      execArgv: ['--expose-gc']
    });
    /** @type {BenchRow[] | null} */
    let rows = null;
    child.on('message', (message) => (rows = /** @type {BenchRow[]} */ (message)));
    child.on('error', reject);
    child.on('exit', (status) => {
      if (status === 0 && rows) resolve(rows);
      else reject(new Error(`it ended with status ${status}`));
    });
  });
}

/** @param {readonly BenchRow[]} rows */
function table(rows) {
  const cells = rows.map(({ name, value, unit, target, met }) => [
    name,
    `${typeof value === 'number' ? Number(value.toPrecision(4)) : value} ${unit}`,
    target === null || target === undefined ? '' : `target ${target}`,
    met === null || met === undefined ? '' : met ? 'met' : 'missed'
  ]);
  const widths = [0, 1, 2].map((column) => Math.max(...cells.map((row) => (row[column] ?? '').length)));
  return cells
    .map((row) => `  ${row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  ')}`.trimEnd())
    .join('\n')
    .concat('\n');
}
