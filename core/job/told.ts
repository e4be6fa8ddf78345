import type { Personal } from '../journal/personal.ts';

/** One thing the owner says changed last. */
export type Changed = { readonly id: string; readonly since: string | null; readonly what: Personal<string> | null };

/** What the owner told, in their own words and in terms that can be set beside what the bench sees. */
export type Told = {
  readonly ownWords: Personal<string>;
  readonly symptoms: readonly string[];
  readonly changed: readonly Changed[];
  readonly often: readonly string[];
  readonly onlyWhen: readonly string[];
  readonly sinceDays: number | null;
  readonly lastWorked: string | null;
};

/** A thing that came along or that is ours: what and how many. Not a part, not tagged. */
export type Thing = { readonly thing: string; readonly count: number };

export type Encryption = 'yes' | 'no' | 'unknown';

/** What was asked in the second tier, before the first screw. */
export type BeforeFirstScrew = {
  readonly encryption: Encryption;
  readonly keyInHand: boolean;
  readonly keyPlace: Personal<string> | null;
  readonly backup: 'yes' | 'no' | 'unknown' | 'old';
  readonly bought: string | null;
  readonly from: string | null;
  readonly makersWarranty: 'running' | 'over' | 'unknown';
  readonly seals: 'none' | 'whole' | 'broken' | 'unknown';
};
