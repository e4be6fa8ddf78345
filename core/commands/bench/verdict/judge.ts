import { z } from 'zod';
import type { ProofStatus } from '../../../custody/part.ts';
import { CONFIRMED_BY } from '../../../job/confirmedBy.ts';
import { CURES } from '../../../job/entries.ts';
import { isDone } from '../../../job/work.ts';
import type { EngineVerdict } from '../../../tracing/live/types.ts';
import { wayBelieved } from '../../../tracing/live/wayBelieved.ts';
import { jobCommand } from '../../kernel/command.ts';
import { refuse } from '../../kernel/decision.ts';
import { zId, zJobId, zPartId, zReading } from '../../kernel/fields.ts';
import { openUnitOfWork } from '../../kernel/unitOfWork.ts';
import { noneOfThisMachine } from '../noneOfThisMachine.ts';
import { owedFirst } from './owedFirst.ts';
import { whichOne, zWhichOne } from './whichOne.ts';

const zVerdict = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('named'), fault: zId, part: zPartId.nullable(), which: zWhichOne }),
  z.strictObject({
    is: z.literal('confirmed'),
    fault: zId,
    part: zPartId,
    which: zWhichOne,
    way: z.enum(CONFIRMED_BY),
    evidence: z.array(zId).min(1).max(40),
    readings: z.array(zReading).max(20),
  }),
  z.strictObject({
    is: z.literal('cured'),
    by: z.enum(CURES),
    fault: zId.nullable(),
    watched: z
      .strictObject({ hours: z.number().min(0).max(10_000), hiddenChance: z.number().min(0).max(1) })
      .optional(),
  }),
  z.strictObject({
    is: z.literal('not-reproduced'),
    watchedHours: z.number().min(0).max(10_000),
    hiddenChance: z.number().min(0).max(1).nullable(),
    left: z.array(zId).max(100),
  }),
  z.strictObject({ is: z.literal('given-up'), left: z.array(zId).max(100) }),
]);

/**
 * Writes the verdict down. "Confirmed" only when the log shows it in one of its three ways: evidence is the runs that
 * show it; "named" only what the log names, else see `nameFault`. The part is then dead; loaners that were exposed are good again where that fault does no harm, else unproved.
 */
export const judge = jobCommand(
  'judge',
  z.strictObject({ job: zJobId, verdict: zVerdict }),
  ['tracing', 'first-power-on'],
  (view, { job, verdict }, asking) => {
    const owed = verdict.is === 'given-up' ? [] : asking.tracing.owed(view);
    if (owed.length > 0) return owedFirst(owed);
    const unit = openUnitOfWork(view, asking);
    const one = verdict.is === 'confirmed' || verdict.is === 'named' ? whichOne(verdict, asking.tracing) : {};
    if ('refusal' in one) return { ok: false, refusal: one.refusal };
    const blamed = verdict.is === 'confirmed' || verdict.is === 'named' ? verdict.part : null;
    const unknown = noneOfThisMachine(view, { parts: blamed === null ? [] : [blamed] });
    if (unknown) return { ok: false, refusal: unknown };
    if (verdict.is === 'cured' && verdict.fault !== null && !asking.tracing.fault(verdict.fault))
      return refuse('no-such-fault', { fault: verdict.fault });
    if (verdict.is === 'confirmed') {
      const runs = verdict.evidence.filter((run) => view.job.work.some((work) => work.run === run && isDone(work)));
      if (runs.length < verdict.evidence.length)
        return refuse('evidence-not-in-the-log', { evidence: verdict.evidence });
      const shown = asking.tracing.verdict(view);
      const ownEvidence =
        verdict.way === 'by-its-own-evidence' && verdict.readings.some((reading) => reading.within === false);
      if (!ownEvidence && !(shown.verdict === 'confirmed' && shown.fault === verdict.fault)) {
        return refuse('not-confirmed-by-the-log', { fault: verdict.fault, shows: shown.verdict });
      }
      const { which: _asked, ...confirmed } = verdict;
      unit.add(`job:${job}`, 'judged', { ...confirmed, ...one, ...wayOpen(shown, verdict.fault) });
      unit.add(`part:${verdict.part}`, 'part-standing', {
        standing: { is: 'dead', how: verdict.way },
        why: 'confirmed',
      });
      for (const id of view.job.parts) {
        const loaner = view.parts.get(id);
        if (loaner?.standing.is !== 'exposed' || loaner.standing.job !== job) continue;
        const hurt = asking.tracing.harms(verdict.fault, loaner.kind);
        const standing: ProofStatus = hurt
          ? { is: 'unproved', why: `exposed-to-${verdict.fault}` }
          : loaner.standing.before;
        unit.add(`part:${id}`, 'part-standing', {
          standing,
          why: hurt ? 'fault-may-have-hurt-it' : 'fault-does-no-harm',
        });
      }
      return unit.accept();
    }
    if (verdict.is === 'named') {
      const shown = asking.tracing.verdict(view);
      if (!((shown.verdict === 'named' || shown.verdict === 'confirmed') && shown.fault === verdict.fault))
        return refuse('not-named-by-the-log', { fault: verdict.fault, shows: shown.verdict });
      const { which: _asked, ...named } = verdict;
      unit.add(`job:${job}`, 'judged', { ...named, ...one, ...wayOpen(shown, verdict.fault) });
      return unit.accept();
    }
    unit.add(`job:${job}`, 'judged', verdict);
    if (verdict.is === 'cured') unit.enter('proving', 'cured');
    return unit.accept();
  },
  ({ verdict }) => ({ parts: 'part' in verdict && verdict.part !== null ? [verdict.part] : [] }),
);

/** Not how it failed, where the log leaves that open; the part is blamed all the same. */
const wayOpen = (shown: EngineVerdict, fault: string): { readonly wayOpen?: true } =>
  (shown.verdict === 'confirmed' || shown.verdict === 'named') && shown.fault === fault && !wayBelieved(shown)
    ? { wayOpen: true }
    : {};
