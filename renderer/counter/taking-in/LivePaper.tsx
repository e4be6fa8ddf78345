import { useEffect, useRef } from 'react';
import papers from '../../../assets/words/en/papers.json';
import { PaperView } from '../../kit/paper/PaperView.tsx';
import { useWords } from '../../kit/text/words.tsx';
import type { LivePapers } from './livePapers.ts';

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
export function LivePaper({ papers, row }: { readonly papers: LivePapers; readonly row: string | null }) {
  const { t } = useWords();
  const place = useRef<HTMLElement>(null);
  const writing = row === null ? undefined : WRITES[row];
  useEffect(() => {
    if (writing !== undefined) place.current?.querySelector('.k-paper-writing')?.scrollIntoView({ block: 'nearest' });
  }, [writing]);
  const order =
    row !== null && ON_CONSENTS.has(row) ? [papers.consents, papers.receipt] : [papers.receipt, papers.consents];
  return (
    <section ref={place} className="counter-papers" aria-label={t('counter.paper.live')}>
      {order.map((paper) => (
        <PaperView key={paper.kind} paper={paper} {...(writing === undefined ? {} : { writing })} />
      ))}
    </section>
  );
}
