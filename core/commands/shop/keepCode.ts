import { z } from 'zod';
import { keyOfEntry } from '../../tracing/live/loading/entryKey.ts';
import type { ModelDifference } from '../../tracing/live/shop/modelFiles.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zId, zLine } from '../kernel/fields.ts';
import { editionInUse } from './useModel.ts';

const zShown = z.enum(['checkpoints', 'beeps']);
const FILE = 'bench.json';

/** The shop's own changes with this one in them, in place of what stood there before. */
const withChange = (changes: readonly ModelDifference[], change: ModelDifference): readonly ModelDifference[] => [
  ...changes.filter(({ file, path }) => file !== change.file || path !== change.path),
  change,
];

/**
 * Keeps a row of the shop's own for codes or beeps: as its board's manual says, where it stands. It is in use at the step
 * from then on. A row with the same family, code and phase takes the older one's place. Refuses what the model refuses
 * (`fault-model`, with file and field): a code that nobody can read, an outcome that reading a code cannot have.
 */
export const keepCode = shopCommand(
  'keep-code',
  z.strictObject({
    /** What the shop's edition of the model is called from now on. */
    edition: zLine,
    shown: zShown,
    family: z.strictObject({ id: zId, name: zLine }),
    /** As `lookUpCode` reads it: `D6`, `1D-2A`, `x` for any digit; beeps `3`, `1 long 2`, `3-1-2`, `continuous`. */
    code: zLine,
    phase: zId.nullable().exactOptional(),
    says: zLine,
    /** Where it stands, as an outcome of reading a code; null: the manual is to be looked at each time. */
    stands: zId.nullable(),
    /** The board and its manual, with the page where there is one. */
    manual: zLine,
  }),
  () => ({}),
  (view, { edition, shown, family, code, phase = null, says, stands, manual }, asking) => {
    const row = {
      family: family.id,
      code,
      ...(shown === 'beeps' && { phase }),
      says,
      outcome: stands,
      source: `manual: ${manual}`,
    };
    const own = editionInUse(view.shop)?.changes ?? [];
    const named = withChange(own, { file: FILE, path: `families.${family.id}`, after: family });
    const changes = withChange(named, { file: FILE, path: `${shown}.${keyOfEntry(row)}`, after: row });
    const refused = asking.tracing.refusesModel(changes);
    if (refused) return { ok: false, refusal: refused };
    return accept({ stream: 'shop', kind: 'model-used', body: { name: edition, changes } });
  },
);

/** Takes back a row that the shop kept. Refuses a row that is not the shop's own (`no-such-code`). */
export const dropCode = shopCommand(
  'drop-code',
  z.strictObject({ edition: zLine, shown: zShown, key: zLine }),
  () => ({}),
  (view, { edition, shown, key }, asking) => {
    const own = editionInUse(view.shop)?.changes ?? [];
    const changes = own.filter(({ file, path }) => file !== FILE || path !== `${shown}.${key}`);
    if (changes.length === own.length) return refuse('no-such-code', { key });
    const refused = asking.tracing.refusesModel(changes);
    if (refused) return { ok: false, refusal: refused };
    return accept({ stream: 'shop', kind: 'model-used', body: { name: edition, changes } });
  },
);
