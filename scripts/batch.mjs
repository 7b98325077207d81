/** `npm run --silent batch -- a.json …`: the estimates of workbooks, without a browser. Results alone go to standard output. */
import './supported-node.mjs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { bundle } from './bundle.mjs';
import { putWholeFile } from './put-whole-file.mjs';
import { reportSetUpError, setUpDependencies } from './set-up.mjs';

// npm runs scripts in the project's folder, and keeps the one that the user typed the command in.
const userFolder =
  process.env['npm_lifecycle_event'] === 'batch' ? (process.env['INIT_CWD'] ?? process.cwd()) : process.cwd();

// A reader that has enough (`| head`) closes the pipe: the end of the work, and no error.
process.stdout.on('error', (/** @type {NodeJS.ErrnoException} */ error) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

const io = {
  /** @param {string} file */
  readFile: (file) => readFile(path.resolve(userFolder, file)),
  /** @param {string} file @param {Uint8Array} bytes */
  writeFile: (file, bytes) => putWholeFile(path.resolve(userFolder, file), bytes),
  /** @param {string} line */
  out(line) {
    process.stdout.write(`${line}\n`);
  },
  /** @param {string} line */
  error(line) {
    process.stderr.write(`${line}\n`);
  }
};

try {
  await setUpDependencies();
  const script = await bundle({
    entry: 'src/lib/batch/run-batch.ts',
    sources: ['src/lib'],
    withPackages: true
  });
  const { runBatch } = await import(pathToFileURL(script).href);
  process.exitCode = await runBatch(process.argv.slice(2), io);
} catch (error) {
  reportSetUpError(error);
}
