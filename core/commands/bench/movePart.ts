import { z } from 'zod';
import type { MoveReason } from '../../custody/ledger.ts';
import { notThere } from '../../custody/move/moveRefusals.ts';
import { type Place, samePlace } from '../../custody/place.ts';
import type { PartId } from '../../ids.ts';
import { mayNotOpen } from '../../job/bench/mayOpen.ts';
import { minutesBeyondWord } from '../../job/money/withinWord.ts';
import { whyNotFitted } from '../../job/orders/mayBeFitted.ts';
import { lineOf } from '../../job/orders/order.ts';
import { personal } from '../../journal/personal.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { minutes } from '../../time.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zEpoch, zId, zJobId, zLine, zMinutes, zPartId, zPlace, zText } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { moveFromWhereItIs } from './moveOut.ts';

const zWhy = z.enum(['hand', 'wrong-slot-put-right', 'board-has-only-these', 'closing-up', 'righting']);

/** Moves one part by hand, drag or scan. The place it leaves is named: it is refused when the part is not there. */
export const movePart = jobCommand(
  'move-part',
  z.strictObject({
    job: zJobId,
    part: zPartId,
    from: zPlace,
    to: zPlace,
    why: zWhy,
    says: zLine.nullable(),
  }),
  OPEN_STAGES,
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part) return refuse('no-such-part', { part: input.part });
    if (!samePlace(part.place, input.from)) return { ok: false, refusal: notThere(part, input.from) };
    const comesOut = part.belongs.to === 'owner' && part.place.at === 'slot' && input.to.at !== 'slot';
    const closed = comesOut ? mayNotOpen(view.job) : null;
    if (closed) return { ok: false, refusal: closed };
    const book = openUnitOfWork(view, asking);
    const why = whyMoved(input.why, input.says);
    const refusal = moveFromWhereItIs(book, input.part, input.to, why, asking);
    return refusal ? { ok: false, refusal } : book.accept();
  },
  (input) => ({ parts: [input.part, ...carrierIn(input.to)], papers: ['part-tag'] }),
);

/** A move by hand may say why it does not go into the slot recorded; one that rights an entry has to say what it rights. */
function whyMoved(by: z.infer<typeof zWhy>, says: string | null): MoveReason {
  if (by === 'righting') return { by, says: says ?? '' };
  return by === 'hand' && says !== null ? { by, says } : { by };
}

/** The part that a place is with: looked at before anything joins it. */
const carrierIn = (place: Place): readonly PartId[] => (place.at === 'with' ? [place.part] : []);

/**
 * Fits a part: into its slot, with the minutes it took. A part put elsewhere than the record says needs its reason.
 * What was sold becomes the owner's when it is fitted.
 */
export const fitPart = jobCommand(
  'fit-part',
  z.strictObject({
    job: zJobId,
    part: zPartId,
    slot: zId,
    startedAt: zEpoch,
    handsOn: zMinutes,
    why: z.enum(['fitting', 'wrong-slot-put-right', 'board-has-only-these']),
    says: zLine.optional(),
  }),
  ['fitting', 'proving', 'home-as-it-came', 'tracing'],
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part || !view.machine) return refuse('no-such-part', { part: input.part });
    const notYet = whyNotFitted(view.job, part);
    if (notYet) return { ok: false, refusal: notYet };
    const book = openUnitOfWork(view, asking);
    const order = view.job.orders.findLast((one) => one.part === part.id);
    const ordered = order && lineOf(view.job, order);
    if (ordered)
      book.add(`job:${input.job}`, 'sold-part-named', {
        question: ordered.question,
        what: ordered.what,
        part: part.id,
      });
    const refusal = moveFromWhereItIs(
      book,
      part.id,
      { at: 'slot', machine: view.machine.id, slot: input.slot },
      input.why === 'fitting' && input.says !== undefined ? { by: 'fitting', says: input.says } : { by: input.why },
      asking,
    );
    if (refusal) return { ok: false, refusal };
    const line = book.view().job?.agreedLines.find((one) => one.part === part.id);
    if (line && part.belongs.to === 'shop')
      // What moves with it as one is sold with it, within its price.
      for (const id of [part.id, ...part.riders])
        book.add(`part:${id}`, 'title-passed', {
          to: view.job.owner,
          job: input.job,
          question: line.question,
          priceMinor: id === part.id ? line.priceMinor : 0,
        });
    if (line) book.add(`job:${input.job}`, 'line-fitted', { part: part.id });
    const run = asking.newId();
    const ours = minutesBeyondWord(view.job, { run, kind: 'fitting', what: 'fit-part' }, input.handsOn);
    book.add(`job:${input.job}`, 'work-finished', {
      run,
      kind: 'fitting',
      what: 'fit-part',
      startedAt: input.startedAt,
      endedAt: asking.at,
      outcome: 'done',
      handsOn: input.handsOn,
      ...(ours > 0 && { ours }),
      waiting: minutes(0),
      readings: [],
      passed: null,
      note: personal('record', view.job.owner, `${part.name}, ${input.slot}`),
      loaners: [],
      took: [],
      leftOut: [],
    });
    return book.accept();
  },
  (input) => ({ parts: [input.part] }),
);

/** A dead part goes where the owner's word says: kept until its end date, back with the owner, to the maker, scrapped. */
export const putAway = jobCommand(
  'put-away',
  z.strictObject({ job: zJobId, part: zPartId, to: zPlace }),
  OPEN_STAGES,
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part) return refuse('no-such-part', { part: input.part });
    const book = openUnitOfWork(view, asking);
    const refusal = moveFromWhereItIs(book, part.id, input.to, { by: 'owner-word', answer: input.to.at }, asking);
    return refusal ? { ok: false, refusal } : book.accept();
  },
  (input) => ({ parts: [input.part], papers: ['part-tag'] }),
);

/** A note in the job's log; found by the way goes on the return report. */
export const note = jobCommand(
  'note',
  z.strictObject({ job: zJobId, says: zText, foundByTheWay: z.boolean() }),
  OPEN_STAGES,
  (view, { job, says, foundByTheWay }) =>
    accept({
      stream: `job:${job}`,
      kind: 'noted',
      body: { says: personal('record', view.job.owner, says), foundByTheWay },
    }),
);

/** The bench is left as it stands: what is open and unplugged, where things lie, what must not be powered. */
export const leaveLikeThis = jobCommand(
  'leave-like-this',
  z.strictObject({
    job: zJobId,
    open: z.array(zLine).max(20),
    unplugged: z.array(zLine).max(40),
    lying: z.array(z.strictObject({ what: zLine, where: zLine })).max(40),
    doNotPower: zLine.nullable(),
  }),
  OPEN_STAGES,
  (_view, { job, ...card }) => accept({ stream: `job:${job}`, kind: 'left-like-this', body: card }),
);

/** Whoever goes on has looked: it is as the card says. */
export const confirmLeft = jobCommand('confirm-left', z.strictObject({ job: zJobId }), OPEN_STAGES, (view, { job }) =>
  view.job.left && !view.job.left.confirmed
    ? accept({ stream: `job:${job}`, kind: 'left-confirmed', body: {} })
    : refuse('nothing-left-like-this', {}),
);

/** Goes on to fitting or proving, or back to tracing when a proof failed. */
export const goOn = jobCommand(
  'go-on',
  z.strictObject({ job: zJobId, to: z.enum(['first-power-on', 'tracing', 'part-on-the-way', 'fitting', 'proving']) }),
  ['taken-in', 'first-power-on', 'tracing', 'part-on-the-way', 'fitting', 'proving', 'ready'],
  (view, { to, job }, asking) => {
    const from = view.job.stage;
    const way: Readonly<Record<string, readonly string[]>> = {
      'taken-in': ['first-power-on', ...(view.job.tasks ? ['fitting'] : [])],
      'first-power-on': ['tracing'],
      tracing: ['part-on-the-way', 'fitting'],
      'part-on-the-way': ['fitting', 'tracing'],
      fitting: ['proving', 'tracing', 'part-on-the-way'],
      proving: ['tracing', 'fitting'],
      ready: ['proving'],
    };
    if (!(way[from] ?? []).includes(to)) return refuse('no-way-there', { from, to, ways: way[from] ?? [] });
    if (to === 'fitting' && from === 'tracing' && !view.job.verdict && !view.job.tasks)
      return refuse('nothing-found-yet', { job });
    const book = openUnitOfWork(view, asking);
    book.enter(to, 'goes-on');
    return book.accept();
  },
);
