import type { JobSheet } from '../../../core/contract/screens.ts';
import { type AgainstCensus, againstCensus } from '../../../core/readings/againstCensus.ts';
import type { Words } from '../../kit/text/words.tsx';
import { useWords } from '../../kit/text/words.tsx';

/** The points on which the machine's own report and the census do not say the same, or only a person can tell. */
export const toLookAt = ({ machine, parts }: JobSheet): readonly AgainstCensus[] =>
  pointsOf({ machine, parts }).filter(({ is }) => is === 'differs' || is === 'look');

const pointsOf = ({ machine, parts }: Pick<JobSheet, 'machine' | 'parts'>) =>
  againstCensus(machine, new Map(parts.map((part) => [part.id, part])));

/** What the machine says of itself against what was counted in it, point by point. */
export function ReportAgainst({ sheet }: { readonly sheet: JobSheet }) {
  const words = useWords();
  const { t } = words;
  const points = pointsOf(sheet);
  if (points.length === 0) return null;
  return (
    <details className="bench-against" open={toLookAt(sheet).length > 0}>
      <summary>{t('bench.against.title')}</summary>
      <ul className="bench-plain">
        {points.map((point) => (
          <li key={`${point.about} ${point.slot}`}>
            {t(`bench.against.about.${point.about}`, { slot: point.slot ?? '' })}:{' '}
            {t(`bench.against.is.${point.is}`, {
              reported: sideWords(point, 'reported', words),
              counted: sideWords(point, 'counted', words),
            })}
          </li>
        ))}
      </ul>
    </details>
  );
}

function sideWords(point: AgainstCensus, side: 'reported' | 'counted', { t, number }: Words): string {
  const value = point[side];
  if (value === null) return '';
  if (typeof value === 'string') return value;
  if (point.about !== 'module') return number(value);
  return value === 0 ? t('bench.against.empty') : t('bench.against.gib', { n: value });
}
