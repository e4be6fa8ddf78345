import type { Card, Contribution } from '../reading.ts';
import { LSPCI_LINE } from '../sections.ts';
import { squeezed, valueIn } from '../values.ts';

/**
 * Classes that stand for something a person would call a card or a port of its own, by the words and the numbers of the
 * PCI class list (base classes 01 storage, 02 network, 03 display, 04 multimedia, 07 serial ports, 0c firewire and USB).
 * Bridges, buses and the chipset's own helpers are left out. The list cannot say what is on the board and what in a slot.
 */
const CARD =
  /^(?:VGA|3D|XGA|Display|Ethernet|Network|Token ring|FDDI|ATM|ISDN|Wireless|Multimedia|Audio|Video|RAID|SCSI|Serial Attached SCSI|SATA|IDE|Mass storage|Non-Volatile memory|FireWire|Fibre Channel|InfiniBand|Serial controller|Parallel controller|Modem|Coprocessor|Processing accelerators)/i;

/** What `lspci` lists, with numbers (`-nn`), at length (`-v`) or plain. */
export function readLspci(text: string): Contribution {
  const cards = text.split('\n').flatMap((line): readonly Card[] => {
    if (!LSPCI_LINE.test(line)) return [];
    const rest = line.slice(line.indexOf(' ') + 1, LONGEST_LINE);
    const colon = rest.indexOf(': ');
    if (colon < 0) return [];
    const kind = squeezed(rest.slice(0, colon).replace(/\[[0-9a-f]{4}\]/i, ''));
    const name = valueIn(
      rest
        .slice(colon + 2)
        .replace(/\((?:rev|prog-if) [^()]*\)/g, '')
        .replace(/\[[0-9a-f]{4}:[0-9a-f]{4}\]/i, ''),
    );
    return CARD.test(kind) && name !== null ? [{ kind, name }] : [];
  });
  return { tool: 'lspci', cards, gaps: [] };
}

const LONGEST_LINE = 500;
