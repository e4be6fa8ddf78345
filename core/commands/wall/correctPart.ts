import { z } from 'zod';
import type { Part } from '../../custody/ledger.ts';
import type { Attributes } from '../../custody/part.ts';
import type { View } from '../../entries/view.ts';
import { attributeFaults } from '../../fit/attributes.ts';
import type { Refusal } from '../../refusal.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zAttributeName, zAttributeValue, zJobId, zLine, zPartId } from '../kernel/fields.ts';

/**
 * Writes down what is known of a part by looking at it: its name, its facts by attribute; null takes a fact back to
 * not known. A part of ours, or, with its job, an owner's part that is here. Refused whole where a fact is none that
 * the kind has, or no value of its kind or unit.
 */
export const correctPart = shopCommand(
  'correct-part',
  z.strictObject({
    part: zPartId,
    job: zJobId.nullable(),
    name: zLine.nullable(),
    facts: z.record(zAttributeName, zAttributeValue.nullable()),
  }),
  ({ part, job }) => ({ parts: [part], ...(job !== null && { job }) }),
  (view, input) => {
    const part = view.parts.get(input.part);
    if (!part) return refuse('no-such-part', { part: input.part });
    const notHere = notOursToLookAt(view, part);
    if (notHere) return { ok: false, refusal: notHere };
    const facts = Object.entries(input.facts).filter(([fact, value]) => !same(part.attributes[fact] ?? null, value));
    const known: Attributes = Object.fromEntries(
      facts.flatMap(([fact, value]) => (value === null ? [] : [[fact, value]])),
    );
    const unknown = facts.flatMap(([fact, value]) => (value === null ? [fact] : []));
    const [fault] = attributeFaults(part.kind, known);
    if (fault) return { ok: false, refusal: fault };
    const name = input.name === null || input.name === part.name ? null : input.name;
    if (name === null && facts.length === 0) return refuse('nothing-new-of-part', { name: part.name });
    return accept({
      stream: `part:${part.id}`,
      kind: 'part-corrected',
      body: { ...(name !== null && { name }), attributes: known, ...(unknown.length > 0 && { unknown }) },
    });
  },
);

const same = (before: unknown, now: unknown) => JSON.stringify(before) === JSON.stringify(now);

/** Nobody looks at what is gone, nor at an owner's part whose machine is not here. */
function notOursToLookAt({ job }: View, part: Part): Refusal | null {
  const { id, name, tag, place, since, movedBy } = part;
  if (place.at === 'gone') return { refused: 'part-gone', part: id, tag, name, why: place.why, since, movedBy };
  if (part.belongs.to === 'shop') return null;
  const here = job !== null && part.belongs.owner === job.owner && job.stage !== 'gone-home';
  return here ? null : { refused: 'not-here-to-look-at', name };
}
