/**
 * A text of a report with its white space squeezed: firmware pads names with blanks.
 * Control characters and halves of characters go too: neither may reach the journal.
 */
export const squeezed = (text: string): string =>
  text
    .replace(/[\s\p{Cc}]+/gu, ' ')
    .trim()
    .slice(0, LONGEST_VALUE)
    .toWellFormed();

/** No name is longer; a longer one is cut. */
const LONGEST_VALUE = 300;

/**
 * Texts that stand where nobody put a value: left by firmware makers or by the tool itself.
 * The list was gathered from real reports; no standard has one.
 */
const PLACEHOLDER = new RegExp(
  `^(?:${[
    '(?:to be )?filled by .*',
    'not (?:specified|provided|available|applicable|present|set|defined|settable)',
    'default(?: string)?',
    'unknown',
    'undefined',
    'unspecified',
    'invalid',
    'none',
    'null',
    'n/?a',
    'empty',
    'no(?:t)? asset.*',
    'system (?:manufacturer|product name|version|serial number|name)',
    'base ?board (?:manufacturer|product name|version)',
    'chassis manufacture?r?',
    'chassis version',
    'type ?\\d ?-? ?\\w.*',
    'o\\.?e\\.?m\\.?',
    'bad index',
    'out of spec',
    '(?:\\w+?_)?manufacturer ?\\d+',
    '(?:\\w+?_)?part ?num(?:ber)? ?\\d+',
    '(?:\\w+?_)?(?:ser|serial) ?num(?:ber)? ?\\d+',
    'dimm\\d+_(?:manufacturer|partnum|sernum)',
    'manufacturer\\d*',
    '[-.x_*?]+',
    '0+',
    '0123456789',
    '0?123456789(?:ab?c?d?e?f?)?',
  ].join('|')})$`,
  'i',
);

/** Whether a text only stands where a value should: `To be filled by O.E.M.`, `<BAD INDEX>`, `--`. */
export function isPlaceholder(text: string): boolean {
  const bare = text.replace(/^[<[(\s]+|[>\])\s]+$/g, '');
  return bare === '' || (bare.length < 64 && PLACEHOLDER.test(bare));
}

/** The value in a text, or `null` where it is absent or a placeholder. */
export function valueIn(text: string | undefined): string | null {
  if (text === undefined) return null;
  const plain = squeezed(text);
  return isPlaceholder(plain) ? null : plain;
}

/**
 * The whole number a text begins with, digit groups taken together however they are parted:
 * by comma, full stop, apostrophe, space or no-break space. `null` when it begins with none.
 */
export function wholeNumber(text: string | undefined): number | null {
  const digits = /^\s*(\d{1,3}(?:[,.'’\s\u00a0\u202f\u2009]\d{3})+(?!\d)|\d+)/.exec(text ?? '')?.[1];
  return digits === undefined ? null : finite(Number(digits.replace(/\D/g, '')));
}

/** The number itself; null for what is none or endless. */
export const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

const MIB: Readonly<Record<string, number>> = {
  BYTES: 1 / 1048576,
  KB: 1 / 1024,
  MB: 1,
  GB: 1024,
  TB: 1048576,
};

/** MiB in a size as SMBIOS tools print it (`8192 MB`, `8 GB`, `4096 kB`: binary units). `null` when it is no size. */
export function sizeInMiB(text: string | undefined): number | null {
  const read = /^\s*(\d+(?:\.\d+)?)\s*(bytes|kB|MB|GB|TB|KiB|MiB|GiB|TiB)\b/i.exec(text ?? '');
  const unit = MIB[(read?.[2] ?? '').toUpperCase().replace('IB', 'B')];
  return read && unit !== undefined ? finite(Number(read[1]) * unit) : null;
}

/** Megatransfers a second; older tools print the same number as MHz. */
export function speedInMTs(text: string | undefined): number | null {
  const read = /^\s*(\d+)\s*(?:MT\/s|MHz)\b/i.exec(text ?? '')?.[1];
  return read === undefined || Number(read) === 0 ? null : Number(read);
}
