import { type Comparison, countsOf } from '../../../core/approval/compare.ts';
import { commandNamed, type PreviewAsked } from '../../../core/commands/asked.ts';
import { contentAt, contentOf } from '../../../core/commands/kernel/signedContent.ts';
import type { Previewed } from '../../../core/contract/previewed.ts';
import { applyToView, type View } from '../../../core/entries/view.ts';
import { charges } from '../../../core/job/money/charges.ts';
import type { Refusal } from '../../../core/refusal.ts';
import type { EpochMs } from '../../../core/time.ts';
import { type OpenShop, onlyRead } from '../../../db/index.ts';
import type { MayAsk } from '../people/mayAsk.ts';
import { lookedAt } from './lookedAt.ts';
import type { Tools } from './tools.ts';

/**
 * What a command would come to now: the same decision that would carry it out, in a unit of work that is thrown away.
 * A command that would be refused answers that refusal, also where the journal or a read table would not take what it
 * decided.
 */
export async function preview(
  shop: OpenShop,
  tools: Tools,
  asked: PreviewAsked,
  now: EpochMs,
  mayAsk?: MayAsk,
): Promise<Previewed | Refusal> {
  const reading = shop.standing().onlyRead;
  if (reading) return onlyRead(reading);
  const at = contentAt(now);
  const read = await shop.read();
  const barred = await mayAsk?.(read, asked);
  if (barred) return barred;
  const looked = await lookedAt(read, shop, tools, asked, at);
  if ('refusal' in looked) return looked.refusal;
  const { view, asking } = looked;
  const decision = looked.draft();
  if (!decision.ok) return decision.refusal;
  const refusal = await shop.whyNotWritten(decision.entries, asking);
  if (refusal) return refusal;
  const after = decision.entries.reduce((before, entry) => applyToView(before, entry, asking), view);
  const { job } = after;
  return {
    ...contentOf(commandNamed(asked.name).name, asked.input, decision, asking),
    comparison: comparedIn(view, after),
    charges:
      job &&
      charges(
        job,
        job.stages.some((one) => one.stage === 'home-as-it-came'),
      ),
  };
}

/** The comparison that a question puts to the owner, where it was put just now. */
function comparedIn(before: View, { job }: View): Comparison | null {
  const asked = job?.questions.find(({ id }) => !before.job?.questions.some((one) => one.id === id));
  if (!asked?.offer) return null;
  const { rows, notKnown } = asked.offer;
  return { rows, notKnown, counts: countsOf(rows) };
}
