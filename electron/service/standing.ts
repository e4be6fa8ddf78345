import type { Notice, StandingSheet } from '../../core/contract/standing.ts';
import type { OpenShop } from '../../db/index.ts';
import { cannotStart } from '../words/cannotStart.ts';
import { watchClock } from './clockWatch.ts';

/** What the screens are told of the shop's data and of the clock, which is watched until the end. */
export function openStanding(
  shop: Pick<OpenShop, 'standing'>,
  backups: { readonly notices: () => Promise<readonly Notice[]> },
): {
  readonly sheet: () => Promise<StandingSheet>;
  readonly end: () => void;
} {
  let jumped: Notice | null = null;
  const watch = watchClock((jump) => {
    jumped = jump;
  });
  return {
    sheet: async () => {
      const { onlyRead, notices } = shop.standing();
      const { says, path, ways } = onlyRead ? cannotStart(onlyRead) : { says: '', path: '', ways: [] };
      const all = [...notices, ...(await backups.notices()), ...(jumped ? [jumped] : [])];
      return { onlyRead: onlyRead && { says, path, ways }, notices: all };
    },
    end: watch.end,
  };
}
