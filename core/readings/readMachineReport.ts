import type { ReportGap } from '../custody/machineReport.ts';
import { say } from '../text/say.ts';
import { readDmi } from './dmi/readDmi.ts';
import { joinedReports } from './joinedReports.ts';
import { type Contribution, type MachineReading, TOOLS } from './reading.ts';
import { MOST_SECTIONS, type ReportSection, sectionsOf } from './sections.ts';
import { isSmartJson, readSmartJson } from './smart/readSmartJson.ts';
import { readSmartText } from './smart/readSmartText.ts';
import { isObject, parseJson, type ToolJson } from './tools/json.ts';
import { lshwJsonNodes, lshwTextNodes } from './tools/lshwNodes.ts';
import { readLsblk } from './tools/readLsblk.ts';
import { readLscpuJson, readLscpuText } from './tools/readLscpu.ts';
import { readLshw } from './tools/readLshw.ts';
import { readLspci } from './tools/readLspci.ts';
import { isSensorsJson, readSensors } from './tools/readSensors.ts';
import { ENGLISH, type ReadingWords } from './words.ts';

/**
 * Reads what system tools printed of a machine, whatever of them stands in the text. Detected by content.
 * Never throws on any text; takes time in proportion to it. A text of no known tool gives no tools and a gap that says so.
 */
export function readMachineReport(text: string, words: ReadingWords = ENGLISH): MachineReading {
  const plain = text.includes('\r') ? text.replace(/\r+\n?/g, '\n') : text;
  const found = sectionsOf(plain);
  const sections = withTableInOne(found);
  const read = sections.map((section) => contributionsOf(section, words));
  const reading = joinedReports(read.flatMap(({ of }) => of));
  const gaps = [
    ...reading.gaps,
    ...read.flatMap((one) => one.gaps),
    ...(found.length < MOST_SECTIONS ? [] : [{ about: 'text', why: say(words.gap['too-many'], { n: MOST_SECTIONS }) }]),
  ];
  if (reading.tools.length > 0 || gaps.length > 0) return { ...reading, gaps };
  return {
    ...reading,
    gaps: [
      { about: 'text', why: say(words.gap[plain.trim() === '' ? 'empty' : 'not-known'], { tools: TOOLS.join(', ') }) },
    ],
  };
}

/** Parts of an SMBIOS table that were printed one after another are one table. */
function withTableInOne(sections: readonly ReportSection[]): readonly ReportSection[] {
  const isTable = (section: ReportSection) => section.as === 'text' && section.tool === 'dmidecode';
  const tables = sections.filter(isTable);
  if (tables.length < 2) return sections;
  const table: ReportSection = { tool: 'dmidecode', as: 'text', text: tables.map(({ text }) => text).join('\n') };
  return [table, ...sections.filter((section) => !isTable(section))];
}

type Read = { readonly of: readonly Contribution[]; readonly gaps: readonly ReportGap[] };

function contributionsOf(section: ReportSection, words: ReadingWords): Read {
  if (section.as === 'json') return readJson(section, words);
  const { text } = section;
  switch (section.tool) {
    case 'dmidecode':
      return { of: [readDmi(text, words)], gaps: [] };
    case 'lshw':
      return { of: [readLshw(lshwTextNodes(text), words)], gaps: [] };
    case 'lscpu':
      return { of: [readLscpuText(text, words)], gaps: [] };
    case 'lspci':
      return { of: [readLspci(text)], gaps: [] };
    case 'smartctl':
      return { of: [readSmartText(text, words)], gaps: [] };
    default:
      return { of: [], gaps: [] };
  }
}

function readJson({ text, tooDeep }: ReportSection & { readonly as: 'json' }, words: ReadingWords): Read {
  const parsed = tooDeep ? null : parseJson(text);
  if (!parsed) return { of: [], gaps: [{ about: 'json', why: words.gap['no-json'] }] };
  const roots = (Array.isArray(parsed.value) ? parsed.value : [parsed.value]).filter(isObject);
  const of = roots.slice(0, MOST_ROOTS).flatMap((root) => toolOf(root, words) ?? []);
  const gaps: ReportGap[] = [];
  if (of.length === 0) gaps.push({ about: 'json', why: words.gap['json-not-known'] });
  if (parsed.cut) gaps.push({ about: 'json', why: words.gap.cut });
  return { of, gaps };
}

const MOST_ROOTS = 300;

function toolOf(root: ToolJson, words: ReadingWords): Contribution | undefined {
  if (Array.isArray(root.lscpu)) return readLscpuJson(root, words);
  if (Array.isArray(root.blockdevices)) return readLsblk(root);
  if (isSmartJson(root)) return readSmartJson(root, words);
  if (isSensorsJson(root)) return readSensors(root);
  if (typeof root.id === 'string' && (Array.isArray(root.children) || typeof root.class === 'string'))
    return readLshw(lshwJsonNodes(root), words);
  return undefined;
}
