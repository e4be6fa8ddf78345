import { useState } from 'react';
import type { JobSheet, WallSheet } from '../../../core/contract/screens.ts';
import type { Part } from '../../../core/custody/ledger.ts';
import { slotRecorded } from '../../../core/custody/machine.ts';
import { InsideView } from '../../kit/inside/InsideView.tsx';
import type { Drop, InsidePart } from '../../kit/inside/model.ts';
import type { ProblemWords } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { type Blamed, insidePart, insideSlots, placeOfDrop, placesFor } from './insideOf.ts';
import { type Elsewhere, WhyElsewhere } from './WhyElsewhere.tsx';

export type JobInsideProps = {
  readonly sheet: JobSheet;
  readonly wall: WallSheet | undefined;
  readonly benches: readonly string[];
  readonly tray: string;
  readonly blame: Blamed;
  /** A part that was scanned and waits for a slot. */
  readonly scanned: string | null;
  readonly onPut: () => void;
};

/** This machine's inside view; each move goes to the ledger, and what stands against it is said where it was dropped. */
export function JobInside({ sheet, wall, benches, tray, blame, scanned, onPut }: JobInsideProps) {
  const words = useWords();
  const { press } = useExecute();
  const known = (id: string): Part | undefined =>
    sheet.parts.find((one) => one.id === id) ?? wall?.parts.find((one) => one.id === id);
  const [elsewhere, setElsewhere] = useState<Elsewhere | null>(null);
  const move = async (moved: InsidePart, to: Drop): Promise<ProblemWords | null> => {
    onPut();
    const part = known(moved.id);
    const place = part && placeOfDrop(to, part, sheet);
    if (!part || !place) return { says: words.t('bench.no-bin'), unchanged: words.t('bench.not-moved') };
    const recorded = part.belongs.to === 'owner' ? slotRecorded(sheet.machine, part.id) : null;
    if (place.at === 'slot' && recorded !== null && recorded !== place.slot) {
      setElsewhere({ part, to: place, recorded });
      return null;
    }
    const input = { job: sheet.job.id, part: part.id, from: part.place, to: place, why: 'hand', says: null } as const;
    const pressed = await press('movePart', input);
    return 'problem' in pressed ? pressed.problem : null;
  };
  const inHand = scanned === null ? undefined : known(scanned);
  const form = sheet.parts.find((part) => part.kind === 'board')?.attributes['form-factor'];
  return (
    <>
      <InsideView
        slots={insideSlots(sheet, blame, words)}
        places={placesFor(sheet, benches, tray, blame, words)}
        {...(typeof form === 'string' && { boardForm: FORMS[form] ?? form })}
        inHand={inHand ? insidePart(inHand, sheet, blame, words) : null}
        onMove={move}
      />
      {elsewhere && <WhyElsewhere job={sheet.job.id} move={elsewhere} onClose={() => setElsewhere(null)} />}
    </>
  );
}

const FORMS: Readonly<Record<string, string>> = { atx: 'ATX', microatx: 'microATX', 'mini-itx': 'Mini-ITX' };
