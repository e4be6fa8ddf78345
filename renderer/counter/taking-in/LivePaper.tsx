import { useEffect, useRef } from 'react';
import papers from '../../../assets/words/en/papers.json';
import { Problem } from '../../kit/keys/Problem.tsx';
import { PaperView } from '../../kit/paper/PaperView.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useTakingIn } from './sheetContext.tsx';

const receipt = papers.kinds['intake-receipt'];
const sheetWords = papers.kinds['consent-sheet'];

/** Which section of the paper each row of the sheet writes. */
const WRITES: Readonly<Record<string, string>> = {
  owner: receipt.reach,
  machine: receipt.left,
  told: receipt.words,
  changed: receipt.words,
  often: receipt.words,
  'came-along': receipt.left,
  limit: receipt.cost,
  before: receipt.data,
  'owner-kind': receipt.collect,
  consents: sheetWords.asked,
  alone: sheetWords.ownAsked,
  signature: sheetWords.one,
};
const ON_CONSENTS = new Set(['consents', 'alone', 'signature']);

/** The paper beside the sheet: the one that the row in focus writes comes first. */
export function LivePaper() {
  const { t } = useWords();
  const { papers, row } = useTakingIn();
  const place = useRef<HTMLElement>(null);
  const writing = row === null ? undefined : WRITES[row];
  useEffect(() => {
    if (writing !== undefined) place.current?.querySelector('.k-paper-writing')?.scrollIntoView({ block: 'nearest' });
  }, [writing]);
  const first = row !== null && ON_CONSENTS.has(row) ? 'consent-sheet' : 'intake-receipt';
  const order = papers.shown?.papers.toSorted((a, b) => Number(b.kind === first) - Number(a.kind === first)) ?? [];
  return (
    <section ref={place} className="counter-papers" aria-label={t('counter.paper.live')} aria-busy={!papers.settled}>
      {papers.problem && <Problem slim {...papers.problem} />}
      {order.map((paper) => (
        <PaperView key={paper.kind} paper={paper} {...(writing === undefined ? {} : { writing })} />
      ))}
    </section>
  );
}
