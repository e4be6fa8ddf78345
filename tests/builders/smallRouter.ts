import { eventIterator, oc } from '@orpc/contract';
import { implement } from '@orpc/server';
import { z } from 'zod';
import { changeStream, type Noted } from '../../electron/service/transport/changeStream.ts';
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
  const entries: (Noted & { readonly text: string })[] = [];
  const listeners = new Set<() => void>();
  const os = implement(smallContract).$context<Caller>();
  const router = os.router({
    add: os.add.handler(({ input }) => {
      entries.push({ seq: entries.length + 1, stream: 'shop', kind: 'noted', text: input.text });
      for (const listener of listeners) listener();
      return entries.length;
    }),
    list: os.list.handler(() => entries.map(({ text }) => text)),
    weigh: os.weigh.handler(({ input }) => input.photo.size),
    fail: os.fail.handler(() => {
      throw new TypeError('Rosa Example, Kiln Lane 4');
    }),
    door: os.door.handler(({ context }) => context.door),
    changes: os.changes.handler(({ input, signal }) =>
      changeStream(
        {
          headSeq: () => entries.length,
          entriesSince: (since, limit) => entries.slice(since, since + limit),
          onAppended: (listener) => {
            listeners.add(listener);
            return () => void listeners.delete(listener);
          },
        },
        input.since,
        signal,
      ),
    ),
  });
  return { router, texts: () => entries.map(({ text }) => text), listening: () => listeners.size };
}
