import { agreed } from '../../approval/consent.ts';
import { decideMove } from '../../custody/move/decideMove.ts';
import type { Move } from '../../custody/move/move.ts';
import { type Add, type AnyDraft, entryOf, versioned } from '../../entries/draft.ts';
import type { AnyEntry } from '../../entries/subjects.ts';
import { applyToView, type View } from '../../entries/view.ts';
import { wordForPart } from '../../job/approval/partAnswer.ts';
import type { Paper } from '../../papers/content.ts';
import type { Refusal } from '../../refusal.ts';
import type { Stage } from '../../stage.ts';
import type { Asking } from './asking.ts';
import type { Decision } from './decision.ts';
import { refuse } from './decision.ts';

/**
 * What one command writes down, in order, each line decided on all lines before it. Nothing leaves the unit of work
 * unless the whole command is accepted.
 */
export type UnitOfWork = {
  readonly view: () => View;
  /** What it was opened on: whatever stands there is of earlier presses. */
  readonly found: View;
  readonly add: Add;
  /** Books a move, or says why not. */
  readonly move: (move: Move) => Refusal | null;
  readonly enter: (stage: Stage, why: string) => void;
  /** Keeps what a paper that it issues looks like before it is issued, for whoever is shown or signs it. */
  readonly shows: (paper: () => Paper) => void;
  readonly accept: () => Decision;
};

/** Opens a unit of work on a view. */
export function openUnitOfWork(start: View, asking: Asking): UnitOfWork {
  let view = start;
  const entries: AnyDraft[] = [];
  const shown: (() => Paper)[] = [];
  const write = (entry: AnyEntry) => {
    entries.push(versioned(entry));
    view = applyToView(view, entry, { at: asking.at, by: asking.by });
  };
  const add: Add = (stream, kind, body) => write(entryOf(stream, kind, body));
  return {
    view: () => view,
    found: start,
    add,
    move: (move) => {
      const { job } = view;
      const decision = decideMove(
        {
          part: view.parts.get(move.part) ?? null,
          machine: (id) => (view.machine?.id === id ? view.machine : (view.rigs.get(id) ?? null)),
          owner: job?.owner ?? null,
          trialAllowed: job !== null && agreed(job.consents, 'own-parts-in'),
          agreedFor: job?.agreedLines.some((line) => line.part === move.part) ?? false,
          other: (id) => view.parts.get(id) ?? null,
          word: job && wordForPart(job, move.part, view.parts.get(move.part)?.dataBearing ?? false),
        },
        move,
        asking.at,
        asking.by,
      );
      if (!decision.ok) return decision.refusal;
      for (const entry of decision.entries) write(entry);
      const part = view.parts.get(move.part);
      if (job && part && part.belongs.to === 'shop' && !job.parts.includes(part.id))
        add(`job:${job.id}`, 'part-joined', { part: part.id });
      return null;
    },
    enter: (stage, why) => {
      const { job } = view;
      if (job && job.stage !== stage) add(`job:${job.id}`, 'stage-entered', { stage, why });
    },
    shows: (paper) => void shown.push(paper),
    accept: () => (entries.length > 0 ? { ok: true, entries, shown } : refuse('nothing-to-write')),
  };
}
