import type { OpenShop } from '../../db/index.ts';
import { type Asks, streamsOf } from './openKept.ts';

/** The ids of a subject's streams: of `part:d1x`, `d1x`. */
const idsOf = (streams: readonly string[], subject: string) =>
  streams.filter((stream) => stream.startsWith(`${subject}:`)).map((stream) => stream.slice(subject.length + 1));

async function byId<T>(ids: readonly string[], ask: (id: string) => Promise<T>): Promise<Record<string, T>> {
  const answers: Record<string, T> = {};
  for (const id of ids) answers[id] = await ask(id);
  return answers;
}

/**
 * What every screen reads of a shop, as the router answers it: each sheet, path, tag and search. What computes over the
 * fault model (the next step, Reckoning) is left out: that a better model answers otherwise is meant.
 */
export async function answersOf(shop: OpenShop, asks: Asks) {
  const streams = Object.keys(await streamsOf(shop));
  const jobs = await byId(idsOf(streams, 'job'), (job) => asks.job({ job }));
  const sheets = Object.values(jobs);
  const tags = sheets.flatMap(({ machine, parts }) => [machine.tag, ...parts.map((part) => part.tag)]);
  const typed = sheets.flatMap(({ owner, machine, job }) => [
    owner.name.value ?? '',
    machine.called.slice(0, 3),
    ...job.papers.map(({ number }) => number),
  ]);
  const books = await asks.bookkeeping({ from: null, to: null });
  return {
    shop: await asks.shop(),
    dayLine: await asks.dayLine(),
    jobs,
    wall: await asks.wall(),
    orders: await asks.orders(),
    kept: await asks.kept(),
    out: await asks.out(),
    enquiries: await asks.enquiries(),
    thenAndNow: await byId(idsOf(streams, 'machine'), async (machine) =>
      sheets.some((sheet) => sheet.machine.id === machine) ? asks.thenAndNow({ machine }) : null,
    ),
    paths: await byId(idsOf(streams, 'part'), (part) => asks.path({ part })),
    byTag: await byId(
      tags.filter((tag) => tag !== null),
      (tag) => asks.byTag({ tag }),
    ),
    find: await byId(typed, (text) => asks.find({ text })),
    books: await books.text(),
  };
}

export type Answers = Awaited<ReturnType<typeof answersOf>>;

/** What may never read otherwise, whatever things are called: how much, where, how far, under which numbers. */
export async function unchangingOf(shop: OpenShop, answers: Answers) {
  const { entries, sealedHead } = await shop.verify();
  const sheets = Object.values(answers.jobs);
  return {
    entries,
    head: sealedHead?.short ?? null,
    streams: await streamsOf(shop),
    jobs: sheets.map(({ job, charges }) => ({
      job: job.id,
      stage: job.stage,
      stages: job.stages.length,
      limitMinor: job.limitMinor,
      chargedMinor: charges.totalMinor,
      handsOnMinutes: charges.handsOn,
      pieces: job.work.length,
      issued: job.papers.length,
    })),
    // A place by its values alone, so that no field's name is part of it.
    places: Object.fromEntries(
      sheets.flatMap(({ parts }) =>
        parts.map((part) => [part.tag ?? part.id, Object.values(part.place).map(String).sort().join(' ')]),
      ),
    ),
    papers: sheets.flatMap(({ job }) => job.papers.map(({ number, kind }) => `${number} ${kind}`)),
  };
}
