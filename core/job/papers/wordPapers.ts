import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { minutes } from '../../time.ts';
import { wordRow } from '../../word/compareWords.ts';
import type { Question } from '../../word/question.ts';
import { fill } from '../../wording/wordsFor.ts';
import { chargedMinutes, labourMinor } from '../charges.ts';
import { amount, common, estimateFacts, opened, staffName, symptomWords, wordFacts, wordsOf } from './common.ts';
import { type PaperAsked, settingOf } from './facts.ts';

const newest = (asked: PaperAsked, which: (question: Question) => boolean): Question => {
  const question = asked.view.job.questions.findLast(which);
  if (!question) throw new Error('a paper about a question that was not put');
  return question;
};

const optionFacts = (asked: PaperAsked, question: Question) =>
  question.options.map(({ id, says, agrees }) => ({
    title: says,
    ...(agrees.limitMinor !== null && { figure: amount(asked, agrees.limitMinor) }),
    lines: agrees.items.map((item) => item.what),
    ...(question.answer && { chosen: question.answer.options.includes(id) }),
  }));

/** Told and seen side by side, the estimate before and now, and what can be answered. */
export function changedFindingPaper(asked: PaperAsked): Paper {
  const { job } = asked.view;
  const question = newest(asked, (one) => one.kind === 'changed-finding');
  const before = job.estimates.find((estimate) => estimate.moment === 'told') ?? job.estimates[0];
  const now = job.estimates.findLast((estimate) => estimate.moment === 'seen') ?? job.estimates.at(-1);
  if (!before || !now) throw new Error('a changed finding without estimates');
  const { facts, tracing } = wordsOf(asked);
  const spent = chargedMinutes(job);
  return PAPER_KINDS['changed-finding-notice'].build(
    {
      ...common(asked),
      told: symptomWords(asked, job.told.symptoms).join('; '),
      seen: symptomWords(asked, job.seen ?? []).join('; '),
      means: facts.means,
      before: estimateFacts(asked, before),
      now: estimateFacts(asked, now),
      ...(now.withPart && {
        withPart: {
          part: (tracing.kinds as Record<string, string>)[now.withPart.name] ?? now.withPart.name,
          price: amount(asked, Math.max(0, now.withPart.p90 - now.price.p90)),
          p50: amount(asked, now.withPart.p50),
          p90: amount(asked, now.withPart.p90),
        },
      }),
      limit: amount(asked, job.limitMinor),
      soFar: { minutes: spent, amount: amount(asked, labourMinor(job, spent)) },
      options: optionFacts(asked, question),
      validUntil: question.validUntil,
      without: facts.withoutAnswer,
    },
    settingOf(asked),
  );
}

/** The part on offer, attribute by attribute; worse first, in words. */
export function disclosurePaper(asked: PaperAsked): Paper {
  const question = newest(asked, (one) => one.offer !== null);
  const { offer } = question;
  const { view, settings } = asked;
  if (!offer) throw new Error('an offer without a part');
  const { fit, facts } = wordsOf(asked);
  const part = view.parts.get(offer.forPart);
  const count = (verdict: string) => offer.rows.filter((row) => row.verdict === verdict).length;
  return PAPER_KINDS['substitute-part-disclosure'].build(
    {
      ...common(asked),
      part: {
        what: part?.name ?? offer.forPart,
        verdict: view.job.verdict?.is === 'confirmed' ? 'confirmed' : 'named',
      },
      offered: {
        name: view.parts.get(offer.part)?.name ?? offer.part,
        condition: offer.condition,
        price: amount(asked, offer.priceMinor),
        warranty: fill(facts.warrantyMonths, { months: offer.warrantyMonths }),
      },
      whyNotSame: offer.whyNotSame,
      rows: offer.rows.map((row) => {
        const { yours, offered, ...worded } = wordRow(row, fit, settings.locale);
        return { ...worded, ...(yours !== null && { yours }), ...(offered !== null && { offered }) };
      }),
      notice: fill(facts.notice, { worse: count('worse'), better: count('better'), equal: count('equal') }),
      afterwards: offer.afterwards.map(({ says, minutes: hands, priceMinor }) => ({
        says,
        minutes: minutes(hands),
        ...(priceMinor !== null && { price: amount(asked, priceMinor) }),
      })),
      extras: offer.extras.map(({ what, priceMinor }) => ({ what, amount: amount(asked, priceMinor) })),
      options: optionFacts(asked, question),
      validUntil: question.validUntil,
      without: facts.withoutAnswer,
    },
    settingOf(asked),
  );
}

/** What was asked, every try, who answered, how, and the limit agreed. */
export function ownersWordPaper(asked: PaperAsked): Paper {
  const { job } = asked.view;
  const question =
    job.questions
      .filter((one) => one.answer !== null)
      .toSorted((a, b) => (a.answer?.at ?? 0) - (b.answer?.at ?? 0))
      .at(-1) ?? newest(asked, () => true);
  const chosen = question.options.filter((option) => question.answer?.options.includes(option.id));
  const items = [
    ...(chosen.some((option) => option.agrees.accepts) && question.offer
      ? [{ what: asked.view.parts.get(question.offer.part)?.name ?? '', priceMinor: question.offer.priceMinor }]
      : []),
    ...chosen.flatMap((option) => option.agrees.items),
  ];
  const agreed = items.map(({ what, priceMinor }) => ({ what, amount: amount(asked, priceMinor) }));
  const limit = chosen.map((option) => option.agrees.limitMinor).findLast((one) => one !== null);
  return PAPER_KINDS['owners-word-record'].build(
    {
      ...common(asked),
      question: question.says,
      options: question.options.map(({ id, says }) => ({
        says,
        chosen: question.answer?.options.includes(id) ?? false,
      })),
      tries: question.tries,
      answer: question.answer
        ? wordFacts(asked, question.answer, staffName(asked, asked.asking.by))
        : { lapsed: true, without: wordsOf(asked).facts.withoutAnswer },
      ...(agreed.length > 0 && {
        agreed,
        additionalTotal: amount(
          asked,
          items.reduce((sum, item) => sum + item.priceMinor, 0),
        ),
      }),
      ...(limit !== undefined &&
        limit !== null && { limit: { now: amount(asked, limit), before: amount(asked, job.firstLimitMinor) } }),
    },
    settingOf(asked),
  );
}

/** What happened at our hands: written as it was. */
export function incidentPaper(asked: PaperAsked): Paper {
  const { job, parts } = asked.view;
  const incident = job.incidents.at(-1);
  if (!incident) throw new Error('an incident paper without an incident');
  const { facts } = wordsOf(asked);
  const part = incident.part === null ? undefined : parts.get(incident.part);
  return PAPER_KINDS.incident.build(
    {
      ...common(asked),
      happenedAt: incident.at,
      what: opened(asked, incident.what.value),
      ...(part && { part: { what: part.name, ...(part.tag && { tag: part.tag }) } }),
      cause: incident.cause === 'known' ? facts.causeKnown : facts.causeUnknown,
      present: [staffName(asked, asked.asking.by)],
      photographs: incident.photographs.length,
      means: facts.incidentMeans,
    },
    settingOf(asked),
  );
}
