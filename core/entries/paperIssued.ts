import type { JobId } from '../ids.ts';
import type { Json } from '../journal/entry.ts';
import type { Personal } from '../journal/personal.ts';
import type { EpochMs } from '../time.ts';

/** A printed document as issued: number, content and hash are fixed here; it is drawn afterwards, always the same. */
export type PaperIssued = {
  readonly number: string;
  readonly kind: string;
  readonly job: JobId | null;
  readonly language: string;
  readonly issued: EpochMs;
  /** The content tree. */
  readonly content: Personal<Json>;
  /** SHA-256 of the content's canonical JSON. */
  readonly contentHash: string;
  /** Number of the paper this one takes the place of. */
  readonly supersedes: string | null;
};

export type PaperBodies = {
  readonly 'paper-issued': PaperIssued;
};
