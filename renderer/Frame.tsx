import { useQuery } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { useNavigate } from 'react-router';
import type { FindHit } from '../core/contract/screens.ts';
import type { Tag } from '../core/custody/part.ts';
import { parseTag } from '../core/custody/tag.ts';
import { FindField } from './kit/fields/FindField.tsx';
import { Key } from './kit/keys/Key.tsx';
import { CameraReader } from './kit/scan/CameraReader.tsx';
import { useScan } from './kit/scan/scan.ts';
import { RoomShell } from './kit/shell/RoomShell.tsx';
import { useWords, type Words } from './kit/text/words.tsx';
import { useConnected } from './link/connection.ts';
import { shopRead } from './link/reads.ts';
import { queryOf, service } from './link/service.ts';
import { ofBadge } from './people/ofBadge.ts';
import { PinsAsked } from './people/PinsAsked.tsx';
import { roomLinks } from './roomLinks.ts';
import { unreadableFacts } from './unreadable.ts';
import { useStandingLines } from './useStandingLines.tsx';
import { whereIs } from './whereIs.ts';
import { useWhoIsHere } from './whoIsHere.tsx';

export type FrameProps = {
  readonly here: string;
  readonly open: ReactNode;
  readonly foot?: ReactNode;
  readonly touch?: 'counter' | 'bench';
  /** Takes a scanned tag first; true when the room has dealt with it. */
  readonly onScan?: (found: FindHit) => boolean;
  /** A tag with a right check character that belongs to nothing yet: a printed one to be bound. True when it was. */
  readonly onFreshTag?: (tag: Tag) => boolean;
  /** Entries of what is shown that cannot be read, by their number. */
  readonly unreadable?: readonly number[];
  readonly children: ReactNode;
};

const isTag = (code: string): boolean => parseTag(code) !== undefined;

/** The frame of every room, with the one search field and the scanner listening. */
export function Frame({
  here,
  open,
  foot,
  touch = 'counter',
  onScan,
  onFreshTag,
  unreadable = [],
  children,
}: FrameProps) {
  const words = useWords();
  const { t } = words;
  const missing = unreadableFacts(unreadable, words);
  const { staff, here: atScreen, change, lock, covered } = useWhoIsHere();
  const go = useNavigate();
  const connected = useConnected();
  const [typed, setTyped] = useState('');
  /** Why a tag that was read opens nothing, in words. */
  const [unread, setUnread] = useState<string | null>(null);
  const [camera, setCamera] = useState(false);
  const shop = useQuery(shopRead());
  const hits = useQuery(queryOf.find.queryOptions({ input: { text: typed }, enabled: typed.trim() !== '' }));
  const openFound = (found: FindHit) => go(whereIs(found, here));
  const read = (code: string) => {
    const comes = ofBadge(atScreen.people, code);
    if (comes) return change(comes.id);
    void service.byTag({ tag: code }).then((found) => {
      const tag = parseTag(code);
      const bound = found === null && tag !== undefined && onFreshTag?.(tag) === true;
      const says = found?.is === 'void-tag' ? voidWords(found, t) : t('app.tag-unknown', { tag: code });
      setUnread((found && found.is !== 'void-tag') || bound ? null : says);
      if (found && found.is !== 'void-tag' && !onScan?.(found)) openFound(found);
    });
  };
  const sign = shop.data?.settings?.scanSign;
  useScan({ check: isTag, ...(sign !== undefined && { prefix: sign }) }, read, !covered);
  const standing = useStandingLines();
  const notice = unread ?? (connected ? undefined : t('app.lost'));
  const asked = atScreen.use === 'none-yet';
  return (
    <RoomShell
      here={here}
      rooms={roomLinks(words)}
      touch={touch}
      open={open}
      {...(foot === undefined ? {} : { foot })}
      {...((notice !== undefined || standing || asked || unreadable.length > 0) && {
        notice: (
          <>
            {notice !== undefined && <p role="status">{notice}</p>}
            {unreadable.length > 0 && <p role="status">{t(`app.unreadable.${missing.how}`, missing.facts)}</p>}
            {standing}
            {asked && <PinsAsked />}
          </>
        ),
      })}
      find={
        <>
          <FindField
            label={t('app.find')}
            hint={t('app.find-hint')}
            value={typed}
            onChange={setTyped}
            hits={(hits.data ?? []).map((found) => ({
              id: `${found.is}/${found.id}`,
              says: found.title,
              kind: `${t(`app.found.${found.is}`)} · ${found.detail}`,
            }))}
            onChoose={(id) => {
              const found = hits.data?.find((one) => `${one.is}/${one.id}` === id);
              if (found?.is === 'void-tag') setUnread(voidWords(found, t));
              else if (found) openFound(found);
              setTyped('');
            }}
            nothing={t('app.find-nothing')}
          />
          <Key kind="link" onPress={() => setCamera(true)}>
            {t('app.camera')}
          </Key>
          <Key kind="link" onPress={() => change()}>
            {staff.name}
          </Key>
          {atScreen.use === 'on' && (
            <Key kind="link" onPress={lock}>
              {t('people.lock')}
            </Key>
          )}
        </>
      }
    >
      {children}
      {camera && (
        <CameraReader
          check={isTag}
          onCode={(code) => {
            setCamera(false);
            read(code);
          }}
          onClose={() => setCamera(false)}
        />
      )}
    </RoomShell>
  );
}

const voidWords = (found: FindHit, t: Words['t']): string =>
  t(found.detail === '' ? 'app.tag-void-nothing' : 'app.tag-void', { tag: found.title, on: found.detail });
