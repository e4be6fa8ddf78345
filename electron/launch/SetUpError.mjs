/** What the set-up cannot do, in a sentence for the person at the keyboard; no stack is shown for it. */
export class SetUpError extends Error {
  name = 'SetUpError';
}

/** Runs a launcher to its end and turns what it cannot do into a sentence and exit code 1. */
export async function launch(run) {
  try {
    process.exitCode = await run();
  } catch (error) {
    if (!(error instanceof SetUpError)) throw error;
    process.stderr.write(`Knowngood cannot start: ${error.message}\n`);
    process.exitCode = 1;
  }
}
