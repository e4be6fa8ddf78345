import { createContext, type ReactNode, useContext, useMemo, useState } from 'react';
import type { ShopSettings } from '../../../core/job/shop.ts';
import type { Signed } from '../fields/signedInput.ts';
import type { TakingInSheet } from './sheet.ts';
import { type Papers, usePapers } from './usePapers.ts';

/** Signatures given so far: `sheet`, and one for each line that is signed by itself. Never kept in a draft. */
export type SignedMarks = { readonly [id: string]: Signed };

export type TakingInState = {
  readonly sheet: TakingInSheet;
  readonly settings: ShopSettings;
  readonly write: (patch: Partial<TakingInSheet>) => void;
  readonly marks: SignedMarks;
  readonly sign: (id: string, mark: Signed | null) => void;
  /** Takes all signatures off: the sheet is to be signed anew. */
  readonly unsign: () => void;
  /** The papers it becomes, as they are shown and signed. */
  readonly papers: Papers;
  /** The row that is being written, for the ruler's mark and the paper's underline. */
  readonly row: string | null;
  readonly enter: (row: string) => void;
};

const TakingInContext = createContext<TakingInState | null>(null);

/** Hands the sheet, its signatures and the row being written to everything on it. */
export function TakingInProvider({
  sheet,
  settings,
  onChange,
  children,
}: {
  readonly sheet: TakingInSheet;
  readonly settings: ShopSettings;
  readonly onChange: (sheet: TakingInSheet) => void;
  readonly children: ReactNode;
}) {
  const [marks, setMarks] = useState<SignedMarks>({});
  const [row, enter] = useState<string | null>(null);
  const papers = usePapers(sheet, settings);
  const state = useMemo<TakingInState>(
    () => ({
      sheet,
      settings,
      write: (patch) => onChange({ ...sheet, ...patch }),
      marks,
      sign: (id, mark) =>
        setMarks((before) => {
          const { [id]: _, ...others } = before;
          return mark === null ? others : { ...others, [id]: mark };
        }),
      unsign: () => setMarks({}),
      papers,
      row,
      enter,
    }),
    [sheet, settings, onChange, marks, papers, row],
  );
  return <TakingInContext.Provider value={state}>{children}</TakingInContext.Provider>;
}

/** The sheet being written. Throws outside of one: a defect of the page. */
export function useTakingIn(): TakingInState {
  const state = useContext(TakingInContext);
  if (!state) throw new Error('useTakingIn outside of a TakingInProvider');
  return state;
}
