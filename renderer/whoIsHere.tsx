import { createContext, type ReactNode, useContext, useEffect, useState } from 'react';
import type { CommandRequest } from '../core/commands/asked.ts';
import type { Staff } from '../core/job/shop.ts';
import { epochMs } from '../core/time.ts';
import { Key } from './kit/keys/Key.tsx';
import { useWords } from './kit/text/words.tsx';
import { onScreenLock } from './link/onScreenLock.ts';
import { service } from './link/service.ts';

export type WhoIsHere = { readonly staff: Staff; readonly change: () => void };

const HereContext = createContext<WhoIsHere | null>(null);
const REMEMBERED = 'knowngood.here';

/** Asks once who is at this window; every entry is written in their name. */
export function WhoIsHereProvider({
  staff,
  children,
}: {
  readonly staff: readonly Staff[];
  readonly children: ReactNode;
}) {
  const { t } = useWords();
  const [id, setId] = useState<string | null>(() => localStorage.getItem(REMEMBERED));
  const here = staff.find((one) => one.id === id);
  useEffect(() => (id === null ? undefined : onScreenLock((at) => stopClocksOf(id, at))), [id]);
  if (!here) {
    return (
      <main className="who-is-here">
        <h1>{t('app.who')}</h1>
        {staff.map((one) => (
          <Key
            key={one.id}
            large
            onPress={() => {
              localStorage.setItem(REMEMBERED, one.id);
              setId(one.id);
            }}
          >
            {one.name}
          </Key>
        ))}
      </main>
    );
  }
  return <HereContext.Provider value={{ staff: here, change: () => setId(null) }}>{children}</HereContext.Provider>;
}

/** Their clocks of hands-on minutes stop with the screen; where none runs that is refused, and all is well. */
function stopClocksOf(by: string, at: number): void {
  const asked: CommandRequest<'stopClocks'> = {
    command: crypto.randomUUID(),
    by,
    name: 'stopClocks',
    input: { at: epochMs(at) },
  };
  service.execute(asked).catch(() => undefined);
}

/** Who is at this window now. */
export function useWhoIsHere(): WhoIsHere {
  const here = useContext(HereContext);
  if (!here) throw new Error('useWhoIsHere outside of a WhoIsHereProvider');
  return here;
}
