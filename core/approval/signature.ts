import type { Personal } from '../journal/personal.ts';
import type { EpochMs } from '../time.ts';

/** A signature as drawn: strokes of [x, y, milliseconds since the first point], in the pad's own units. */
export type Strokes = {
  readonly width: number;
  readonly height: number;
  readonly strokes: readonly (readonly (readonly [number, number, number])[])[];
};

/** Who signed what and when. `typed` stands in when no hand could draw. */
export type Signature = {
  readonly name: Personal<string>;
  readonly drawn: Personal<Strokes> | null;
  readonly typed: boolean;
  readonly at: EpochMs;
  /** SHA-256 of the content that was shown and signed, in hex; empty where it was signed before contents were bound. */
  readonly contentHash: string;
};
