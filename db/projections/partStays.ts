import type { Place } from '../../core/custody/place.ts';
import { idIn } from '../../core/entries/subjects.ts';
import type { JobId, PartId } from '../../core/ids.ts';
import type { Entry } from '../../core/journal/entry.ts';
import { type Projection, projectedTable } from './projection.ts';

/** Where every part is and was. A part has one open stay, a slot holds one part. */
export const partStays: Projection = {
  name: 'part-stays',
  version: 2,
  tables: [
    projectedTable({
      name: 'part_stay',
      columns: {
        part: 'text',
        since_seq: 'integer',
        until_seq: 'integer?',
        since: 'integer',
        by: 'text',
        at: 'text',
        holder: 'text?',
        slot: 'text?',
        job: 'text?',
        place: 'text',
      },
      key: ['part', 'since_seq'],
      keyRefused: 'part-moved-twice-in-one-entry',
      onlyOne: [
        { columns: ['part'], where: 'until_seq is null', refused: 'part-in-two-places' },
        {
          columns: ['holder', 'slot'],
          where: 'until_seq is null and slot is not null',
          refused: 'slot-already-filled',
        },
      ],
      indexes: [['holder', 'until_seq'], ['at', 'until_seq'], ['job']],
    }),
  ],
  apply: async (write, { entry }) => {
    if (entry.kind === 'part-known') {
      await write.insert('part_stay', stayIn(idIn(entry.stream), entry.body.place, null, entry));
    } else if (entry.kind === 'part-moved') {
      const part = idIn(entry.stream);
      const { from, to, job } = entry.body;
      // Only a stay in the place the move says it leaves is closed: else the part would be in two places, and that is refused.
      const { holder, slot } = slotOf(from);
      await write.change('part_stay', { part, until_seq: null, at: from.at, holder, slot }, { until_seq: entry.seq });
      await write.insert('part_stay', stayIn(part, to, job, entry));
    }
  },
};

function stayIn(part: PartId, place: Place, job: JobId | null, { seq, at, by }: Entry) {
  const forJob = job ?? ('job' in place ? place.job : null);
  return {
    part,
    since_seq: seq,
    until_seq: null,
    since: at,
    by,
    at: place.at,
    ...slotOf(place),
    job: forJob,
    place: JSON.stringify(withoutTexts(place)),
  };
}

/** A place as the table keeps it: whom a parcel goes to, and what was last seen where, is told by the ledger alone. */
function withoutTexts(place: Place): Place {
  if (place.at === 'transit') return { ...place, carrier: '', number: '', to: '' };
  return place.at === 'not-found' ? { ...place, lastSeen: '' } : place;
}

/** A slot's holder and name; nulls for a place that is no slot. */
function slotOf(place: Place): { readonly holder: string | null; readonly slot: string | null } {
  if (place.at === 'slot') return { holder: `machine:${place.machine}`, slot: place.slot };
  if (place.at === 'rig') return { holder: `rig:${place.rig}`, slot: place.slot };
  return { holder: null, slot: null };
}
