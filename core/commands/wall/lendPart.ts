import { z } from 'zod';
import { whyMayNotAnswer } from '../../approval/mayAnswer.ts';
import { heldFor, notThere, partOut } from '../../custody/move/moveRefusals.ts';
import { samePlace } from '../../custody/place.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { backFromLending } from '../bench/parts/moveOut.ts';
import { jobCommand, shopCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zEpoch, zId, zJobId, zLine, zPartId, zPlace } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { askForPaper } from '../papers/issue.ts';

/**
 * Lends a part or a piece of equipment of ours: into the owner's machine, or into the owner's hands (`slot` null), with
 * the day it comes back and the paper that says so. What is on trial inside may stay there, lent from now on.
 */
export const lendPart = jobCommand(
  'lend-part',
  z.strictObject({ job: zJobId, part: zPartId, slot: zId.nullable(), returnBy: zEpoch, to: zLine }),
  OPEN_STAGES,
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part || !view.machine || !view.owner) return refuse('no-such-part', { part: input.part });
    const names = { part: part.id, tag: part.tag, name: part.name };
    if (part.belongs.to !== 'shop') return refuse('not-ours-to-move', names);
    if (!part.tag) return refuse('lent-without-tag', names);
    if (input.returnBy <= asking.at) return refuse('return-day-past', { ...names, returnBy: input.returnBy });
    if (part.standing.is === 'dead') return refuse('part-dead', { ...names, how: part.standing.how });
    const mayNot = whyMayNotAnswer(view.owner, input.to, { amountMinor: null, data: part.dataBearing });
    if (mayNot) return { ok: false, refusal: mayNot };
    if (part.reservedFor && part.reservedFor !== input.job) return { ok: false, refusal: heldFor(part) };
    if (part.title && part.title.job !== input.job) return { ok: false, refusal: partOut(part, part.title.job) };
    const { returnBy, job } = input;
    const unit = openUnitOfWork(view, asking);
    const to =
      input.slot === null
        ? ({ at: 'with-owner' } as const)
        : ({ at: 'slot', machine: view.machine.id, slot: input.slot } as const);
    if (samePlace(part.place, to)) unit.add(`part:${part.id}`, 'part-lent', { job, returnBy });
    else {
      const refusal = unit.move({ part: part.id, from: part.place, to, job, why: { by: 'hand' }, returnBy });
      if (refusal) return { ok: false, refusal };
    }
    const lacking = askForPaper(unit, 'lent-part-agreement', asking, part.id);
    return lacking ? { ok: false, refusal: lacking } : unit.accept();
  },
  (input) => ({ parts: [input.part], papers: ['lent-part-agreement'] }),
);

/** A lent part or piece of equipment is back, its job ended or not: it is unproved until it is proved anew. */
export const takeBackLent = shopCommand(
  'take-back-lent',
  z.strictObject({ part: zPartId, from: zPlace, to: zPlace }),
  (input) => ({ parts: [input.part], machine: input.from.at === 'slot' ? input.from.machine : undefined }),
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part) return refuse('no-such-part', { part: input.part });
    const names = { part: part.id, tag: part.tag, name: part.name };
    if (part.title?.as !== 'lent')
      return refuse('not-lent', { ...names, is: part.place, since: part.since, movedBy: part.movedBy });
    if (!samePlace(part.place, input.from)) return { ok: false, refusal: notThere(part, input.from) };
    if (input.to.at !== 'bin' && input.to.at !== 'bench') return refuse('not-where-a-part-comes', { at: input.to.at });
    const unit = openUnitOfWork(view, asking);
    const refusal = unit.move({ part: part.id, from: input.from, to: input.to, job: null, why: { by: 'hand' } });
    if (refusal) return { ok: false, refusal };
    backFromLending(unit, part);
    return unit.accept();
  },
);
