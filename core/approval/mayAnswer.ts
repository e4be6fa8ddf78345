import type { Refusal } from '../refusal.ts';
import type { Approver, Owner } from './owner.ts';

const plain = (name: string): string => name.normalize('NFKC').trim().replace(/\s+/g, ' ').toLowerCase();
const isSame = (name: string, other: string | null | undefined): boolean =>
  typeof other === 'string' && plain(other) === plain(name);

/** What an answer is about: the amount it would come to (null when it is not about money), and whether it is about data. */
export type WordAbout = { readonly amountMinor: number | null; readonly data: boolean };

/**
 * Why this person may not give the owner's word on this; null when they may. A guardian speaks for a minor. For a
 * company whoever approves does, each up to their own amount. Who brings someone else's machine speaks of money; what
 * becomes of the data only its owner says.
 */
export function whyMayNotAnswer(owner: Owner, name: string, { amountMinor, data }: WordAbout): Refusal | null {
  const { kind } = owner;
  const no: Refusal = { refused: 'may-not-answer', name };
  switch (kind.is) {
    case 'person':
      return isSame(name, owner.name.value) ? null : no;
    case 'minor':
      return isSame(name, kind.guardian.value) ? null : { refused: 'guardian-answers', name };
    case 'for-someone-else':
      if (isSame(name, kind.machineOf.value)) return null;
      if (!isSame(name, owner.name.value)) return no;
      return data ? { refused: 'data-owner-answers', name } : null;
    case 'company':
      return companyRefusal(owner, approversOf(owner), name, amountMinor);
  }
}

function companyRefusal(
  owner: Owner,
  approvers: readonly Approver[],
  name: string,
  amountMinor: number | null,
): Refusal | null {
  const approver = approvers.find((one) => isSame(name, one.name));
  if (!approver) {
    if (!isSame(name, owner.name.value)) return { refused: 'may-not-answer', name };
    return amountMinor !== null && approvers.length > 0 ? { refused: 'approver-answers', name } : null;
  }
  return amountMinor === null || approver.upToMinor === null || amountMinor <= approver.upToMinor
    ? null
    : { refused: 'approves-less', name, upToMinor: approver.upToMinor, amountMinor };
}

/** Who agrees to money for a company, each up to their own amount; nobody for anyone else. */
export function approversOf({ kind }: Owner): readonly Approver[] {
  if (kind.is !== 'company') return [];
  const first = kind.approves?.value;
  return [
    ...(typeof first === 'string' ? [{ name: first, upToMinor: kind.approvesUpToMinor }] : []),
    ...(kind.alsoApprove?.value ?? []),
  ];
}

/** One who may give the word: up to which amount (null: any), and whether of money and of data at all. */
export type MayAnswer = {
  readonly name: string;
  readonly upToMinor: number | null;
  readonly money: boolean;
  readonly data: boolean;
};

/** Everyone who may give the owner's word, with what they may speak of; the names as they stand on the record. */
export function whoMayAnswer(owner: Owner): readonly MayAnswer[] {
  const { kind } = owner;
  const one = (name: string | null | undefined, more: Partial<MayAnswer> = {}): readonly MayAnswer[] =>
    name ? [{ name, upToMinor: null, money: true, data: true, ...more }] : [];
  switch (kind.is) {
    case 'person':
      return one(owner.name.value);
    case 'minor':
      return one(kind.guardian.value);
    case 'for-someone-else':
      return [...one(owner.name.value, { data: false }), ...one(kind.machineOf.value)];
    case 'company': {
      const approvers = approversOf(owner);
      const approves = approvers.some(({ name }) => isSame(name, owner.name.value));
      return [
        ...approvers.flatMap(({ name, upToMinor }) => one(name, { upToMinor })),
        ...(approves ? [] : one(owner.name.value, { money: approvers.length === 0 })),
      ];
    }
  }
}

/** Everyone who may fetch the machine, by the names that stand on the record. */
export const whoMayCollect = (owner: Owner): readonly string[] =>
  [
    owner.name.value,
    ...(owner.mayCollect.value ?? []),
    ...(owner.kind.is === 'minor' ? [owner.kind.guardian.value] : []),
    ...(owner.kind.is === 'for-someone-else' ? [owner.kind.machineOf.value] : []),
  ].flatMap((one) => one || []);

/** May this person fetch the machine: the owner, one the owner named, a minor's guardian, or whose machine it is. */
export const mayCollect = (owner: Owner, name: string): boolean =>
  whoMayCollect(owner).some((one) => isSame(name, one));
