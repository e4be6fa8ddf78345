import fc from 'fast-check';
import story from '../../assets/demo/story.json' with { type: 'json' };
import type { CommandName } from '../../core/commands/commands.ts';
import type { JobId, PartId } from '../../core/ids.ts';
import type { Job } from '../../core/job/job.ts';
import { anOffer } from './anOffer.ts';
import type { Desk } from './desk.ts';

/** What a random command may refer to: the job as it is now, one part of ours and one of theirs. */
export type Here = {
  readonly job: Job;
  readonly ours: PartId;
  readonly theirs: PartId;
  readonly now: number;
};
/** One thing that somebody tries, made for the job as it stands. */
export type Deed = (here: Here) => readonly [CommandName, Record<string, unknown>];

const NAMES = [story.owner.name, story.owner.name, story.owner.name, 'A Stranger'];
const minor = (max: number) => fc.integer({ min: 1, max });
const pick = <T>(list: readonly T[], at: number): T | undefined => list[at % Math.max(1, list.length)];
const noUse = { loaner: null, slots: [], parts: [] };
const agrees = { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back' };

const started = fc
  .tuple(
    fc.constantFrom('step', 'fitting', 'proof', 'cleaning', 'handling', 'own-proof'),
    fc.constantFrom('look-mains', 'dimm-loan'),
  )
  .map(
    ([kind, what]): Deed =>
      ({ now }) => ['startWork', { kind, what, startedAt: now, tray: 'tray 1', use: noUse, ownWord: null }],
  );

const finished = fc.integer({ min: 0, max: 400 }).map(
  (quarters): Deed =>
    ({ job, now }) => [
      'finishWork',
      {
        run: job.work.find((one) => one.endedAt === null)?.run ?? 'none',
        endedAt: now,
        outcome: 'same',
        handsOn: quarters / 4,
        waiting: 0,
        readings: [],
        passed: true,
        note: null,
        endsWith: null,
        use: noUse,
        tray: 'tray 1',
      },
    ],
);

const spend = fc.tuple(fc.option(minor(30_000)), fc.array(minor(9000), { maxLength: 2 }), fc.boolean()).map(
  ([limitMinor, prices, several]): Deed =>
    () => [
      'ask',
      {
        kind: 'spend',
        says: 'May we spend more?',
        options: [
          { id: 'yes', says: 'Yes', agrees: { ...agrees, limitMinor } },
          {
            id: 'too',
            says: 'And this',
            agrees: { ...agrees, items: prices.map((priceMinor) => ({ what: 'lead', priceMinor })) },
          },
          { id: 'no', says: 'No', agrees },
        ],
        several,
        validUntil: null,
        offer: null,
        stops: false,
      },
    ],
);

const offered = fc.tuple(minor(15_000), fc.option(minor(30_000)), minor(4000)).map(
  ([priceMinor, limitMinor, coreMinor]): Deed =>
    ({ ours, theirs }) => [
      'ask',
      {
        kind: 'offer',
        says: 'This one instead?',
        options: [
          {
            id: 'yes',
            says: 'Yes',
            agrees: { ...agrees, accepts: true, limitMinor, dead: { part: theirs, answer: 'send' }, goesTo: 'fitting' },
          },
          { id: 'no', says: 'No', agrees },
        ],
        validUntil: null,
        stops: false,
        offer: anOffer(theirs, ours, { priceMinor, coreMinor }),
      },
    ],
);

const answered = fc
  .tuple(fc.nat(9), fc.constantFrom(...NAMES), fc.subarray(['yes', 'too', 'no'], { minLength: 1 }))
  .map(
    ([at, name, options]): Deed =>
      ({ job, now }) => {
        const open = job.questions.filter((one) => !one.answer && !one.lapsed && !one.withdrawn);
        return [
          'answer',
          {
            question: pick(open, at)?.id ?? 'none',
            options,
            name,
            how: { by: 'phone', at: now, number: story.owner.phone, readBack: 'Yes.' },
          },
        ];
      },
  );

const consents = fc
  .tuple(
    fc.constantFrom('open', 'own-parts-in', 'photos'),
    fc.constantFrom('yes', 'no', 'take back'),
    fc.constantFrom(...NAMES),
  )
  .map(
    ([id, answer, name]): Deed =>
      ({ now }) =>
        answer === 'take back'
          ? ['withdrawConsent', { id }]
          : [
              'answerConsent',
              { id, answer, name, how: { by: 'phone', at: now, number: story.owner.phone, readBack: 'Yes.' } },
            ],
  );

const withdrawn = fc.nat(9).map(
  (at): Deed =>
    ({ job }) => ['withdrawWord', { question: pick(job.questions, at)?.id ?? 'none' }],
);

const money = fc.oneof(
  minor(800).map(
    (priceMinor): Deed =>
      () => ['bookCharge', { charge: { is: 'small-part', what: 'screw', priceMinor } }],
  ),
  minor(800).map(
    (off): Deed =>
      () => ['bookCharge', { charge: { is: 'discount', why: 'late', minor: off } }],
  ),
  minor(9000).map(
    (priceMinor): Deed =>
      ({ job }) => [
        'orderPart',
        { what: 'board', supplier: 'a supplier', priceMinor, due: null, question: job.questions.at(-1)?.id ?? null },
      ],
  ),
  minor(9000).map(
    (priceMinor): Deed =>
      () => ['orderPart', { what: 'lead', supplier: 'a supplier', priceMinor, due: null, question: null }],
  ),
);

const ways = fc.oneof(
  fc.constantFrom('first-power-on', 'tracing', 'fitting', 'proving').map(
    (to): Deed =>
      () => ['goOn', { to }],
  ),
  fc.constant<Deed>(() => ['nameFault', { fault: 'dimm-dead', part: null, why: 'heard it often' }]),
  fc.constant<Deed>(({ ours, now }) => [
    'fitPart',
    { part: ours, slot: 'A2', startedAt: now, handsOn: 12, why: 'fitting' },
  ]),
  fc.nat(9).map(
    (at): Deed =>
      ({ job }) => ['strikeWork', { run: pick(job.work, at)?.run ?? 'none', why: 'wrong' }],
  ),
  fc.constant<Deed>(({ theirs }) => ['unplug', { slots: ['A2'], out: [{ part: theirs, tray: 'tray 1' }] }]),
  fc.constant<Deed>(() => ['addPhotographs', { photographs: [{ of: 'board', blob: 'b' }] }]),
);

/** Long work begun and ended, so that what follows is tried near the limit. */
const nearTheLimit = fc.tuple(fc.integer({ min: 60, max: 100 }), finished).map(([minutes, end]): readonly Deed[] => [
  ({ now }) => [
    'startWork',
    { kind: 'step', what: 'look-mains', startedAt: now, tray: 'tray 1', use: noUse, ownWord: null },
  ],
  (here) => {
    const [name, input] = end(here);
    return [name, { ...input, handsOn: minutes }];
  },
  () => ['goOn', { to: 'tracing' }],
]);

/** A run of deeds in any order: work and its end, questions and answers, money, consents given and taken back. */
const inAnyOrder = fc.array(
  fc.oneof(
    { weight: 4, arbitrary: started },
    { weight: 4, arbitrary: finished },
    { weight: 2, arbitrary: spend },
    { weight: 2, arbitrary: offered },
    { weight: 4, arbitrary: answered },
    { weight: 1, arbitrary: withdrawn },
    { weight: 2, arbitrary: consents },
    { weight: 2, arbitrary: money },
    { weight: 3, arbitrary: ways },
  ),
  { minLength: 15, maxLength: 40 },
);

/** The same, in half of the runs after work that nearly used up the limit. */
export const anyDeeds = fc
  .tuple(fc.oneof(fc.constant<readonly Deed[]>([]), nearTheLimit), inAnyOrder)
  .map(([first, rest]) => [...first, ...rest]);

/** Asks it through the shop's own door; refused or done, the shop goes on. */
export async function tryIt(desk: Desk, job: JobId, deed: Deed, here: Omit<Here, 'job' | 'now'>) {
  const view = await desk.view(job);
  if (!view.job) throw new Error('no job');
  const [name, input] = deed({ ...here, job: view.job, now: desk.folder.clock.now });
  desk.pass(1);
  return { name, input, done: await desk.tried(name, { job, ...input }) };
}
