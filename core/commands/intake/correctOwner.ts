import { z } from 'zod';
import { whyMayNotAnswer } from '../../approval/mayAnswer.ts';
import type { OwnerBody } from '../../approval/owner.ts';
import { OWNER_FACTS, type OwnerFact } from '../../job/entries.ts';
import { HOW_TOLD } from '../../job/howTold.ts';
import { canonicalJson } from '../../journal/canonicalJson.ts';
import { personal } from '../../journal/personal.ts';
import { STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zJobId, zLine } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issueAnew } from '../papers/issue.ts';
import { ownerBody, zOwner } from './takeIn.ts';

/** Who may fetch or decide is the owner's to say: it takes a word of theirs. */
const THEIRS_TO_SAY: readonly OwnerFact[] = ['kind', 'mayCollect'];

/**
 * Puts right what is written down of an owner: name, ways to reach them, address, language, who may collect and who decides.
 * The last two take the word of one who may give it, by the record as it stood. The receipt is issued anew while the machine
 * is here. Refused: `no-such-owner`, `nothing-to-write`, `word-needed-for-that`, `may-not-answer` and its kin,
 * `limit-above-approver`.
 */
export const correctOwner = jobCommand(
  'correct-owner',
  zOwner.extend({
    job: zJobId,
    /** Who asked for it, and how; null where it takes nobody's word. */
    word: z.strictObject({ name: zLine, how: z.enum(HOW_TOLD) }).nullable(),
  }),
  STAGES,
  (view, { job: id, word, ...given }, asking) => {
    const { owner, job } = view;
    if (!owner) return refuse('no-such-owner', { owner: job.owner });
    const next = ownerBody(owner.id, given);
    const what = OWNER_FACTS.filter((fact) => canonicalJson(next[fact]) !== canonicalJson(owner[fact]));
    if (what.length === 0) return refuse('nothing-to-write');
    if (what.some((fact) => THEIRS_TO_SAY.includes(fact))) {
      if (!word) return refuse('word-needed-for-that', { name: owner.name.value ?? '' });
      // Who decides on money is changed by one who does.
      const amountMinor = what.includes('kind') ? 0 : null;
      const refusal = whyMayNotAnswer(owner, word.name, { amountMinor, data: false });
      if (refusal) return { ok: false, refusal };
    }
    const unit = openUnitOfWork(view, asking);
    unit.add(`owner:${owner.id}`, 'owner-changed', changed(what, next));
    unit.add(`job:${id}`, 'owner-corrected', {
      what,
      saidBy: word && personal('record', owner.id, word.name),
      how: word?.how ?? null,
    });
    if (job.stage !== 'gone-home') issueAnew(unit, ['intake-receipt'], asking);
    return unit.accept();
  },
  () => ({ papers: ['intake-receipt'] }),
);

const changed = (what: readonly OwnerFact[], next: OwnerBody): Partial<OwnerBody> =>
  Object.fromEntries(what.map((fact) => [fact, next[fact]]));
