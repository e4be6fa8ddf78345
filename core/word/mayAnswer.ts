import type { Owner } from './owner.ts';

const plain = (name: string): string => name.normalize('NFKC').trim().replace(/\s+/g, ' ').toLowerCase();

/** May this person give the owner's word on something that costs so much in all? Only the owner agrees to money, unless the sheet says who else. */
export function mayAnswer(owner: Owner, name: string, limitMinor: number | null): boolean {
  const same = (other: string | null | undefined) => typeof other === 'string' && plain(other) === plain(name);
  if (owner.kind.is === 'minor') return same(owner.kind.guardian.value);
  if (owner.kind.is === 'company' && same(owner.kind.approves?.value)) {
    return limitMinor === null || owner.kind.approvesUpToMinor === null || limitMinor <= owner.kind.approvesUpToMinor;
  }
  return same(owner.name.value);
}

/** May this person fetch the machine: the owner, or one the owner named. */
export const mayCollect = (owner: Owner, name: string): boolean =>
  [
    owner.name.value,
    ...(owner.mayCollect.value ?? []),
    ...(owner.kind.is === 'minor' ? [owner.kind.guardian.value] : []),
  ].some((one) => typeof one === 'string' && plain(one) === plain(name));
