import type { Answer, AnswerHow } from '../approval/question.ts';
import type { Signature } from '../approval/signature.ts';
import { papersSince } from '../job/papersSince.ts';
import { money } from '../money/arithmetic.ts';
import type { Money } from '../money/money.ts';
import type { CommonFacts, SignatureFacts, WordFacts } from '../papers/facts.ts';
import type { PaperKindId } from '../text/paperWords.ts';
import { type EpochMs, epochMs } from '../time.ts';
import type { Making } from './making.ts';

/** An amount in the shop's currency, to the whole minor unit: estimates are simulated and come with fractions. */
export const amount = ({ settings }: Making, minor: number): Money => money(Math.round(minor), settings.currency);

/** A personal value, or the word for what was erased. */
export const opened = ({ words }: Making, value: string | null | undefined): string => value ?? words.facts.erased;

/** What a member of the shop is called. */
export const staffName = ({ view }: Making, id: string): string =>
  view.shop.staff.find((one) => one.id === id)?.name ?? id;

const lines = (text: string): readonly string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

/** What every paper takes: number, shop, owner, machine, the last sealed head. */
export function common(making: Making): CommonFacts {
  const { view, settings, asking, older, number, words, restsOn } = making;
  const { owner, machine, job } = view;
  const reach = owner.reach.value;
  const address = owner.address && lines(opened(making, owner.address.value));
  const { vendor, name } = machine.report?.system ?? { vendor: null, name: null };
  const serial = machine.serial && opened(making, machine.serial.value);
  return {
    number,
    issuedAt: asking.at,
    headShort: asking.lastHead ?? words.facts.noHead,
    shop: { name: settings.name, address: lines(settings.address), ...(settings.phone && { phone: settings.phone }) },
    owner: {
      name: opened(making, owner.name.value),
      ...(address && { address }),
      ...(reach?.phone && { phone: reach.phone }),
      ...(reach?.mail && { mail: reach.mail }),
    },
    machine: {
      tag: machine.tag ?? job.tag,
      what: machine.called,
      ...(vendor && !machine.called.includes(vendor) && { maker: vendor }),
      ...(name && !machine.called.includes(name) && { model: name }),
      ...(serial && { serial }),
    },
    ...(job.charging === 'free' && { free: true }),
    ...(asking.shopId !== undefined && { shopId: asking.shopId }),
    ...(restsOn.length > 0 && { restsOn }),
    ...(older && { supersedes: { number: older.number, issuedAt: epochMs(older.at) } }),
  };
}

const grouped = (hex: string) => hex.replace(/(.{4})(?=.)/g, '$1 ');

/** A signature as a paper draws it. */
export const signatureFacts = (making: Making, signature: Signature): SignatureFacts => ({
  who: opened(making, signature.name.value),
  at: signature.at,
  drawn: signature.drawn?.value ?? null,
  ...(signature.contentHash === '' ? { unbound: true } : { content: grouped(signature.contentHash.slice(0, 12)) }),
});

/**
 * Is the mark under the sheet already on an earlier paper of the kind? What is issued anew then says other words than
 * those it was given under, so that it has room for a mark of its own instead.
 */
export const isOnOlder = ({ older, job }: Making): boolean =>
  older !== null && papersSince(job, job.came.signed).some(({ number }) => number === older.number);

/** The signed paper of this kind, however often it was put right since: it stays in force for what this one does not change. */
export function supersedesSigned({ older, job }: Making, kind: PaperKindId): Pick<CommonFacts, 'supersedes'> {
  if (older === null || job.consents.signature === null) return {};
  const signed = papersSince(job, job.came.signed).find((paper) => paper.kind === kind);
  if (!signed) return {};
  return {
    supersedes: {
      number: signed.number,
      issuedAt: epochMs(signed.at),
      signed: true,
      ...(signed.number !== older.number && { replaced: older.number }),
    },
  };
}

/** Who gave the word, when, how, and who heard it. */
export const wordFacts = (making: Making, answer: Pick<Answer, 'name' | 'how' | 'at' | 'heardBy'>): WordFacts => ({
  who: opened(making, answer.name.value),
  at: answer.how.by === 'counter' ? answer.at : answer.how.at,
  heardBy: staffName(making, answer.heardBy),
  given: givenHow(making, answer.how),
});

function givenHow(making: Making, how: AnswerHow): WordFacts['given'] {
  switch (how.by) {
    case 'counter':
      return { how: 'at-the-counter', signature: signatureFacts(making, how.signature) };
    case 'phone':
      return {
        how: 'by-phone',
        phone: opened(making, how.number.value),
        readBack: opened(making, how.readBack.value),
      };
    case 'writing':
      return { how: 'in-writing', words: opened(making, how.words.value) };
  }
}

/** The day that the owner was told last, or asked for; null where none was. */
export const readyTold = ({ job }: Pick<Making, 'job'>): EpochMs | null => job.promised?.at ?? job.deadline;

/** The tax of the shop, as a sentence. */
export function taxSays({ job, settings, words, format }: Making): string {
  const { permille, inside } = job.terms?.tax ?? settings.tax;
  if (permille === 0) return words.facts.tax.none;
  return format.say(words.facts.tax[inside ? 'inside' : 'outside'], { rate: format.number(permille / 10) });
}

/** What the owner pays when it goes home as it came. */
export const withoutAnswer = (making: Making): string =>
  making.job.feeMinor === 0 || making.job.charging === 'free'
    ? making.words.facts.withoutFree
    : making.format.say(making.words.facts.without, { fee: making.format.money(amount(making, making.job.feeMinor)) });
