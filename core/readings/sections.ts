import { beginsDmi } from './dmi/dmiRecords.ts';
import type { Tool } from './reading.ts';
import { beginsLscpu } from './tools/lscpuLabels.ts';

/** A stretch of a text that one tool printed, as text or as JSON. */
export type Section =
  | { readonly tool: Tool; readonly as: 'text'; readonly text: string }
  | { readonly as: 'json'; readonly text: string };

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
export function sectionsOf(text: string): readonly Section[] {
  const sections: Section[] = [];
  let tool: Tool | null = null;
  let from = 0;
  const close = (to: number) => {
    if (tool && to > from) sections.push({ tool, as: 'text', text: text.slice(from, to) });
    tool = null;
  };
  let before = 0;
  for (let at = 0; at < text.length && sections.length < MOST_SECTIONS; ) {
    const found = text.indexOf('\n', at);
    const end = found < 0 ? text.length : found;
    if (text.charCodeAt(at) !== TAB && end > at) {
      const line = text.slice(at, Math.min(end, at + LONGEST_SIGN));
      if (JSON_START.test(line) && looksLikeJson(text, at)) {
        close(at);
        const stop = endOfJson(text, at);
        sections.push({ as: 'json', text: text.slice(at, stop) });
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

const TAB = 9;
/** What tells a tool stands at the beginning of a line. */
const LONGEST_SIGN = 260;

/** The tool that a line begins anew; `null` when the line goes on with what is open. */
function toolOf(line: string, open: Tool | null): Tool | null {
  if (open !== 'dmidecode' && beginsDmi(line)) return 'dmidecode';
  if (SMART.test(line)) return line.startsWith('smartctl') || open !== 'smartctl' ? 'smartctl' : null;
  if (open !== 'lspci' && LSPCI_LINE.test(line)) return 'lspci';
  if (open !== 'lscpu' && beginsLscpu(line)) return 'lscpu';
  if (open !== 'lshw' && (LSHW_NODE.test(line) || (open !== 'dmidecode' && open !== 'lspci' && LSHW_FIELD.test(line))))
    return 'lshw';
  return null;
}

const looksLikeJson = (text: string, at: number): boolean => /^[{[]\s{0,400}["{}\]]/.test(text.slice(at, at + 402));

/** First characters of the lines that printed JSON has; any other ends a report that was cut off. */
const JSON_LINE = /[\s"{}[\],:\d.+\-eEtfnrualsx]/;

/** Where a JSON value that starts here ends: behind its last bracket, or where it is cut off. */
function endOfJson(text: string, start: number): number {
  let depth = 0;
  let inText = false;
  for (let at = start; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (inText) {
      if (code === 92) at += 1;
      else if (code === 34) inText = false;
      else if (code === 10) return at + 1;
    } else if (code === 34) inText = true;
    else if (code === 123 || code === 91) depth += 1;
    else if (code === 125 || code === 93) {
      depth -= 1;
      if (depth === 0) return at + 1;
    } else if (code === 10 && at + 1 < text.length && !JSON_LINE.test(text.charAt(at + 1))) return at + 1;
  }
  return text.length;
}
