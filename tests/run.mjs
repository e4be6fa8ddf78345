import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { inHouse } from '../electron/launch/house.mjs';
import { runTool } from '../electron/launch/runTool.mjs';
import { SetUpError } from '../electron/launch/SetUpError.mjs';
import { setUp } from '../electron/launch/setUp.mjs';
import { prepareElectron } from './electronRuntime/prepare.mjs';
import { countPlaywright, countVitest, settle } from './runner/counts.mjs';
import { ensureDebianPackages, hasProgram } from './runner/debian.mjs';
import { choose, parts, reports, SET_UP_SECONDS } from './runner/parts.mjs';

const say = (text) => process.stdout.write(`${text}\n`);
const secondsSince = (start) => (performance.now() - start) / 1000;

/** Ends the run with the one line that counts. */
function end(passed, failed) {
  say(`${passed} passed, ${failed} failed`);
  process.exit(failed === 0 ? 0 : 1);
}

/** Runs one part within its time and counts it. */
async function runPart({ part, files }, env, missing) {
  const lacking = (part.needs ?? []).filter((name) => !hasProgram(name));
  if (lacking.length > 0) {
    return { passed: 0, failed: 0, skipped: [`all of ${part.name}: ${lacking.join(', ')} not here`], took: 0 };
  }
  const start = performance.now();
  if (part.report) rmSync(part.report, { force: true });
  part.before?.();
  let outcome = { code: 0, timedOut: false };
  for (const [program, ...args] of part.steps(files)) {
    const limitMs = Math.max(1, part.seconds * 1000 - secondsSince(start) * 1000);
    outcome = await runTool(program, args, { env: { ...env, ...part.env }, limitMs, group: true });
    if (outcome.failed) say(`${program} could not be started: ${outcome.failed.message}`);
    if (outcome.code !== 0 || outcome.timedOut) break;
  }
  const took = secondsSince(start);
  if (outcome.timedOut) say(`${part.name} was ended: its ${part.seconds} seconds were up.`);
  const counted =
    part.counts === 'one'
      ? { passed: outcome.code === 0 && !outcome.timedOut ? 1 : 0, failed: 0, skipped: [] }
      : (part.counts === 'vitest' ? countVitest : countPlaywright)(part.report);
  const noted = part.name === 'journeys' && missing ? { ...counted, skipped: [...counted.skipped, missing] } : counted;
  return { ...settle(noted, outcome), took };
}

/** Prints what each part took and came to, and every skipped test by name. */
function tell(results, took) {
  say('\npart        passed failed skipped   seconds of');
  for (const { part, passed, failed, skipped, took: seconds } of results) {
    const figures = [passed, failed, skipped.length].map((figure) => String(figure).padStart(7)).join('');
    say(`${part.name.padEnd(11)}${figures} ${seconds.toFixed(1).padStart(10)} ${part.seconds}`);
  }
  for (const name of results.flatMap(({ skipped }) => skipped)) say(`skipped: ${name}`);
  say(`wall time ${took.toFixed(1)} s`);
}

const start = performance.now();
const { chosen, unknown } = choose(process.argv.slice(2), (file) => existsSync(inHouse(file)));
if (unknown) {
  say(`"${unknown}" is neither a file here nor a part. Parts: ${parts.map(({ name }) => name).join(', ')}.`);
  end(0, 1);
}

try {
  const wants = (name) => chosen.some(({ part }) => part.name === name);
  for (const sentence of await ensureDebianPackages(say, SET_UP_SECONDS * 1000)) say(sentence);
  const house = await setUp({ build: wants('journeys') && !wants('build') });
  mkdirSync(reports, { recursive: true });
  const electron = wants('journeys') ? await prepareElectron(house) : {};
  if (electron.missing) say(`${electron.missing}; the journeys run in a browser only.`);
  const found = electron.program ? { KNOWNGOOD_TEST_ELECTRON: electron.program } : {};
  const env = { ...house.env, ...found, KNOWNGOOD_TEST_NODE: house.node };
  const setUpTook = secondsSince(start);
  say(`set-up took ${setUpTook.toFixed(1)} s of ${SET_UP_SECONDS}`);

  const results = [];
  for (const choice of chosen) {
    say(`\n── ${choice.part.name}`);
    results.push({ part: choice.part, ...(await runPart(choice, env, electron.missing)) });
  }
  tell(results, secondsSince(start));
  const sum = (name) => results.reduce((total, result) => total + result[name], 0);
  // A set-up over its time is a failure of its own.
  end(sum('passed'), sum('failed') + (setUpTook > SET_UP_SECONDS ? 1 : 0));
} catch (error) {
  say(error instanceof SetUpError ? `The set-up failed: ${error.message}` : `The run itself broke: ${error.stack}`);
  end(0, 1);
}
