import { CONSENTS, type ConsentId, OWN_SIGNATURE } from '../../approval/consent.ts';
import type { ConsentFacts } from '../../papers/builders/consentSheet.ts';
import type { Paper } from '../../papers/content.ts';
import { NOT_YET } from '../../papers/format.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { amount, common, signatureFacts } from '../common.ts';
import type { Making } from '../making.ts';

/** Every line of the sheet with its answer, under one signature; lines with a signature of their own apart. */
export const consentSheetPaper = (making: Making): Paper =>
  PAPER_KINDS['consent-sheet'].build(
    {
      ...common(making),
      lines: CONSENTS.filter((id) => wasAsked(making, id)).map((id) => consentLine(making, id)),
      ...(making.job.consents.signature && { signature: signatureFacts(making, making.job.consents.signature) }),
      keepDays: making.settings.rules.keptDays,
    },
    making.setting,
  );

/** Lines that concern only some machines or some work: not put to an owner whom they do not concern. */
function wasAsked({ job, view }: Making, id: ConsentId): boolean {
  if (id === 'who-collects') return view.owner.mayCollect.value?.length !== 0;
  if (job.consents.answers[id] !== undefined) return true;
  switch (id) {
    case 'film':
      return true;
    case 'publish':
      return job.consents.answers.film === 'yes';
    case 'fee':
      return job.feeMinor > 0;
    case 'warranty-said':
      return job.before?.makersWarranty === 'running';
    case 'risk':
    case 'risk-key':
    case 'no-backup':
      return false;
    default:
      return true;
  }
}

function consentLine(making: Making, id: ConsentId): ConsentFacts {
  const { answers, own } = making.job.consents;
  const answer = answers[id];
  const signed = own[id];
  return {
    asks: asks(making, id),
    ...(answer !== undefined && { answer: answer === 'no' ? ('no' as const) : ('yes' as const) }),
    ...((id === 'dead' || id === 'data-parts') && { unansweredIs: 'back' as const }),
    ...takenBack(making, id),
    ...(OWN_SIGNATURE.includes(id) && { ownSignature: signed ? { given: signatureFacts(making, signed) } : {} }),
  };
}

const takenBack = ({ job, asking }: Making, id: ConsentId) =>
  job.consents.withdrawn.includes(id) ? { takenBackAt: job.consents.withdrawnAt?.[id] ?? asking.at } : {};

/** The line of the sheet as it was put, its places filled. A choice among several is printed as the one that was chosen. */
export function asks(making: Making, id: ConsentId): string {
  const { job, words, format, settings, view } = making;
  const { consent } = words.facts;
  const text: string | { readonly [answer: string]: string } = words.consents[id];
  const chosen = typeof text === 'string' ? text : (text[job.consents.answers[id] ?? 'back'] ?? text.back ?? '');
  return format.say(chosen, {
    amount:
      id !== 'fee' && making.asking.limitOpen
        ? NOT_YET
        : format.money(amount(making, id === 'fee' ? job.feeMinor : job.limitMinor)),
    days: settings.rules.keptDays,
    date: consent.slipDay,
    name: format.list(view.owner.mayCollect.value ?? [words.facts.erased]),
    part: id === 'destroy' ? consent.anyCarrier : consent.anyPart,
    where: consent.where,
    work: job.consents.about[id]?.trim() || consent.risk,
    mayHappen: consent.mayHappen,
  });
}
