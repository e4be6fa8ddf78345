import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Part } from '../../../core/custody/ledger.ts';
import { slotRecorded } from '../../../core/custody/machine.ts';
import { takesKind } from '../../../core/custody/slot.ts';
import { epochMs, MINUTE_MS, minutes } from '../../../core/time.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { MinutesField } from '../MinutesField.tsx';
import { isReason, NO_REASON, OtherSlot } from './OtherSlot.tsx';
import { PartAndPlace } from './PartAndPlace.tsx';

/** What is to be fitted: what was sold, then each of the owner's own parts that is not where it belongs. */
export const toFit = ({
  job,
  machine,
  parts,
}: JobSheet): readonly { readonly part: Part; readonly slot: string | null }[] => {
  const inside = (part: Part) => part.place.at === 'slot' && part.place.machine === machine.id;
  const recorded = (part: Part) => slotRecorded(machine, part.id);
  const sold = parts.filter((part) => job.agreedLines.some((line) => line.part === part.id));
  const own = parts.filter(
    (part) => part.belongs.to === 'owner' && part.standing.is !== 'dead' && !sold.includes(part),
  );
  return [
    ...sold.filter((part) => !inside(part)).map((part) => ({ part, slot: recorded(part) })),
    ...own.flatMap((part) => {
      const slot = recorded(part);
      const there = part.place.at === 'slot' && part.place.slot === slot && inside(part);
      return slot !== null && !there ? [{ part, slot }] : [];
    }),
  ];
};

/** The parts to fit, each with its slot and minutes. */
export function FitList({ sheet }: { readonly sheet: JobSheet }) {
  const { t } = useWords();
  const list = toFit(sheet);
  return (
    <section className="bench-part" aria-label={t('bench.to-fit')}>
      <h2>{t('bench.to-fit')}</h2>
      {list.length === 0 && <p>{t('bench.all-fitted')}</p>}
      <ul className="bench-list">
        {list.map(({ part, slot }) => (
          <FitRow key={part.id} sheet={sheet} part={part} recorded={slot} />
        ))}
      </ul>
    </section>
  );
}

type FitRowProps = { readonly sheet: JobSheet; readonly part: Part; readonly recorded: string | null };

/** One part into its slot with its minutes; another slot than recorded needs its reason. */
function FitRow({ sheet, part, recorded }: FitRowProps) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const { machine, job } = sheet;
  const slots = machine.slots.filter((slot) => takesKind(slot.takes, part.kind));
  const free = slots.find((slot) => !machine.inside[slot.id])?.id;
  const [slot, setSlot] = useState<string | null>(recorded ?? free ?? slots[0]?.id ?? null);
  const [hands, setHands] = useState<number | null>(0);
  const [reason, setReason] = useState(NO_REASON);
  const moved = recorded !== null && slot !== recorded;
  const whyNot =
    slot === null ? t('bench.no-slot') : moved && !isReason(reason) ? t('bench.other-slot-needs') : undefined;
  const fit = () => {
    if (slot === null) return;
    void execute('fitPart', {
      job: job.id,
      part: part.id,
      slot,
      startedAt: epochMs(Date.now() - (hands ?? 0) * MINUTE_MS),
      handsOn: minutes(hands ?? 0),
      why: !moved || reason.why === null || reason.why === 'other' ? 'fitting' : reason.why,
      ...(moved && reason.why === 'other' && { says: reason.says.trim() }),
    });
  };
  return (
    <li className="bench-fit">
      <PartAndPlace part={part} />
      <ChoiceKeys
        label={t('bench.slot-for', { part: [part.name, part.tag].filter(Boolean).join(' ') })}
        mode="one"
        choices={slots.map(({ id }) => ({ id, says: id }))}
        chosen={slot === null ? [] : [slot]}
        onChoose={([id]) => id !== undefined && setSlot(id)}
      />
      {moved && (
        <OtherSlot part={part.name} recorded={recorded} slot={slot ?? '?'} reason={reason} onReason={setReason} />
      )}
      <MinutesField label={t('bench.hands-on')} value={hands} onChange={setHands} />
      <Key onPress={fit} whyNot={whyNot}>
        {t('bench.fit', { part: part.name, slot: slot ?? '?' })}
      </Key>
      {problem && <Problem slim {...problem} />}
    </li>
  );
}
