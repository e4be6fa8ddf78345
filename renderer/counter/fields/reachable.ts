/**
 * Can this be dialled? Digits with the signs that ITU-T E.123 writes between them, and an extension; three digits at the
 * least, as the shortest numbers have. Nothing written can be: it is asked for elsewhere.
 */
export const canBeDialled = (phone: string): boolean =>
  phone.trim() === '' || (/^[\d\s+()/.~-]*(?:(?:ext\.?|x|#)\s*\d+)?$/i.test(phone.trim()) && digitsOf(phone) >= 3);

const digitsOf = (text: string): number => text.replace(/\D/g, '').length;

/**
 * Can this be written to? Something before one `@`, and a name of a domain behind it; what stands before it is the mail
 * system's own affair (RFC 5321, 4.1.2). Nothing written can be: it is asked for elsewhere.
 */
export const canBeMailed = (mail: string): boolean =>
  mail.trim() === '' || /^[^\s@]+@[^\s@.]+(?:\.[^\s@.]+)*$/.test(mail.trim());
