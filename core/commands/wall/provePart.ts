import { z } from 'zod';
import { afterDays } from '../../calendar.ts';
import type { ProofStatus } from '../../custody/part.ts';
import { zoneOf } from '../../job/shop.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zLine, zPartId, zScopes, zText } from '../kernel/fields.ts';

/** Shows that a part works: where, how far, now. An exposed part is proved anew this way. */
export const provePart = shopCommand(
  'prove-part',
  z.strictObject({ part: zPartId, where: zLine, scopes: zScopes, works: z.boolean(), how: zText.nullable() }),
  (input) => ({ parts: [input.part] }),
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part) return refuse('no-such-part', { part: input.part });
    const days = view.shop.settings?.rules.standingLapsesDays ?? 365;
    const standing: ProofStatus = input.works
      ? {
          is: 'known-good',
          evidence: { at: asking.at, by: asking.by, where: input.where, scopes: input.scopes },
          lapses: afterDays(asking.at, days, zoneOf(view.shop)),
        }
      : { is: 'dead', how: input.how ?? input.where };
    return accept({ stream: `part:${part.id}`, kind: 'part-standing', body: { standing, why: 'proved' } });
  },
);
