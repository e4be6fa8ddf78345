import { readDmi } from './dmi/readDmi.ts';
import type { Contribution, Reading, Tool } from './reading.ts';
import { type Section, sectionsOf } from './sections.ts';
import { ENGLISH, type ReadingWords } from './words.ts';

/**
 * Reads what system tools printed of a machine, whatever of them stands in the text. Detected by content.
 * Never throws on any text; takes time in proportion to it. A text of no known tool gives no tools and nothing read.
 */
export function readReport(text: string, words: ReadingWords = ENGLISH): Reading {
  const plain = text.includes('\r') ? text.replace(/\r+\n?/g, '\n') : text;
  const all = sectionsOf(plain).flatMap((section) => contributionsOf(section, words));
  const reading = joined(all);
  if (all.length > 0) return reading;
  return { ...reading, gaps: [{ about: 'text', why: words.gap[plain.trim() === '' ? 'empty' : 'not-known'] }] };
}

function contributionsOf(section: Section, words: ReadingWords): readonly Contribution[] {
  if (section.as === 'json') return [];
  switch (section.tool) {
    case 'dmidecode':
      return [readDmi(section.text, words)];
    default:
      return [];
  }
}

const NOBODY = { vendor: null, name: null };

function joined(all: readonly Contribution[]): Reading {
  const tools: readonly Tool[] = [...new Set(all.map(({ tool }) => tool))];
  const one = <Name extends keyof Contribution>(name: Name): Contribution[Name] | undefined =>
    all.map((each) => each[name]).find((value) => value !== undefined);
  return {
    tools,
    board: one('board') ?? NOBODY,
    system: one('system') ?? NOBODY,
    chassis: one('chassis') ?? null,
    firmware: one('firmware') ?? { vendor: null, version: null, date: null },
    processors: one('processors') ?? [],
    slots: one('slots') ?? [],
    cardSlots: all.flatMap(({ cardSlots }) => cardSlots ?? []),
    cards: all.flatMap(({ cards }) => cards ?? []),
    drives: all.flatMap(({ drives }) => drives ?? []),
    temperatures: all.flatMap(({ temperatures }) => temperatures ?? []),
    serials: Object.assign({}, ...all.map(({ serials }) => serials ?? {})),
    gaps: all.flatMap(({ gaps }) => gaps),
  };
}
