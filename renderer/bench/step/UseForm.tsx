import type { JobSheet, WallSheet } from '../../../core/contract/screens.ts';
import { PART_KINDS, type PartKind } from '../../../core/custody/part.ts';
import { takesKind } from '../../../core/custody/slot.ts';
import { asTakenIn } from '../../../core/fit/whichSlot.ts';
import type { PartId } from '../../../core/ids.ts';
import type { StepHandling } from '../../../core/tracing/live/types.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { placeWords } from '../inside/insideOf.ts';
import { LoanerList, loanersFor } from './LoanerList.tsx';
import type { Chosen } from './useStep.ts';

/** Execute this step ask which parts and slots? */
export const asksUse = (handling: StepHandling | undefined): boolean =>
  handling !== undefined && (handling.movesDimms || handling.intoSlotOf !== undefined || isPart(handling.borrows));

const isPart = (kind: string | null): boolean => PART_KINDS.some((one) => one === kind);

export type UseFormProps = {
  readonly sheet: JobSheet;
  readonly wall: WallSheet | undefined;
  readonly handling: StepHandling;
  readonly suspects: ReadonlySet<PartKind>;
  readonly chosen: Chosen;
  readonly onChoose: (chosen: Chosen) => void;
};

/** Which of the owner's parts are handled and which slots gone through, in the order pressed; nothing pressed is the usual. */
export function UseForm({ sheet, wall, handling, suspects, chosen, onChoose }: UseFormProps) {
  const words = useWords();
  const { t } = words;
  const kind = handling.movesDimms ? 'dimm' : handling.intoSlotOf;
  const { machine } = sheet;
  const slots = kind === undefined ? [] : machine.slots.filter((slot) => takesKind(slot.takes, kind));
  const parts = sheet.parts.filter((part) => part.belongs.to === 'owner' && part.kind === kind);
  const borrowed = PART_KINDS.find((one) => one === handling.borrows);
  const found =
    wall && borrowed
      ? loanersFor(
          { kind: borrowed, slot: chosen.slots[0] ?? null, suspects, job: sheet.job.id },
          asTakenIn(machine, new Map(sheet.parts.map((part) => [part.id, part]))),
          wall,
        )
      : null;
  const ours = [...(found?.offered ?? []), ...(found?.leftOut ?? [])].flatMap(({ stock: { part } }) =>
    (wall?.parts ?? []).filter((one) => one.id === part.id && one.place.at === 'bin'),
  );
  const where = (id: PartId) => {
    const place = parts.find((part) => part.id === id)?.place;
    return place?.at === 'slot' ? place.slot : place ? placeWords(place, words) : '';
  };
  return (
    <fieldset className="bench-form">
      <legend>{t('bench.use')}</legend>
      {ours.length > 0 && (
        <ChoiceKeys
          label={t('bench.use-loaner')}
          mode="one"
          choices={ours.map((part) => ({ id: part.id, says: [part.tag, part.name].filter(Boolean).join(' ') }))}
          chosen={chosen.loaner === null ? [] : [chosen.loaner]}
          onChoose={([loaner]) => onChoose({ ...chosen, loaner: loaner ?? null })}
        />
      )}
      {found && wall && <LoanerList found={found} wall={wall} />}
      {parts.length > 0 && (
        <ChoiceKeys
          label={t('bench.use-parts')}
          choices={parts.map((part) => ({ id: part.id, says: `${part.name}, ${where(part.id)}` }))}
          chosen={chosen.parts}
          onChoose={(ids) => onChoose({ ...chosen, parts: ids })}
        />
      )}
      {slots.length > 0 && (
        <ChoiceKeys
          label={t('bench.use-slots')}
          choices={slots.map((slot) => ({ id: slot.id, says: slot.id }))}
          chosen={chosen.slots}
          onChoose={(ids) => onChoose({ ...chosen, slots: ids })}
        />
      )}
      <p className="k-small k-muted">
        {chosen.parts.length + chosen.slots.length === 0
          ? t('bench.use-usual')
          : t('bench.use-order', { what: words.list([...chosen.parts.map(where), ...chosen.slots]) })}
      </p>
    </fieldset>
  );
}
