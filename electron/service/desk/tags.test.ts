import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { formatTag, parseTag } from '../../../core/custody/tag.ts';
import { epochMs } from '../../../core/time.ts';
import { aDesk, type Desk } from '../../../tests/builders/desk.ts';
import { byTag } from './sheets/find.ts';

const PRINTED = parseTag('K7R 4TM X') ?? '';
const ANOTHER = parseTag('E6H W34 5') ?? '';
const at = epochMs(Date.UTC(2026, 2, 3));
const aPart = (tag: string | null, name = 'Palewater 8 GB') => ({
  tag,
  kind: 'dimm',
  name,
  attributes: {},
  standing: { is: 'unproved', why: 'just came' },
  place: { at: 'bin', bin: 'B1' },
  valueMinor: 900,
});

describe('a tag in the shop', () => {
  let desk: Desk;
  beforeEach(async () => {
    desk = await aDesk();
  });
  afterEach(() => desk.close());
  const found = async (tag: string) => byTag(await desk.shop.read(), tag, at);
  const put = async (tag: string | null, name?: string) =>
    (await desk.ask('knowPart', aPart(tag, name))).firstStream.slice('part:'.length);

  it('pre-printed, is bound by the first scan and by no second one', async () => {
    expect(await found(PRINTED)).toBeNull();
    const part = await put(PRINTED);
    expect(await found('k7r 4tm x')).toMatchObject({ is: 'part', id: part, title: 'Palewater 8 GB' });
    expect(await desk.refused('knowPart', aPart(PRINTED, 'Lunnock 8 GB'))).toMatchObject({
      refused: 'tag-already-bound',
    });
  });
  it('bound already: a preview says so too, writes nothing, and lets the command be carried out with another', async () => {
    await put(PRINTED);
    const { head } = await desk.shop.read();
    const [keys, digests] = [desk.shop.standing(), await desk.shop.digests()];
    expect(await desk.shows('knowPart', aPart(PRINTED, 'Lunnock 8 GB'))).toMatchObject({
      refused: 'tag-already-bound',
    });
    expect(await desk.shows('knowPart', aPart(ANOTHER))).not.toHaveProperty('refused');
    expect((await desk.shop.read()).head).toBe(head);
    expect(desk.shop.standing()).toEqual(keys);
    expect(await desk.shop.digests()).toEqual(digests);
    expect((await desk.shop.verify()).ok).toBe(true);
    await put(ANOTHER);
  });
  it('with a wrong check character is refused before anything is asked of the records', async () => {
    await expect(desk.ask('knowPart', aPart('K7R4TMY'))).rejects.toThrow();
    expect(await found('K7R 4TM Y')).toBeNull();
  });
  it('that a part got anew makes the old one void: it says what it hung on, and binds nothing again', async () => {
    const part = await put(PRINTED);
    await desk.ask('tagPart', { part, tag: ANOTHER });
    expect(await found(ANOTHER)).toMatchObject({ is: 'part', id: part });
    expect(await found(PRINTED)).toMatchObject({
      is: 'void-tag',
      title: formatTag(PRINTED as never),
      detail: 'Palewater 8 GB',
    });
    expect(await desk.refused('knowPart', aPart(PRINTED))).toMatchObject({ refused: 'tag-already-bound' });
  });
  it('made void leaves the part without one until it gets another', async () => {
    const part = await put(PRINTED);
    await desk.ask('voidTag', { tag: PRINTED, on: { is: 'part', part } });
    expect(await found(PRINTED)).toMatchObject({ is: 'void-tag' });
    expect(await desk.refused('tagPart', { part, tag: PRINTED })).toMatchObject({ refused: 'tag-already-bound' });
    await desk.ask('tagPart', { part, tag: ANOTHER });
    expect(await found(ANOTHER)).toMatchObject({ is: 'part', id: part });
  });
  it('is not made void by naming another part, and nothing is changed', async () => {
    await put(PRINTED);
    const other = await put(ANOTHER, 'Lunnock 8 GB');
    expect(await desk.refused('voidTag', { tag: PRINTED, on: { is: 'part', part: other } })).toMatchObject({
      refused: 'tag-not-on-it',
      name: 'Lunnock 8 GB',
    });
    expect(await found(PRINTED)).toMatchObject({ is: 'part' });
  });
  it('that hangs on nothing is voided too, and then binds nothing; one that is bound is not voided so', async () => {
    await desk.ask('voidTag', { tag: PRINTED, on: { is: 'nothing' } });
    expect(await found(PRINTED)).toMatchObject({ is: 'void-tag', detail: '' });
    expect(await desk.refused('knowPart', aPart(PRINTED))).toMatchObject({ refused: 'tag-already-bound' });
    await put(ANOTHER);
    expect(await desk.refused('voidTag', { tag: ANOTHER, on: { is: 'nothing' } })).toMatchObject({
      refused: 'tag-already-bound',
    });
  });
});
