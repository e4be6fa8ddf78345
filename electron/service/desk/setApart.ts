import type { About } from '../../../core/commands/kernel/command.ts';
import type { View } from '../../../core/entries/view.ts';
import type { PartId } from '../../../core/ids.ts';
import type { Refusal } from '../../../core/refusal.ts';
import type { Reader } from '../../../db/index.ts';

/**
 * Why nobody may act on what a command is about: an entry of one of its streams cannot be read, so that the rest may
 * say too little (a part that is not seen would not be missed). Null where all of them can be read whole. Streams that
 * the command only looks past, such as other jobs under way, keep nothing back.
 */
export function setApartRefusal(read: Pick<Reader, 'setApart'>, about: About, view: View): Refusal | null {
  const parts: readonly PartId[] = [...(view.machine?.parts ?? []), ...(view.job?.parts ?? []), ...(about.parts ?? [])];
  const needed = new Set<string>([
    ...[about.job, about.olderJob].flatMap((id) => (id ? `job:${id}` : [])),
    ...[about.owner, view.job?.owner].flatMap((id) => (id ? `owner:${id}` : [])),
    ...[about.machine, view.job?.machine].flatMap((id) => (id ? `machine:${id}` : [])),
    ...(about.enquiry ? [`enquiry:${about.enquiry}`] : []),
    ...parts.map((id) => `part:${id}`),
  ]);
  const apart = read.setApart().find(({ stream }) => needed.has(stream));
  return apart ? { refused: 'stream-set-apart', stream: apart.stream, entry: apart.unreadable[0]?.seq ?? 0 } : null;
}
