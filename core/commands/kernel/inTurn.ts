import type { AnyDraft } from '../../entries/draft.ts';
import { applyToView, type View } from '../../entries/view.ts';
import type { Paper } from '../../papers/content.ts';
import type { Asking } from './asking.ts';
import type { Decision } from './decision.ts';

/**
 * Several decisions as one, each made on what those before it wrote: the entries and papers of all of them, or the first
 * refusal and nothing.
 */
export function inTurn(
  view: View,
  { at, by }: Pick<Asking, 'at' | 'by'>,
  decide: readonly ((now: View) => Decision)[],
): Decision {
  const entries: AnyDraft[] = [];
  const shown: (() => Paper)[] = [];
  let now = view;
  for (const one of decide) {
    const decision = one(now);
    if (!decision.ok) return decision;
    entries.push(...decision.entries);
    shown.push(...decision.shown);
    now = decision.entries.reduce((before, entry) => applyToView(before, entry, { at, by }), now);
  }
  return { ok: true, entries, shown };
}
