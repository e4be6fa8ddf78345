import { z } from 'zod';
import { issueTag } from '../../custody/tag.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zPartId, zTag } from '../kernel/fields.ts';

/** Binds a pre-printed tag to a part, or gives it a new one; a lost tag is void from then on. */
export const tagPart = shopCommand(
  'tag-part',
  z.strictObject({ part: zPartId, tag: zTag.nullable() }),
  (input) => ({ parts: [input.part], tags: input.tag ? [input.tag] : [] }),
  (view, input, asking) => {
    if (!view.parts.get(input.part)) return refuse('no-such-part', { part: input.part });
    return accept({
      stream: `part:${input.part}`,
      kind: 'part-tagged',
      body: { tag: input.tag ?? issueTag(asking.randomInt) },
    });
  },
);
