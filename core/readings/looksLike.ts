/** What a file that cannot be read looks like, by the first bytes its kind is known by. */
export const LOOKS = [
  'empty',
  'too-large-text',
  'too-large',
  'png',
  'jpeg',
  'gif',
  'webp',
  'bmp',
  'tiff',
  'heif',
  'pdf',
  'zip',
  'gzip',
  'xz',
  'zstd',
  'bzip2',
  '7z',
  'rar',
  'tar',
  'sqlite',
  'program',
  'smbios-dump',
  'binary',
] as const;
export type Looks = (typeof LOOKS)[number];

/** Bytes each kind begins with (for `tar` and `heif`: that stand at an offset), as their format descriptions say. */
const SIGNS: readonly (readonly [Looks, number, string])[] = [
  ['png', 0, '\x89PNG\r\n\x1a\n'],
  ['jpeg', 0, '\xff\xd8\xff'],
  ['gif', 0, 'GIF8'],
  ['webp', 8, 'WEBP'],
  ['tiff', 0, 'II*\0'],
  ['tiff', 0, 'MM\0*'],
  ['heif', 4, 'ftyp'],
  ['pdf', 0, '%PDF-'],
  ['zip', 0, 'PK\x03\x04'],
  ['zip', 0, 'PK\x05\x06'],
  ['gzip', 0, '\x1f\x8b'],
  ['xz', 0, '\xfd7zXZ\0'],
  ['zstd', 0, '\x28\xb5\x2f\xfd'],
  ['bzip2', 0, 'BZh'],
  ['7z', 0, '7z\xbc\xaf\x27\x1c'],
  ['rar', 0, 'Rar!\x1a\x07'],
  ['tar', 257, 'ustar'],
  ['sqlite', 0, 'SQLite format 3\0'],
  ['program', 0, '\x7fELF'],
  ['program', 0, 'MZ'],
  ['smbios-dump', 0, '_SM_'],
  ['smbios-dump', 0, '_SM3_'],
  ['bmp', 0, 'BM'],
];

/** The kind a file's first bytes show it to be, if it is none that is read; `null` when it may be text. */
export function kindByFirstBytes(bytes: Uint8Array): Looks | null {
  if (bytes.length === 0) return 'empty';
  const sign = SIGNS.find(([, at, sign]) => [...sign].every((char, n) => bytes[at + n] === char.charCodeAt(0)));
  // A text may well begin with BM, MZ or BZh: then it has no control characters.
  return sign && (sign[2].length > 3 || !isMostlyText(bytes)) ? sign[0] : null;
}

/** Whether the beginning has next to no control characters but those of text. */
export function isMostlyText(bytes: Uint8Array): boolean {
  const head = bytes.subarray(0, HEAD);
  const odd = head.reduce((count, byte) => count + (byte < 9 || (byte > 13 && byte < 32 && byte !== 27) ? 1 : 0), 0);
  return odd <= head.length / 100;
}

const HEAD = 65_536;
