import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Frame } from '../Frame.tsx';
import { Key } from '../kit/keys/Key.tsx';
import { Problem } from '../kit/keys/Problem.tsx';
import { Pane } from '../kit/shell/Pane.tsx';
import { useWords } from '../kit/text/words.tsx';
import { reckoningRead, shopRead } from '../link/reads.ts';
import { wordsOfError } from '../link/refusalWords.ts';
import { PeopleSettings } from '../people/PeopleSettings.tsx';
import { Reckoned } from './Reckoned.tsx';
import { BackupsPane } from './settings/BackupsPane.tsx';
import { Books } from './settings/Books.tsx';
import { MadeOf } from './settings/MadeOf.tsx';
import { MoneySettings } from './settings/MoneySettings.tsx';
import { PersonsPane } from './settings/PersonsPane.tsx';
import { PromiseSettings } from './settings/PromiseSettings.tsx';
import { StaffHours } from './settings/StaffHours.tsx';

/** What was said against what it came to: estimates, task times, priors, losses, each with what so few jobs allow. */
export function ReckoningRoom() {
  const { t } = useWords();
  const reckoning = useQuery(reckoningRead());
  const shop = useQuery(shopRead()).data;
  const settings = shop?.settings;
  const [setting, setSetting] = useState(false);
  return (
    <Frame
      here="reckoning"
      open={
        <>
          <h1>{t('app.rooms.reckoning')}</h1>
          {reckoning.data && <span className="k-muted">{t('reckoning.jobs', { n: reckoning.data.jobs })}</span>}
          {settings && (
            <Key kind="link" onPress={() => setSetting(!setting)}>
              {t(setting ? 'reckoning.settings.back' : 'reckoning.settings.title')}
            </Key>
          )}
        </>
      }
    >
      {reckoning.isPending && <p role="status">{t('app.waiting')}</p>}
      {reckoning.isError && <Problem {...wordsOfError(reckoning.error)} />}
      {settings && setting && (
        <Pane on="sheet">
          <PromiseSettings settings={settings} />
          <StaffHours staff={shop.staff} settings={settings} />
          <MoneySettings settings={settings} />
          <PeopleSettings settings={settings} />
          <BackupsPane />
          <PersonsPane settings={settings} />
          <Books />
          <MadeOf />
        </Pane>
      )}
      {reckoning.data && !setting && <Reckoned sheet={reckoning.data} />}
    </Frame>
  );
}
