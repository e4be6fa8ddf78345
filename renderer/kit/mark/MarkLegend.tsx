import { useWords } from '../text/words.tsx';
import './MarkLegend.css';

const MARKS = ['owner', 'shop', 'suspect', 'dead', 'gone', 'unknown'] as const;

/** What the marks mean, in one line of words. */
export function MarkLegend() {
  const { t } = useWords();
  return (
    <ul className="k-legend" aria-label={t('kit.legend.name')}>
      {MARKS.map((mark) => (
        <li key={mark}>{t(`kit.legend.${mark}`)}</li>
      ))}
    </ul>
  );
}
