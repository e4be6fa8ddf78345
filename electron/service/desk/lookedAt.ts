import { commandNamed, type PreviewAsked } from '../../../core/commands/asked.ts';
import type { CommandName } from '../../../core/commands/commands.ts';
import type { Asking } from '../../../core/commands/kernel/asking.ts';
import type { Command } from '../../../core/commands/kernel/command.ts';
import type { Decision } from '../../../core/commands/kernel/decision.ts';
import type { View } from '../../../core/entries/view.ts';
import { staffId } from '../../../core/ids.ts';
import type { Stream } from '../../../core/journal/entry.ts';
import type { Refusal } from '../../../core/refusal.ts';
import type { EpochMs } from '../../../core/time.ts';
import { jobNow, type OpenShop, type Reader } from '../../../db/index.ts';
import { picturesSigned } from './files/picturesSigned.ts';
import { loadView } from './loadView.ts';
import { noting, refusalFor, setApartRefusal } from './setApart.ts';
import { jobsIn } from './sheets/setApartJobs.ts';
import type { Tools } from './tools.ts';
import { watched, watchedView } from './watched.ts';

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
  shop: Pick<OpenShop, 'blobs' | 'setApart'>,
  tools: Tools,
  { name, input, by }: PreviewAsked<Name>,
  at: EpochMs,
): Promise<LookedAt> {
  const command = commandNamed(name);
  const about = command.about(input);
  const { noted, loaded } = noting(read);
  const view = await loadView(noted, about, at, by, read);
  if (about.ownersJobs) await loadAnybodys(noted, shop.setApart());
  const refusal = setApartRefusal(read, loaded);
  if (refusal) return { refusal };
  const pictures = await picturesSigned(shop, input);
  const asking = { ...tools, tracing: tools.tracing(view.shop), pictures, at, by: staffId(by) };
  if (read.setApart().length > 0) return unlessAsked(read, view, asking, command, input);
  return {
    view,
    asking,
    decide: () => command.decide(view, input, asking),
    draft: () => command.draft(view, input, asking),
  };
}

/** Loads the jobs of which so little can be read that no list has them: each may be of any owner. */
async function loadAnybodys(read: Reader, apart: ReadonlySet<Stream>): Promise<void> {
  for (const job of jobsIn(apart)) if (!(await jobNow(read, job))) await read.load('job', job);
}

/**
 * Where what the shop itself, a rig or what sits in it says cannot be trusted, a decision that was made on any of it is
 * refused instead. Once something was written to a part or rig the others are not watched any more: what is not seen there
 * is refused by the rules of moves.
 */
function unlessAsked<Input>(
  read: Reader,
  view: View,
  given: Asking,
  command: Command<string, Input>,
  input: Input,
): LookedAt {
  const apart = new Set(read.setApart().map(({ stream }) => stream));
  const guarded = (decision: typeof command.decide) => (): Decision => {
    const asked = new Set<Stream>();
    const onAsked = (stream: Stream) => void asked.add(stream);
    const tracing = apart.has('shop') ? watched(given.tracing, () => onAsked('shop')) : given.tracing;
    const made = decision(watchedView(view, apart, onAsked), input, { ...given, tracing });
    const refusal = refusalFor(read, (stream) => asked.has(stream));
    return refusal ? { ok: false, refusal } : made;
  };
  return { view, asking: given, decide: guarded(command.decide), draft: guarded(command.draft) };
}
