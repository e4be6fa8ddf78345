import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import story from '../../assets/demo/story.json' with { type: 'json' };
import type { CommandName } from '../../core/commands/commands.ts';
import type { JobId } from '../../core/ids.ts';
import type { Stream } from '../../core/journal/entry.ts';
import { DAY_MS } from '../../core/time.ts';
import { anEstimate } from './anEstimate.ts';
import { anOffer } from './anOffer.ts';
import { inputs } from './commandInputs.ts';
import { aDesk, type Desk } from './desk.ts';
import { stageEntered } from './shopEntries.ts';
import { write } from './shopFolder.ts';
import { signingIn, taggedMachine, takingIn } from './takingIn.ts';

const idOf = (done: { readonly firstStream: string }) => done.firstStream.split(':')[1] ?? '';
const dimm = { kind: 'dimm', attributes: { memory: 'DDR4', module: 'UDIMM', capacity: 8 } };
const wallPart = {
  ...dimm,
  tag: null,
  name: 'our module',
  standing: { is: 'trial-grade', scopes: ['starts'] },
  place: { at: 'bin', bin: 'A1' },
  valueMinor: 3000,
};
const signed = { name: story.owner.name, drawn: null, contentHash: null };

const RIG = ['R1', 'R2'].map((id, at) => ({ id, takes: 'dimm', order: at + 1 }));

/** A shop in which every command has something to be about. */
export type Everything = {
  readonly desk: Desk;
  readonly job: JobId;
  /** Its streams, by what they are to that job. */
  readonly streams: Readonly<Record<string, Stream>>;
  /** One input of every command, about that job or what is beside it. */
  readonly asked: { readonly [Name in CommandName]: object };
};

/**
 * A job with a question that offers a part, and an order; a rig with a part in it; a second job of the same hands, with a step
 * under way; a machine from before.
 * @param busy A step is under way at the job too.
 */
export async function everything(busy: boolean): Promise<Everything> {
  const desk = await aDesk();
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  const slots = ['A2', 'B2'].map((id, at) => ({ id, takes: 'dimm', order: at + 1, source: 'by-hand' }));
  await desk.ask('knowRig', { rig: 'rig-1', called: 'the rig', slots: RIG });
  const inRig = idOf(await desk.ask('knowPart', { ...wallPart, place: { at: 'rig', rig: 'rig-1', slot: 'R1' } }));
  const ours = idOf(await desk.ask('knowPart', wallPart));
  const reserved = idOf(await desk.ask('knowPart', wallPart));
  const spare = idOf(await desk.ask('knowPart', wallPart));
  const rider = idOf(await desk.ask('knowPart', { ...wallPart, place: { at: 'with', part: ours } }));
  const elsewhere = idOf(
    await desk.ask(
      'takeIn',
      takingIn({
        owner: { fresh: { ...story.owner, name: 'Oswin Pellow' } },
        machine: { fresh: { called: 'the quiet tower', tag: null, serial: null } },
      }),
    ),
  );
  const job = idOf(await desk.ask('takeIn', takingIn({ machine: taggedMachine, limitMinor: 90_000 }))) as JobId;
  await desk.ask('writeCensus', {
    job,
    slots,
    parts: [{ ...dimm, slot: 'A2', name: 'their module', serial: null, source: 'by-hand' }],
    gaps: [],
  });
  for (const one of [elsewhere, job])
    await desk.ask('signSheet', {
      job: one,
      answers: { open: 'yes', 'own-parts-in': 'yes', photos: 'yes', fee: 'yes' },
      signed: one === job ? signed : { ...signed, name: 'Oswin Pellow' },
    });
  const mistaken = { fresh: { called: 'the old one', tag: null, serial: null } };
  const older = idOf(
    await desk.ask('takeIn', takingIn({ owner: { fresh: { ...story.owner, name: 'Ada Fenn' } }, machine: mistaken })),
  );
  await desk.ask('cancelTakingIn', { job: older, why: 'Written twice.' });
  const before = (await desk.view(older as JobId)).job;
  await desk.ask('reservePart', { job, part: reserved });
  const enquiry = idOf(
    await desk.ask('enquire', {
      name: 'Tamsin Rook',
      reach: '01632 960555',
      ownWords: 'It hums.',
      symptoms: ['dark'],
      came: 'phone',
      wouldNeed: [],
      lapsesAt: desk.folder.clock.now + DAY_MS,
    }),
  );
  await desk.ask('giveBadge', { person: 'bram', tag: null });
  const theirs = (await desk.view(job)).machine?.inside.A2 ?? '';
  for (const one of [elsewhere, job]) await desk.ask('goOn', { job: one, to: 'first-power-on' });
  for (const one of [elsewhere, job]) await desk.ask('goOn', { job: one, to: 'tracing' });
  await desk.ask('ask', {
    ...inputs.ask,
    job,
    kind: 'offer',
    options: inputs.ask.options.map((option) => ({
      ...option,
      agrees: { ...option.agrees, accepts: option.id === 'yes', goesTo: 'fitting' },
    })),
    offer: anOffer(theirs as never, ours as never, { priceMinor: 4000 }),
  });
  await desk.ask('orderPart', { ...inputs.orderPart, job, what: 'lead' });
  await write(desk.shop, stageEntered(job, 'tracing'));
  const started = { ...inputs.startWork, kind: 'step', what: 'look-mains', startedAt: desk.folder.clock.now };
  for (const one of busy ? [elsewhere, job] : [elsewhere]) await desk.ask('startWork', { ...started, job: one });
  const view = await desk.view(job);
  const [owner, machine] = [view.owner?.id ?? '', view.machine?.id ?? ''];
  const run = view.job?.work.at(-1)?.run ?? 'none';
  const streams: Everything['streams'] = {
    job: `job:${job}`,
    owner: `owner:${owner}`,
    machine: `machine:${machine}`,
    'part of theirs': `part:${theirs}`,
    'part of ours': `part:${ours}`,
    'part that moves with it': `part:${rider}`,
    'part held for the job': `part:${reserved}`,
    rig: 'machine:rig-1',
    'part in the rig': `part:${inRig}`,
    'job elsewhere': `job:${elsewhere}`,
    'older job': `job:${older}`,
    'owner from before': `owner:${before?.owner}`,
    'machine from before': `machine:${before?.machine}`,
    'spare part': `part:${spare}`,
    enquiry: `enquiry:${enquiry}`,
    people: 'people',
    shop: 'shop',
    paper: 'paper:intake-receipt:2026',
  };
  const now = desk.folder.clock.now;
  const how = { by: 'phone', at: now, number: story.owner.phone, readBack: 'Yes.' };
  const stands: Readonly<Record<string, unknown>> = {
    job,
    part: theirs,
    question: view.job?.questions[0]?.id,
    order: view.job?.orders[0]?.order,
    run,
    at: now,
    startedAt: now,
    endedAt: now,
    collectedBy: story.owner.name,
    name: story.owner.name,
    word: { name: story.owner.name, how: 'phone' },
    how,
    signed,
  };
  const aboutJob = Object.fromEntries(
    Object.entries(inputs).map(([name, input]) => [
      name,
      Object.fromEntries(
        Object.entries(input).map(([field, value]) => [
          field,
          typeof value === typeof stands[field] && value !== null ? stands[field] : value,
        ]),
      ),
    ]),
  ) as { readonly [Name in keyof typeof inputs]: object };
  const known = { owner: { known: before?.owner }, machine: { known: before?.machine } };
  const bin = (to: string) => ({ at: 'bin', bin: to });
  const tally = {
    counted: 1,
    excluded: { named: 0, handedOver: 0, notReproduced: 0, cameBack: 0, unknown: 0 },
    counts: [],
  };
  const hash = `$argon2id$v=19$m=16,t=1,p=1$${'A'.repeat(22)}$${'A'.repeat(43)}`;
  const code = { edition: 'ours', shown: 'checkpoints' };
  const asked = {
    ...aboutJob,
    unplug: { job, slots: ['A2'], out: [{ part: theirs, tray: 'tray 1' }] },
    fitPart: { ...aboutJob.fitPart, part: reserved, slot: 'B2' },
    movePart: { ...inputs.movePart, job, part: inRig, from: { at: 'rig', rig: 'rig-1', slot: 'R1' }, to: bin('B1') },
    stopClocks: { at: now },
    putAway: { job, part: reserved, to: bin('B2') },
    lendPart: { ...inputs.lendPart, job, part: reserved, to: story.owner.name },
    openShop: { settings: shopOf.settings, staff: shopOf.staff },
    changeShop: { settings: shopOf.settings },
    changeStaff: { staff: shopOf.staff },
    workWithoutPins: {},
    giveBadge: { person: 'bram', tag: null },
    eraseOwner: { owner: before?.owner, asked: true },
    setPin: { person: 'bram', hash, by: 'pin', words: null },
    makeRecoveryWords: { words: hash },
    noteMissed: { tried: { person: 'bram' } },
    noteMet: { tried: { person: 'bram' } },
    useModel: { name: 'ours', changes: [{ file: 'bench.json', path: 'x', before: 1, after: 2 }] },
    keepCode: {
      ...code,
      family: { id: 'f', name: 'ours' },
      code: 'D6',
      says: 'no memory',
      stands: null,
      manual: 'p. 4',
    },
    dropCode: { ...code, key: 'f D6' },
    goBackToModel: {},
    takeOverPriors: { tally },
    resetPriors: {},
    enquire: {
      name: 'Tamsin Rook',
      reach: '01632 960555',
      ownWords: 'It hums.',
      symptoms: ['dark'],
      came: 'phone',
      wouldNeed: [],
      lapsesAt: now + DAY_MS,
    },
    answerEnquiry: { enquiry, answer: { says: 'come-on', day: now + DAY_MS } },
    lapseEnquiry: { enquiry },
    noteEnquiryEstimate: { enquiry, estimate: { moment: 'told', ...anEstimate(2) } },
    takeIn: takingIn({ ...known, enquiry, cameBack: { from: older, same: 'new' } }),
    signTakingIn: signingIn({ owner: { fresh: story.owner }, machine: { known: machine } }),
    knowPart: wallPart,
    correctPart: { part: theirs, job, name: 'their own module', facts: {} },
    knowRig: { rig: 'rig-2', called: 'another', slots: [{ id: 'R1', takes: 'dimm', order: 1 }] },
    moveShopPart: { part: spare, from: bin('A1'), to: { at: 'rig', rig: 'rig-1', slot: 'R2' }, says: null },
    provePart: { part: ours, where: 'on the rig', scopes: ['starts'], works: true, how: null },
    reservePart: { job, part: spare },
    releasePart: { job, part: reserved },
    tagPart: { part: ours, tag: null },
    takeBackLent: { part: reserved, from: { at: 'with-owner' }, to: bin('A1') },
    sellPart: { part: spare, as: 'sold', priceMinor: 100 },
    tagMachine: { machine, tag: null },
    voidTag: { tag: story.tag, on: { is: 'machine', machine } },
  };
  return { desk, job, streams, asked };
}
