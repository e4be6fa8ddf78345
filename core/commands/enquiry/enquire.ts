import { z } from 'zod';
import { enquiryId } from '../../ids.ts';
import { ENQUIRED_BY } from '../../job/enquiry.ts';
import { personal } from '../../journal/personal.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept } from '../kernel/decision.ts';
import { zEpoch, zId, zLine, zText } from '../kernel/fields.ts';

/** A machine is offered before it comes: what was told, how to reach them, what we would need, until when it holds. */
export const enquire = shopCommand(
  'enquire',
  z.strictObject({
    name: zLine,
    reach: zLine,
    ownWords: zText,
    symptoms: z.array(zId).max(12),
    tasks: z.array(zId).max(12).exactOptional(),
    came: z.enum(ENQUIRED_BY),
    wouldNeed: z.array(zLine).max(20),
    lapsesAt: zEpoch,
  }),
  () => ({}),
  (_view, input, asking) => {
    const id = enquiryId(asking.newId());
    const held = <T>(value: T) => personal('contact', id, value);
    return accept({
      stream: `enquiry:${id}`,
      kind: 'enquired',
      body: {
        ...input,
        id,
        name: held(input.name),
        reach: held(input.reach),
        ownWords: held(input.ownWords),
        estimate: null,
      },
    });
  },
);
