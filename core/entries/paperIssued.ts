import { z } from 'zod';
import { jobIdShape } from '../ids.ts';
import { personalShape } from '../journal/personal.ts';
import { isJson, type Json } from '../json.ts';
import type { BodiesOf } from '../shape.ts';
import { epochMsShape } from '../time.ts';

/** A paper's content tree; whether it is one that is drawn today is asked where it is read (`isPaper`). */
const jsonShape = z.custom<Json>(isJson);

/** A printed document as issued: number, content and hash are fixed here; it is drawn afterwards, always the same. */
export const paperIssuedShape = z.strictObject({
  number: z.string(),
  kind: z.string(),
  job: jobIdShape.nullable(),
  language: z.string(),
  issued: epochMsShape,
  /** The content tree. */
  content: personalShape(jsonShape),
  /** SHA-256 of the content's canonical JSON. */
  contentHash: z.string(),
  /** Number of the paper this one takes the place of. */
  supersedes: z.string().nullable(),
});

export const PAPER_BODIES = { 'paper-issued': paperIssuedShape } as const;
export type PaperBodies = BodiesOf<typeof PAPER_BODIES>;
