import type { Staff } from '../../../core/job/shop.ts';
import type { Refusal } from '../../../core/refusal.ts';
import { MINUTE_MS, type Minutes, minutes } from '../../../core/time.ts';
import type { Inside } from './lookIn.ts';
import type { ScreenSession } from './session.ts';

/** How long a screen stays open without a hand on it, where the shop says nothing else. Common practice, no source. */
const USUAL_LOCK = 5;

type Locks = { readonly lockAfter: Minutes };
/** Who is at a screen: somebody who may ask, or a refusal, with whoever was last in where the screen is locked. */
export type AtScreen = Locks &
  (
    | { readonly who: Staff; readonly locked: false; readonly refusal: null }
    | { readonly who: Staff | null; readonly locked: boolean; readonly refusal: Refusal }
  );

/**
 * Who is at a screen now: `nobody-is-here`, or one who only said who they are where PINs are used by now; `person-gone`;
 * `screen-locked`, by hand or because no hand was on it for as long as the shop says.
 */
export function whoStands(session: ScreenSession, { settings, staff, people }: Inside, steadyNow: number): AtScreen {
  const lockAfter = minutes(settings?.lockAfterMinutes ?? USUAL_LOCK);
  const none = (refusal: Refusal) => ({ who: null, locked: false, refusal, lockAfter }) as const;
  const asksPin = people.use === 'on';
  if (session.who === null || (asksPin && !session.proved)) return none({ refused: 'nobody-is-here' });
  const who = staff.find(({ id }) => id === session.who);
  if (!who) return none({ refused: 'person-gone', person: session.who });
  const idle = steadyNow - session.stirredAt >= lockAfter * MINUTE_MS;
  if (asksPin && (session.locked || idle))
    return { who, locked: true, refusal: { refused: 'screen-locked' }, lockAfter };
  return { who, locked: false, refusal: null, lockAfter };
}
