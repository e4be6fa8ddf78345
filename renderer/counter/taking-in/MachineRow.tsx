import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useNavigate } from 'react-router';
import type { Tag } from '../../../core/custody/part.ts';
import { formatTag, parseTag } from '../../../core/custody/tag.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { TagText } from '../../kit/mark/TagText.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { service } from '../../link/service.ts';
import { OneOf } from '../fields/OneOf.tsx';
import { Row } from './Row.tsx';
import { type MachineSeen, machineBySerial, machinesOf } from './recognise.ts';
import { useTakingIn } from './sheetContext.tsx';

const SAME = ['same-fault', 'new', 'ours'] as const;

/** What machine it is, and its tag: made here, or bound by scanning a printed one. */
export function MachineRow() {
  const { t } = useWords();
  const go = useNavigate();
  const { sheet, write } = useTakingIn();
  const { machine, owner } = sheet;
  const [typedTag, setTypedTag] = useState('');
  const [inUse, setInUse] = useState<string | null>(null);
  const [bySerial, setBySerial] = useState<MachineSeen | null>(null);
  const before = useQuery({
    queryKey: ['machines-of', owner.known],
    queryFn: () => machinesOf(owner.known ?? '', owner.name),
    enabled: owner.known !== null,
  });
  const offered = [...(before.data ?? []), ...(bySerial ? [bySerial] : [])];
  const take = (seen: MachineSeen) =>
    write({
      machine: { known: seen.id, called: seen.called, serial: '' },
      ...(seen.tag === null ? {} : { tag: seen.tag }),
      cameBack: seen.stage === 'gone-home' && !seen.mistaken ? { from: seen.job, same: null } : null,
    });
  /** A tag that hangs on something, or is void, is said so here and not taken. */
  const bind = async (tag: Tag) => {
    const found = await service.byTag({ tag });
    if (found) return setInUse(t('counter.machine.tag-in-use', { tag: formatTag(tag) }));
    write({ tag });
    setTypedTag('');
  };
  const change = (patch: Partial<typeof machine>) => write({ machine: { ...machine, ...patch } });
  return (
    <Row id="machine" known={machine.called.trim() !== ''}>
      {machine.known !== null ? (
        <p className="counter-line">
          <b>{machine.called}</b> <TagText tag={sheet.tag} />{' '}
          <Key kind="link" onPress={() => write({ machine: { known: null, called: '', serial: '' }, cameBack: null })}>
            {t('counter.machine.another')}
          </Key>
        </p>
      ) : (
        <>
          {offered.map((seen) =>
            seen.stage === 'gone-home' ? (
              <Key key={seen.id} onPress={() => take(seen)}>
                {t('counter.machine.same', { called: seen.called })}
              </Key>
            ) : (
              <p key={seen.id} className="counter-line" role="status">
                {t('counter.machine.is-here', { called: seen.called })} {seen.tag && <TagText tag={seen.tag} />}
                <Key onPress={() => void go(`/counter/${seen.job}`)}>{t('counter.machine.open-it')}</Key>
              </p>
            ),
          )}
          <div className="counter-fields">
            <TextField
              label={t('counter.machine.called')}
              labelled="above"
              value={machine.called}
              onChange={(called) => change({ called })}
              chars={36}
              hint={t('counter.machine.called-hint')}
            />
            <TextField
              label={t('counter.machine.serial')}
              labelled="above"
              value={machine.serial}
              onChange={(serial) => change({ serial })}
              onLeave={() => void machineBySerial(machine.serial).then(setBySerial)}
              chars={18}
            />
          </div>
          <div className="counter-line counter-tag">
            <span className="k-muted">{t('counter.machine.tag')}</span> <TagText tag={sheet.tag} />
            <TextField
              label={t('counter.machine.printed-tag')}
              labelled="heard"
              hint={t('counter.machine.printed-tag')}
              value={typedTag}
              onChange={(text) => {
                setTypedTag(text);
                setInUse(null);
                const tag = parseTag(text);
                if (tag) void bind(tag);
              }}
              {...(inUse !== null && { wrong: inUse })}
              chars={24}
            />
          </div>
        </>
      )}
      {sheet.cameBack && (
        <OneOf
          asks={t('counter.came-back.asks')}
          words="came-back"
          ids={SAME}
          chosen={sheet.cameBack.same}
          onChoose={(same) => sheet.cameBack && write({ cameBack: { ...sheet.cameBack, same } })}
        />
      )}
    </Row>
  );
}
