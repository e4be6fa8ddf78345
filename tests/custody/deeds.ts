import fc from 'fast-check';
import { expect } from 'vitest';
import { movePart } from '../../core/commands/bench/parts/movePart.ts';
import type { Decision } from '../../core/commands/kernel/decision.ts';
import { lendPart, takeBackLent } from '../../core/commands/wall/lendPart.ts';
import { moveShopPart } from '../../core/commands/wall/moveShopPart.ts';
import { releasePart, reservePart } from '../../core/commands/wall/reservePart.ts';
import type { JobId, PartId } from '../../core/ids.ts';
import { canGoHome } from '../../core/job/home/canGoHome.ts';
import { personal } from '../../core/journal/personal.ts';
import { epochMs } from '../../core/time.ts';
import { draft } from '../builders/shopFolder.ts';
import type { NaiveShop, Word } from './naiveShop.ts';
import type { PureShop } from './pureShop.ts';
import { PART_NAMES, placeOf, SLOT_NAMES, wordsOf } from './twoMachines.ts';

type Deed = fc.Command<NaiveShop, PureShop>;

/** Something somebody does: done to the plain double and to the real rules, and both looked over afterwards. */
const deed = (says: string, does: (model: NaiveShop, real: PureShop) => void): Deed => ({
  check: () => true,
  run: (model, real) => {
    does(model, real);
    lookOver(model, real);
  },
  toString: () => says,
});

/** Both say yes, or both say no; a no names its facts and wrote nothing. */
function sameAnswer(allowed: boolean, real: PureShop, before: number, decision: Decision, says: string): void {
  if (decision.ok !== allowed)
    throw new Error(`${says}: the rules say ${allowed ? 'yes' : 'no'}, core says ${JSON.stringify(decision)}`);
  if (decision.ok) return;
  expect(real.journal.length).toBe(before);
  const { refusal } = decision;
  if (['part-not-there', 'part-reserved', 'part-out', 'slot-occupied', 'in-another-machine'].includes(refusal.refused))
    expect(refusal.since).toEqual(expect.any(Number));
}

/** What holds at every moment, read from the real side alone, and that both sides tell the same story. */
function lookOver(model: NaiveShop, real: PureShop): void {
  if (real.parts.size !== PART_NAMES.length) throw new Error(`${real.parts.size} parts of ${PART_NAMES.length}`);
  const filled = new Map<string, string>();
  for (const [machine, { inside }] of real.machines)
    for (const [slot, part] of Object.entries(inside)) {
      if (filled.has(part)) throw new Error(`${part} sits in two slots`);
      filled.set(part, `slot ${machine} ${slot}`);
    }
  for (const [id, part] of real.parts) {
    const where = wordsOf(part.place);
    if (where !== model.row(id).where) throw new Error(`${id} is at ${where}, its double at ${model.row(id).where}`);
    if (filled.get(id) !== (where.startsWith('slot ') ? where : undefined))
      throw new Error(`${id} is at ${where}, its slot says ${filled.get(id)}`);
    const riders = [...part.riders].sort().join();
    if (riders !== model.riders(id).sort().join()) throw new Error(`with ${id} move ${riders}`);
    if (part.belongs.to === 'shop' && /^slot m/.test(where) && part.title === null)
      throw new Error(`${id} of the shop is in an owner's machine under no title`);
  }
  for (const job of model.closed) {
    const machine = real.machines.get(model.machineOf.get(job) ?? '');
    for (const id of Object.values(machine?.inside ?? {}))
      if (real.parts.get(id)?.belongs.to === 'shop') expect(real.parts.get(id)?.title?.as).toBe('lent');
  }
}

const part = fc.constantFrom(...PART_NAMES);
const job = fc.constantFrom('j1', 'j2');
const place = fc.oneof(
  { weight: 1, arbitrary: fc.constantFrom(...SLOT_NAMES).map((slot) => `slot ${slot}`) },
  { weight: 6, arbitrary: fc.nat(20).map((nth) => `fitting slot ${nth}`) },
  { weight: 2, arbitrary: fc.constantFrom('bin B1', 'bin B2', 'tray t|j1', 'tray t|j2', 'bench b', 'bench b|j1') },
  { weight: 2, arbitrary: part.map((id) => `with ${id}`) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      'kept',
      'with-owner',
      'transit',
      'away',
      'not-found',
      'gone|recycled',
      'gone|destroyed with certificate',
      'gone|destroyed',
    ),
  },
);
/** Where the asker thinks it is: mostly right; null means wherever it really is. */
const from = fc.oneof({ weight: 6, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: place });
const why = fc.oneof(
  { weight: 4, arbitrary: fc.constant('hand' as const) },
  {
    weight: 1,
    arbitrary: fc.constantFrom('wrong-slot-put-right', 'hand, saying why', 'righting', 'righting in silence'),
  },
);

const BY = {
  hand: 'hand',
  'hand, saying why': 'hand',
  'wrong-slot-put-right': 'wrong-slot-put-right',
  righting: 'righting',
  'righting in silence': 'righting',
} as const;
const SAYS: Readonly<Partial<Record<keyof typeof BY, string>>> = {
  'hand, saying why': 'the latch of its own slot is broken',
  righting: 'put down in the wrong tray',
};

/** Mostly the job of the part's own machine; now and then another. */
const whose = fc.oneof({ weight: 6, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: job });
const jobFor = (asked: string | null, id: string, nth: number) =>
  asked ?? (id === 'd3' || id === 's2' ? 'j2' : PART_NAMES.indexOf(id) < 6 ? 'j1' : nth % 2 === 0 ? 'j1' : 'j2');

/** A slot that takes such a part, for a place that says only that it should be one. */
function settled(model: NaiveShop, id: string, to: string): string {
  const nth = Number(/^fitting slot (\d+)/.exec(to)?.[1] ?? Number.NaN);
  if (Number.isNaN(nth)) return to;
  const fitting = [...model.slots].filter(([, kind]) => kind === model.row(id).kind).map(([slot]) => slot);
  return fitting.length > 0 ? `slot ${fitting[nth % fitting.length]}` : 'bench b';
}

const moves = fc.tuple(whose, fc.nat(1), part, from, place, why).map(([by, nth, id, said, wished, reason]) =>
  deed(`${jobFor(by, id, nth)} moves ${id} from ${said ?? 'where it is'} to ${wished}, ${reason}`, (model, real) => {
    const of = jobFor(by, id, nth);
    const to = settled(model, id, wished);
    if (said?.startsWith('fitting')) return;
    const left = said ?? model.row(id).where;
    const allowed = model.mayMove(of, id, left, to, reason);
    const before = real.journal.length;
    const asked = {
      job: of as JobId,
      part: id as PartId,
      from: placeOf(left),
      to: placeOf(to),
      why: BY[reason],
      says: SAYS[reason] ?? null,
    };
    sameAnswer(allowed, real, before, real.ask(movePart, asked), `${of} ${id} ${left} → ${to}`);
    if (allowed) model.move(of, id, to, reason);
  }),
);

const ours = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...PART_NAMES.slice(8)) },
  { weight: 1, arbitrary: part },
);

const shopMoves = fc.tuple(ours, from, place).map(([id, said, wished]) =>
  deed(`the wall moves ${id} from ${said ?? 'where it is'} to ${wished}`, (model, real) => {
    const to = settled(model, id, wished);
    if (said?.startsWith('fitting')) return;
    const left = said ?? model.row(id).where;
    const allowed = model.row(id).of === 'shop' && model.mayMove('', id, left, to, 'hand');
    const before = real.journal.length;
    const asked = { part: id as PartId, from: placeOf(left), to: placeOf(to), says: null };
    sameAnswer(allowed, real, before, real.ask(moveShopPart, asked), `wall ${id} ${left} → ${to}`);
    if (allowed) model.move('', id, to, 'hand');
  }),
);

const reserves = fc.tuple(ours, job).map(([id, of]) =>
  deed(`${of} reserves ${id}`, (model, real) => {
    const row = model.row(id);
    const allowed =
      row.of === 'shop' && !model.closed.has(of) && row.heldFor === '' && /^(bin|slot rig)/.test(row.where);
    const before = real.journal.length;
    sameAnswer(allowed, real, before, real.ask(reservePart, { part: id as PartId, job: of as JobId }), `reserve ${id}`);
    if (allowed) row.heldFor = of;
  }),
);

const releases = fc.tuple(ours, whose).map(([id, by]) =>
  deed(`${by ?? 'the holder'} lets ${id} go`, (model, real) => {
    const of = by ?? (model.row(id).heldFor || 'j1');
    const allowed = model.row(id).heldFor === of;
    const before = real.journal.length;
    sameAnswer(allowed, real, before, real.ask(releasePart, { part: id as PartId, job: of as JobId }), `release ${id}`);
    if (allowed) model.row(id).heldFor = '';
  }),
);

const lends = fc.tuple(ours, job, fc.constantFrom('A1', 'S', null)).map(([id, of, slot]) =>
  deed(`${of} lends ${id} ${slot === null ? 'in hand' : `into ${slot}`}`, (model, real) => {
    const row = model.row(id);
    const to = slot === null ? 'with-owner' : `slot ${model.machineOf.get(of)} ${slot}`;
    const others = row.title !== '' && !row.title.endsWith(of);
    const mayBe = row.of === 'shop' && !model.closed.has(of) && !(row.heldFor && row.heldFor !== of) && !others;
    const allowed = mayBe && (row.where === to || model.mayMove(of, id, row.where, to, 'hand', true));
    const before = real.journal.length;
    const owner = real.jobs.get(of as JobId)?.owner;
    const asked = { job: of as JobId, part: id as PartId, slot, returnBy: epochMs(9e12), to: `owner of ${owner}` };
    sameAnswer(allowed, real, before, real.ask(lendPart, asked), `lend ${id} to ${of}`);
    if (allowed) model.move(of, id, to, 'hand', true);
  }),
);

const takesBack = ours.map((id) =>
  deed(`${id} comes back from lending`, (model, real) => {
    const row = model.row(id);
    const allowed = row.title.startsWith('lent') && model.mayMove('', id, row.where, 'bin B1', 'hand');
    const before = real.journal.length;
    const asked = { part: id as PartId, from: placeOf(row.where), to: placeOf('bin B1') };
    sameAnswer(allowed, real, before, real.ask(takeBackLent, asked), `take back ${id}`);
    if (allowed) model.move('', id, 'bin B1', 'hand');
  }),
);

const WORDS: readonly Word[] = ['back', 'keep', 'send', 'scrap', 'follow'];
const answers = fc.tuple(part, whose, fc.constantFrom(...WORDS)).map(([id, asked, word]) =>
  deed(`the owner says of ${id}: ${word}`, (model, real) => {
    const of = jobFor(asked, id, 0);
    const question = `q${real.journal.length}`;
    const agrees = {
      limitMinor: null,
      items: [],
      accepts: false,
      data: null,
      dead: { part: id, answer: word },
      goesTo: 'back',
    };
    const answer = {
      options: ['yes'],
      name: personal('record', of, 'x'),
      how: { by: 'counter' },
      heardBy: 'mina',
      at: real.at,
    };
    real.write(
      draft(`job:${of}`, 'question-put', {
        id: question,
        kind: 'part',
        options: [{ id: 'yes', says: word, agrees }],
        offer: null,
        tries: [],
        answer: null,
        lapsed: false,
        withdrawn: false,
      }),
      draft(`job:${of}`, 'answered', { question, answer }),
    );
    model.words.set(`${of} ${id}`, word);
  }),
);

const consents = fc.tuple(job, fc.boolean()).map(([of, yes]) =>
  deed(`${of}: our parts in for trial: ${yes ? 'yes' : 'no'}`, (model, real) => {
    real.write(draft(`job:${of}`, 'consent-answered', { id: 'own-parts-in', answer: yes ? 'yes' : 'no' }));
    model.trialsAllowed.set(of, yes);
  }),
);

const handsOver = job.map((of) =>
  deed(`${of} goes home if it may`, (model, real) => {
    if (model.closed.has(of)) return;
    const { job: now, machine, parts } = real.view({ job: of as JobId });
    if (!now || !machine) throw new Error(of);
    const missing = canGoHome(now, machine, parts);
    expect(missing.map((one) => ('part' in one ? one.part : one.why)).sort()).toEqual([...model.keepsHere(of)].sort());
    if (missing.length > 0) return;
    real.write(draft(`job:${of}`, 'stage-entered', { stage: 'gone-home', why: 'mended' }));
    model.closed.add(of);
  }),
);

/** Everything that can be done, in the measure in which a shop does it. */
export const deeds = [
  ...Array<typeof moves>(10).fill(moves),
  ...Array<typeof shopMoves>(4).fill(shopMoves),
  ...[reserves, reserves, releases, lends, lends, takesBack, answers, answers, consents, handsOver],
];
