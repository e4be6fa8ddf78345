import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import story from '../../assets/demo/story.json' with { type: 'json' };
import type { JobId, PartId, QuestionId } from '../../core/ids.ts';
import type { Job } from '../../core/job/job.ts';
import { aDesk, type Desk } from './desk.ts';
import { taggedMachine, takingIn } from './takingIn.ts';

export const AGREED_MINOR = 8000;
export const how = (desk: Desk) => ({
  by: 'phone',
  at: desk.folder.clock.now,
  number: story.owner.phone,
  readBack: 'Yes, go on.',
});
export const agrees = { limitMinor: null, items: [], accepts: false, data: null, dead: null };

/** A machine whose board is to be replaced: the fault is named, the owner agreed to a new board at 80.00, limit 200.00. */
export type OrderedJob = {
  readonly desk: Desk;
  readonly job: JobId;
  readonly question: QuestionId;
  readonly now: () => Promise<Job>;
  /** A board of ours in a bin, unproved as it came. */
  readonly board: (name?: string) => Promise<PartId>;
  readonly prove: (part: PartId, works?: boolean) => Promise<unknown>;
  readonly say: (question: QuestionId, option: string) => Promise<unknown>;
  readonly fit: (part: PartId) => ReturnType<Desk['tries']>;
  readonly order: (over?: object) => Promise<string>;
};

export async function anOrderedJob(): Promise<OrderedJob> {
  const desk = await aDesk();
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  const done = await desk.ask(
    'takeIn',
    takingIn({
      machine: taggedMachine,
      limitMinor: 20_000,
    }),
  );
  const job = done.firstStream.slice('job:'.length) as JobId;
  const signed = { name: story.owner.name, drawn: null, contentHash: null };
  await desk.ask('writeCensus', {
    job,
    slots: [{ id: 'board', takes: 'board', order: 1, source: 'by-hand' }],
    parts: [],
    gaps: [],
  });
  await desk.ask('signSheet', { job, answers: { open: 'yes', 'own-parts-in': 'yes' }, signed });
  await desk.ask('goOn', { job, to: 'first-power-on' });
  await desk.ask('goOn', { job, to: 'tracing' });
  await desk.ask('nameFault', { job, fault: 'board-dead', part: null, why: 'Seen often in this model.' });
  const now = async () => {
    const view = await desk.view(job);
    if (!view.job) throw new Error('no job');
    return view.job;
  };
  const say = (question: QuestionId, option: string) =>
    desk.ask('answer', { job, question, options: [option], name: story.owner.name, how: how(desk) });
  await desk.ask('ask', {
    job,
    kind: 'spend',
    says: 'A new board for 80.00?',
    options: [
      {
        id: 'yes',
        says: 'Yes',
        agrees: { ...agrees, items: [{ what: 'board', priceMinor: AGREED_MINOR }], goesTo: 'back' },
      },
      { id: 'no', says: 'No', agrees: { ...agrees, goesTo: 'back' } },
    ],
    validUntil: null,
    offer: null,
    stops: false,
  });
  const question = (await now()).questions[0]?.id as QuestionId;
  await say(question, 'yes');
  const order = async (over: object = {}) => {
    await desk.ask('orderPart', {
      job,
      what: 'board',
      supplier: 'Fennimore',
      priceMinor: AGREED_MINOR,
      due: null,
      question,
      returnDays: 14,
      ...over,
    });
    return (await now()).orders.at(-1)?.order ?? '';
  };
  return {
    desk,
    job,
    question,
    now,
    say,
    order,
    board: async (name = 'new board') => {
      const made = await desk.ask('knowPart', {
        tag: null,
        kind: 'board',
        name,
        attributes: {},
        standing: { is: 'unproved', why: 'new' },
        place: { at: 'bin', bin: 'W1' },
        valueMinor: 6000,
      });
      return made.firstStream.slice('part:'.length) as PartId;
    },
    prove: (part, works = true) =>
      desk.ask('provePart', { part, where: 'second rig', scopes: ['starts'], works, how: works ? null : 'dark' }),
    fit: (part) =>
      desk.tries('fitPart', {
        job,
        part,
        slot: 'board',
        startedAt: desk.folder.clock.now,
        handsOn: 20,
        why: 'fitting',
      }),
  };
}

/** Asks about what came for an order at its price: yes fits it, no sends it back. */
export async function askAbout(at: OrderedJob, order: string, priceMinor: number): Promise<QuestionId> {
  await at.desk.ask('ask', {
    job: at.job,
    kind: 'spend',
    says: 'It came dearer. Shall we fit it?',
    options: [
      { id: 'yes', says: 'Yes', agrees: { ...agrees, order: { order, priceMinor }, goesTo: 'fitting' } },
      { id: 'no', says: 'No, send it back', agrees: { ...agrees, goesTo: 'part-on-the-way' } },
    ],
    validUntil: null,
    offer: null,
    stops: true,
  });
  return (await at.now()).questions.at(-1)?.id as QuestionId;
}
