import { parentPort } from 'node:worker_threads';
import { answering } from './questions.ts';
import type { FromThread, ToThread } from './threadMessages.ts';

const answer = answering();

// The thread's whole life: one question after the other, each answered or told as failed.
parentPort?.on('message', ({ no, question, cancelled }: ToThread) => {
  const say = (message: FromThread) => parentPort?.postMessage(message);
  try {
    say({ no, answer: answer(question, () => Atomics.load(cancelled, 0) === 1) });
  } catch (failed) {
    say({ no, failed });
  }
});
