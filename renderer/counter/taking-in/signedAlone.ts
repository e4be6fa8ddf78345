import { type ConsentId, OWN_SIGNATURE } from '../../../core/approval/consent.ts';
import type { TakingInSheet } from './sheet.ts';

/** Lines that ask for a signature of their own on this sheet: those with a yes, and data sent away. */
export function signedAlone(sheet: TakingInSheet): readonly ConsentId[] {
  const asked: readonly ConsentId[] = [...OWN_SIGNATURE, 'data-parts'];
  return asked.filter((id) => sheet.answers[id] === (id === 'data-parts' ? 'send' : 'yes'));
}
