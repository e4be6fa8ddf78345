import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Json } from '../../core/journal/entry.ts';
import { verify } from '../../electron/cli/verify.ts';
import { readPaper } from '../../electron/papers/readPaper.ts';
import { checkPaper } from '../../electron/service/desk/sheets/checkPaper.ts';
import { readPdf } from '../builders/papers/readPdf.ts';
import { takingIn } from '../builders/takingIn.ts';
import { type Answers, answersOf, unchangingOf } from './answersOf.ts';
import { KEPT_SHOPS } from './keptShops.ts';
import { type Asks, type Copied, copyKept, openAt, streamsOf } from './openKept.ts';
import { DRAWN_OTHERWISE, inTodaysNames, RENAMED } from './todaysNames.ts';

/** Asks a command as the desk does. */
const does = (asks: Asks, name: 'note' | 'takeIn', input: unknown) =>
  asks.execute({ command: `asked-today-${name}`, by: 'mina', name, input });

const plainJson = (value: unknown): Json => JSON.parse(JSON.stringify(value));

describe.each(KEPT_SHOPS)('the old shop “$name”', (keptShop) => {
  const { folder, at, pin } = keptShop;
  const kept = (file: string): Json => JSON.parse(readFileSync(join(folder, file), 'utf8'));
  const papers = readdirSync(join(folder, 'papers')).map((file) => file.replace('.pdf', ''));
  let copy: Copied;
  let opened: Awaited<ReturnType<typeof openAt>>;
  let answers: Answers;

  beforeAll(async () => {
    copy = copyKept(keptShop);
    opened = await openAt(copy, at, pin);
    answers = await answersOf(opened.shop, opened.asks);
  }, 60_000);
  afterAll(async () => {
    await opened.close();
    copy.remove();
  });

  it('is whole: every link, every sealed head, and the head that was noted when it was kept', async () => {
    const { head, entries } = kept('unchanging.json') as { head: string; entries: number };
    const verdict = await opened.shop.verify({ printedHeads: [head] });
    expect(verdict).toMatchObject({ ok: true, first: null, findings: [], uncoveredFrom: null, entries });
  });

  it('has as many entries in each stream, the same amounts, and everything in its place', async () => {
    expect(plainJson(await unchangingOf(opened.shop, answers))).toEqual(
      inTodaysNames(kept('unchanging.json'), { fields: {}, values: RENAMED.values }, []),
    );
  });

  it('opens every entry of every stream: nothing personal is lost', async () => {
    const read = await opened.shop.read();
    for (const [stream, entries] of Object.entries(await streamsOf(opened.shop))) {
      const found = await read.entries(stream as Parameters<typeof read.entries>[0]);
      expect(found.length, stream).toBe(entries);
      expect(JSON.stringify(found.map(({ body }) => body)), stream).not.toContain('"value":null');
    }
  });

  // New fields may come; what was answered then is answered still.
  it.each(Object.keys(kept('answers.json') as object))('answers as it did: %s', (read) => {
    const then = inTodaysNames(kept('answers.json')) as Record<string, Json>;
    expect({ [read]: plainJson(answers[read as keyof Answers]) }).toMatchObject({ [read]: then[read] });
  });

  it('issued the papers that are kept beside it, and no others', () => {
    const numbers = Object.values(answers.jobs).flatMap(({ job }) => job.papers.map((paper) => paper.number));
    expect(numbers.toSorted()).toEqual(papers.toSorted());
  });

  it.each(papers)('prints %s again as it was issued', async (number) => {
    const issued = new Uint8Array(readFileSync(join(folder, 'papers', `${number}.pdf`)));
    const again = new Uint8Array(await (await opened.asks.paperFile({ number })).arrayBuffer());
    const [then, now] = [await readPdf(issued), await readPdf(again)];
    // Nothing else is said over what was issued than what took its place.
    const said = now.aloud.replace(/(?:Replaced|Put right) by \S+\. [^.]*\. /, '');
    expect(said).toBe(then.aloud);
    expect(now.aloud.length).toBeGreaterThan(20);
    if (DRAWN_OTHERWISE[number] === undefined && said === now.aloud) expect(Buffer.compare(again, issued)).toBe(0);
  });

  it.each(papers)('knows %s, as it was printed then, to be genuine', async (number) => {
    const bytes = new Uint8Array(readFileSync(join(folder, 'papers', `${number}.pdf`)));
    const paper = await readPaper(bytes);
    if (!paper) throw new Error(`${number} cannot be read`);
    expect(await checkPaper(await opened.shop.read(), { bytes, paper }, opened.shop.id)).toMatchObject({
      is: 'genuine',
      number,
    });
  });

  it('makes its read tables anew from the journal as they were', async () => {
    const before = await opened.shop.digests();
    expect(await opened.shop.rebuild()).not.toHaveProperty('refused');
    expect(await opened.shop.digests()).toEqual(before);
  });
});

describe.each(KEPT_SHOPS)('work goes on in the old shop “$name”', (shop) => {
  it('takes a note on the job it has and a new job beside it, and is whole', async () => {
    const copy = copyKept(shop);
    const { shop: open, asks, close } = await openAt(copy, shop.at, shop.pin);
    const before = (await open.verify()).entries;
    const [job = ''] = Object.keys((await answersOf(open, asks)).jobs);
    if (shop.name === 'at-the-bench') {
      await does(asks, 'note', { job, says: 'The lid squeaks.', foundByTheWay: false });
      expect(JSON.stringify((await asks.job({ job })).job)).toContain('The lid squeaks.');
    }
    const { firstStream } = await does(asks, 'takeIn', takingIn());
    const points = (await asks.dayLine()).points.map((point) => point.job);
    expect(points).toContain(firstStream.slice('job:'.length));
    expect((await open.verify()).entries).toBeGreaterThan(before);
    await close();
    const said: string[] = [];
    const io = { out: (line: string) => void said.push(line), err: (line: string) => void said.push(line) };
    const code = await verify.run(['--data', copy.data], { ...io, readFile: async () => new Uint8Array() });
    expect({ code, said: said.join('\n') }).toMatchObject({
      code: 0,
      said: expect.stringContaining('the chain is whole'),
    });
    copy.remove();
  }, 60_000);
});
