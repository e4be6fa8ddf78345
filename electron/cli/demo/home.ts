import { fromWall } from '../../../core/calendar.ts';
import { noUse } from './bench.ts';
import type { FittingWork } from './fittingWork.ts';
import { line, named, storyAmount, workLine } from './lines.ts';
import { drawnSignature } from './signature.ts';
import { STORY } from './story.ts';
import type { Teller } from './teller.ts';

const TRAY = STORY.story.tray;

type Piece = {
  readonly kind: 'fitting' | 'proof' | 'cleaning' | 'handling';
  readonly what: string;
  readonly handsOn: number;
  readonly waiting?: number;
  readonly readings?: readonly unknown[];
  readonly passed?: boolean;
  readonly says?: string;
};

/** A piece of work with its timer, start to end. */
async function work(teller: Teller, by: string, piece: Piece): Promise<void> {
  const waiting = piece.waiting ?? 0;
  await teller.forJob(by, 'startWork', {
    kind: piece.kind,
    what: piece.what,
    startedAt: teller.clock.now(),
    tray: TRAY,
    use: noUse,
    ownWord: null,
  });
  const { job } = await teller.sheet();
  const run = job.work.findLast((one) => one.endedAt === null)?.run ?? '';
  const ended = teller.clock.pass(piece.handsOn + waiting);
  await teller.forJob(by, 'finishWork', {
    run,
    endedAt: ended,
    outcome: 'done',
    handsOn: piece.handsOn,
    waiting,
    readings: piece.readings ?? [],
    passed: piece.passed ?? null,
    note: piece.says ?? null,
    endsWith: null,
    use: noUse,
    tray: TRAY,
  });
  teller.say(workLine(piece.kind, { what: named.work(piece.what), handsOn: piece.handsOn, waiting }));
}

/** Left for the night as it stands; looked at by eye in the morning. */
export async function leaveForTheNight(teller: Teller): Promise<void> {
  const { left, fitting } = STORY.story;
  const { at, ...card } = left;
  teller.clock.set(`2026-10-13T${at}`);
  await teller.forJob('bram', 'leaveLikeThis', card);
  teller.say(line('left', { why: left.doNotPower }));
  teller.clock.set(`${fitting.day}T${fitting.looked}`);
  await teller.forJob(fitting.by, 'confirmLeft', {});
}

/** Wednesday: the agreed board in, all of the owner's own parts back, the old board to its shelf. */
export async function fittingAndProving(
  teller: Teller,
  fitting: readonly FittingWork[],
  newSlots: readonly string[],
): Promise<void> {
  const { story } = STORY;
  const { by, day, keep } = story.fitting;
  const { machine, parts } = await teller.sheet();
  for (const one of fitting) {
    teller.clock.set(`${day}T${one.at}`);
    if (one.task !== undefined) {
      await work(teller, by, {
        kind: 'fitting',
        what: one.task,
        handsOn: one.handsOn,
        ...(one.says !== undefined && { says: one.says }),
      });
      continue;
    }
    const part = one.fit !== undefined ? teller.part(one.fit) : await teller.own(one.own ?? '');
    await teller.forJob(by, 'fitPart', {
      part,
      slot: one.slot,
      startedAt: teller.clock.now(),
      handsOn: one.handsOn,
      why: one.why,
    });
    teller.clock.pass(one.handsOn);
    const name = (await teller.sheet()).parts.find((known) => known.id === part)?.name;
    teller.say(line('fitted', { part: name, slot: one.slot, handsOn: one.handsOn }));
    if (one.fit !== undefined) {
      const slots = machine.slots.filter(
        (slot) => newSlots.includes(slot.id) || !['dimm', 'drive', 'card', 'add-in'].includes(slot.takes),
      );
      await teller.forJob(by, 'writeCensus', { slots, parts: [], gaps: machine.gaps });
    }
  }
  const board = await teller.own('board');
  await teller.forJob(by, 'putAway', {
    part: board,
    to: { at: 'kept', shelf: keep.shelf, until: fromWall(keep.until, story.zone) },
  });
  teller.say(line('kept', { part: parts.find((part) => part.id === board)?.name, shelf: keep.shelf }));
  await teller.forJob(by, 'goOn', { to: 'proving' });
  for (const one of story.proving) await prove(teller, by, day, one);
  teller.clock.set(`${day}T${story.ready.at}`);
  await teller.forJob(by, 'markReady', {});
  teller.say(line('ready'));
  teller.clock.set(`${day}T${story.ready.told}`);
  await teller.forJob('mina', 'tellReady', { how: 'phone' });
}

async function prove(
  teller: Teller,
  by: string,
  day: string,
  one: (typeof STORY.story.proving)[number],
): Promise<void> {
  teller.clock.set(`${day}T${one.at}`);
  if (one.proof !== undefined)
    await work(teller, by, {
      kind: 'proof',
      what: one.proof,
      handsOn: one.handsOn,
      waiting: one.waiting ?? 0,
      readings: one.readings ?? [],
      passed: true,
    });
  else if (one.clean !== undefined) await work(teller, by, { kind: 'cleaning', what: one.clean, handsOn: one.handsOn });
  else if (one.task !== undefined) {
    const { machine } = await teller.sheet();
    for (const put of one.fitOwn ?? []) {
      if (!machine.atTakingIn[put.own]) continue;
      await teller.forJob(by, 'fitPart', {
        part: await teller.own(put.own),
        slot: put.slot,
        startedAt: teller.clock.now(),
        handsOn: 0,
        why: 'fitting',
      });
    }
    if (one.plugIn && machine.unplugged.length > 0) await teller.forJob(by, 'plugIn', { slots: machine.unplugged });
    await work(teller, by, {
      kind: 'fitting',
      what: one.task,
      handsOn: one.handsOn,
      ...(one.says !== undefined && { says: one.says }),
    });
  }
}

/** Thursday: the owner enters the key, everything is ticked back, signed, gone home. */
export async function goingHome(teller: Teller): Promise<void> {
  const { home } = STORY.story;
  teller.clock.set(`${home.day}T${home.key.at}`);
  await work(teller, 'mina', { kind: 'handling', what: 'key-entered-by-owner', handsOn: home.key.handsOn });
  const { job } = await teller.sheet();
  teller.clock.set(`${home.day}T${home.signed}`);
  const { owedMinor, paidMinor } = (await teller.sheet()).charges;
  await teller.forJob('mina', 'takePayment', { minor: owedMinor - paidMinor, how: 'card', for: 'bill' });
  await teller.forJob('mina', 'handOver', {
    collectedBy: home.collectedBy,
    signed: { name: home.collectedBy, drawn: drawnSignature, contentHash: null },
    returned: job.cameAlong.map(({ thing, count }) => ({ thing, count })),
    oursOff: job.shopItemsOn,
    differences: [
      {
        what: 'settings-cleared',
        says: 'Settings of the old board cleared; the new one was set from the photographs.',
      },
    ],
  });
  const after = await teller.sheet();
  const { handsOn, totalMinor } = after.charges;
  teller.say(line('home', { handsOn, bill: storyAmount(totalMinor), limit: storyAmount(after.job.limitMinor) }));
}
