import type { TracingDoor } from '../../bench/tracingDoor.ts';
import type { NewId, StaffId } from '../../ids.ts';
import type { JobWords } from '../../issuing/jobWords.ts';
import type { ShopSettings } from '../../job/shop.ts';
import type { Draft } from '../../journal/entry.ts';
import type { Setting } from '../../papers/setting.ts';
import type { EpochMs } from '../../time.ts';

/** Why a command was not carried out: a name and the facts. Words come from assets/ by language. */
export type Refusal = { readonly refused: string; readonly [fact: string]: unknown };

/** What a command comes to: entries to append, or a refusal that changes nothing. */
export type Decision =
  | { readonly ok: true; readonly entries: readonly Draft[] }
  | { readonly ok: false; readonly refusal: Refusal };

/** Who asks and when, with what core may not have of its own: fresh ids, chance, hashing, the last sealed head. */
export type Asking = {
  readonly at: EpochMs;
  readonly by: StaffId;
  readonly newId: NewId;
  /** A whole number from 0 up to, not including, `below`. */
  readonly randomInt: (below: number) => number;
  /** SHA-256 of UTF-8 text, in hex. */
  readonly sha256: (text: string) => string;
  /** The last sealed head in short, as printed on papers; null before the first. */
  readonly lastHead: string | null;
  /** The tracing engine with the shop's fault model. */
  readonly tracing: TracingDoor;
  /** How papers are worded for an owner's language, in a shop's place. */
  readonly paperSetting: (language: string, settings: ShopSettings) => Setting;
  /** Words that turn the journal's names into an owner's language. */
  readonly jobWords: (language: string) => JobWords;
};

export const accept = (...entries: readonly Draft[]): Decision => ({ ok: true, entries });
export const refuse = (refused: string, facts: Readonly<Record<string, unknown>> = {}): Decision => ({
  ok: false,
  refusal: { ...facts, refused },
});
