import { COMMANDS, type CommandName } from '../../../core/commands/commands.ts';
import type { Asking } from '../../../core/commands/kernel/asking.ts';
import type { Command } from '../../../core/commands/kernel/command.ts';
import type { View } from '../../../core/entries/view.ts';
import type { StaffId } from '../../../core/ids.ts';
import type { Refusal } from '../../../core/refusal.ts';
import type { EpochMs } from '../../../core/time.ts';
import type { Reader } from '../../../db/index.ts';
import { loadView } from './loadView.ts';
import { setApartRefusal } from './setApart.ts';
import type { Tools } from './tools.ts';

/** A command with all that its decision is made on, or why nobody may act on what it is about. */
type LookedAt =
  | { readonly command: Command; readonly view: View; readonly asking: Asking }
  | { readonly refusal: Refusal };

/** Loads what a command is about at `at`, in the name of who asks: the same for carrying it out and for a preview. */
export async function lookedAt(
  read: Reader,
  tools: Tools,
  asked: { readonly name: CommandName; readonly input: unknown; readonly by: string },
  at: EpochMs,
): Promise<LookedAt> {
  const command = COMMANDS[asked.name] as unknown as Command;
  const about = command.about(asked.input);
  const view = await loadView(read, about, at, asked.by);
  const refusal = setApartRefusal(read, about, view);
  if (refusal) return { refusal };
  return { command, view, asking: { ...tools, tracing: tools.tracing(view.shop), at, by: asked.by as StaffId } };
}
