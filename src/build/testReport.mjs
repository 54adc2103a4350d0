/**
 * @typedef {{ passed: number, failed: number }} Tally
 * @typedef {{ status: string, assertionResults: unknown[] }} FileReport
 * @typedef {{ numPassedTests: number, numFailedTests: number, testResults: FileReport[] }} RunReport
 */

/**
 * Counts one run of the test runner from its JSON report. A file that could not be read counts as one failure,
 * and a run that ended badly counts as at least one even when every test in it passed or no report was written.
 * @param {RunReport | null} report
 * @param {number} exitCode
 * @returns {Tally}
 */
export function tallyOfRun(report, exitCode) {
  const passed = report?.numPassedTests ?? 0;
  const unread = (report?.testResults ?? []).filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  );
  const failed = (report?.numFailedTests ?? 0) + unread.length;
  return { passed, failed: exitCode === 0 ? failed : Math.max(failed, 1) };
}

/**
 * @param {readonly Tally[]} tallies
 * @returns {Tally}
 */
export function sumOf(tallies) {
  return tallies.reduce(
    (sum, tally) => ({ passed: sum.passed + tally.passed, failed: sum.failed + tally.failed }),
    { passed: 0, failed: 0 },
  );
}
