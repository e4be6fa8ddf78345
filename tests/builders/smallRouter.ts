import { eventIterator, oc } from '@orpc/contract';
import { implement } from '@orpc/server';
import { z } from 'zod';
import { changeStream } from '../../electron/service/transport/changeStream.ts';
import type { Caller } from '../../electron/service/transport/doors.ts';

const change = z.object({
  seq: z.number(),
  streams: z.array(z.string()),
  kinds: z.array(z.string()),
});

/** A contract as small as can be that still has every shape the doors carry: text, list, file, stream, defect. */
export const smallContract = {
  add: oc.input(z.object({ text: z.string().max(1000) })).output(z.number()),
  list: oc.output(z.array(z.string())),
  weigh: oc.input(z.object({ photo: z.instanceof(File) })).output(z.number()),
  fail: oc.output(z.null()),
  door: oc.output(z.string()),
  changes: oc.input(z.object({ since: z.number().nullable() })).output(eventIterator(change)),
};

/** What the doors are tried with: a list of texts in memory, counted like a journal. */
export function smallRouter() {
  const texts: string[] = [];
  const listening = new Set<() => void>();
  const changes = async function* ({ since, signal }: { since: number; signal?: AbortSignal }) {
    let news = Promise.withResolvers<void>();
    const wake = () => news.resolve();
    signal?.addEventListener('abort', wake);
    listening.add(wake);
    try {
      for (let seq = since; !signal?.aborted; ) {
        news = Promise.withResolvers();
        if (texts.length > seq) yield { seq: ++seq, streams: ['shop'], kinds: ['noted'] };
        else await news.promise;
      }
    } finally {
      listening.delete(wake);
    }
  };
  const os = implement(smallContract).$context<Caller>();
  const router = os.router({
    add: os.add.handler(({ input }) => {
      texts.push(input.text);
      for (const wake of listening) wake();
      return texts.length;
    }),
    list: os.list.handler(() => texts),
    weigh: os.weigh.handler(({ input }) => input.photo.size),
    fail: os.fail.handler(() => {
      throw new TypeError('Rosa Example, Kiln Lane 4');
    }),
    door: os.door.handler(({ context }) => context.door),
    changes: os.changes.handler(({ input, signal }) =>
      changeStream({ headSeq: () => texts.length, changes }, input.since, signal),
    ),
  });
  return { router, texts, listening };
}
