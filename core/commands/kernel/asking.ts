import type { NewId } from '../../ids.ts';
import type { PaperTools } from '../../issuing/paperTools.ts';
import type { Pictures } from './contentHashes.ts';

/** Who asks and when, with what core may not have of its own: fresh ids, chance, hashing, and what papers need. */
export type Asking = PaperTools & {
  readonly newId: NewId;
  /** A whole number from 0 up to, not including, `below`. */
  readonly randomInt: (below: number) => number;
  /** SHA-256 of UTF-8 text, in hex. */
  readonly sha256: (text: string) => string;
  /** Those of the photographs that are signed for; left out where none is. */
  readonly pictures?: Pictures;
};
