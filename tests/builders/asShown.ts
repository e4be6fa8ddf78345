import type { Asking } from '../../core/commands/kernel/asking.ts';
import type { Command } from '../../core/commands/kernel/command.ts';
import { signShown, toBeSigned } from '../../core/commands/kernel/contentHashes.ts';
import { contentAt, contentOf } from '../../core/commands/kernel/signedContent.ts';
import type { View } from '../../core/entries/view.ts';

/** An input whose signatures name the content that whoever signs was shown; as it is where showing it is refused. */
export function asShown<Input>(command: Command<string, Input>, view: View, input: Input, asking: Asking): Input {
  if (!toBeSigned(input)) return input;
  const then = { ...asking, at: contentAt(asking.at) };
  const shown = command.draft(view, input, then);
  if (!shown.ok) return input;
  return command.input.parse(signShown(input, contentOf(command.name, input, shown, then).contentHash));
}
