import { z } from 'zod';
import { heldFor, partOut } from '../../custody/move/moveRefusals.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zJobId, zPartId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

/** Holds a shop part for a job; released when the job ends. The first of two who want it has it. */
export const reservePart = shopCommand(
  'reserve-part',
  z.strictObject({ part: zPartId, job: zJobId }),
  (input) => ({ parts: [input.part], job: input.job }),
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part) return refuse('no-such-part', { part: input.part });
    if (part.belongs.to !== 'shop') return refuse('not-ours-to-move', { part: part.id, name: part.name });
    if (!view.job) return refuse('no-such-job', { job: input.job });
    if (view.job.stage === 'gone-home')
      return refuse('not-at-this-stage', { command: 'reserve-part', stage: view.job.stage, allowed: OPEN_STAGES });
    if (part.reservedFor && part.reservedFor !== input.job) return { ok: false, refusal: heldFor(part) };
    if (part.reservedFor)
      return refuse('reserved-already', { part: part.id, name: part.name, since: part.reserved?.at });
    if (part.place.at !== 'bin' && part.place.at !== 'rig')
      return { ok: false, refusal: partOut(part, part.title?.job ?? null) };
    const unit = openUnitOfWork(view, asking);
    unit.add(`part:${part.id}`, 'part-reserved', { job: input.job });
    if (!view.job.parts.includes(part.id)) unit.add(`job:${input.job}`, 'part-joined', { part: part.id });
    return unit.accept();
  },
);

/** Lets a reserved part go. */
export const releasePart = shopCommand(
  'release-part',
  z.strictObject({ part: zPartId, job: zJobId }),
  (input) => ({ parts: [input.part] }),
  (view, input) => {
    const part = view.parts.get(input.part);
    if (!part) return refuse('no-such-part', { part: input.part });
    if (part.reservedFor !== input.job) return refuse('not-reserved', { part: input.part });
    return accept({ stream: `part:${input.part}`, kind: 'part-released', body: { job: input.job } });
  },
);
