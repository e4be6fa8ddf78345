import { z } from 'zod';
import { EQUIPMENT_KINDS, PART_KINDS, SCOPES } from '../../custody/part.ts';
import { AWAY_WITH, GONE_WHY } from '../../custody/place.ts';
import { isTag } from '../../custody/tag.ts';
import { enquiryId, jobId, machineId, ownerId, partId, questionId, staffId } from '../../ids.ts';
import { MOST_MINOR } from '../../money/money.ts';
import { MOST_IN_LINE, MOST_IN_TEXT } from '../../text/lengths.ts';
import { epochMs, minutes } from '../../time.ts';

/** The fields that commands are made of, checked at both doors. */
export const zId = z.string().min(1).max(80);
export const zJobId = zId.transform(jobId);
export const zOwnerId = zId.transform(ownerId);
export const zMachineId = zId.transform(machineId);
export const zPartId = zId.transform(partId);
export const zQuestionId = zId.transform(questionId);
export const zEnquiryId = zId.transform(enquiryId);
export const zStaffId = zId.transform(staffId);
/** One line of text. */
export const zLine = z.string().trim().min(1).max(MOST_IN_LINE);
/** Free text. */
export const zText = z.string().trim().min(1).max(MOST_IN_TEXT);
export const zEpoch = z.int().min(0).max(8_640_000_000_000_000).transform(epochMs);
/** Minutes up to a week: more is a mistyped figure. */
export const zMinutes = z.number().min(0).max(10_080).transform(minutes);
/** An amount in minor units, never negative. */
export const zMinor = z.int().min(0).max(MOST_MINOR);
/** A tax rate in thousandths, as fine as a thousandth of a percent. */
export const zPermille = z.number().min(0).max(1000).multipleOf(0.01);
export const zCount = z.int().min(1).max(99);
/** A tag whose check character fits; a mistyped one never comes through a door. */
export const zTag = z.string().refine(isTag, { error: 'no tag: its check character does not fit' });
export const zKind = z.enum([...PART_KINDS, ...EQUIPMENT_KINDS]);
export const zAttributeName = z.string().max(60);
export const zAttributeValue = z.union([
  z.string().max(MOST_IN_LINE),
  z.number(),
  z.boolean(),
  z.array(z.string().max(120)).max(60),
]);
export const zAttributes = z.record(zAttributeName, zAttributeValue);
export const zThing = z.strictObject({ thing: zLine, count: zCount });
export const zScopes = z.array(z.enum(SCOPES)).max(4);

export const zStrokes = z.strictObject({
  width: z.number().positive().max(10_000),
  height: z.number().positive().max(10_000),
  strokes: z.array(z.array(z.tuple([z.number(), z.number(), z.number()])).max(5000)).max(500),
});
/**
 * SHA-256 of the content that was shown, in hex, as a preview gave it; null before anything is signed. A command that is
 * carried out refuses null and empty ones by name.
 */
export const zContentHash = z.string().max(128).nullable();
/** A signature as the pad gives it, with what it stands under; who and when are written by the command. */
export const zSigned = z.strictObject({ name: zLine, drawn: zStrokes.nullable(), contentHash: zContentHash });

export const zHow = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('counter'), signed: zSigned }),
  z.strictObject({
    by: z.literal('phone'),
    at: zEpoch,
    number: zLine,
    readBack: zText,
    /** Why a number that is not on the sheet is theirs all the same. */
    otherNumber: zLine.exactOptional(),
  }),
  z.strictObject({ by: z.literal('writing'), at: zEpoch, file: z.string().max(200).nullable(), words: zText }),
]);

export const zReading = z.strictObject({
  what: zLine,
  value: zLine,
  limit: zLine.nullable(),
  source: zLine.nullable(),
  within: z.boolean().nullable(),
});

export const zPlace = z.discriminatedUnion('at', [
  z.strictObject({ at: z.literal('slot'), machine: zMachineId, slot: zId }),
  z.strictObject({ at: z.literal('rig'), rig: zId, slot: zId }),
  z.strictObject({ at: z.literal('with'), part: zPartId }),
  z.strictObject({ at: z.literal('bench'), bench: zLine, job: zJobId.nullable() }),
  z.strictObject({ at: z.literal('tray'), tray: zLine, job: zJobId }),
  z.strictObject({ at: z.literal('bin'), bin: zLine }),
  z.strictObject({ at: z.literal('kept'), shelf: zLine, until: zEpoch }),
  z.strictObject({ at: z.literal('with-owner') }),
  z.strictObject({ at: z.literal('transit'), carrier: zLine, number: zLine, insured: z.boolean(), to: zLine }),
  z.strictObject({ at: z.literal('away'), kind: z.enum(AWAY_WITH), name: zLine }),
  z.strictObject({ at: z.literal('not-found'), since: zEpoch, lastSeen: zLine }),
  z.strictObject({
    at: z.literal('gone'),
    why: z.enum(GONE_WHY),
    certificate: zLine.exactOptional(),
  }),
]);
