import type { z } from 'zod';
import type { AnswerHow } from '../../approval/question.ts';
import { personal } from '../../journal/personal.ts';
import type { Asking } from '../kernel/asking.ts';
import type { zHow } from '../kernel/fields.ts';
import { signed } from './signed.ts';

/** How an answer was given, with its personal values marked: signature, number dialled, words read back or written. */
export function howAnswered(asking: Asking, owner: string, how: z.infer<typeof zHow>): AnswerHow {
  switch (how.by) {
    case 'counter':
      return { by: 'counter', signature: signed(asking, owner, how.signed) };
    case 'phone':
      return {
        by: 'phone',
        at: how.at,
        number: personal('record', owner, how.number),
        readBack: personal('record', owner, how.readBack),
        ...(how.otherNumber !== undefined && { otherNumber: personal('record', owner, how.otherNumber) }),
      };
    case 'writing':
      return { by: 'writing', at: how.at, file: how.file, words: personal('record', owner, how.words) };
  }
}
