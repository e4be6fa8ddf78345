import type { ReportGap } from '../../custody/machineReport.ts';
import type { Contribution, ProcessorReading } from '../reading.ts';
import { valueIn, wholeNumber } from '../values.ts';
import type { ReadingWords } from '../words.ts';
import { isObject, listIn, type ToolJson, textIn } from './json.ts';
import { type LscpuField, lscpuLine } from './lscpuLabels.ts';

type Fields = ReadonlyMap<LscpuField, string>;

/** What `lscpu` prints as text, in any language whose labels are known. */
export function readLscpuText(text: string, words: ReadingWords): Contribution {
  const fields = new Map<LscpuField, string>();
  for (const line of text.split('\n')) {
    const read = lscpuLine(line);
    if (read && !fields.has(read[0])) fields.set(...read);
  }
  return contribution(fields, words);
}

/** What `lscpu --json` prints; newer versions nest fields below others. */
export function readLscpuJson(root: ToolJson, words: ReadingWords): Contribution {
  const fields = new Map<LscpuField, string>();
  const left = [...listIn(root, 'lscpu')].reverse();
  while (left.length > 0) {
    const row = left.pop();
    if (!isObject(row)) continue;
    const field = lscpuLine(`${textIn(row, 'field') ?? ''}:`)?.[0];
    const data = textIn(row, 'data');
    if (field && data !== undefined && !fields.has(field)) fields.set(field, data);
    left.push(...[...listIn(row, 'children')].reverse());
  }
  return contribution(fields, words);
}

/** One processor a socket; the tool does not name sockets. */
function contribution(fields: Fields, words: ReadingWords): Contribution {
  const cores = wholeNumber(fields.get('cores'));
  const each = wholeNumber(fields.get('threads'));
  const processor: ProcessorReading = {
    name: valueIn(fields.get('model')),
    socket: null,
    cores,
    threads: cores === null || each === null ? null : cores * each,
    maker: valueIn(fields.get('vendor')),
    serial: null,
  };
  const sockets = Math.min(Math.max(wholeNumber(fields.get('sockets')) ?? 1, 1), MOST_SOCKETS);
  const gaps: ReportGap[] = (['name', 'cores'] as const)
    .filter((name) => processor[name] === null)
    .map((name) => ({ about: `processors[0].${name}`, why: words.gap['no-line'] }));
  return { tool: 'lscpu', processors: Array.from({ length: sockets }, () => processor), gaps };
}

const MOST_SOCKETS = 16;
