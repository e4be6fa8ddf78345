import type { Part } from '../../custody/ledger.ts';
import type { Job } from '../../job/job.ts';
import type { TaggedPartFacts } from '../../papers/builders/tags.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { labelSize } from '../../papers/tags/stock.ts';
import { common } from '../common.ts';
import { type Lacking, lacking } from '../lacking.ts';
import type { Making } from '../making.ts';
import { partName, slotWords } from '../worded.ts';

/** Hangs on the machine: no name and no number of its owner. */
export function benchTagPaper(making: Making): Paper {
  const { machine, ...shared } = common(making);
  return PAPER_KINDS['bench-tag'].build(
    {
      ...shared,
      // A label has room for what it is, not for all that is known of it.
      machine: { tag: machine.tag, what: machine.what.split(',')[0] ?? machine.what },
      size: labelSize(making.settings.tagsOn),
      acceptedAt: making.job.takenInAt,
      liftedBy: making.job.lift === 'one' ? 1 : 2,
      things: making.job.cameAlong.reduce((sum, { count }) => sum + count, 0),
    },
    making.setting,
  );
}

/** Hangs on a part that left its place. */
export function partTagPaper(making: Making): Paper | Lacking {
  const part = making.part === null ? undefined : making.view.parts.get(making.part);
  if (!part?.tag) return lacking('paper-part-has-no-tag');
  const state = stateOf(making.job, part);
  const slot = slotBefore(making, part);
  return PAPER_KINDS['part-tag'].build(
    {
      ...common(making),
      size: labelSize(making.settings.tagsOn),
      parts: [
        {
          tag: part.tag,
          what: partName(making, part),
          whose: part.belongs.to,
          ...(state && { state }),
          ...(slot !== null && { from: slotWords(making, slot, part) }),
        },
      ],
    },
    making.setting,
  );
}

/** The slot that it sat in when the machine came. */
export const slotBefore = ({ view }: Making, part: Pick<Part, 'id'>): string | null =>
  Object.entries(view.machine.atTakingIn).find(([, id]) => id === part.id)?.[0] ?? null;

/** How it stands: dead, named, suspect, or nothing to be said. */
export function stateOf({ verdict }: Job, part: Part): TaggedPartFacts['state'] {
  if (part.standing.is === 'dead') return 'dead';
  if (verdict?.is === 'named' && verdict.part === part.id) return 'named';
  return part.standing.is === 'suspect' ? 'suspect' : undefined;
}
