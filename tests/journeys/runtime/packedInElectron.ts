import { textOfStored, toBeStored } from '../../../db/journal/storedBytes.ts';
import { PACKED_BY, pack, unpack } from '../../../db/packing/values.ts';

/** Packs a text as a value and as an entry where the product does, in a utility process, and unpacks what was packed elsewhere. */
const [text = '', value = '', entry = ''] = process.argv.slice(2);
const plain = Buffer.from(text, 'utf8');

process.parentPort.postMessage({
  electron: process.versions.electron ?? null,
  value: pack(plain)?.toString('base64url') ?? '',
  entry: toBeStored(plain).toString('base64url'),
  fromElsewhere: [
    unpack(Buffer.from(value, 'base64url'), PACKED_BY)?.toString('utf8') ?? null,
    textOfStored(Buffer.from(entry, 'base64url')),
  ],
});
