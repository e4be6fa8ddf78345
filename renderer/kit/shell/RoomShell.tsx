import type { ReactNode } from 'react';
import { useWords } from '../text/words.tsx';
import './RoomShell.css';

export type RoomLink = { readonly id: string; readonly name: string; readonly href: string };
export type RoomShellProps = {
  /** What is open, at the left: a tag and a name, or the room's own heading. */
  readonly open: ReactNode;
  readonly rooms: readonly RoomLink[];
  /** Id of the room one is in. */
  readonly here: string;
  /** The one search field. */
  readonly find?: ReactNode;
  /** A line under the header that stays until it is dealt with: a scanned tag that belongs elsewhere, a lost service. */
  readonly notice?: ReactNode;
  /** The line at the foot with what one came to do. */
  readonly foot?: ReactNode;
  /** Gloved hands need larger keys. */
  readonly touch?: 'counter' | 'bench';
  readonly children: ReactNode;
};

/** The frame of every room: what is open, the rooms in words, the work, the foot. */
export function RoomShell({ open, rooms, here, find, notice, foot, touch = 'counter', children }: RoomShellProps) {
  const { t } = useWords();
  return (
    <div className="k-shell" data-touch={touch}>
      <a className="k-shell-skip" href="#work">
        {t('kit.shell.skip')}
      </a>
      <header className="k-shell-head">
        <div className="k-shell-open">{open}</div>
        {find !== undefined && <div className="k-shell-find">{find}</div>}
        <nav aria-label={t('kit.shell.rooms')} className="k-shell-rooms">
          {rooms.map((room) => (
            <a key={room.id} href={room.href} aria-current={room.id === here ? 'page' : undefined}>
              <span data-bold={room.name}>{room.name}</span>
            </a>
          ))}
        </nav>
      </header>
      {notice !== undefined && <div className="k-shell-notice">{notice}</div>}
      <main id="work" className="k-shell-work" tabIndex={-1}>
        {children}
      </main>
      {foot !== undefined && <footer className="k-shell-foot">{foot}</footer>}
    </div>
  );
}
