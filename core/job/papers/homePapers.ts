import type { Part } from '../../custody/ledger.ts';
import { formatTag } from '../../custody/tag.ts';
import { taxed, taxRate } from '../../money/tax.ts';
import type { StepFacts } from '../../papers/builders/returnReportFacts.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { epochMs } from '../../time.ts';
import { fill } from '../../wording/wordsFor.ts';
import { type ChargeLine, charges } from '../charges.ts';
import { amount, common, opened, placeWords, staffName, symptomWords, taxSays, wordFacts, wordsOf } from './common.ts';
import { type PaperAsked, settingOf } from './facts.ts';
import { wordOf } from './jobWords.ts';

const WAYS = {
  'both-ways': 'both-ways',
  'on-the-second-rig': 'second-rig',
  'by-its-own-evidence': 'own-evidence',
} as const;

const nameOf = (asked: PaperAsked, work: { readonly kind: string; readonly what: string }): string => {
  const { tracing } = wordsOf(asked);
  const steps: Readonly<Record<string, { readonly name: string }>> = tracing.steps;
  return work.kind === 'step'
    ? (steps[work.what]?.name ?? work.what)
    : wordOf(work.kind === 'proof' ? tracing.proofs : tracing.tasks, work.what);
};

/** What the owner takes home with the machine: what was found, how it is known, where every part is, what was done. */
export function returnReportPaper(asked: PaperAsked): Paper {
  const { view, settings } = asked;
  const { job, parts, machine } = view;
  const { facts } = wordsOf(asked);
  const asItCame = job.stages.some((one) => one.stage === 'home-as-it-came');
  const done = charges(job, asItCame);
  const involved = [...new Set([...Object.values(machine.atTakingIn), ...job.parts])]
    .flatMap((id) => parts.get(id) ?? [])
    .filter((part) => part.belongs.to === 'owner' || part.place.at === 'slot');
  const moved = involved.filter(
    (part) =>
      slotAtFirst(asked, part) !== undefined &&
      part.place.at === 'slot' &&
      slotAtFirst(asked, part) !== part.place.slot,
  );
  return PAPER_KINDS['return-report'].build(
    {
      ...common(asked),
      outcome: asItCame
        ? 'as-it-came'
        : job.verdict?.is === 'cured'
          ? 'cured-by-reseating'
          : job.verdict?.is === 'not-reproduced'
            ? 'not-reproduced'
            : job.tasks
              ? 'known-work'
              : 'repaired',
      told: opened(asked, job.told.ownWords.value),
      seen: symptomWords(asked, job.seen ?? []),
      verdict: verdictFacts(asked),
      ...(fittedFacts(asked) ?? {}),
      allInPlace: moved.length === 0,
      parts: involved.map((part) => partRow(asked, part)),
      proofs: job.work
        .filter((work) => work.kind === 'proof' && !work.struck && work.endedAt !== null)
        .flatMap((work) =>
          work.readings.map((reading) => ({
            what: reading.what,
            result: reading.value,
            ...(reading.limit !== null && { limit: [reading.limit, reading.source].filter(Boolean).join(', ') }),
          })),
        ),
      byTheWay: [
        ...job.notes.filter((note) => note.foundByTheWay).map((note) => opened(asked, note.says)),
        ...moved.map((part) =>
          fill(facts.recordedSlot, {
            name: part.name,
            was: slotAtFirst(asked, part),
            now: part.place.at === 'slot' ? part.place.slot : '',
          }),
        ),
      ],
      ...(job.handover && {
        differences: job.handover.differences.map((one) => one.says?.value ?? facts.differences[one.what]),
      }),
      cost: {
        lines: done.lines
          .filter((line) => line.minor > 0)
          .map((line) => ({ what: lineWords(asked, line), amount: amount(asked, line.minor) })),
        total: amount(asked, done.totalMinor),
      },
      warranty: warrantyWords(asked),
      log: job.work
        .filter((work) => work.endedAt !== null && !work.struck)
        .map(
          (work): StepFacts => ({
            at: work.startedAt,
            what: nameOf(asked, work),
            outcome: wordOf(wordsOf(asked).tracing.outcomes, work.outcome ?? ''),
            hands: work.handsOn,
            wait: work.waiting,
            by: staffName(asked, work.by),
          }),
        ),
    },
    settingOf({ ...asked, settings }),
  );
}

function verdictFacts(asked: PaperAsked) {
  const { job, parts } = asked.view;
  const { verdict } = job;
  const { tracing, facts } = wordsOf(asked);
  const faults: Readonly<Record<string, { readonly plain: string }>> = tracing.faults;
  if (verdict?.is === 'confirmed') {
    const evidence = verdict.evidence.flatMap((run) => job.work.find((work) => work.run === run) ?? []);
    return {
      is: 'confirmed' as const,
      part: parts.get(verdict.part)?.name ?? verdict.part,
      how: WAYS[verdict.way],
      detail: [
        `${faults[verdict.fault]?.plain ?? verdict.fault}.`,
        ...evidence.map((work) =>
          fill(facts.wayDetail, { step: nameOf(asked, work), outcome: wordOf(tracing.outcomes, work.outcome ?? '') }),
        ),
      ],
    };
  }
  if (verdict?.is === 'named')
    return {
      is: 'named' as const,
      part: (verdict.part && parts.get(verdict.part)?.name) || (faults[verdict.fault]?.plain ?? verdict.fault),
      detail: [],
    };
  return {
    is: 'not-known' as const,
    detail: verdict?.is === 'cured' && verdict.fault ? [faults[verdict.fault]?.plain ?? verdict.fault] : [],
  };
}

function fittedFacts(asked: PaperAsked) {
  const { job } = asked.view;
  const line = job.sold.find((one) => one.part !== null);
  const question = job.questions.find((one) => one.id === line?.question);
  if (!line || !question?.answer) return null;
  return {
    fitted: {
      what: line.what,
      agreedHow: fill(wordsOf(asked).facts.agreedHow, { name: opened(asked, question.answer.name.value) }),
    },
  };
}

const slotAtFirst = (asked: PaperAsked, part: Part): string | undefined =>
  Object.entries(asked.view.machine.atTakingIn).find(([, id]) => id === part.id)?.[0];

function partRow(asked: PaperAsked, part: Part) {
  const { facts } = wordsOf(asked);
  const dead = part.standing.is === 'dead';
  const sold = asked.view.job.sold.some((line) => line.part === part.id);
  const came = slotAtFirst(asked, part);
  return {
    what: part.name,
    ...(part.tag && { tag: formatTag(part.tag) }),
    mark: { whose: part.belongs.to, ...(dead && { state: 'dead' as const }) },
    whose: sold ? facts.sold : part.belongs.to === 'shop' ? facts.ours : dead ? facts.failed : facts.yours,
    came: came === undefined ? facts.inShop : fill(facts.inSlot, { slot: came }),
    goes: placeWords(asked, part),
  };
}

const lineWords = (asked: PaperAsked, line: ChargeLine): string =>
  line.is === 'item' ? line.what : wordsOf(asked).facts[line.is === 'labour' ? 'labour' : 'findingFee'];

const warrantyWords = (asked: PaperAsked): readonly string[] => {
  const { facts } = wordsOf(asked);
  return [
    fill(facts.warrantyWork, { months: asked.settings.warrantyMonths.work }),
    ...asked.view.job.sold
      .filter((line) => line.part !== null)
      .map((line) => fill(facts.warrantyPart, { what: line.what, months: line.warrantyMonths })),
  ];
};

/** The bill: labour by time and rate, each item, the tax in it; its sum is the ledger's. */
export function billPaper(asked: PaperAsked): Paper {
  const { job } = asked.view;
  const asItCame = job.stages.some((one) => one.stage === 'home-as-it-came');
  const done = charges(job, asItCame);
  const rate = taxRate(asked.settings.tax.permille / 10);
  const tax = (minor: number) =>
    taxed(amount(asked, minor), rate, {
      prices: asked.settings.tax.inside ? 'tax-contained' : 'tax-on-top',
      rounding: 'half-up',
    }).tax;
  const lines = done.lines
    .filter((line) => line.minor > 0)
    .map((line) => {
      const money = { amount: amount(asked, line.minor), tax: tax(line.minor) };
      if (line.is === 'labour')
        return {
          ...money,
          is: 'work' as const,
          minutes: line.handsOn,
          rate: amount(asked, Math.round(line.perMinuteMinor * 60)),
        };
      if (line.is === 'item' && line.part !== null)
        return { ...money, is: 'part' as const, what: line.what, condition: conditionOf(asked, line.part) };
      return { ...money, is: 'other' as const, what: lineWords(asked, line) };
    });
  return PAPER_KINDS.bill.build(
    {
      ...common(asked),
      told: opened(asked, job.told.ownWords.value),
      done: job.work
        .filter((work) => ['fitting', 'proof', 'cleaning'].includes(work.kind) && !work.struck)
        .map((work) => nameOf(asked, work))
        .filter((name, at, all) => all.indexOf(name) === at),
      lines,
      total: amount(asked, done.totalMinor),
      taxTotal: amount(
        asked,
        lines.reduce((sum, line) => sum + line.tax.minor, 0),
      ),
      taxSays: taxSays(asked),
      limit: amount(asked, job.limitMinor),
      findingFee: { amount: amount(asked, job.feeMinor), credited: !asItCame && asked.settings.findingFee.credited },
      warranty: warrantyWords(asked),
      workBy: [
        ...new Set(job.work.filter((work) => work.kind !== 'own-proof').map((work) => staffName(asked, work.by))),
      ],
    },
    settingOf(asked),
  );
}

const conditionOf = (asked: PaperAsked, part: string) =>
  asked.view.job.questions.find((question) => question.offer?.part === part)?.offer?.condition ?? 'used';

/** What becomes of the part that was replaced, and by whose word. */
export function replacedPartPaper(asked: PaperAsked): Paper {
  const { job, parts } = asked.view;
  const question = job.questions.findLast((one) => one.offer !== null && one.answer !== null);
  const part = question?.offer ? parts.get(question.offer.forPart) : undefined;
  if (!question?.answer || !part) throw new Error('a slip without a replaced part');
  const { place } = part;
  const goes =
    place.at === 'kept'
      ? ({ is: 'kept', until: place.until, place: place.shelf } as const)
      : place.at === 'transit'
        ? ({ is: 'sent', to: place.to } as const)
        : place.at === 'gone'
          ? ({ is: 'recycled' } as const)
          : ({ is: 'returned' } as const);
  return PAPER_KINDS['replaced-part-slip'].build(
    {
      ...common(asked),
      part: { what: part.name, ...(part.tag && { tag: formatTag(part.tag) }) },
      verdict:
        job.verdict?.is === 'confirmed'
          ? { is: 'confirmed', how: wordsOf(asked).tracing.ways[job.verdict.way] }
          : { is: 'named' },
      goes,
      ...(goes.is !== 'returned' && { word: wordFacts(asked, question.answer, staffName(asked, asked.asking.by)) }),
      data: part.dataBearing ? 'can-hold-data' : part.kind === 'board' ? 'settings-cleared' : 'none',
    },
    settingOf(asked),
  );
}

const reminderFacts = (asked: PaperAsked) => {
  const { job } = asked.view;
  const { settings } = asked;
  const day = new Intl.DateTimeFormat(settings.locale, { weekday: 'long', timeZone: 'UTC' });
  const since = job.toldReadyAt ?? asked.asking.at;
  return {
    ...common(asked),
    readySince: since,
    due: amount(
      asked,
      charges(
        job,
        job.stages.some((one) => one.stage === 'home-as-it-came'),
      ).owedMinor,
    ),
    storage: {
      from: epochMs(since + settings.rules.storageFeeAfterDays * 86_400_000),
      perDay: amount(asked, settings.rules.storageFeeMinorPerDay),
    },
    // 4 January 1970 was a Sunday: weekday names without a calendar of our own.
    open: settings.open.map(({ weekday, from, to }) =>
      fill(wordsOf(asked).facts.open, { day: day.format((3 + weekday) * 86_400_000), from, to }),
    ),
  };
};

export const reminderPaper = (asked: PaperAsked): Paper =>
  PAPER_KINDS.reminder.build(reminderFacts(asked), settingOf(asked));

export const lastNoticePaper = (asked: PaperAsked): Paper =>
  PAPER_KINDS['last-notice'].build(
    {
      ...reminderFacts(asked),
      until: epochMs(asked.asking.at + 14 * 86_400_000),
      afterThat: asked.settings.notCollectedText || wordsOf(asked).facts.afterThat,
      dataFirst: wordsOf(asked).facts.dataFirst,
    },
    settingOf(asked),
  );
