import { useQuery } from '@tanstack/react-query';
import { useEffect, useEffectEvent, useState } from 'react';
import papers from '../../../assets/words/en/papers.json';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { MINUTE_MS } from '../../../core/time.ts';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { PaperView } from '../../kit/paper/PaperView.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useNow } from '../../kit/useNow.ts';
import { wordsOfError } from '../../link/refusalWords.ts';
import { saveFile } from '../../link/saveFile.ts';
import { queryOf, service } from '../../link/service.ts';

const KINDS: Readonly<Record<string, { readonly named: string }>> = papers.kinds;

/** The job's papers, newest first; one opens in place, prints, or is kept as a file. */
export function JobPapers({
  sheet,
  chosen,
  onChoose,
  toPrint,
  onPrinted,
}: {
  readonly sheet: JobSheet;
  readonly chosen: string | null;
  readonly onChoose: (number: string | null) => void;
  /** The newest of this kind is printed as soon as it is there. */
  readonly toPrint: string | null;
  readonly onPrinted: () => void;
}) {
  const { t, date, dayClock } = useWords();
  const today = date(useNow(MINUTE_MS));
  const isCopy = (number: string) => list.some((paper) => paper.number === number && date(paper.at) !== today);
  const list = [...sheet.job.papers].reverse();
  const replaced = new Set(list.map((paper) => paper.supersedes));
  const shown = chosen === null ? shownAtFirst(sheet) : [chosen];
  const printed = list.find(({ kind }) => kind === toPrint)?.number ?? null;
  const tags = list.filter(({ kind }) => kind === 'part-tag');
  const named = (paper: (typeof list)[number]) => (
    <li key={paper.number}>
      <Key kind="link" onPress={() => onChoose(paper.number)}>
        {`${KINDS[paper.kind]?.named ?? paper.kind} ${paper.number}`}
      </Key>{' '}
      <span className="k-small k-muted">
        {dayClock(paper.at)}
        {replaced.has(paper.number) && `, ${t('counter.papers.replaced')}`}
        {shown.includes(paper.number) && `, ${t('counter.papers.open')}`}
      </span>
    </li>
  );
  return (
    <>
      <section className="counter-paper-list" aria-label={t('counter.papers.title')}>
        {list.length === 0 && <p>{t('counter.papers.none')}</p>}
        <ul className="counter-paper-names">
          {list.filter(({ kind }) => kind !== 'part-tag').map(named)}
          {tags.length > 0 && (
            <li>
              <details>
                <summary>{t('counter.papers.part-tags', { n: tags.length })}</summary>
                <ul>{tags.map(named)}</ul>
              </details>
            </li>
          )}
        </ul>
      </section>
      {printed !== null && <PaperOpen key={`print ${printed}`} number={printed} onPrint={onPrinted} />}
      {shown.map((number) => (
        <PaperOpen key={number} number={number} copy={isCopy(number)} />
      ))}
    </>
  );
}

/** What one came to see: slip and bill of what went home, the receipt of what just came, else the newest. */
function shownAtFirst({ job }: JobSheet): readonly string[] {
  const newestOf = (kind: string) => job.papers.findLast((paper) => paper.kind === kind)?.number ?? [];
  if (job.stage === 'gone-home') return [newestOf('bill'), newestOf('replaced-part-slip')].flat();
  if (job.stage === 'taken-in') return [newestOf('intake-receipt')].flat();
  return job.papers.slice(-1).map((paper) => paper.number);
}

/** A paper to be read, printed or kept as a file; with `onPrint` it is printed, alone, as soon as it is there. */
function PaperOpen({
  number,
  copy = false,
  onPrint,
}: {
  readonly number: string;
  /** It was given out on an earlier day: what is printed now is a copy. */
  readonly copy?: boolean;
  readonly onPrint?: () => void;
}) {
  const { t } = useWords();
  const paper = useQuery(
    queryOf.paper.queryOptions({ input: { number, copy }, meta: { follows: { streams: ['paper:'] } } }),
  );
  const [problem, setProblem] = useState<ReturnType<typeof wordsOfError> | null>(null);
  const isThere = paper.data !== undefined;
  const print = useEffectEvent(() => {
    if (!onPrint) return;
    window.print();
    onPrint();
  });
  useEffect(() => {
    if (isThere) print();
  }, [isThere]);
  const save = async () => {
    try {
      saveFile(await service.paperFile({ number, copy }), `${number.replaceAll('/', '-')}.pdf`);
    } catch (error) {
      setProblem(wordsOfError(error));
    }
  };
  return (
    <section
      className={onPrint ? 'counter-viewer counter-prints' : 'counter-viewer'}
      aria-label={t('counter.papers.viewer')}
    >
      <div className="counter-fields counter-viewer-keys">
        <Key onPress={() => window.print()}>{t('counter.papers.print')}</Key>
        <Key onPress={() => void save()}>{t('counter.papers.save')}</Key>
      </div>
      {problem && <Problem slim {...problem} />}
      {paper.data && (
        <PaperView paper={{ ...paper.data.content, contentHash: paper.data.contentHash }} stamps={paper.data.stamps} />
      )}
      {paper.isPending && <p role="status">{t('app.waiting')}</p>}
      {paper.error && <Problem slim {...wordsOfError(paper.error)} />}
    </section>
  );
}
