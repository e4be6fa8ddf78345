import { z } from 'zod';
import type { Part } from '../../custody/ledger.ts';
import { INCIDENT_CAUSES, PART_AFTER_INCIDENT } from '../../job/entries.ts';
import { MISHAPS } from '../../job/home/mishaps.ts';
import { personal } from '../../journal/personal.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { whyNotHeard } from '../approval/heard.ts';
import { howAnswered } from '../approval/howAnswered.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zEpoch, zHow, zId, zJobId, zLine, zMinor, zPartId, zText } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issuePaper } from '../papers/issue.ts';

/** Something went wrong at our hands: written down at once; the hand-over waits until the owner was told. */
export const reportIncident = jobCommand(
  'report-incident',
  z.strictObject({
    job: zJobId,
    what: zText,
    part: zPartId.nullable(),
    partIs: z.enum(PART_AFTER_INCIDENT).nullable(),
    cause: z.enum(INCIDENT_CAUSES),
    photographs: z.array(zId).max(20),
    costMinor: zMinor,
    how: z.enum(MISHAPS).optional(),
    happenedAt: zEpoch.optional(),
  }),
  OPEN_STAGES,
  (view, { job, partIs, ...input }, asking) => {
    if (input.happenedAt !== undefined && input.happenedAt > asking.at)
      return refuse('happened-after-now', { happenedAt: input.happenedAt });
    const part = input.part === null ? null : view.parts.get(input.part);
    if (part === undefined) return refuse('no-such-part', { part: input.part });
    const unit = openUnitOfWork(view, asking);
    unit.add(`job:${job}`, 'incident', {
      ...input,
      ...(partIs && { partIs }),
      costMinor: input.costMinor > 0 || !part ? input.costMinor : worthOf(part, partIs),
      id: asking.newId(),
      what: personal('record', view.job.owner, input.what),
    });
    if (part && partIs === 'dead')
      unit.add(`part:${part.id}`, 'part-standing', { standing: { is: 'dead', how: 'at-our-hands' }, why: 'incident' });
    if (part && partIs === 'hurt' && part.standing.is !== 'dead')
      unit.add(`part:${part.id}`, 'part-standing', {
        standing: { is: 'unproved', why: 'hurt-at-our-hands' },
        why: 'incident',
      });
    if (part && partIs === 'lost') {
      const refusal = unit.move({
        part: part.id,
        from: part.place,
        to: { at: 'not-found', since: asking.at, lastSeen: part.place.at },
        job,
        why: { by: 'hand' },
      });
      if (refusal) return { ok: false, refusal };
    }
    issuePaper(unit, 'incident', asking);
    return unit.accept();
  },
  (input) => ({ parts: input.part === null ? [] : [input.part], papers: ['incident'] }),
);

/** What a part of ours that is dead or lost costs us, unless a sum is said: what it takes to replace it. */
function worthOf(part: Part, partIs: string | null): number {
  const { valueMinor } = part.attributes;
  return part.belongs.to === 'shop' && (partIs === 'dead' || partIs === 'lost') && typeof valueMinor === 'number'
    ? valueMinor
    : 0;
}

/**
 * The owner was told of the incident: by whom, how, when. At the counter they sign for it under what happened, and that
 * paper comes out.
 */
export const tellIncident = jobCommand(
  'tell-incident',
  z.strictObject({ job: zJobId, incident: zId, name: zLine, how: zHow }),
  OPEN_STAGES,
  (view, input, asking) => {
    const incident = view.job.incidents.find((one) => one.id === input.incident);
    if (!incident) return refuse('no-such-incident', { incident: input.incident });
    const refusal = whyNotHeard(view, input, { amountMinor: null, data: false }, incident.at, asking);
    if (refusal) return { ok: false, refusal };
    const name = personal('record', view.job.owner, input.name);
    const how = howAnswered(asking, view.job.owner, input.how);
    const unit = openUnitOfWork(view, asking);
    unit.add(`job:${input.job}`, 'incident-told', { id: incident.id, name, how });
    if (how.by === 'counter') {
      const told = { incident: incident.id, word: { name, how, at: asking.at, heardBy: asking.by } };
      issuePaper(unit, 'incident', asking, null, { told });
    }
    return unit.accept();
  },
  () => ({ papers: ['incident'] }),
);
