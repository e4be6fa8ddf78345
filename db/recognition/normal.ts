/** What can be recognised exactly. */
export type RecognitionKind = 'phone' | 'mail' | 'serial';

const COMPARED_DIGITS = 9;
const SHORTEST_PHONE = 5;
const SHORTEST_SERIAL = 4;

/**
 * The one form of a phone number, mail address or serial, so that two ways of writing it give one digest; null when
 * too little is left to recognise anything by.
 *
 * Phone: digits only, of which the last nine count, so that a number with and without its country code are the same
 * (common practice, no source). Mail: lower case, since mail systems treat it so in practice (RFC 5321 section 2.4
 * would allow otherwise). Serial: letters and digits, upper case; one sign repeated is a filler and no serial.
 */
export function normalForm(kind: RecognitionKind, text: string): string | null {
  if (kind === 'phone') return normalPhone(text);
  if (kind === 'mail') return normalMail(text);
  return normalSerial(text);
}

function normalPhone(text: string): string | null {
  const digits = text.normalize('NFKC').replace(/\D/g, '').replace(/^0+/, '');
  return digits.length < SHORTEST_PHONE ? null : digits.slice(-COMPARED_DIGITS);
}

function normalMail(text: string): string | null {
  const mail = text.normalize('NFKC').trim().toLowerCase();
  return /^[^@\s]+@[^@\s]+$/.test(mail) ? mail : null;
}

function normalSerial(text: string): string | null {
  const serial = text
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, '');
  return serial.length < SHORTEST_SERIAL || /^(.)\1*$/.test(serial) || FILLERS.has(serial) ? null : serial;
}

/** Texts that boards report when nobody wrote a serial (common practice, no source). */
const FILLERS = new Set([
  'TOBEFILLEDBYOEM',
  'DEFAULTSTRING',
  'SYSTEMSERIALNUMBER',
  'CHASSISSERIALNUMBER',
  'BASEBOARDSERIALNUMBER',
  'SERIALNUMBER',
  'NOTSPECIFIED',
  'NOTAPPLICABLE',
  'NOTAVAILABLE',
  'NONE',
  'UNKNOWN',
  '0123456789',
  '123456789',
  '1234567890',
  'OEM',
  'INVALID',
]);
