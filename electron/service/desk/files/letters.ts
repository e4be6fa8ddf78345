import type { JobId } from '../../../../core/ids.ts';
import type { Refusal } from '../../../../core/refusal.ts';
import type { EpochMs } from '../../../../core/time.ts';
import type { OpenShop } from '../../../../db/index.ts';
import { storeForJob } from './storeBlob.ts';

/** The largest letter or message that is kept, bytes: a page photographed or a mail with it. */
const LARGEST = 8 * 1024 * 1024;

/** Keeps what an owner wrote, as it came, sealed under that owner's key. */
export const storeLetter = (shop: OpenShop, job: JobId, bytes: Uint8Array, at: EpochMs) =>
  storeForJob(shop, job, { bytes, purpose: 'record', at }, () => letterProblem(bytes));

function letterProblem(bytes: Uint8Array): Refusal | null {
  if (bytes.length === 0) return { refused: 'letter-empty' };
  return bytes.length > LARGEST ? { refused: 'letter-too-large', size: bytes.length, most: LARGEST } : null;
}

const BEGINS: readonly (readonly [string, string])[] = [
  ['%PDF', 'pdf'],
  ['\xff\xd8\xff', 'jpg'],
  ['\x89PNG', 'png'],
];

/** A name to keep it under: its ending by how the file begins (ISO 32000, ISO/IEC 10918, ISO/IEC 15948), else text. */
export function letterName(bytes: Uint8Array): string {
  const head = String.fromCharCode(...bytes.slice(0, 4));
  return `letter.${BEGINS.find(([begins]) => head.startsWith(begins))?.[1] ?? 'txt'}`;
}
