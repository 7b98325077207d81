/**
 * How a run of tests went, counted from what the test runners write for machines.
 *
 * @typedef {{ passed: number, failed: number, skipped: number }} Counts
 */

/**
 * Counts of vitest's JSON report, one for each folder under `tests`. A test file that could not be loaded holds no
 * test, but counts as one that failed.
 *
 * @param {any} report
 * @param {readonly string[]} kinds names of the folders
 * @returns {Record<string, Counts>}
 */
export function countVitest(report, kinds) {
  return Object.fromEntries(
    kinds.map((kind) => {
      const counts = { passed: 0, failed: 0, skipped: 0 };
      for (const file of report.testResults) {
        if (!file.name.replaceAll('\\', '/').includes(`/tests/${kind}/`)) continue;
        for (const { status } of file.assertionResults) {
          if (status === 'passed') counts.passed++;
          else if (status === 'failed') counts.failed++;
          else counts.skipped++;
        }
        const hasFailedTest = file.assertionResults.some(
          (/** @type {any} */ test) => test.status === 'failed'
        );
        if (file.status === 'failed' && !hasFailedTest) counts.failed++;
      }
      return [kind, counts];
    })
  );
}

/**
 * Counts of Playwright's JSON report. An error outside any test counts as one that failed, and so does a test that
 * passes only when tried again.
 *
 * @param {any} report
 * @returns {Counts}
 */
export function countPlaywright({ stats, errors }) {
  return {
    passed: stats.expected,
    failed: stats.unexpected + stats.flaky + errors.length,
    skipped: stats.skipped
  };
}

/**
 * Makes sure that no failure is lost: a run that ended with a failure but names none, and one in which no test ran,
 * count as one that failed.
 *
 * @param {Counts} counts
 * @param {number} exitStatus of the runner
 * @returns {Counts}
 */
export function withFailureOfTheRun(counts, exitStatus) {
  const isSilent = counts.failed === 0 && (exitStatus !== 0 || counts.passed === 0);
  return isSilent ? { ...counts, failed: 1 } : counts;
}

/** @param {readonly Counts[]} parts @returns {Counts} */
export function total(parts) {
  return parts.reduce(
    (sum, part) => ({
      passed: sum.passed + part.passed,
      failed: sum.failed + part.failed,
      skipped: sum.skipped + part.skipped
    }),
    { passed: 0, failed: 0, skipped: 0 }
  );
}

/** @param {Counts} counts @returns {string} such as `12 passed, 0 failed, 1 skipped` */
export function say({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}
