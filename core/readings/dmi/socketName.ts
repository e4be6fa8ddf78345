import { squeezed } from '../values.ts';

/** Names of desktop sockets as makers print them. */
const SOCKET = /\b((?:LGA|BGA|rPGA|PGA)\s?\d{3,4}(?:-\d)?|AM[1-5]\+?|FM[12]\+?|FP\d|[sS]?TRX?\d|SP\d|FS1b?)(?![\w-])/;
const PINS_FIRST = /\b(\d{3,4})-pin (LGA|PGA)\b/;
const NUMBERED = /^socket (\d{3,4})$/i;

const named = (text: string): string | null => {
  const pins = PINS_FIRST.exec(text);
  return pins ? `${pins[2]}${pins[1]}` : (SOCKET.exec(text)?.[1]?.replace(/\s/g, '') ?? null);
};

/**
 * The socket a processor record tells of. Firmware often has a wrong code in Upgrade (DSP0134 7.5.5) and the right name
 * in Socket Designation, so a designation that is a socket's name comes first; then Upgrade; then `Socket 775`.
 */
export function socketName(designation: string | undefined, upgrade: string | undefined): string | null {
  const said = squeezed(designation ?? '');
  const number = NUMBERED.exec(said)?.[1];
  return named(said) ?? named(squeezed(upgrade ?? '')) ?? (number ? `Socket ${number}` : null);
}
