import table from '../../../assets/readings/lscpuLabels.json' with { type: 'json' };
import { keysOf } from '../../table.ts';

/** Lines of `lscpu` that are read. */
export type LscpuField = keyof typeof table.labels;

const FIELD_OF: ReadonlyMap<string, LscpuField> = new Map(
  keysOf(table.labels).flatMap((field) => table.labels[field].map((label) => [label, field] as const)),
);

/** A label and what stands behind it; Chinese translations have a wide colon, French ones a space before it. */
export function lscpuLine(line: string): readonly [LscpuField, string] | null {
  const colon = /[:：]/.exec(line.slice(0, LONGEST_LABEL))?.index;
  if (colon === undefined) return null;
  const field = FIELD_OF.get(line.slice(0, colon).trim());
  return field ? [field, line.slice(colon + 1)] : null;
}

const LONGEST_LABEL = 60;

/** The characters that `lscpu` begins with in any language, so that most lines need no closer look. */
export const LSCPU_FIRST_CHARS: string = table.labels.architecture.map((label) => label.charAt(0)).join('');

/** The architecture stands first in every `lscpu`, in every language. */
export const beginsLscpu = (line: string): boolean =>
  LSCPU_FIRST_CHARS.includes(line.charAt(0)) && lscpuLine(line)?.[0] === 'architecture';
