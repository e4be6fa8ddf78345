import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from 'react';
import type { CommandRequest } from '../core/commands/asked.ts';
import type { HereSheet } from '../core/contract/hereSheet.ts';
import type { StaffId } from '../core/ids.ts';
import type { ShopSettings, Staff } from '../core/job/shop.ts';
import { epochMs, MINUTE_MS } from '../core/time.ts';
import { Key } from './kit/keys/Key.tsx';
import { Problem } from './kit/keys/Problem.tsx';
import { useWords } from './kit/text/words.tsx';
import { setBarred } from './link/barred.ts';
import { hereAgain, useHere } from './link/here.ts';
import { onScreenLock } from './link/onScreenLock.ts';
import { wordsOfError } from './link/refusalWords.ts';
import { send } from './link/send.ts';
import { queries, service } from './link/service.ts';
import { ComeIn } from './people/ComeIn.tsx';
import { Cover, OnlyTheStep } from './people/Cover.tsx';
import { useIdleLock } from './people/useIdleLock.ts';

export type WhoIsHere = {
  readonly staff: Staff;
  readonly here: HereSheet;
  /** Somebody else comes: this one, where their badge was scanned. */
  readonly change: (to?: StaffId) => void;
  readonly lock: () => void;
  readonly locked: boolean;
  /** Somebody is asked who they are: scans are theirs. */
  readonly covered: boolean;
  /** A step's far view says that it stands, and so stays in sight when the screen locks. */
  readonly holdInSight: (held: boolean) => void;
};

const HereContext = createContext<WhoIsHere | null>(null);
const REMEMBERED = 'knowngood.here';

type Props = { readonly staff: readonly Staff[]; readonly settings: ShopSettings; readonly children: ReactNode };

/** Who is at this window, as the service has it: whoever comes says so once, by their PIN where the shop uses them. */
export function WhoIsHereProvider({ staff, settings, children }: Props) {
  const here = useHere();
  const [coming, setComing] = useState<{ readonly to: StaffId | null } | null>(null);
  const [held, setHeld] = useState(false);
  const person = staff.find(({ id }) => id === here?.who);
  const use = here?.use ?? 'none-yet';
  const locked = here?.locked ?? false;
  const come = useCallback(async (who: StaffId) => {
    setBarred(false);
    localStorage.setItem(REMEMBERED, who);
    await hereAgain();
    setComing(null);
    await queries.invalidateQueries();
  }, []);
  const enter = useCallback(
    async (who: StaffId) => {
      await service.enter({ who, pin: null });
      await come(who);
    },
    [come],
  );
  const lock = useCallback(() => {
    if (use !== 'on') return;
    setBarred(true);
    void service.lock().then(hereAgain);
  }, [use]);
  useEffect(() => setBarred(locked), [locked]);
  useIdleLock(use === 'on' && person && !locked ? (here?.lockAfter ?? 0) * MINUTE_MS : null, lock);
  useRemembered(here, enter);
  const id = person?.id;
  useEffect(
    () =>
      id === undefined
        ? undefined
        : onScreenLock((at) => {
            stopClocksOf(id, at);
            lock();
          }),
    [id, lock],
  );
  const value = useMemo<WhoIsHere | null>(
    () =>
      here && person
        ? {
            staff: person,
            here,
            locked,
            covered: locked || coming !== null,
            lock,
            holdInSight: setHeld,
            change: (to) => {
              if (to !== undefined && use !== 'on') void enter(to);
              else setComing({ to: to ?? null });
            },
          }
        : null,
    [here, person, locked, coming, lock, use, enter],
  );
  if (!here) return null;
  const comeIn = (
    <ComeIn
      key={coming?.to ?? ''}
      here={here}
      first={coming?.to ?? (coming ? null : here.who)}
      scanSign={settings.scanSign}
      onIn={come}
      {...(coming && (!locked || held) && { onBack: () => setComing(null) })}
    />
  );
  if (use !== 'on' && (!value || coming)) return <SayWho staff={staff} onSay={enter} />;
  if (!value) return comeIn;
  return (
    <HereContext.Provider value={value}>
      {children}
      {locked && held && !coming && (
        <OnlyTheStep people={here.people} scanSign={settings.scanSign} onComes={(to) => setComing({ to })} />
      )}
      {((locked && !held) || coming) && <Cover>{comeIn}</Cover>}
    </HereContext.Provider>
  );
}

/** In a shop without PINs, whoever was here last at this window is here again. */
function useRemembered(here: HereSheet | undefined, enter: (who: StaffId) => Promise<void>): void {
  const nobody = here !== undefined && here.use !== 'on' && here.who === null;
  const remembered = nobody ? here.people.find(({ id }) => id === localStorage.getItem(REMEMBERED))?.id : undefined;
  useEffect(() => {
    if (remembered !== undefined) enter(remembered).catch(() => localStorage.removeItem(REMEMBERED));
  }, [remembered, enter]);
}

/** Asks once who is at this window, and believes it. */
function SayWho({
  staff,
  onSay,
}: {
  readonly staff: readonly Staff[];
  readonly onSay: (who: StaffId) => Promise<void>;
}) {
  const { t } = useWords();
  const [problem, setProblem] = useState<ReturnType<typeof wordsOfError> | null>(null);
  return (
    <main className="who-is-here">
      <h1>{t('app.who')}</h1>
      {staff.map(({ id, name }) => (
        <Key key={id} large onPress={() => void onSay(id).catch((error: unknown) => setProblem(wordsOfError(error)))}>
          {name}
        </Key>
      ))}
      {problem && <Problem {...problem} />}
    </main>
  );
}

/** Their clocks of hands-on minutes stop with the screen; where none runs that is refused, and all is well. */
function stopClocksOf(by: StaffId, at: number): void {
  const asked: CommandRequest<'stopClocks'> = {
    command: crypto.randomUUID(),
    by,
    name: 'stopClocks',
    input: { at: epochMs(at) },
  };
  send(asked).catch(() => undefined);
}

/** Who is at this window now. */
export function useWhoIsHere(): WhoIsHere {
  const here = useContext(HereContext);
  if (!here) throw new Error('useWhoIsHere outside of a WhoIsHereProvider');
  return here;
}
