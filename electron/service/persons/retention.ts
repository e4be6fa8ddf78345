import type { Notice } from '../../../core/contract/standing.ts';
import { staffId } from '../../../core/ids.ts';
import { DAY_MS, epochMs, HOUR_MS, MINUTE_MS } from '../../../core/time.ts';
import type { OpenShop } from '../../../db/index.ts';
import { carryOut } from '../desk/carryOut.ts';
import type { Tools } from '../desk/tools.ts';
import { personsDue } from './personSheet.ts';

/** So many days before, whoever is due stands on the list. Common practice, no source. */
export const LISTED_DAYS = 7;
const EVERY_MS = 6 * HOUR_MS;
const FIRST_MS = 5 * MINUTE_MS;
/** On so many days of the last ones there must have been work before anything goes by itself. Common practice, no source. */
const WORKED_DAYS = 3;
const WORKED_WITHIN_DAYS = 30;
/** At most so many at a time: the bench goes on meanwhile. */
const AT_A_TIME = 50;

export type RetentionNeeds = {
  readonly shop: OpenShop;
  readonly tools: Tools;
  readonly clock: () => number;
  /** What has to follow an erasure: key parts of backups, drafts. */
  readonly afterErasure: () => Promise<unknown>;
  readonly tellDefect: (what: string, error: unknown) => void;
};

/** Erases by itself whoever's agreed time is over. */
export type Retention = {
  readonly begin: () => void;
  /** @returns How many owners were erased. */
  readonly look: () => Promise<number>;
  readonly notices: () => readonly Notice[];
  readonly end: () => void;
};

export function openRetention({ shop, tools, clock, afterErasure, tellDefect }: RetentionNeeds): Retention {
  let soon = 0;
  const timers: NodeJS.Timeout[] = [];
  const look = async (): Promise<number> => {
    const at = epochMs(clock());
    // A clock that was set years ahead must not erase anything for good: the journal itself has to say that time went by.
    if ((await shop.daysWorked(epochMs(at - WORKED_WITHIN_DAYS * DAY_MS), WORKED_DAYS)) < WORKED_DAYS) return 0;
    const listed = await personsDue(await shop.read(), shop, at, LISTED_DAYS);
    const over = listed.filter((person) => person.over !== null && person.over <= at).slice(0, AT_A_TIME);
    let erased = 0;
    for (const { owner } of over) {
      const command = `retention-${owner}-${at}`;
      const asked = { command, by: staffId('service'), name: 'eraseOwner', input: { owner, asked: false } } as const;
      const done = await carryOut(shop, tools, 'service', asked);
      if (done.ok) erased += 1;
    }
    if (erased > 0) await afterErasure();
    soon = listed.length - over.length;
    return erased;
  };
  const safely = () => void look().catch((error: unknown) => tellDefect('retention', error));
  return {
    begin: () => {
      timers.push(setTimeout(safely, FIRST_MS), setInterval(safely, EVERY_MS));
      for (const timer of timers) timer.unref();
    },
    look,
    notices: () => (soon > 0 ? [{ notice: 'erasures-due', count: soon, days: LISTED_DAYS }] : []),
    end: () => {
      for (const timer of timers) clearTimeout(timer);
    },
  };
}
