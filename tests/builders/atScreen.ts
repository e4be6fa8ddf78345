import { staffId } from '../../core/ids.ts';
import { newSession, type ScreenSession } from '../../electron/service/people/session.ts';

/** A window at which somebody has said who they are, in a shop that works without PINs. */
export const screenOf = (who: string): ScreenSession => ({ ...newSession('window'), who: staffId(who) });
