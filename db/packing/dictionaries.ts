import entries from './entries1.json' with { type: 'json' };
import values from './values1.json' with { type: 'json' };

/**
 * What long values and entries have in common, so that packing names it instead of repeating it. Shops hold what was
 * packed with these: they are never changed; other ones come beside them under another mark.
 */
export const DICTIONARIES = {
  values1: Buffer.from(values.text, 'utf8'),
  entries1: Buffer.from(entries.text, 'utf8'),
} as const;
