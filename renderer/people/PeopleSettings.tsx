import { useState } from 'react';
import type { OfTheShop } from '../../core/contract/hereSheet.ts';
import { formatTag, parseTag } from '../../core/custody/tag.ts';
import type { ShopSettings } from '../../core/job/shop.ts';
import { NumberField } from '../kit/fields/NumberField.tsx';
import { TextField } from '../kit/fields/TextField.tsx';
import { Key } from '../kit/keys/Key.tsx';
import { Problem, type ProblemWords } from '../kit/keys/Problem.tsx';
import { useWords } from '../kit/text/words.tsx';
import { hereAgain } from '../link/here.ts';
import { useExecute } from '../link/useExecute.ts';
import { useWhoIsHere } from '../whoIsHere.tsx';
import { NewWords } from './NewWords.tsx';
import { SetPin } from './SetPin.tsx';
import './people.css';

/** The shop's people as they get in: PINs, badges, recovery words, when a screen locks. */
export function PeopleSettings({ settings }: { readonly settings: ShopSettings }) {
  const { t } = useWords();
  const { here } = useWhoIsHere();
  const { execute, problem } = useExecute();
  const [minutes, setMinutes] = useState<number | null>(here.lockAfter);
  const [kept, setKept] = useState(false);
  const without = async () => {
    if (await execute('workWithoutPins', {})) await hereAgain();
  };
  const keepLock = async () => {
    if (minutes === null) return;
    setKept((await execute('changeShop', { settings: { ...settings, lockAfterMinutes: minutes } })) !== null);
    await hereAgain();
  };
  return (
    <section className="promise-settings" aria-label={t('people.set.title')}>
      <h2>{t('people.set.title')}</h2>
      {here.use !== 'on' && <p>{t(`people.set.${here.use}`)}</p>}
      <p>{t('people.set.keeps-apart')}</p>
      {here.people.map((person) => (
        <OfPerson key={person.id} person={person} />
      ))}
      {here.use === 'on' && (
        <>
          <div className="people-row">
            <NumberField
              label={t('people.set.lock-after')}
              value={minutes}
              onChange={setMinutes}
              least={1}
              most={240}
              digits={0}
            />
            <span>{t('people.set.minutes')}</span>
            <Key onPress={() => void keepLock()}>{t('people.set.keep-lock')}</Key>
            {kept && <span role="status">{t('people.set.done')}</span>}
          </div>
          <NewWords />
        </>
      )}
      {here.use !== 'off' && (
        <div className="people-row">
          <Key kind="quiet" onPress={() => void without()}>
            {t('people.asked.without')}
          </Key>
          <span>{t('people.asked.without-means')}</span>
        </div>
      )}
      {problem && <Problem slim {...problem} />}
    </section>
  );
}

function OfPerson({ person }: { readonly person: OfTheShop }) {
  const { t } = useWords();
  const { here } = useWhoIsHere();
  const { execute, problem } = useExecute();
  const [setting, setSetting] = useState(false);
  const [typed, setTyped] = useState('');
  const [wrong, setWrong] = useState<ProblemWords | null>(null);
  const tag = parseTag(person.badge ?? '');
  const give = async (badge: typeof tag | null) => {
    if (await execute('giveBadge', { person: person.id, tag: badge ?? null })) {
      setTyped('');
      await hereAgain();
    }
  };
  const giveTyped = () => {
    const read = parseTag(typed);
    setWrong(read ? null : { says: t('app.tag-unknown', { tag: typed }) });
    if (read) void give(read);
  };
  return (
    <div>
      <div className="people-row">
        <b>{person.name}</b>
        {here.use === 'on' && (
          <span>{t(person.hasPin ? 'people.set.has-pin' : 'people.set.has-none', { name: person.name })}</span>
        )}
        <Key onPress={() => setSetting(true)}>{t('people.set.pin-of', { name: person.name })}</Key>
        {tag ? (
          <>
            <span>{t('people.set.badge', { tag: formatTag(tag) })}</span>
            <Key kind="link" onPress={() => void give(null)}>
              {t('people.set.take-badge')}
            </Key>
          </>
        ) : (
          <>
            <TextField
              label={t('people.set.badge-tag', { name: person.name })}
              says={t('people.set.badge-says')}
              value={typed}
              onChange={setTyped}
              chars={10}
            />
            <Key onPress={giveTyped}>{t('people.set.give-badge')}</Key>
          </>
        )}
      </div>
      {wrong && <Problem slim {...wrong} />}
      {problem && <Problem slim {...problem} />}
      {setting && <SetPin person={person} onDone={() => setSetting(false)} />}
    </div>
  );
}
