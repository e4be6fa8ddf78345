import { z } from 'zod';
import { issueTag } from '../../custody/tag.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zMachineId, zTag } from '../kernel/fields.ts';

/** Hangs a new tag on a machine: a pre-printed one, or a fresh one; the old one is void from then on. */
export const tagMachine = shopCommand(
  'tag-machine',
  z.strictObject({ machine: zMachineId, tag: zTag.nullable() }),
  ({ machine }) => ({ machine }),
  (view, { machine, tag }, asking) =>
    view.machine
      ? accept({
          stream: `machine:${machine}`,
          kind: 'machine-tagged',
          body: { tag: tag ?? issueTag(asking.randomInt) },
        })
      : refuse('no-such-machine', { machine }),
);
