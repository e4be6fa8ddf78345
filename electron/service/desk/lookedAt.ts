import { commandNamed, type PreviewAsked } from '../../../core/commands/asked.ts';
import type { CommandName } from '../../../core/commands/commands.ts';
import type { Asking } from '../../../core/commands/kernel/asking.ts';
import type { Command } from '../../../core/commands/kernel/command.ts';
import type { Decision } from '../../../core/commands/kernel/decision.ts';
import type { View } from '../../../core/entries/view.ts';
import { staffId } from '../../../core/ids.ts';
import type { Refusal } from '../../../core/refusal.ts';
import type { EpochMs } from '../../../core/time.ts';
import type { Reader } from '../../../db/index.ts';
import { loadView } from './loadView.ts';
import { setApartRefusal, shopSetApart, watched } from './setApart.ts';
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
  const loaded = await loadView(read, about, at, by);
  const refusal = setApartRefusal(read, about, loaded);
  if (refusal) return { refusal };
  const asking = { ...tools, tracing: tools.tracing(loaded.shop), at, by: staffId(by) };
  const unsure = shopSetApart(read);
  if (unsure) return unlessShopIsAsked(unsure, loaded, asking, command, input);
  return {
    view: loaded,
    asking,
    decide: () => command.decide(loaded, input, asking),
    draft: () => command.draft(loaded, input, asking),
  };
}

/** Where what the shop itself says cannot be trusted, a decision that was made on any of it is refused instead. */
function unlessShopIsAsked<Input>(
  refusal: Refusal,
  loaded: View,
  given: Asking,
  command: Command<string, Input>,
  input: Input,
): LookedAt {
  const guarded = (decision: typeof command.decide) => (): Decision => {
    let isAsked = false;
    const onAsked = () => {
      isAsked = true;
    };
    const view = { ...loaded, shop: watched(loaded.shop, onAsked) };
    const made = decision(view, input, { ...given, tracing: watched(given.tracing, onAsked) });
    return isAsked ? { ok: false, refusal } : made;
  };
  return { view: loaded, asking: given, decide: guarded(command.decide), draft: guarded(command.draft) };
}
