import { useState } from 'react';
import type { ShopSettings, Staff } from '../../../core/job/shop.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { WeekHours, weekFrom, weekTexts } from './WeekHours.tsx';

/** When each technician is at the bench, where that is not whenever the shop is open. */
export function StaffHours({ staff, settings }: { readonly staff: readonly Staff[]; readonly settings: ShopSettings }) {
  const { t } = useWords();
  const bench = staff.filter((one) => one.roles.includes('bench'));
  const [chosen, setChosen] = useState<string | null>(null);
  const person = bench.find((one) => one.id === chosen);
  return (
    <section className="promise-settings" aria-label={t('reckoning.settings.staff')}>
      <h2>{t('reckoning.settings.staff')}</h2>
      <ChoiceKeys
        label={t('reckoning.settings.staff')}
        mode="one"
        choices={bench.map(({ id, name }) => ({ id, says: name }))}
        chosen={chosen === null ? [] : [chosen]}
        onChoose={([id]) => setChosen(id ?? null)}
      />
      {person && <PersonsHours key={person.id} person={person} staff={staff} settings={settings} />}
    </section>
  );
}

function PersonsHours({
  person,
  staff,
  settings,
}: {
  readonly person: Staff;
  readonly staff: readonly Staff[];
  readonly settings: ShopSettings;
}) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [texts, setTexts] = useState(() => weekTexts(person.hours ?? settings.open));
  const [saved, setSaved] = useState(false);
  const hours = weekFrom(texts);
  const keep = async (own: typeof hours) => {
    const { hours: _, ...rest } = person;
    const now: Staff = own === null ? rest : { ...rest, hours: own };
    setSaved(
      (await execute('changeStaff', { staff: staff.map((one) => (one.id === person.id ? now : one)) })) !== null,
    );
    if (own === null) setTexts(weekTexts(settings.open));
  };
  return (
    <>
      {!person.hours && <p className="k-muted">{t('reckoning.settings.as-the-shop')}</p>}
      <WeekHours
        texts={texts}
        onChange={(next) => {
          setTexts(next);
          setSaved(false);
        }}
      />
      <div className="promise-settings-row">
        <Key
          onPress={() => void keep(hours)}
          {...(hours === null ? { whyNot: t('reckoning.settings.hours-wrong') } : {})}
        >
          {t('reckoning.settings.keep-hours', { name: person.name })}
        </Key>
        {person.hours && (
          <Key kind="link" onPress={() => void keep(null)}>
            {t('reckoning.settings.as-the-shop-again')}
          </Key>
        )}
      </div>
      {saved && <p role="status">{t('reckoning.settings.kept')}</p>}
      {problem && <Problem slim {...problem} />}
    </>
  );
}
