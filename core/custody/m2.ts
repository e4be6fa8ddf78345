import type { PartFacts } from './part.ts';
import type { Slot } from './slot.ts';

/** How `size` says it, of a drive and of its slot (PCI-SIG, PCI Express M.2 Specification). */
const M2 = 'M.2';

/** Does it hold M.2 modules? Its `size` says so; where none is kept, what is printed beside it (`M2_1`, `M.2 upper`: common practice, no source). */
export const isM2Slot = ({ id, attributes }: Pick<Slot, 'id' | 'attributes'>): boolean =>
  attributes?.size === undefined ? /^m\.?2/i.test(id) : attributes.size === M2;

/** Is it an M.2 module? `undefined` while nobody knows its size. */
export const isM2Module = ({ attributes: { size } }: Pick<PartFacts, 'attributes'>): boolean | undefined =>
  size === undefined ? undefined : size === M2;

/** A drive that is plugged straight into the board, without a lead: it is unplugged by taking it out. */
export const hasNoLead = (slot: Slot): boolean => slot.takes === 'drive' && isM2Slot(slot);
