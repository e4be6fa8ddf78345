import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Attributes } from '../../../core/custody/part.ts';
import type { Slot } from '../../../core/custody/slot.ts';
import { toldBy } from '../../../core/readings/toldBy.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { kindName } from '../../terms/terms.ts';
import { AddSlot } from './AddSlot.tsx';
import { CensusSlot } from './CensusSlot.tsx';
import { planFor } from './censusPlan.ts';
import { ReportAgainst } from './ReportAgainst.tsx';
import { useSlotsByHand } from './useSlotsByHand.ts';

const FORMS = ['atx', 'microatx', 'mini-itx'] as const;

/** The census at the first opening: each slot and what sits in it. Nothing written means nothing in it, or not looked. */
export function CensusForm({ sheet, onDone }: { readonly sheet: JobSheet; readonly onDone: () => void }) {
  const { t, list } = useWords();
  const { execute, problem } = useExecute();
  const { machine, parts, job } = sheet;
  const [form, setForm] = useState<string | null>(null);
  const [names, setNames] = useState<Readonly<Record<string, string>>>(() =>
    Object.fromEntries(
      Object.entries(machine.inside).map(([slot, id]) => [slot, parts.find((part) => part.id === id)?.name ?? '']),
    ),
  );
  const [unread, setUnread] = useState<readonly string[]>(() =>
    Object.entries(machine.inside).flatMap(([slot, id]) =>
      parts.find((part) => part.id === id)?.unread ? [slot] : [],
    ),
  );
  const [gone, setGone] = useState<readonly string[]>([]);
  const told = machine.report ? toldBy(machine.report) : null;
  const { plan, edit, problem: wrongSlot, asLearnt } = useSlotsByHand(planFor(sheet, form, told));
  const says = (slot: string) => told?.parts.find((part) => part.slot === slot);
  const slots = plan.slots.filter(({ id }) => !gone.includes(id));
  const recorded = new Set([machine.inside, machine.atTakingIn].flatMap((slots) => Object.keys(slots)));
  const rename = (slot: string, to: string) => {
    const { [slot]: sits, ...others } = names;
    if (!edit({ rename: { [slot]: to } })) return false;
    setNames(sits === undefined ? others : { ...others, [to.trim()]: sits });
    setUnread(unread.map((id) => (id === slot ? to.trim() : id)));
    return true;
  };
  const write = async () => {
    const done = await execute('writeCensus', {
      job: job.id,
      slots: slots.map(asWritten),
      parts: slots.flatMap((slot) => {
        const name = names[slot.id]?.trim() ?? '';
        const sitting = parts.find((part) => part.id === machine.inside[slot.id]);
        if (name === '' || name === sitting?.name || sitting?.belongs.to === 'shop') return [];
        const own = says(slot.id);
        const asTold = own?.name === name;
        return [
          {
            slot: slot.id,
            kind: sitting?.kind ?? slot.takes,
            name,
            attributes: asAttributes({ ...sitting?.attributes, ...(asTold && own.attributes) }),
            serial: null,
            source: asTold ? ('own-report' as const) : ('census' as const),
            ...(unread.includes(slot.id) && { unread: true as const }),
          },
        ];
      }),
      gaps: [...plan.gaps],
    });
    if (done) onDone();
  };
  return (
    <form
      className="bench-form"
      aria-label={t('bench.census')}
      onSubmit={(event) => {
        event.preventDefault();
        void write();
      }}
    >
      <ReportAgainst sheet={sheet} />
      {machine.slots.length === 0 && (
        <ChoiceKeys
          label={t('bench.board-size')}
          mode="one"
          choices={FORMS.map((id) => ({ id, says: t(`bench.form.${id}`) }))}
          chosen={form === null ? [] : [form]}
          onChoose={([id]) => {
            setForm(id ?? null);
            asLearnt();
          }}
        />
      )}
      <ul className="bench-list">
        {slots.map((slot) => (
          <CensusSlot
            key={slot.id}
            slot={slot}
            name={names[slot.id] ?? ''}
            onName={(name) => {
              setNames({ ...names, [slot.id]: name });
              setUnread(unread.filter((id) => id !== slot.id));
            }}
            onUnread={() => {
              setNames({ ...names, [slot.id]: t('bench.unknown-part', { kind: kindName(slot.takes) }) });
              setUnread([...unread, slot.id]);
            }}
            told={says(slot.id)?.name ?? null}
            onRename={recorded.has(slot.id) ? null : (to) => rename(slot.id, to)}
            onGone={machine.inside[slot.id] === undefined ? () => setGone([...gone, slot.id]) : null}
          />
        ))}
      </ul>
      {gone.length > 0 && (
        <p>
          {t('bench.slots-gone', { slots: list(gone) })}{' '}
          <Key kind="link" onPress={() => setGone([])}>
            {t('bench.slots-back')}
          </Key>
        </p>
      )}
      <AddSlot onAdd={(slot) => edit({ add: [slot] })} />
      {wrongSlot && <Problem slim {...wrongSlot} />}
      <Key submit>{t('bench.census-write')}</Key>
      {problem && <Problem slim {...problem} />}
    </form>
  );
}

/** A slot as the command takes it: its lists are its own. */
const asWritten = ({ attributes, ...slot }: Slot) => ({
  ...slot,
  ...(attributes && { attributes: asAttributes(attributes) }),
});

const asAttributes = (attributes: Attributes) =>
  Object.fromEntries(
    Object.entries(attributes).map(([name, value]) => [name, typeof value === 'object' ? [...value] : value]),
  );
