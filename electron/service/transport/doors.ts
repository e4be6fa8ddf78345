import { ORPCError } from '@orpc/client';
import type { StandardHandlerOptions } from '@orpc/server/standard';
import { Ended } from '../computing/ended.ts';
import type { ScreenSession } from '../people/session.ts';
import { refuseBadText } from './refuseBadText.ts';
import { tellDefect } from './tellDefect.ts';

/** Which door a call came in by, the app's own window or a browser on this computer, and who is at that screen. */
export type Caller = { readonly door: 'window' | 'loopback'; readonly session: ScreenSession };

type Interceptors = NonNullable<StandardHandlerOptions<Caller>['clientInterceptors']>;

/** What stands before every procedure at both doors, in this order. */
export const doorkeepers: Interceptors = [
  async (call) => {
    try {
      return await call.next();
    } catch (error) {
      // Whoever asked does not wait any more: what was ended for that is no defect.
      const givenUp = call.signal?.aborted === true && error === call.signal.reason;
      if (!(error instanceof ORPCError || error instanceof Ended || givenUp)) tellDefect(call.path.join('.'), error);
      throw error;
    }
  },
  (call) => refuseBadText(call),
];
