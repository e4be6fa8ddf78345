import { useState } from 'react';
import type { FindHit } from '../../../core/contract/screens.ts';
import { ownerId } from '../../../core/ids.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { OneOf } from '../fields/OneOf.tsx';
import { canBeDialled, canBeMailed } from '../fields/reachable.ts';
import { OWNER_KINDS, OwnerKindFields } from './OwnerKindFields.tsx';
import { Row } from './Row.tsx';
import { recogniseOwner } from './recognise.ts';
import { freshSheet, type OwnerSheet } from './sheet.ts';
import { useTakingIn } from './sheetContext.tsx';

/** Name and one way to reach; one who was here before is recognised by either and filled in. */
export function OwnerRow() {
  const { t } = useWords();
  const { sheet, write } = useTakingIn();
  const { owner } = sheet;
  const [seen, setSeen] = useState<FindHit | null>(null);
  // Half a number is no mistake while it is being typed.
  const [left, setLeft] = useState({ phone: owner.phone !== '', mail: owner.mail !== '' });
  const change = (patch: Partial<OwnerSheet>) => write({ owner: { ...owner, ...patch } });
  const look = (kind: 'phone' | 'mail', value: string) => {
    if (owner.known !== null || value.trim() === '') return;
    void recogniseOwner(kind, value).then((found) => found && setSeen(found));
  };
  const forget = () => {
    setSeen(null);
    write({ owner: freshSheet().owner, machine: { known: null, called: '', serial: '' }, cameBack: null });
  };
  return (
    <Row id="owner" known={owner.name.trim() !== '' && (owner.known !== null || owner.phone + owner.mail !== '')}>
      {owner.known !== null ? (
        <p className="counter-line">
          <b>{owner.name}</b> {owner.phone || owner.mail} <span className="k-muted">{t('counter.owner.was-here')}</span>{' '}
          <Key kind="link" onPress={forget}>
            {t('counter.owner.someone-else')}
          </Key>
        </p>
      ) : (
        <>
          <div className="counter-fields">
            <TextField
              label={t('counter.owner.name')}
              labelled="above"
              value={owner.name}
              onChange={(name) => change({ name })}
              chars={18}
              autoFocus
            />
            <TextField
              label={t('counter.owner.phone')}
              labelled="above"
              type="tel"
              value={owner.phone}
              onChange={(phone) => change({ phone })}
              onLeave={() => {
                setLeft({ ...left, phone: true });
                look('phone', owner.phone);
              }}
              wrong={left.phone && !canBeDialled(owner.phone) ? t('counter.wrong.phone') : undefined}
              chars={13}
            />
            <TextField
              label={t('counter.owner.mail')}
              labelled="above"
              type="email"
              value={owner.mail}
              onChange={(mail) => change({ mail })}
              onLeave={() => {
                setLeft({ ...left, mail: true });
                look('mail', owner.mail);
              }}
              wrong={left.mail && !canBeMailed(owner.mail) ? t('counter.wrong.mail') : undefined}
              chars={21}
            />
          </div>
          {seen && (
            <p className="counter-line" role="status">
              {t('counter.owner.seen', { name: seen.title })}{' '}
              <Key
                onPress={() => {
                  change({ known: ownerId(seen.id), name: seen.title, phone: owner.phone || seen.detail });
                  setSeen(null);
                }}
              >
                {t('counter.owner.same')}
              </Key>
            </p>
          )}
        </>
      )}
    </Row>
  );
}

/** Who the owner is before the law, and what that asks for; and who else may fetch the machine. */
export function OwnerKindRow() {
  const { t } = useWords();
  const { sheet, write, settings } = useTakingIn();
  const { owner } = sheet;
  const change = (patch: Partial<OwnerSheet>) => write({ owner: { ...owner, ...patch } });
  if (owner.known !== null) return null;
  return (
    <Row id="owner-kind" known>
      <OneOf
        asks={t('counter.owner.kind')}
        quiet
        words="owner.kinds"
        ids={OWNER_KINDS}
        chosen={owner.kind}
        onChoose={(kind) => change({ kind: kind ?? 'person' })}
      />
      <div className="counter-fields">
        <OwnerKindFields owner={owner} currency={settings.currency} onChange={change} />
        <TextField
          label={t('counter.owner.address')}
          labelled="above"
          value={owner.address}
          onChange={(address) => change({ address })}
          chars={34}
        />
        <TextField
          label={t('counter.owner.may-collect')}
          labelled="above"
          value={owner.mayCollect}
          onChange={(mayCollect) => change({ mayCollect })}
          chars={34}
          says={t('counter.owner.may-collect-says')}
        />
      </div>
    </Row>
  );
}
