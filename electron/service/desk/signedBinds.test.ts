import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import type { CommandName } from '../../../core/commands/commands.ts';
import { signShown } from '../../../core/commands/kernel/contentHashes.ts';
import { type JobId, jobId, ownerId } from '../../../core/ids.ts';
import type { Refusal } from '../../../core/refusal.ts';
import { aDesk, type Desk } from '../../../tests/builders/desk.ts';
import { saidBy } from '../../../tests/builders/papers/saidBy.ts';
import { JPEG, PNG, WEBP } from '../../../tests/builders/shopPictures.ts';
import { signingIn, takingIn } from '../../../tests/builders/takingIn.ts';
import { holdPhotograph, keepHeldPhotograph } from './files/photographs.ts';
import { issuedPaper } from './sheets/papers.ts';

const mark = { name: story.owner.name, drawn: null, contentHash: null };
const stroke = { width: 10, height: 10, strokes: [[[1, 1, 0]]] };

let desk: Desk;
beforeEach(async () => {
  desk = await aDesk();
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
});
afterEach(() => desk.close());

/** What is shown as `shown` is signed, then pressed as `pressed` says. */
async function signedThenPressed(name: CommandName, shown: unknown, pressed: unknown) {
  const previewed = await desk.shows(name, shown);
  if ('refused' in previewed) throw new Error(JSON.stringify(previewed));
  const { head } = await desk.shop.read();
  const done = await desk.tries(name, signShown(pressed, previewed.contentHash));
  return { previewed, done, wrote: (await desk.shop.read()).head !== head };
}

async function isRefused(name: CommandName, shown: unknown, pressed: unknown): Promise<void> {
  const { previewed, done, wrote } = await signedThenPressed(name, shown, pressed);
  expect(done).toMatchObject({ ok: false, refusal: { refused: 'content-changed', signed: previewed.contentHash } });
  expect(wrote).toBe(false);
}

async function isDone(name: CommandName, shown: unknown, pressed: unknown): Promise<JobId> {
  const { done } = await signedThenPressed(name, shown, pressed);
  if (!done.ok) throw new Error(JSON.stringify(done.refusal));
  return jobId(done.firstStream.slice('job:'.length));
}

const signedIn = (says: Readonly<Record<string, unknown>> = {}) =>
  isDone('signTakingIn', signingIn(says), signingIn(says));

const firm = (says: Readonly<Record<string, unknown>> = {}) => ({
  fresh: {
    ...story.owner,
    kind: {
      is: 'company',
      orderNumber: null,
      approves: 'Colm Amberley',
      approvesUpToMinor: 50_000,
      alsoApprove: [{ name: 'Judith Amberley', upToMinor: 20_000 }],
      ...says,
    },
  },
});
const before = {
  encryption: 'yes',
  keyInHand: true,
  keyPlace: 'in a drawer',
  backup: 'no',
  bought: null,
  from: null,
  makersWarranty: 'over',
  seals: 'none',
};
const report = { text: 'Architecture: x86_64\nModel name: K6\n', taken: null, keepSerials: false };

describe('taken in under a signature, what no paper says is bound with what they say', () => {
  it.each([
    ['small parts up to', {}, { smallPartsUpToMinor: 9_000 }],
    ['used parts', {}, { substitution: { used: false, lesser: 'ask' } }],
    ['lesser parts', {}, { substitution: { used: true, lesser: 'no' } }],
    ['recording', {}, { recording: true }],
    ['what it is worth', {}, { worthMinor: 40_000 }],
    ['the way to reach the owner', {}, { owner: { fresh: { ...story.owner, phone: '01632 960 999' } } }],
    ['the key in hand', { before }, { before: { ...before, keyInHand: false } }],
    ['where the key is', { before }, { before: { ...before, keyPlace: 'at the bank' } }],
    ['who approves', { owner: firm() }, { owner: firm({ approves: 'Someone Else' }) }],
    ['up to how much', { owner: firm() }, { owner: firm({ approvesUpToMinor: 500_000 }) }],
    [
      'up to how much another may',
      { owner: firm() },
      { owner: firm({ alsoApprove: [{ name: 'Judith Amberley', upToMinor: null }] }) },
    ],
    ['the text of a report', { report }, { report: { ...report, text: 'Architecture: x86_64\nModel name: K7\n' } }],
  ])('%s', async (_what, shown, pressed) => {
    await isRefused('signTakingIn', signingIn(shown), signingIn({ ...shown, ...pressed }));
    await isDone('signTakingIn', signingIn(shown), signingIn(shown));
  });

  it('small parts of £90 are not booked on a sheet that was signed with none', async () => {
    await isRefused('signTakingIn', signingIn(), signingIn({ smallPartsUpToMinor: 9_000 }));
    const job = await signedIn();
    expect((await desk.view(job)).job?.smallPartsUpToMinor).toBe(0);
  });

  it.each(['film', 'publish', 'destroy', 'risk', 'risk-key', 'no-backup'])('what a yes to %s is about', async (id) => {
    const line = (about: string) => ({ alone: [{ id, answer: 'yes', about, signed: mark }] });
    await isRefused('signTakingIn', signingIn(line('the drives')), signingIn(line('EVERYTHING, sell it too')));
    await isDone('signTakingIn', signingIn(line('the drives')), signingIn(line('the drives')));
  });

  const nameOf = (stored: { readonly blob: string } | Refusal): string => {
    if ('refused' in stored) throw new Error(stored.refused);
    return stored.blob;
  };
  /** A sheet with this picture on it, held as while it is written, or sealed under its owner's key as it is signed. */
  const picturing = async (picture: Uint8Array, kept: 'held' | 'sealed') => {
    const held = nameOf(await holdPhotograph(desk.shop, picture));
    const owner = ownerId('judith');
    const blob = kept === 'held' ? held : nameOf(await keepHeldPhotograph(desk.shop, owner, held));
    return {
      owner: { fresh: story.owner, id: owner },
      photographs: [{ of: 'front', blob }],
      answers: { open: 'yes', photos: 'yes' },
    };
  };

  it('the stroke of the pen is no term, nor where the same picture lies', async () => {
    const shown = await picturing(JPEG, 'held');
    const pressed = await picturing(JPEG, 'sealed');
    expect(pressed.photographs).not.toEqual(shown.photographs);
    await isDone('signTakingIn', signingIn(shown), signingIn({ ...pressed, signed: { ...mark, drawn: stroke } }));
  });

  it('another photograph does not lie under the same mark, whatever it is called', async () => {
    const shown = await picturing(JPEG, 'held');
    await isRefused('signTakingIn', signingIn(shown), signingIn(await picturing(PNG, 'sealed')));
    const both = { ...shown, photographs: [...shown.photographs, { of: 'back', blob: 'gone' }] };
    const other = { ...shown, photographs: [...shown.photographs, { of: 'back', blob: 'not there either' }] };
    await isRefused('signTakingIn', signingIn(both), signingIn(other));
  });

  it('the same on a sheet that is signed after the machine was taken in', async () => {
    const { firstStream } = await desk.ask('takeIn', takingIn({ owner: { fresh: story.owner, id: 'judith' } }));
    const job = jobId(firstStream.slice('job:'.length));
    const sheet = async (picture: Uint8Array, kept: 'held' | 'sealed') => {
      const { photographs, answers } = await picturing(picture, kept);
      return { job, photographs, answers, signed: mark };
    };
    const shown = await sheet(WEBP, 'held');
    await isRefused('signSheet', shown, await sheet(JPEG, 'sealed'));
    await isDone('signSheet', shown, await sheet(WEBP, 'sealed'));
  });
});

describe('a line signed later', () => {
  it.each([
    ['film', 'yes'],
    ['publish', 'yes'],
    ['destroy', 'yes'],
    ['risk', 'yes'],
    ['risk-key', 'yes'],
    ['no-backup', 'yes'],
    ['data-parts', 'send'],
  ])('%s is bound to what it is about', async (id, answer) => {
    const job = await signedIn();
    const line = (about: string) => ({ job, id, answer, about, signed: mark });
    await isRefused('signAlone', line('the drives'), line('EVERYTHING, sell it too'));
    await isDone('signAlone', line('the drives'), line('the drives'));
  });
});

describe('a hand-over', () => {
  const atTheDoor = async () => {
    const job = await signedIn({ cameAlong: [{ thing: 'a lead', count: 1 }] });
    await desk.ask('goHomeAsItCame', { job, why: 'declined' });
    const handOver = (says: Readonly<Record<string, unknown>> = {}) => ({
      job,
      collectedBy: story.owner.name,
      signed: mark,
      returned: [{ thing: 'a lead', count: 1 }],
      oursOff: [],
      differences: [],
      unpaid: 'By transfer, on the bill.',
      ...says,
    });
    return handOver;
  };

  it.each([
    ['who collects it', { collectedBy: story.owner.mayCollect[0] ?? '' }],
    ['what was given back', { returned: [{ thing: 'a lead', count: 2 }] }],
  ])('binds %s', async (_what, pressed) => {
    const handOver = await atTheDoor();
    await isRefused('handOver', handOver(), handOver(pressed));
    await isDone('handOver', handOver(), handOver());
  });
});

describe('a mishap that the owner is told of', () => {
  const mishap = { what: 'A scratch.', part: null, partIs: null, cause: 'known', photographs: [], costMinor: 0 };
  const mishaps = async (...whats: readonly string[]) => {
    const job = await signedIn();
    for (const what of whats) await desk.ask('reportIncident', { job, ...mishap, what });
    const incidents = (await desk.view(job)).job?.incidents ?? [];
    const told = (nth: number, how: object) => ({ job, incident: incidents[nth]?.id, name: story.owner.name, how });
    const papers = async () =>
      ((await desk.view(job)).job?.papers ?? []).filter(({ kind }) => kind === 'incident').map(({ number }) => number);
    return { told, papers };
  };
  const atTheCounter = { by: 'counter', signed: mark };

  it('is signed for at the counter under what happened, and that paper comes out with the mark', async () => {
    const { told, papers } = await mishaps('A scratch.', 'The glass fell.');
    const { previewed } = await signedThenPressed('tellIncident', told(0, atTheCounter), told(0, atTheCounter));
    const [shown, ...more] = previewed.papers;
    expect(more).toEqual([]);
    expect(saidBy(shown ?? expect.fail('nothing was shown')).join('\n')).toContain('A scratch.');
    const issued = await issuedPaper(await desk.shop.read(), (await papers()).at(-1) ?? 'none');
    const paper = issued?.content.shape === 'sheet' ? issued.content : expect.fail('no paper');
    const says = saidBy(paper).join('\n');
    expect(says).toContain('A scratch.');
    expect(says).toContain(`${story.owner.name}, `);
    expect(says).not.toContain('The glass fell.');
    expect(paper.signing?.line.block).toBe('signature');
  });

  it('is not signed for under another one', async () => {
    const { told } = await mishaps('A scratch.', 'The glass fell.');
    await isRefused('tellIncident', told(0, atTheCounter), told(1, atTheCounter));
    await isDone('tellIncident', told(0, atTheCounter), told(0, atTheCounter));
  });

  it('issues nothing more when it is told by telephone', async () => {
    const { told, papers } = await mishaps('A scratch.');
    const before = await papers();
    const by = { by: 'phone', at: desk.folder.clock.now, number: story.owner.phone, readBack: 'A scratch, I see.' };
    await desk.ask('tellIncident', told(0, by));
    expect(await papers()).toEqual(before);
  });
});
