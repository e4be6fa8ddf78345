import { z } from 'zod';
import { personal } from '../../../journal/personal.ts';
import { jobCommand } from '../../kernel/command.ts';
import { accept, refuse } from '../../kernel/decision.ts';
import { zId, zJobId, zPartId, zText } from '../../kernel/fields.ts';
import { owedFirst } from './owedFirst.ts';
import { whichOne, zWhichOne } from './whichOne.ts';

/**
 * Names a fault on the technician's own word, whatever the log shows, with the reason. It is named and no more: no part is
 * called dead by it, and the papers say by whom it was named. What safety asks for before a verdict is still owed.
 * Refuses an unknown fault, a part that is not the owner's or of another kind, steps that are owed, and a slot, channel,
 * module, output, port or plug of which nobody says which it is.
 */
export const nameFault = jobCommand(
  'name-fault',
  z.strictObject({ job: zJobId, fault: zId, part: zPartId.nullable(), why: zText, which: zWhichOne }),
  ['tracing', 'first-power-on'],
  (view, { job, fault, part, why, which }, asking) => {
    const known = asking.tracing.fault(fault);
    if (!known) return refuse('no-such-fault', { fault });
    const blamed = part === null ? null : view.parts.get(part);
    if (blamed === undefined || (blamed && blamed.belongs.to !== 'owner')) return refuse('no-such-part', { part });
    if (blamed && blamed.kind !== known.part) return refuse('fault-of-another-part', { fault, part: blamed.name });
    const owed = asking.tracing.owed(view);
    if (owed.length > 0) return owedFirst(owed);
    const one = whichOne({ fault, part, ...(which !== undefined && { which }) }, asking.tracing);
    if ('refusal' in one) return { ok: false, refusal: one.refusal };
    const byHand = { why: personal('record', view.job.owner, why) };
    return accept({ stream: `job:${job}`, kind: 'judged', body: { is: 'named', fault, part, byHand, ...one } });
  },
  ({ part }) => ({ parts: part === null ? [] : [part] }),
);
