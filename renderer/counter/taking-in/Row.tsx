import type { ReactNode } from 'react';
import type { IdOf } from '../../catalogue.ts';
import { SheetRow } from '../../kit/shell/WrittenSheet';
import { useWords } from '../../kit/text/words.tsx';
import { useTakingIn } from './sheetContext.tsx';

/** A line of the sheet that knows whether it is being written. `known` says that it has its answer. */
export function Row({
  id,
  known,
  children,
}: {
  readonly id: IdOf<'counter.rows'>;
  readonly known: boolean;
  readonly children: ReactNode;
}) {
  const { t } = useWords();
  const { row, enter } = useTakingIn();
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: only hears where the focus is; what is pressed stands inside
    <div className="counter-row" onFocus={() => enter(id)}>
      <SheetRow label={t(`counter.rows.${id}`)} state={row === id ? 'now' : known ? 'known' : 'open'}>
        {children}
      </SheetRow>
    </div>
  );
}
