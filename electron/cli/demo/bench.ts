import type { PartId } from '../../../core/ids.ts';
import { line, named } from './lines.ts';
import type { FoundMachine, Put, StoryStep } from './story.ts';
import { STORY } from './story.ts';
import type { Teller } from './teller.ts';

const TRAY = STORY.story.tray;

/** One step of the bench: what comes before it, the step with its timer and moves, what comes after. */
export async function tellStep(
  teller: Teller,
  by: string,
  day: string,
  step: StoryStep,
  { found, source }: { readonly found: FoundMachine; readonly source: 'census' | 'own-report' },
): Promise<void> {
  teller.clock.set(`${day}T${step.at}`);
  for (const put of step.first ?? []) await putOwn(teller, by, put);
  if (step.prove) return proveOurs(teller, by, step);
  if (step.ours) await teller.forJob(by, 'putOursOn', { thing: step.ours, count: 1 });
  if (step.unplug) await unplug(teller, by, step.unplug);
  if (step.rig) await clearForRig(teller, by);
  const use = {
    loaner: step.loaner === undefined ? null : teller.part(step.loaner),
    slots: step.slots ?? [],
    parts: await Promise.all((step.own ?? []).map((slot) => teller.own(slot))),
  };
  const done = await teller.forJob(by, 'startWork', {
    kind: 'step',
    what: step.step,
    startedAt: teller.clock.now(),
    tray: TRAY,
    use,
    ownWord: null,
  });
  const { job } = await teller.sheet();
  const run = job.work.findLast((work) => work.endedAt === null)?.run ?? String(done.seq);
  const ended = teller.clock.pass(step.handsOn + step.waiting);
  await teller.forJob(by, 'finishWork', {
    run,
    endedAt: ended,
    outcome: step.outcome,
    handsOn: step.handsOn,
    waiting: step.waiting,
    readings: step.readings ?? [],
    passed: null,
    note: step.seen ?? null,
    endsWith: step.endsWith ?? null,
    use,
    tray: TRAY,
  });
  if (step.found) await teller.forJob(by, 'addThing', step.found);
  if (step.byTheWay) await teller.forJob(by, 'note', { says: step.byTheWay, foundByTheWay: true });
  if (step.census) await census(teller, by, found, source);
  for (const put of step.after ?? []) await putOwn(teller, by, put);
  const { handsOn, waiting, seen } = step;
  const id = String(step.step);
  const outcome = named.outcome(id, String(step.outcome));
  const facts = { step: named.step(id), handsOn, waiting, outcome, seen };
  teller.say(line(seen ? 'step-seen' : 'step', facts));
}

/** Writes the slot plan and what sits in it, as seen; what is not known stays not known. */
async function census(teller: Teller, by: string, found: FoundMachine, source: 'census' | 'own-report'): Promise<void> {
  await teller.forJob(by, 'writeCensus', {
    slots: found.slots,
    parts: found.parts.map((part) => ({ serial: null, source, ...part })),
    gaps: found.gaps,
  });
  await teller.forJob(by, 'answerSwitches', { switches: STORY.story.switches });
}

/** Puts an owner's part into a slot by hand. */
export async function putOwn(teller: Teller, by: string, { own, slot }: Put): Promise<void> {
  const id = await teller.own(own);
  const { parts, machine } = await teller.sheet();
  const part = parts.find((one) => one.id === id);
  if (!part) throw new Error(`no part from ${own}`);
  const to = { at: 'slot', machine: machine.id, slot };
  if (JSON.stringify(part.place) === JSON.stringify(to)) return;
  await teller.forJob(by, 'movePart', { part: id, from: part.place, to, why: 'hand', says: null });
}

async function unplug(
  teller: Teller,
  by: string,
  what: { readonly slots: readonly string[]; readonly out: readonly string[] },
): Promise<void> {
  const out = await Promise.all(what.out.map(async (slot) => ({ part: await teller.own(slot), tray: TRAY })));
  await teller.forJob(by, 'unplug', { slots: [...what.slots, ...what.out], out });
}

/** Everything still in the machine but what the rig step itself takes out goes to the tray first. */
async function clearForRig(teller: Teller, by: string): Promise<void> {
  const { machine, parts } = await teller.sheet();
  for (const id of Object.values(machine.inside)) {
    const part = parts.find((one) => one.id === id);
    if (part?.kind !== 'card' && part?.kind !== 'dimm') continue;
    await teller.forJob(by, 'movePart', {
      part: id,
      from: part.place,
      to: { at: 'tray', tray: TRAY, job: teller.job() },
      why: 'hand',
      says: null,
    });
  }
}

/** Proves our own parts anew on the rig: the shop's time, not the owner's. */
async function proveOurs(teller: Teller, by: string, step: StoryStep): Promise<void> {
  await teller.forJob(by, 'startWork', {
    kind: 'own-proof',
    what: 'prove-loaners',
    startedAt: teller.clock.now(),
    tray: TRAY,
    use: noUse,
    ownWord: null,
  });
  const { job } = await teller.sheet();
  const run = job.work.findLast((work) => work.endedAt === null)?.run ?? '';
  const ended = teller.clock.pass(step.handsOn + step.waiting);
  for (const no of step.prove ?? [])
    await teller.ask(by, 'provePart', {
      part: teller.part(no),
      where: step.where,
      scopes: step.scopes,
      works: true,
      how: null,
    });
  await teller.forJob(by, 'finishWork', {
    run,
    endedAt: ended,
    outcome: 'done',
    handsOn: step.handsOn,
    waiting: step.waiting,
    readings: [],
    passed: true,
    note: null,
    endsWith: null,
    use: noUse,
    tray: TRAY,
  });
  teller.say(line('own-proof', { parts: step.prove, handsOn: step.handsOn, waiting: step.waiting }));
}

export const noUse: {
  readonly loaner: PartId | null;
  readonly slots: readonly string[];
  readonly parts: readonly PartId[];
} = { loaner: null, slots: [], parts: [] };
