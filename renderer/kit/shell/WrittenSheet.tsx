import type { ReactNode } from 'react';
import { useWords } from '../text/words.tsx';
import './WrittenSheet.css';

/** The written sheet: rows under one another, with a ruler in the margin that shows how far one is. */
export function WrittenSheet({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    <section className="k-sheet" aria-label={label}>
      {children}
    </section>
  );
}

export type SheetRowProps = {
  readonly label: string;
  /** Known (full mark), being written (blue), or still open (hollow). Said in words to a screen reader. */
  readonly state: 'known' | 'now' | 'open';
  readonly children: ReactNode;
};

/** One line of the sheet: label column, then what is known. */
export function SheetRow({ label, state, children }: SheetRowProps) {
  const { t } = useWords();
  return (
    <fieldset className={`k-sheet-row k-sheet-row-${state}`}>
      <legend className="k-heard">{`${label}, ${t(`kit.sheet.${state}`)}`}</legend>
      <div className="k-sheet-label" aria-hidden="true">
        <i />
        {label}
      </div>
      <div className="k-sheet-content">{children}</div>
    </fieldset>
  );
}

/** The perforation: above it is what must be known before the owner leaves. */
export function SheetTear({ says, after }: { readonly says: string; readonly after?: string }) {
  return (
    <p className="k-sheet-tear">
      <b>{says}</b> {after !== undefined && <span className="k-muted">{after}</span>}
    </p>
  );
}
