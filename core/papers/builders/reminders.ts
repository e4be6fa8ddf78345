import type { Money } from '../../money/money.ts';
import type { EpochMs } from '../../time.ts';
import { items, says, strongly } from '../blocks.ts';
import type { Section, Sheet } from '../content.ts';
import type { CommonFacts } from '../facts.ts';
import { type Format, formatFor } from '../format.ts';
import type { Setting } from '../setting.ts';
import { sheet } from '../sheet.ts';

/** A machine that is ready and not collected. */
export type ReminderFacts = CommonFacts & {
  readonly readySince: EpochMs;
  readonly due?: Money;
  /** What was paid beyond what is owed. */
  readonly owedBack?: Money;
  readonly storage?: { readonly from: EpochMs; readonly perDay: Money };
  /** Opening hours, one line each. */
  readonly open: readonly string[];
  /** What was sent before, with its date. */
  readonly before?: readonly { readonly at: EpochMs; readonly what: string }[];
};

/** What happens after the last day, and what becomes of the data first: the shop's own text, as its local law allows. */
export type LastNoticeFacts = ReminderFacts & {
  readonly until: EpochMs;
  readonly afterThat: string;
  readonly dataFirst: string;
};

/** The reminder of a machine that is ready, laid out without drawing. */
export function reminder(facts: ReminderFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds.reminder;
  return sheet('reminder', facts, setting, format, {
    lead: format.say(words.lead, { day: format.day(facts.readySince) }),
    body: [
      ...waiting(facts, words, format),
      ...(facts.storage ? [] : [{ label: words.storage, blocks: says(words.storageNone) }]),
    ],
  });
}

/** The last notice before storage ends, laid out without drawing. */
export function lastNotice(facts: LastNoticeFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds['last-notice'];
  return sheet('last-notice', facts, setting, format, {
    lead: format.say(words.lead, {
      day: format.day(facts.readySince),
      until: format.day(facts.until),
      what: facts.afterThat,
    }),
    body: [{ label: words.data, blocks: says(strongly(facts.dataFirst)) }, ...waiting(facts, words, format)],
  });
}

function waiting(
  { due, owedBack, storage, open, before }: ReminderFacts,
  words: Setting['words']['kinds']['last-notice' | 'reminder'],
  format: Format,
): Section[] {
  return [
    {
      label: words.due,
      blocks: says(
        due && format.money(due),
        owedBack && format.say(words.owedBack, { amount: format.money(owedBack) }),
      ),
    },
    {
      label: words.storage,
      blocks: says(
        storage &&
          format.say(words.storageText, { day: format.date(storage.from), amount: format.money(storage.perDay) }),
      ),
    },
    { label: words.open, blocks: items(open) },
    { label: words.tries, blocks: items(before?.map(({ at, what }) => `${format.day(at)}: ${what}`)) },
  ];
}
