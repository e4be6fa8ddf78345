import type { JobSheet } from '../../../core/contract/screens.ts';
import type { ShopSettings } from '../../../core/job/shop.ts';

/** What every part of a job's sheet is shown from. */
export type OfJob = { readonly sheet: JobSheet; readonly settings: ShopSettings };

export const ownerName = ({ owner }: JobSheet): string => owner.name.value ?? '';
export const ownerPhone = ({ owner }: JobSheet): string => owner.reach.value?.phone ?? '';

/** Who gives the word: the guardian of a minor, else the owner. */
export const answers = (sheet: JobSheet): string =>
  sheet.owner.kind.is === 'minor' ? (sheet.owner.kind.guardian.value ?? '') : ownerName(sheet);
