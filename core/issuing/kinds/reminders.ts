import { afterDays } from '../../calendar.ts';
import { paidMinor } from '../../job/money/charges.ts';
import { money } from '../../money/arithmetic.ts';
import type { Money } from '../../money/money.ts';
import type { ReminderFacts } from '../../papers/builders/reminders.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { epochMs } from '../../time.ts';
import { amount, common } from '../common.ts';
import { type Lacking, lacking } from '../lacking.ts';
import { billed } from '../lines/billed.ts';
import { openHours } from '../lines/openHours.ts';
import type { Making } from '../making.ts';
import { isAtItsEnd } from './bill.ts';

/** A machine that stands ready and is not collected. */
export const reminderPaper = (making: Making): Paper | Lacking => {
  const facts = reminderFacts(making);
  return facts ? PAPER_KINDS.reminder.build(facts, making.setting) : lacking('paper-not-ready-yet');
};

/**
 * The last one, with what the shop's local law allows, in the shop's own text. It gives as many days again as the shop
 * gives before storage is charged.
 */
export function lastNoticePaper(making: Making): Paper | Lacking {
  const { settings, asking, words } = making;
  const facts = reminderFacts(making);
  if (!facts) return lacking('paper-not-ready-yet');
  if (settings.notCollectedText.trim() === '') return lacking('paper-no-local-text');
  return PAPER_KINDS['last-notice'].build(
    {
      ...facts,
      until: afterDays(asking.at, settings.rules.storageFeeAfterDays, settings.zone),
      afterThat: settings.notCollectedText,
      dataFirst: words.facts.lastNoticeData,
    },
    making.setting,
  );
}

function reminderFacts(making: Making): ReminderFacts | null {
  const { job, settings, asking, words } = making;
  const { rules } = settings;
  const since = job.toldReadyAt;
  if (since === null || !isAtItsEnd(making)) return null;
  const { sentBefore } = words.facts;
  const before = making.found?.reminders ?? [];
  const noticed = before[0]?.at ?? asking.at;
  const left = leftToPay(making);
  return {
    ...common(making),
    readySince: since,
    ...(left.minor < 0 ? { owedBack: money(-left.minor, left.currency) } : { due: left }),
    ...(rules.storageFeeMinorPerDay > 0 &&
      job.charging !== 'free' && {
        storage: {
          from: epochMs(Math.max(afterDays(since, rules.storageFeeAfterDays, settings.zone), noticed)),
          perDay: amount(making, rules.storageFeeMinorPerDay),
        },
      }),
    open: openHours(making),
    before: [
      { at: since, what: sentBefore.ready },
      ...before.map(({ at, last }) => ({ at, what: sentBefore[last ? 'last' : 'reminder'] })),
    ],
  };
}

/** What the bill comes to, less what was paid; below nothing where money goes back. */
function leftToPay(making: Making): Money {
  const { total } = billed(making);
  return money(total.minor - paidMinor(making.job), total.currency);
}
