import { commandNamed, type PreviewAsked } from '../../../core/commands/asked.ts';
import type { CommandName } from '../../../core/commands/commands.ts';
import type { Asking } from '../../../core/commands/kernel/asking.ts';
import type { Decision } from '../../../core/commands/kernel/decision.ts';
import type { View } from '../../../core/entries/view.ts';
import { staffId } from '../../../core/ids.ts';
import type { Refusal } from '../../../core/refusal.ts';
import type { EpochMs } from '../../../core/time.ts';
import type { Reader } from '../../../db/index.ts';
import { loadView } from './loadView.ts';
import { setApartRefusal } from './setApart.ts';
import type { Tools } from './tools.ts';

/** All that a command's decision is made on, or why nobody may act on what it is about. */
type LookedAt =
  | {
      readonly view: View;
      readonly asking: Asking;
      /** What it comes to; and the same before anything in it is signed. */
      readonly decide: () => Decision;
      readonly draft: () => Decision;
    }
  | { readonly refusal: Refusal };

/** Loads what a command is about at `at`, in the name of who asks: the same for carrying it out and for a preview. */
export async function lookedAt<Name extends CommandName>(
  read: Reader,
  tools: Tools,
  { name, input, by }: PreviewAsked<Name>,
  at: EpochMs,
): Promise<LookedAt> {
  const command = commandNamed(name);
  const about = command.about(input);
  const view = await loadView(read, about, at, by);
  const refusal = setApartRefusal(read, about, view);
  if (refusal) return { refusal };
  const asking = { ...tools, tracing: tools.tracing(view.shop), at, by: staffId(by) };
  return {
    view,
    asking,
    decide: () => command.decide(view, input, asking),
    draft: () => command.draft(view, input, asking),
  };
}
