import { z } from 'zod';
import { zId, zPartId } from '../../kernel/fields.ts';

export const zUse = z.strictObject({
  loaner: zPartId.nullable(),
  slots: z.array(zId).max(16),
  parts: z.array(zPartId).max(40),
});

/** What starting and ending work looks at: the asker's other work, the parts named, tags for what comes out. */
export const aboutWork = ({ use }: { readonly use: z.infer<typeof zUse> }) => ({
  hands: true,
  parts: [...use.parts, ...(use.loaner ? [use.loaner] : [])],
  papers: ['part-tag'],
});
