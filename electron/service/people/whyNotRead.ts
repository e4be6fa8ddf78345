import type { Refusal } from '../../../core/refusal.ts';
import { type LooksIn, lookIn } from './lookIn.ts';
import type { ScreenSession } from './session.ts';
import { whoStands } from './whoStands.ts';

/**
 * What is answered at a screen that nobody is in, or that is locked: what coming in needs, how the shop's data stands, that
 * something happened (never what). A command has its own rules; a draft that was being typed is kept, not given out.
 */
const ALWAYS: ReadonlySet<string> = new Set([
  'here',
  'enter',
  'lock',
  'stir',
  'recover',
  'setPin',
  'makeRecoveryWords',
  'execute',
  'preview',
  'shop',
  'standing',
  'changes',
  'saveDraft',
]);

/** What only who keeps the shop does. */
const KEEPERS: ReadonlySet<string> = new Set(['setBackups', 'backUpNow', 'personsDue', 'personFile']);

/** Why a procedure is not answered at this screen; null where it is. A shop that works without PINs is read by anybody. */
export async function whyNotRead(
  session: ScreenSession,
  procedure: string,
  open: () => Promise<LooksIn>,
  steadyNow: number,
): Promise<Refusal | null> {
  if (ALWAYS.has(procedure)) return null;
  const inside = await lookIn(await open());
  if (inside.people.use !== 'on') return null;
  const { who, refusal } = whoStands(session, inside, steadyNow);
  if (refusal || !KEEPERS.has(procedure) || who.roles.includes('keeper')) return refusal;
  return { refused: 'only-keepers', name: who.name };
}
