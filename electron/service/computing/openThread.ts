import { Worker } from 'node:worker_threads';
import { Ended } from './ended.ts';
import type { AnswerTo, ToBeComputed } from './questions.ts';
import type { FromThread, ToThread } from './threadMessages.ts';

/** A thread that computes while this one goes on answering. */
export type Thread = {
  /**
   * Questions are answered in the order asked. A raised signal ends one early, before or in its turn: an estimate answers
   * that it was cancelled, a look-ahead is rejected with the signal's reason.
   */
  readonly ask: <Q extends ToBeComputed>(question: Q, signal?: AbortSignal) => Promise<AnswerTo<Q>>;
  /** Ends it on purpose: what is still asked, and what is asked from then on, fails with `Ended`. */
  readonly end: () => Promise<void>;
};

type Waiting = { readonly answered: (answer: never) => void; readonly failed: (error: unknown) => void };

/** Beside this file when run from the sources, beside the built service when built. */
const SCRIPT = new URL(import.meta.url.endsWith('.ts') ? './thread.ts' : './computing.mjs', import.meta.url);

/** Starts with the first question, and again after a failure; keeps no process alive unless somebody waits. */
export function openThread(): Thread {
  const waiting = new Map<number, Waiting>();
  let worker: Worker | null = null;
  let asked = 0;
  let over = false;

  const settle = (no: number, how: (one: Waiting) => void) => {
    const one = waiting.get(no);
    waiting.delete(no);
    if (waiting.size === 0) worker?.unref();
    if (one) how(one);
  };
  const start = (): Worker => {
    const started = new Worker(SCRIPT, { execArgv: [], name: 'knowngood-computing' });
    started.on('message', (message: FromThread) =>
      settle(message.no, ({ answered, failed }) =>
        'failed' in message ? failed(message.failed) : answered(message.answer as never),
      ),
    );
    const broken = (error: unknown) => {
      if (worker !== started) return;
      worker = null;
      for (const no of [...waiting.keys()]) settle(no, ({ failed }) => failed(error));
    };
    started.on('error', broken);
    started.on('exit', (code) => broken(over ? new Ended() : new Error(`the computing thread ended with ${code}`)));
    return started;
  };

  return {
    ask: (question, signal) => {
      if (over) return Promise.reject(new Ended());
      worker ??= start();
      worker.ref();
      const no = ++asked;
      const cancelled = new Int32Array(new SharedArrayBuffer(4));
      const cancel = () => void Atomics.store(cancelled, 0, 1);
      if (signal?.aborted) cancel();
      signal?.addEventListener('abort', cancel, { once: true });
      const answer = new Promise<never>((answered, failed) => waiting.set(no, { answered, failed }));
      worker.postMessage({ no, question, cancelled } satisfies ToThread);
      return answer
        .catch((failed: unknown) => {
          throw signal?.aborted ? signal.reason : failed;
        })
        .finally(() => signal?.removeEventListener('abort', cancel));
    },
    end: async () => {
      over = true;
      await worker?.terminate();
    },
  };
}
