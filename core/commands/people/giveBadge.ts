import { z } from 'zod';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zStaffId, zTag } from '../kernel/fields.ts';

/**
 * Makes a printed tag somebody's badge, or takes theirs away with null. A badge says who comes, and proves nothing.
 * The database refuses a tag that hangs, or hung, on anything else.
 */
export const giveBadge = shopCommand(
  'give-badge',
  z.strictObject({ person: zStaffId, tag: zTag.nullable() }),
  () => ({ people: true }),
  (view, { person, tag }) =>
    view.shop.staff.some(({ id }) => id === person)
      ? accept({ stream: 'people', kind: 'badge-given', body: { person, tag } })
      : refuse('person-gone', { person }),
);
