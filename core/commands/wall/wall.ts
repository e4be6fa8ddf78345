import { z } from 'zod';
import { heldFor, partOut, slotProblem } from '../../custody/move/moveRefusals.ts';
import type { ProofStatus, ThingKind } from '../../custody/part.ts';
import { type Place, slotOf } from '../../custody/place.ts';
import { issueTag } from '../../custody/tag.ts';
import type { View } from '../../entries/view.ts';
import { attributeFaults } from '../../fit/attributes.ts';
import { partId } from '../../ids.ts';
import type { Refusal } from '../../refusal.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { DAY_MS, epochMs } from '../../time.ts';
import { backFromLending } from '../bench/moveOut.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import {
  zAttributes,
  zId,
  zJobId,
  zKind,
  zLine,
  zMachineId,
  zMinor,
  zPartId,
  zPlace,
  zScopes,
  zTag,
  zText,
} from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

const zStandingAtFirst = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('trial-grade'), scopes: zScopes }),
  z.strictObject({ is: z.literal('known-good'), where: zLine, scopes: zScopes, at: z.int().min(0) }),
  z.strictObject({ is: z.literal('unproved'), why: zLine }),
]);

/** A shop part comes onto the wall: bought, pulled, given. A pre-printed tag is bound by its first scan; else one is issued. */
export const knowPart = shopCommand(
  'know-part',
  z.strictObject({
    tag: zTag.nullable(),
    kind: zKind,
    name: zLine,
    attributes: zAttributes,
    standing: zStandingAtFirst,
    place: zPlace,
    valueMinor: zMinor,
  }),
  (input) => ({
    tags: input.tag ? [input.tag] : [],
    parts: input.place.at === 'with' ? [input.place.part] : [],
  }),
  (view, input, asking) => {
    const id = partId(asking.newId());
    const tag = input.tag ?? issueTag(asking.randomInt);
    const days = view.shop.settings?.rules.standingLapsesDays ?? 365;
    const standing: ProofStatus =
      input.standing.is === 'known-good'
        ? {
            is: 'known-good',
            evidence: {
              at: epochMs(input.standing.at),
              by: asking.by,
              where: input.standing.where,
              scopes: input.standing.scopes,
            },
            lapses: epochMs(input.standing.at + days * DAY_MS),
          }
        : input.standing;
    const book = openUnitOfWork(view, asking);
    const slot = slotOf(input.place);
    const problem = firstPlaceProblem(view, input.place, input.kind);
    if (problem) return { ok: false, refusal: problem };
    const [fault] = attributeFaults(input.kind, input.attributes);
    if (fault) return { ok: false, refusal: fault };
    book.add(`part:${id}`, 'part-known', {
      id,
      tag,
      kind: input.kind,
      name: input.name,
      belongs: { to: 'shop' },
      attributes: { ...input.attributes, valueMinor: input.valueMinor },
      standing,
      place: input.place,
      serial: null,
      source: 'bought',
      dataBearing: input.kind === 'drive',
      at: asking.at,
      by: asking.by,
    });
    if (slot) book.add(`machine:${slot.machine}`, 'slot-filled', { slot: slot.slot, part: id, belongs: true });
    if (input.place.at === 'with') book.add(`part:${input.place.part}`, 'rider-joined', { part: id });
    return book.accept();
  },
);

/** A new part of ours comes into a bin, onto a bench, into our rig or to a part it moves with: nowhere else. */
function firstPlaceProblem(view: View, place: Place, kind: ThingKind): Refusal | null {
  switch (place.at) {
    case 'bin':
    case 'bench':
      return null;
    case 'with': {
      const carrier = view.parts.get(place.part);
      if (carrier?.belongs.to !== 'shop') return { refused: 'no-such-part', part: place.part };
      return carrier.place.at === 'with'
        ? { refused: 'assembly-too-deep', name: kind, carrier: carrier.name, part: carrier.id }
        : null;
    }
    case 'rig': {
      const rig = view.rigs.get(place.rig) ?? null;
      const sitting = rig?.inside[place.slot];
      return slotProblem(rig, place.slot, { kind, name: kind }, sitting ? (view.parts.get(sitting) ?? null) : null);
    }
    default:
      return { refused: 'not-where-a-part-comes', at: place.at };
  }
}

/** A second rig: a machine of our own with slots, in which owners' parts are tried. The shop counts it among its rigs. */
export const knowRig = shopCommand(
  'know-rig',
  z.strictObject({
    rig: zMachineId,
    called: zLine,
    slots: z
      .array(z.strictObject({ id: zId, takes: zKind, order: z.int().min(1).max(99) }))
      .min(1)
      .max(60),
  }),
  (input) => ({ machine: input.rig }),
  (view, input, asking) => {
    if (view.machine) return refuse('rig-known', { rig: input.rig });
    const book = openUnitOfWork(view, asking);
    book.add(`machine:${input.rig}`, 'machine-known', {
      id: input.rig,
      owner: null,
      tag: null,
      called: input.called,
      serial: null,
    });
    book.add(`machine:${input.rig}`, 'slots-written', {
      slots: input.slots.map((slot) => ({ ...slot, source: 'by-hand' as const })),
      gaps: [],
    });
    const rigs = view.shop.settings?.rigs;
    if (rigs && !rigs.includes(input.rig))
      book.add('shop', 'shop-changed', { settings: { rigs: [...rigs, input.rig] } });
    return book.accept();
  },
);

/** Moves a shop part that is in no job: to another bin, into the rig, to a supplier. */
export const moveShopPart = shopCommand(
  'move-shop-part',
  z.strictObject({ part: zPartId, from: zPlace, to: zPlace, says: zLine.nullable() }),
  ({ part, from, to }) => ({
    parts: [part, ...(to.at === 'with' ? [to.part] : [])],
    machine: from.at === 'slot' ? from.machine : undefined,
  }),
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part) return refuse('no-such-part', { part: input.part });
    if (part.belongs.to !== 'shop') return refuse('not-ours-to-move', { part: part.id, name: part.name });
    const book = openUnitOfWork(view, asking);
    const refusal = book.move({
      part: part.id,
      from: input.from,
      to: input.to,
      job: null,
      why: input.says ? { by: 'righting', says: input.says } : { by: 'hand' },
    });
    if (refusal) return { ok: false, refusal };
    if (part.title?.as === 'lent' && book.view().parts.get(part.id)?.title === null) backFromLending(book, part);
    return book.accept();
  },
);

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
          lapses: epochMs(asking.at + days * DAY_MS),
        }
      : { is: 'dead', how: input.how ?? input.where };
    return accept({ stream: `part:${part.id}`, kind: 'part-standing', body: { standing, why: 'proved' } });
  },
);

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
    const book = openUnitOfWork(view, asking);
    book.add(`part:${part.id}`, 'part-reserved', { job: input.job });
    if (!view.job.parts.includes(part.id)) book.add(`job:${input.job}`, 'part-joined', { part: part.id });
    return book.accept();
  },
);

/** Lets a reserved part go. */
export const releasePart = shopCommand(
  'release-part',
  z.strictObject({ part: zPartId, job: zJobId }),
  (input) => ({ parts: [input.part] }),
  (view, input) => {
    const part = view.parts.get(input.part);
    if (part?.reservedFor !== input.job) return refuse('not-reserved', { part: input.part });
    return accept({ stream: `part:${input.part}`, kind: 'part-released', body: { job: input.job } });
  },
);

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
