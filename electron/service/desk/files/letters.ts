import type { JobId } from '../../../../core/ids.ts';
import type { Refusal } from '../../../../core/refusal.ts';
import type { EpochMs } from '../../../../core/time.ts';
import type { Shop } from '../../../../db/index.ts';
import { loadView } from '../loadView.ts';
import { storeBlob } from './storeBlob.ts';

/** The largest letter or message that is kept, bytes: a page photographed or a mail with it. */
const LARGEST = 8 * 1024 * 1024;

/** Keeps what an owner wrote, as it came, sealed under that owner's key. */
export async function storeLetter(
  shop: Shop,
  job: JobId,
  bytes: Uint8Array,
  at: EpochMs,
): Promise<{ readonly blob: string } | Refusal> {
  const { job: found } = await loadView(await shop.read(), { job }, at);
  if (!found) return { refused: 'no-such-job' };
  if (bytes.length === 0) return { refused: 'letter-empty' };
  if (bytes.length > LARGEST) return { refused: 'letter-too-large', size: bytes.length, most: LARGEST };
  return storeBlob(shop, bytes, { of: found.owner, purpose: 'record' });
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
