import { beginsDmi, DMI_FIRST_CHARS } from './dmi/dmiRecords.ts';
import type { Tool } from './reading.ts';
import { endOfJson } from './tools/json.ts';
import { beginsLscpu, LSCPU_FIRST_CHARS } from './tools/lscpuLabels.ts';

/** A stretch of a text that one tool printed, as text or as JSON. */
export type ReportSection =
  | { readonly tool: Tool; readonly as: 'text'; readonly text: string }
  | { readonly as: 'json'; readonly text: string; readonly tooDeep: boolean };

/** A bus address of the PCI listing and the class that follows it. */
export const LSPCI_LINE = /^(?:[0-9a-f]{4,8}:)?[0-9a-f]{2}:[0-9a-f]{2}\.[0-7] (?=["A-Z\d])/;
const LSHW_NODE = /^\s{0,200}\*-[a-z]/;
const LSHW_FIELD = /^ {4}[^\s:][^:]{0,30}: \S/;
const SMART = /^(?:smartctl (?:pre-)?\d|=== START OF )/;
const JSON_START = /^(?:\{\s*(?:["}]|$)|\[\s*(?:[{\]"]|$))/;

/**
 * Parts a text into what each tool printed, by what stands in it. Several reports may follow one another in any order;
 * lines before the first one, and whatever no tool printed, are left out. Line ends must be plain line feeds.
 */
export function sectionsOf(text: string): readonly ReportSection[] {
  const sections: ReportSection[] = [];
  let tool: Tool | null = null;
  let from = 0;
  const close = (to: number) => {
    if (tool && to > from) sections.push({ tool, as: 'text', text: text.slice(from, to) });
    tool = null;
  };
  let before = 0;
  for (let at = 0; at < text.length && sections.length < MOST_SECTIONS; ) {
    if (text.charCodeAt(at) === LINE_END) {
      before = at;
      at += 1;
      continue;
    }
    const found = text.indexOf('\n', at);
    const end = found < 0 ? text.length : found;
    if (mayBegin(text, at, tool)) {
      const line = text.slice(at, Math.min(end, at + LONGEST_SIGN));
      if (JSON_START.test(line) && looksLikeJson(text, at)) {
        close(at);
        const { end: stop, tooDeep } = endOfJson(text, at);
        sections.push({ as: 'json', text: text.slice(at, stop), tooDeep });
        before = at = from = stop;
        continue;
      }
      const begins = toolOf(line, tool);
      if (begins) {
        const starts = begins === 'lshw' && LSHW_FIELD.test(line) ? before : at;
        close(starts);
        tool = begins;
        from = starts;
      }
    }
    before = at;
    at = end + 1;
  }
  if (sections.length < MOST_SECTIONS) close(text.length);
  return sections;
}

/** Far more reports than anyone puts in one file; what stands behind them is left out. */
export const MOST_SECTIONS = 300;

/** First characters of lines at which a report may begin: of JSON, of a bus address, of each tool. */
const FIRST_CHARS: ReadonlySet<number> = new Set(
  [...`{[*s=0123456789abcdef${DMI_FIRST_CHARS}${LSCPU_FIRST_CHARS}`].map((char) => char.charCodeAt(0)),
);
const PLAIN_FIRST = Uint8Array.from({ length: 128 }, (_, code) => (FIRST_CHARS.has(code) ? 1 : 0));

const [TAB, LINE_END, BLANK] = [9, 10, 32];

/** Whether a line needs a closer look: most lines of a long report are told apart by their first character alone. */
function mayBegin(text: string, at: number, open: Tool | null): boolean {
  const code = text.charCodeAt(at);
  if (code === TAB) return false;
  // Indented lines begin a tree of hardware, or go on with what is open.
  if (code === BLANK) return open !== 'lshw';
  return code < 128 ? PLAIN_FIRST[code] === 1 : FIRST_CHARS.has(code) || INDENTED.test(text.charAt(at));
}

const INDENTED = /^\s/;

/** What tells a tool stands at the beginning of a line. */
const LONGEST_SIGN = 260;

/** The tool that a line begins anew; `null` when the line goes on with what is open. */
function toolOf(line: string, open: Tool | null): Tool | null {
  if (INDENTED.test(line)) {
    const tree = LSHW_NODE.test(line) || (open !== 'dmidecode' && open !== 'lspci' && LSHW_FIELD.test(line));
    return open !== 'lshw' && tree ? 'lshw' : null;
  }
  if (open !== 'dmidecode' && beginsDmi(line)) return 'dmidecode';
  if (SMART.test(line)) return line.startsWith('smartctl') || open !== 'smartctl' ? 'smartctl' : null;
  if (open !== 'lspci' && LSPCI_LINE.test(line)) return 'lspci';
  if (open !== 'lscpu' && beginsLscpu(line)) return 'lscpu';
  return open !== 'lshw' && LSHW_NODE.test(line) ? 'lshw' : null;
}

const looksLikeJson = (text: string, at: number): boolean => /^[{[]\s{0,400}["{}\]]/.test(text.slice(at, at + 402));
