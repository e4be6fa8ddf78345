import { z } from 'zod';
import { afterDays } from '../../calendar.ts';
import { slotProblem } from '../../custody/move/moveRefusals.ts';
import type { ProofStatus, ThingKind } from '../../custody/part.ts';
import { type Place, slotOf } from '../../custody/place.ts';
import { issueTag } from '../../custody/tag.ts';
import type { View } from '../../entries/view.ts';
import { attributeFaults } from '../../fit/attributes.ts';
import { partId } from '../../ids.ts';
import { zoneOf } from '../../job/shop.ts';
import type { Refusal } from '../../refusal.ts';
import { epochMs } from '../../time.ts';
import { shopCommand } from '../kernel/command.ts';
import { zAttributes, zKind, zLine, zMinor, zPlace, zScopes, zTag } from '../kernel/fields.ts';
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
            lapses: afterDays(input.standing.at, days, zoneOf(view.shop)),
          }
        : input.standing;
    const unit = openUnitOfWork(view, asking);
    const slot = slotOf(input.place);
    const problem = firstPlaceProblem(view, input.place, input.kind);
    if (problem) return { ok: false, refusal: problem };
    const [fault] = attributeFaults(input.kind, input.attributes);
    if (fault) return { ok: false, refusal: fault };
    unit.add(`part:${id}`, 'part-known', {
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
    if (slot) unit.add(`machine:${slot.machine}`, 'slot-filled', { slot: slot.slot, part: id, belongs: true });
    if (input.place.at === 'with') unit.add(`part:${input.place.part}`, 'rider-joined', { part: id });
    return unit.accept();
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
