import type { ReactNode } from 'react';
import type { IdOf } from '../../catalogue.ts';
import { SheetRow } from '../../kit/shell/WrittenSheet';
import { useWords } from '../../kit/text/words.tsx';

/** A line of a job's sheet. */
export function JobRow({
  id,
  state,
  children,
}: {
  readonly id: IdOf<'counter.job.rows'>;
  readonly state: 'known' | 'now' | 'open';
  readonly children: ReactNode;
}) {
  const { t } = useWords();
  return (
    <div className="counter-row">
      <SheetRow label={t(`counter.job.rows.${id}`)} state={state}>
        {children}
      </SheetRow>
    </div>
  );
}
