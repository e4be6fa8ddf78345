import { useQuery } from '@tanstack/react-query';
import { Frame } from '../Frame.tsx';
import { Problem } from '../kit/keys/Problem.tsx';
import { useWords } from '../kit/words.tsx';
import { wordsOfError } from '../link/does.ts';
import { reckoningRead } from '../link/reads.ts';
import { Reckoned } from './Reckoned.tsx';

/** What was said against what it came to: estimates, task times, priors, losses, each with what so few jobs allow. */
export function ReckoningRoom() {
  const { t } = useWords();
  const reckoning = useQuery(reckoningRead());
  return (
    <Frame
      here="reckoning"
      open={
        <>
          <h1>{t('app.rooms.reckoning')}</h1>
          {reckoning.data && <span className="k-muted">{t('reckoning.jobs', { n: reckoning.data.jobs })}</span>}
        </>
      }
    >
      {reckoning.isPending && <p role="status">{t('app.waiting')}</p>}
      {reckoning.isError && <Problem {...wordsOfError(reckoning.error)} />}
      {reckoning.data && <Reckoned sheet={reckoning.data} />}
    </Frame>
  );
}
