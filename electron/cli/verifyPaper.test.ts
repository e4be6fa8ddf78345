import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync, inflateSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import story from '../../assets/demo/story.json' with { type: 'json' };
import type { JobId } from '../../core/ids.ts';
import { PURPOSES } from '../../core/journal/personal.ts';
import type { Sheet } from '../../core/papers/content.ts';
import { aDesk, type Desk } from '../../tests/builders/desk.ts';
import { readPdf } from '../../tests/builders/papers/readPdf.ts';
import { takingIn } from '../../tests/builders/takingIn.ts';
import { drawPaper } from '../papers/drawPaper.ts';
import { loadPaperFonts } from '../papers/fonts.ts';
import { drawIssued, type IssuedPaper, issuedPaper } from '../service/desk/sheets/papers.ts';
import { drawnSignature } from './demo/signature.ts';
import { verify } from './verify.ts';

let desk: Desk;
let job: JobId;
beforeEach(async () => {
  desk = await aDesk();
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  const done = await desk.ask('takeIn', takingIn({}), 'mina');
  job = done.firstStream.slice('job:'.length) as JobId;
  const signed = { name: story.owner.name, drawn: drawnSignature, contentHash: null };
  await desk.ask('signSheet', { job, answers: { open: 'yes' }, signed }, 'mina');
});
afterEach(() => desk.close());

async function issued(kind: string): Promise<IssuedPaper> {
  const number = (await desk.view(job)).job?.papers.find((paper) => paper.kind === kind)?.number ?? '';
  const paper = await issuedPaper(await desk.shop.read(), number);
  if (!paper) throw new Error(`no ${kind}`);
  return paper;
}

async function checked(...args: readonly string[]) {
  const lines: string[] = [];
  const io = {
    out: (line: string) => void lines.push(line),
    err: (line: string) => void lines.push(line),
    readFile: async (path: string) => new Uint8Array(readFileSync(path)),
  };
  const code = await verify.run([...args, '--data', desk.folder.folder, '--wallet', desk.folder.walletPath], io);
  return { code, says: lines.join('\n') };
}
async function inFile(bytes: Uint8Array) {
  const path = join(desk.folder.folder, 'in-hand.pdf');
  writeFileSync(path, bytes);
  return checked(path);
}
const inHand = async (paper: IssuedPaper) => inFile(await drawIssued(paper, { copy: false }));

/** A white field over the first page, written into the file by hand: a reader finds its way without the old table of places. */
function paintedOver(file: Uint8Array): Uint8Array {
  const text = Buffer.from(file).toString('latin1');
  const [head = '', length = ''] = /\/Length (\d+)\n\/Filter \/FlateDecode\n>>\nstream\n/.exec(text) ?? [];
  const from = text.indexOf(head) + head.length;
  const stream = inflateSync(Buffer.from(text.slice(from, from + Number(length)), 'latin1')).toString('latin1');
  const more = deflateSync(Buffer.from(`${stream}\n1 1 1 rg 60 120 300 200 re f\n`, 'latin1'));
  const anew = text.slice(0, from - head.length) + head.replace(length, String(more.length));
  return Buffer.from(anew + more.toString('latin1') + text.slice(from + Number(length)), 'latin1');
}
const changed = (paper: IssuedPaper, change: Partial<Sheet>): IssuedPaper => {
  if (paper.content.shape !== 'sheet') throw new Error('no sheet');
  return { ...paper, content: { ...paper.content, ...change } };
};

describe('a paper in hand', { timeout: 30_000 }, () => {
  it('as it was issued is genuine', async () => {
    expect(await inHand(await issued('intake-receipt'))).toMatchObject({
      code: 0,
      says: expect.stringContaining('IR-2026-0001 is genuine'),
    });
  });

  it('with one figure changed is altered, and it is said where, what stands there, and what was issued', async () => {
    const paper = await issued('intake-receipt');
    const lead = String((paper.content as Sheet).lead);
    const { code, says } = await inHand(changed(paper, { lead: lead.replace('£120.00', '£420.00') }));
    expect(code).toBe(1);
    expect(says).toMatch(/IR-2026-0001 is altered\. Page 1 says: .*£420\.00.* Issued was: .*£120\.00/);
  });

  it('with a page less is altered', async () => {
    const paper = await issued('consent-sheet');
    const { code } = await inHand(changed(paper, { body: (paper.content as Sheet).body.slice(0, 2) }));
    expect(code).toBe(1);
  });

  it('with every word as issued and another signature drawn on it is not called genuine', async () => {
    const paper = await issued('intake-receipt');
    const { signing } = paper.content as Sheet;
    if (signing?.line.block !== 'signature') throw new Error('not signed');
    const strokes = { width: 10, height: 10, strokes: [[[1, 1] as const, [9, 9] as const]] };
    const { code, says } = await inHand(
      changed(paper, { signing: { ...signing, line: { ...signing.line, strokes } } }),
    );
    expect({ code, says }).toEqual({
      code: 1,
      says: 'IR-2026-0001 is altered. On page 1 a mark, code or picture is not the one that was issued.',
    });
  });

  it('whose file was written anew, with every word and picture as issued, is genuine', async () => {
    const { content, contentHash } = await issued('intake-receipt');
    const otherFile = await drawPaper({ ...content, contentHash }, loadPaperFonts(), { subset: 'PDF/A-1b' });
    expect(await inFile(otherFile)).toMatchObject({ code: 0, says: 'IR-2026-0001 is genuine: it is what was issued.' });
  });

  it('on which something was painted over is altered', async () => {
    const paper = await drawIssued(await issued('intake-receipt'), { copy: false });
    expect(await inFile(paintedOver(paper))).toEqual({
      code: 1,
      says: 'IR-2026-0001 is altered. On page 1 something was painted over what was issued.',
    });
  });

  it('with its pages in another order is altered', async () => {
    const paper = await issued('consent-sheet');
    const body = (paper.content as Sheet).body.toReversed();
    expect((await inHand(changed(paper, { body }))).code).toBe(1);
  });

  it('printed a second time says that it is a copy, and is genuine', async () => {
    const file = await drawIssued(await issued('intake-receipt'), { copy: true });
    expect((await readPdf(file)).text[0]).toContain('Copy');
    expect((await inFile(file)).code).toBe(0);
  });

  it('printed after it was replaced says by what, as copy or not, and is genuine and replaced', async () => {
    await desk.ask('issue', { job, kind: 'estimate', part: null });
    const first = await issuedPaper(await desk.shop.read(), 'E-2026-0001');
    if (!first) throw new Error('no estimate');
    for (const copy of [false, true]) {
      const file = await drawIssued(first, { copy });
      expect((await readPdf(file)).text[0]).toContain('Replaced by E-2026-0002. This paper no longer counts.');
      expect((await inFile(file)).code).toBe(3);
    }
  });

  it('says how it can be checked', async () => {
    const file = await drawIssued(await issued('intake-receipt'), { copy: false });
    expect((await readPdf(file)).text[0]).toContain('To check this paper, name its number');
  });

  it('that carries another shop’s id is another shop’s, whatever its name and number', async () => {
    const paper = changed(await issued('estimate'), { shopId: 'another-one' });
    expect(await inHand(paper)).toMatchObject({ code: 2, says: expect.stringContaining('another shop') });
  });

  it('that was replaced is genuine, and it is said by what', async () => {
    const paper = await issued('estimate');
    await desk.ask('issue', { job, kind: 'estimate', part: null });
    expect(await inHand(paper)).toEqual({
      code: 3,
      says: 'E-2026-0001 is genuine: it is what was issued.\nIt was replaced by E-2026-0002.',
    });
  });

  it('of another shop, of the same number, is another shop’s', async () => {
    const paper = changed(await issued('estimate'), { shopName: 'Ferrow & Pike' });
    expect(await inHand(paper)).toMatchObject({ code: 2, says: expect.stringContaining('another shop') });
  });

  it('whose owner was erased can no longer be compared', async () => {
    const paper = await issued('estimate');
    const owner = (await desk.view(job)).job?.owner ?? '';
    await desk.shop.eraseOwner(
      owner,
      PURPOSES.map((purpose) => ({ purpose, erase: true })),
    );
    expect(await inHand(paper)).toMatchObject({ code: 3, says: expect.stringContaining('was erased') });
  });

  it('that is a PDF of something else is no paper', async () => {
    const path = join(desk.folder.folder, 'other.pdf');
    writeFileSync(path, '%PDF-1.7\nnothing');
    expect(await checked(path)).toEqual({ code: 2, says: 'This is no paper of Knowngood.' });
  });

  it('typed by number and content is genuine, or altered', async () => {
    const { contentHash } = await issued('intake-receipt');
    const short = contentHash.slice(0, 12).replace(/(.{4})(?=.)/g, '$1 ');
    expect((await checked('--paper', 'IR-2026-0001', '--content', short)).code).toBe(0);
    expect((await checked('--paper', 'IR-2026-0001', '--content', 'dead beef 0000')).code).toBe(1);
    expect((await checked('--paper', 'IR-2026-0099', '--content', short)).code).toBe(2);
  });
});
