import { type Projection, projectedTable } from './projection.ts';

/** What each machine or rig says sits in its slots: the other side of a part's stay. */
export const slotFills: Projection = {
  name: 'slot-fills',
  version: 1,
  tables: [
    projectedTable({
      name: 'slot_fill',
      columns: { holder: 'text', slot: 'text', part: 'text', since_seq: 'integer' },
      key: ['holder', 'slot'],
      keyRefused: 'slot-already-filled',
      onlyOne: [{ columns: ['part'], refused: 'part-in-two-slots' }],
    }),
  ],
  apply: async (write, { entry }) => {
    if (entry.kind !== 'slot-filled' && entry.kind !== 'slot-emptied') return;
    const { slot, part } = entry.body;
    if (entry.kind === 'slot-filled')
      await write.insert('slot_fill', { holder: entry.stream, slot, part, since_seq: entry.seq });
    else await write.remove('slot_fill', { holder: entry.stream, slot, part });
  },
};
