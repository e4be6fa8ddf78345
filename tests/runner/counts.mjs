import { existsSync, readFileSync } from 'node:fs';

/** What a part came to: tests passed, failed, and the names of those that were skipped. */
const NOTHING = { passed: 0, failed: 0, skipped: [] };

function readJson(path) {
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : undefined;
}

/** Reads vitest's report. A file that could not be loaded has no test of its own: it counts as one failure. */
export function countVitest(path) {
  const report = readJson(path);
  if (!report) return NOTHING;
  const files = report.testResults;
  const tests = files.flatMap((file) => file.assertionResults);
  const unloaded = files.filter((file) => file.status === 'failed' && !file.assertionResults.some(isFailed));
  return {
    passed: tests.filter(({ status }) => status === 'passed').length,
    failed: tests.filter(isFailed).length + unloaded.length,
    skipped: tests.filter(({ status }) => !['passed', 'failed'].includes(status)).map(({ fullName }) => fullName),
  };
}

const isFailed = ({ status }) => status === 'failed';

/** Reads Playwright's report. A test that passed only when tried again counts as failed. */
export function countPlaywright(path) {
  const report = readJson(path);
  if (!report) return NOTHING;
  const specs = report.suites.flatMap(specsOf);
  const names = specs.filter(({ status }) => status === 'skipped').map(({ title }) => title);
  const passed = specs.filter(({ status }) => status === 'expected').length;
  return { passed, failed: specs.length - passed - names.length + report.errors.length, skipped: names };
}

function specsOf(suite) {
  const own = (suite.specs ?? []).flatMap(({ title, tests }) =>
    tests.map(({ status, projectName }) => ({ status, title: `${title} (${projectName})` })),
  );
  return [...own, ...(suite.suites ?? []).flatMap(specsOf)];
}

/**
 * What counts in the end. A part that failed as a whole, or ran no test at all, is a failure even when no test says so.
 * @param outcome `code` the tool ended with, `timedOut` when its time was up.
 */
export function settle(counted, { code, timedOut }) {
  const silent = counted.passed + counted.failed + counted.skipped.length === 0;
  const missed = counted.failed === 0 && (code !== 0 || silent);
  return { ...counted, failed: counted.failed + (timedOut ? 1 : missed ? 1 : 0) };
}
