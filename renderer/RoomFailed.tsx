import type { ReactNode } from 'react';
import { Frame } from './Frame.tsx';
import { Key } from './kit/keys/Key.tsx';
import { Problem } from './kit/keys/Problem.tsx';
import { useWords } from './kit/text/words.tsx';
import type { ROOM_PATHS } from './roomLinks.ts';

/** A room that could not be shown: said in its place, with the way to all others. */
export function RoomFailed({
  here,
  onAgain,
  children,
}: {
  readonly here: keyof typeof ROOM_PATHS;
  readonly onAgain: () => void;
  /** Further keys that help. */
  readonly children?: ReactNode;
}) {
  const { t } = useWords();
  return (
    <Frame here={here} open={<h1>{t(`app.rooms.${here}`)}</h1>}>
      <Problem says={t('app.failed.room')} unchanged={t('app.failed.unchanged')} next={t('app.failed.next')}>
        <Key onPress={onAgain}>{t('app.failed.again')}</Key>
        {children}
      </Problem>
    </Frame>
  );
}
