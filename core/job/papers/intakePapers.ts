import { formatTag } from '../../custody/tag.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { epochMs, minutes } from '../../time.ts';
import { CONSENTS, OWN_SIGNATURE } from '../../word/consent.ts';
import { fill } from '../../wording/wordsFor.ts';
import {
  amount,
  changedWords,
  common,
  estimateFacts,
  opened,
  signatureFacts,
  symptomWords,
  taxSays,
  wordsOf,
} from './common.ts';
import { type PaperAsked, settingOf } from './facts.ts';
import { wordOf } from './jobWords.ts';

/** What an owner takes home when the machine stays. */
export function intakeReceiptPaper(asked: PaperAsked): Paper {
  const { job, owner, shop } = asked.view;
  const { facts, history } = wordsOf(asked);
  const { before, consents } = job;
  const told = job.estimates.find((estimate) => estimate.moment === 'told');
  const oftenWords = job.told.often.map((id) => wordOf(history.often, id));
  const encryption =
    before?.encryption === 'no'
      ? 'not-encrypted'
      : before?.keyInHand
        ? 'encrypted-key-in-hand'
        : before?.encryption === 'yes'
          ? 'encrypted-no-key'
          : 'not-known';
  return PAPER_KINDS['intake-receipt'].build(
    {
      ...common(asked),
      acceptedAt: job.takenInAt,
      acceptedBy: shop.staff.find((one) => one.id === asked.asking.by)?.name ?? asked.asking.by,
      told: opened(asked, job.told.ownWords.value),
      toldTerms: symptomWords(asked, job.told.symptoms),
      changedLast: changedWords(asked),
      ...(oftenWords.length > 0 && { howOften: oftenWords }),
      ...(job.told.lastWorked !== null && { lastWorked: job.told.lastWorked }),
      cameAlong: job.cameAlong.map(({ thing, count }) => ({ what: thing, count })),
      liftedBy: job.lift === 'one' ? 1 : 2,
      photographs: job.photographs.length,
      ...(told && { estimate: estimateFacts(asked, told) }),
      limit: amount(asked, job.limitMinor),
      findingFee: { amount: amount(asked, job.feeMinor), creditedWhenRepaired: asked.settings.findingFee.credited },
      ...(job.promised && { promise: job.promised.at }),
      encryption,
      keyPlaces: [facts.encryptionPlaces],
      ...(before && { backup: facts.backup[before.backup] }),
      access: job.secrets.length > 0 ? 'sealed-secret' : 'none',
      mayCollect: [opened(asked, owner.name.value), ...(owner.mayCollect.value ?? [])],
      ...(before && {
        boughtAndWarranty: [
          before.bought && fill(facts.bought, { bought: before.bought, from: before.from ?? '?' }),
          facts.warranty[before.makersWarranty],
        ]
          .filter(Boolean)
          .join(' '),
      }),
      ...(consents.signature && { signature: signatureFacts(asked, consents.signature) }),
    },
    settingOf(asked),
  );
}

/** Every line of the sheet with its answer, under one signature; lines of their own apart. */
export function consentSheetPaper(asked: PaperAsked): Paper {
  const { job, owner } = asked.view;
  const { consents } = job;
  const words: Record<string, unknown> = wordsOf(asked).consents;
  const fills = {
    amount: '',
    days: asked.settings.rules.keptDays,
    name: (owner.mayCollect.value ?? []).join(', '),
    part: '',
    date: '',
    where: '',
    work: consents.own.risk ? '' : '',
    'what-may-happen': '',
  };
  const amounts: Record<string, number> = { limit: job.limitMinor, fee: job.feeMinor };
  const money = new Intl.NumberFormat(asked.settings.locale, { style: 'currency', currency: asked.settings.currency });
  const digits = settingOf(asked).minorDigits(asked.settings.currency);
  return PAPER_KINDS['consent-sheet'].build(
    {
      ...common(asked),
      lines: CONSENTS.filter((id) => id in words).map((id) => {
        const answer = consents.answers[id];
        const text = words[id];
        const choice = typeof text === 'string' ? text : ((text as Record<string, string>)[answer ?? 'back'] ?? id);
        const filled = {
          ...fills,
          amount: amounts[id] === undefined ? '' : money.format((amounts[id] ?? 0) / 10 ** digits),
        };
        const own = consents.own[id];
        return {
          asks: fill(choice, filled),
          ...(answer !== undefined && { answer: answer === 'no' ? ('no' as const) : ('yes' as const) }),
          ...(typeof text !== 'string' && { unansweredIs: 'back' as const }),
          ...(OWN_SIGNATURE.includes(id) && { ownSignature: own ? { given: signatureFacts(asked, own) } : {} }),
        };
      }),
      ...(consents.signature && { signature: signatureFacts(asked, consents.signature) }),
      keepDays: asked.settings.rules.keptDays,
    },
    settingOf(asked),
  );
}

/** The estimate by what was told (or seen), with its maximum: the owner's limit. */
export function estimatePaper(asked: PaperAsked): Paper {
  const { job } = asked.view;
  const { facts } = wordsOf(asked);
  const newest = job.estimates.at(-1);
  const only = job.seen ? 'seen' : 'told';
  const figures = newest && estimateFacts(asked, newest);
  return PAPER_KINDS.estimate.build(
    {
      ...common(asked),
      defect: { says: symptomWords(asked, job.seen ?? job.told.symptoms).join('; '), only },
      repair: facts.repair,
      price: figures
        ? {
            is: 'worked-out',
            how: fill(facts.workedOut, { minutes: figures.minutes.p50 }),
            likely: figures.price,
            maximum: amount(asked, job.limitMinor),
          }
        : { is: 'fixed', amount: amount(asked, job.limitMinor) },
      tax: taxSays(asked),
      findingFee: { amount: amount(asked, job.feeMinor), creditedWhenRepaired: asked.settings.findingFee.credited },
      time: {
        ...(figures && { work: minutes(figures.minutes.p50) }),
        ready: job.promised?.at ?? job.deadline ?? epochMs(asked.asking.at + 7 * 86_400_000),
      },
      meanwhile: { lent: false },
    },
    settingOf(asked),
  );
}

/** Hangs on the machine. */
export const benchTagPaper = (asked: PaperAsked): Paper =>
  PAPER_KINDS['bench-tag'].build(
    {
      ...common(asked),
      acceptedAt: asked.view.job.takenInAt,
      liftedBy: asked.view.job.lift === 'one' ? 1 : 2,
      things: asked.view.job.cameAlong.reduce((sum, thing) => sum + thing.count, 0),
    },
    settingOf(asked),
  );

/** Hangs on a part that left its place. */
export function partTagPaper(asked: PaperAsked): Paper {
  const part = asked.part ? asked.view.parts.get(asked.part) : undefined;
  const from = Object.entries(asked.view.machine.atTakingIn).find(([, id]) => id === part?.id)?.[0];
  return PAPER_KINDS['part-tag'].build(
    {
      ...common(asked),
      parts: part?.tag
        ? [{ tag: formatTag(part.tag), what: part.name, whose: part.belongs.to, ...(from !== undefined && { from }) }]
        : [],
    },
    settingOf(asked),
  );
}
