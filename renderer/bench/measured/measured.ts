import type { Reading } from '../../../core/job/work.ts';
import type { Finding } from '../../../core/tracing/live/readings/finding.ts';
import type { ReadingLine } from '../../../core/tracing/live/readings/lines.ts';
import type { Words } from '../../kit/text/words.tsx';

/** What the fields of a step come to: the finding, the readings to keep, and what the table says of a code. */
export type Measured = {
  readonly finding: Finding;
  readonly readings: readonly Reading[];
  readonly says: readonly string[];
};

/** The fields of one step: they say anew what they come to whenever a figure is typed. */
export type MeasuredFields = { readonly onMeasured: (measured: Measured) => void };

/** A reading with its limit and source, in the words and number forms of this shop. */
export function readingInWords(line: ReadingLine, words: Words): Reading {
  const { t, number } = words;
  const { what, value, unit, from, to, source, within } = line;
  const digits = unit === 'V' ? 2 : 0;
  const missing = what.is === 'rail' ? t('measured.not-there') : t('measured.never-came');
  return {
    what:
      what.is === 'rail'
        ? t('measured.rail', { rail: what.rail, connector: t(`measured.connector.${what.connector}`) })
        : t('measured.power-good'),
    value: value === null ? missing : t('measured.figure', { value: number(value, unit === 'V' ? 3 : 0), unit }),
    limit:
      from === null || to === null
        ? null
        : t('measured.range', { from: number(from, digits), to: number(to, digits), unit }),
    source,
    within,
  };
}

/** A figure that is kept without a limit. */
export const plainReading = (what: string, value: string): Reading => ({
  what,
  value,
  limit: null,
  source: null,
  within: null,
});
