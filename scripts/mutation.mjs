/**
 * `npm run mutation`: tests of the tests. Breaks the sources in a copy, one change at a time, and expects a test to go
 * red for each.
 */
import './supported-node.mjs';
import util from 'node:util';
import { changes } from '../tests/mutation/changes.mjs';
import { reportSetUpError, setUpDependencies } from './set-up.mjs';

/** So many that the share that is noticed is known to some 4 percent points, so few that they are tried overnight. */
const usualCount = '400';

const usage = `Usage: npm run mutation -- [WORD …] [--list]
       npm run mutation -- --sample [--count N] [--seed N] [--of PATH]
       npm run mutation -- --all [--of PATH]
  WORD …    of the changes made by hand (tests/mutation/changes.mjs), those whose rule holds one of these words
  --list    the rules, without trying anything
  --sample  a seeded sample of changes made by a library over reckoning, year, money, case and workbook
  --count   how many (default: ${usualCount})
  --seed    another sample than that of seed 1
  --of      those of files alone whose path holds this, e.g. money/payback
  --all     every change that the library makes there: many hours`;

const wanted = readOptions();
if (wanted) {
  try {
    await setUpDependencies();
    await wanted();
  } catch (error) {
    reportSetUpError(error);
  }
}

/** @returns {(() => Promise<void>) | null} what to do; null where the process is to end */
function readOptions() {
  try {
    const { values, positionals } = util.parseArgs({
      allowPositionals: true,
      options: {
        list: { type: 'boolean' },
        sample: { type: 'boolean' },
        count: { type: 'string' },
        seed: { type: 'string' },
        of: { type: 'string' },
        all: { type: 'boolean' },
        help: { type: 'boolean', short: 'h' }
      }
    });
    if (values.help) {
      console.log(usage);
      return null;
    }
    if (values.sample || values.all) {
      const count = values.all ? Infinity : wholeNumber('--count', values.count ?? usualCount);
      const seed = wholeNumber('--seed', values.seed ?? '1');
      return async () => {
        const { tryMutants } = await import('./mutants-killed.mjs');
        process.exitCode = await tryMutants({ count, seed, of: values.of ?? '' });
      };
    }
    const chosen = changes.filter(
      ({ rule }) =>
        positionals.length === 0 ||
        positionals.some((word) => rule.toLowerCase().includes(word.toLowerCase()))
    );
    if (chosen.length === 0) throw new Error(`No rule holds the word ${positionals.join(' or ')}`);
    if (values.list) {
      for (const { rule } of chosen) console.log(rule);
      return null;
    }
    return () => tryByHand(chosen);
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : error}\n${usage}`);
    process.exitCode = 2;
    return null;
  }
}

/** @param {string} option @param {string} text */
function wholeNumber(option, text) {
  if (/^\d{1,9}$/.test(text) && Number(text) > 0) return Number(text);
  throw new Error(`${option}: ${JSON.stringify(text)} was given; allowed is a whole number from 1`);
}

/** @param {typeof changes} chosen */
async function tryByHand(chosen) {
  const { tryChanges } = await import('./changes-noticed.mjs');
  console.log(`Trying ${chosen.length} changes in a copy, each until the first test goes red …\n`);
  const counts = { noticed: 0, survived: 0, void: 0 };
  await tryChanges(chosen, ({ rule, edits }, outcome, seconds) => {
    counts[outcome.kind]++;
    console.log(
      `${{ noticed: 'red', survived: 'SURVIVED', void: 'VOID' }[outcome.kind]}  ${rule}  (${Math.round(seconds)} s)`
    );
    if (outcome.kind === 'noticed') console.log(`     by ${outcome.test}`);
    if (outcome.kind === 'void') console.log(`     ${outcome.why}`);
    if (outcome.kind === 'survived')
      for (const [find, put] of edits) console.log(`     no test noticed “${put}” in place of “${find}”`);
  });
  console.log(
    `\n${counts.noticed} turned a test red, ${counts.survived} survived, ${counts.void} could not be tried`
  );
  process.exitCode = counts.survived + counts.void > 0 ? 1 : 0;
}
