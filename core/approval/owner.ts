import type { OwnerId } from '../ids.ts';
import type { EntryOf } from '../journal/entry.ts';
import type { Personal } from '../journal/personal.ts';

export type Reach = { readonly phone: string | null; readonly mail: string | null; readonly first: 'phone' | 'mail' };

export type Approver = { readonly name: string; readonly upToMinor: number | null };

/** Who brings a machine, and who may speak, agree and collect for them. */
export type OwnerKind =
  | { readonly is: 'person' }
  | { readonly is: 'minor'; readonly guardian: Personal<string> }
  | {
      readonly is: 'company';
      readonly orderNumber: string | null;
      readonly approves: Personal<string> | null;
      readonly approvesUpToMinor: number | null;
      /** Further people who approve, each up to their own amount; null has no limit. */
      readonly alsoApprove?: Personal<readonly Approver[]> | undefined;
    }
  | { readonly is: 'for-someone-else'; readonly machineOf: Personal<string> };

export type OwnerBody = {
  readonly name: Personal<string>;
  readonly reach: Personal<Reach>;
  readonly address: Personal<string> | null;
  readonly language: string;
  readonly kind: OwnerKind;
  readonly mayCollect: Personal<readonly string[]>;
};

export type Owner = OwnerBody & { readonly id: OwnerId };

export type OwnerBodies = {
  readonly 'owner-known': OwnerBody & { readonly id: OwnerId };
  readonly 'owner-changed': Partial<OwnerBody>;
};

export type OwnerEntry = EntryOf<`owner:${string}`, OwnerBodies>;

/** The owner after one more entry of their stream; null before the first. */
export function applyOwner(owner: Owner | null, entry: OwnerEntry): Owner | null {
  if (entry.kind === 'owner-known') return entry.body;
  return owner && { ...owner, ...entry.body };
}
