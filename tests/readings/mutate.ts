/** A pseudo-random stream that is the same on every run (mulberry32), so that a failing input can be made again. */
export function stream(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) % below;
  };
}

/** Pieces that readers look for, to be put where they do not belong. */
const PIECES = [
  '\nHandle 0x0011, DMI type 17, 40 bytes\nMemory Device\n',
  '\tSize: 99999999999999999999 GB\n',
  '\tNumber Of Devices: 4294967295\n',
  '# dmidecode 3.3\n',
  'smartctl 7.3\n',
  'ID# ATTRIBUTE_NAME\n',
  '  5 Reallocated_Sector_Ct PO--CK 100 100 010 - 0\n',
  '{"',
  '[{"lscpu":[',
  '{"smartctl":{"exit_status":-1},"smart_status":{"passed":"yes"}}\n',
  '{"__proto__":{"kinds":1},"blockdevices":[{"type":"disk","model":{}}]}\n',
  '{"id":"x","class":"y","children":[{"id":7,"children":"z"}]}\n',
  '}]',
  '\\',
  '"',
  '\u0000',
  '\ud800',
  '\r',
  '\r\n\r\n',
  'Architecture:',
  '*-core\n',
  ' '.repeat(300),
  ':'.repeat(100),
  '\t'.repeat(100),
  '[['.repeat(60),
];

/** One to eight changes to a text: cut, drop, double, swap, flip a character, put in a piece, join with another text. */
export function mutated(text: string, other: string, next: (below: number) => number): string {
  let out = text;
  for (let n = 1 + next(8); n > 0; n -= 1) {
    const at = next(out.length + 1);
    const to = at + next(Math.max(1, Math.min(400, out.length - at)));
    switch (next(9)) {
      case 0:
        out = out.slice(0, at);
        break;
      case 1:
        out = out.slice(at);
        break;
      case 2:
        out = out.slice(0, at) + out.slice(to);
        break;
      case 3:
        out = out.slice(0, to) + out.slice(at);
        break;
      case 4:
        out = out.slice(0, at) + String.fromCharCode(next(next(4) ? 128 : 65_536)) + out.slice(at + 1);
        break;
      case 5:
      case 6:
        out = out.slice(0, at) + PIECES[next(PIECES.length)] + out.slice(at);
        break;
      case 7:
        out = out.slice(0, at) + other.slice(next(other.length + 1)).slice(0, 4000) + out.slice(at);
        break;
      default:
        out = out.replaceAll('\n', next(2) ? '\r\n' : '\r');
    }
  }
  return out;
}
