import type { PaperKindId } from '../text/paperWords.ts';
import { items, strongly } from './blocks.ts';
import type { Answers, Section, Sheet, SignatureBlock, SigningLine, Text } from './content.ts';
import type { AnswerOptionFacts, CommonFacts, GivenHow, NamedMachine, NamedPaper, SignatureFacts } from './facts.ts';
import { type Format, groupTag, unbroken } from './format.ts';
import type { Setting } from './setting.ts';

/** What makes one kind of paper different from the others. Sections without blocks are left out. */
export type SheetParts = {
  readonly title?: string;
  readonly lead: Text;
  readonly body: readonly Section[];
  readonly signing?: NonNullable<Sheet['signing']>;
  readonly record?: { readonly heading: string; readonly sections: readonly Section[] };
};

/** Puts the head, foot and local text around what a kind of paper says. */
export function sheet(
  kind: PaperKindId,
  facts: CommonFacts,
  setting: Setting,
  format: Format,
  parts: SheetParts,
): Sheet {
  const { common, kinds } = setting.words;
  const { shop } = facts;
  const record =
    parts.record === undefined ? null : { ...parts.record, sections: parts.record.sections.filter(speaks) };
  const local: Section[] = facts.localText
    ? [{ label: common.localText, blocks: [{ block: 'paragraph', text: facts.localText }] }]
    : [];
  const free: Section[] = facts.free
    ? [{ label: common.toPay, blocks: [{ block: 'paragraph', text: common.freeOfCharge }] }]
    : [];
  return {
    shape: 'sheet',
    kind,
    number: facts.number,
    language: setting.locale,
    title: parts.title ?? kinds[kind].title,
    issuedAt: facts.issuedAt,
    headShort: facts.headShort,
    contentHash: null,
    shopName: shop.name,
    ...(facts.shopId !== undefined && { shopId: facts.shopId }),
    pageSize: setting.pageSize,
    head: {
      meta: [
        format.say(common.named, { named: kinds[kind].named, number: facts.number, date: format.date(facts.issuedAt) }),
        [
          { text: format.say(common.whose, { owner: facts.owner.name }) },
          { text: groupTag(facts.machine.tag), tag: true },
        ],
      ],
      shop: [
        shop.name,
        ...shop.address,
        ...[shop.phone, shop.mail].filter((line) => line !== undefined),
        ...(shop.registration ? [format.say(common.registration, { number: shop.registration })] : []),
      ],
      qr: tagCode(facts.machine.tag, format, setting),
    },
    supersedes: facts.supersedes
      ? format.say(common[supersededAs(facts.supersedes)], {
          named: kinds[kind].named,
          number: facts.supersedes.number,
          date: format.date(facts.supersedes.issuedAt),
          replaced: facts.supersedes.replaced ?? '',
        })
      : null,
    lead: parts.lead,
    body: [
      ...free,
      ...[
        ...parts.body,
        { label: common.restsOn, blocks: items(facts.restsOn?.map((one) => paperNamed(one, setting, format))) },
      ].filter(speaks),
      ...local,
    ],
    signing: parts.signing ?? null,
    record: record && record.sections.length > 0 ? record : null,
    foot: {
      pages: common.pages,
      note: record && record.sections.length > 0 ? common.recordFollows : common.dayOfIssue,
      record: format.say(common.record, { head: facts.headShort }),
      content: common.content,
      check: common.check,
    },
  };
}

const speaks = (section: Section) => section.blocks.length > 0;

/** A paper as another one names it: what it is, its number, its day. */
export const paperNamed = ({ named, number, issuedAt }: NamedPaper, setting: Setting, format: Format): string =>
  format.say(setting.words.common.named, { named, number, date: format.date(issuedAt) });

/** The QR of a tag, with its words. */
export function tagCode(tag: string, format: Format, setting: Setting) {
  return { text: tag.replace(/\s/g, ''), says: format.say(setting.words.common.qr, { tag: groupTag(tag) }) };
}

/** What machine it is, in one line: what, maker and model, serial number. */
export function machineLine({ what, maker, model, serial }: NamedMachine, setting: Setting, format: Format): Text {
  const named = [maker, model].filter((name) => name !== undefined).join(' ');
  const numbered = serial === undefined ? '' : format.say(setting.words.common.serial, { serial });
  return strongly(
    what,
    [named, numbered]
      .filter((text) => text !== '')
      .map((text) => `, ${text}`)
      .join(''),
  );
}

/** A signature as it was given, with who, when and what was signed. */
function signatureBlock(given: SignatureFacts, signed: string, setting: Setting, format: Format): SignatureBlock {
  const { common } = setting.words;
  const when = format.dayTime(given.at);
  return {
    block: 'signature',
    strokes: given.drawn && {
      width: given.drawn.width,
      height: given.drawn.height,
      strokes: given.drawn.strokes.map((stroke) => stroke.map(([x, y]) => [x, y] as const)),
    },
    typed: given.drawn ? '' : common.typed,
    who: given.who,
    when,
    ...(given.content && { content: format.say(common.signedContent, { hash: given.content }) }),
    what: given.unbound ? format.say(common.signedUnbound, { what: signed }) : signed,
    says: format.say(common.signatureOf, { who: given.who, when }),
  };
}

/** The signature when it was given on screen, else lines for a pen, the first called as `lines` says. */
export function signing(
  given: SignatureFacts | undefined,
  signed: string,
  setting: Setting,
  format: Format,
  lines: readonly string[] = [setting.words.common.nameLine, setting.words.common.dateLine],
): SigningLine {
  const { signatureLine } = setting.words.common;
  if (!given) return { block: 'signing', lines: [...lines, signatureLine] };
  return given.at === setting.shownAt
    ? { block: 'signing', lines: [given.who, signatureLine] }
    : signatureBlock(given, signed, setting, format);
}

/** How an answer was given, in words. */
export function howGiven(given: GivenHow, setting: Setting, format: Format): string {
  const { common } = setting.words;
  switch (given.how) {
    case 'at-the-counter':
      return given.signature ? common.givenSigned : common.givenAtCounter;
    case 'by-phone':
      return format.say(common.givenByPhone, { phone: unbroken(given.phone) });
    case 'in-writing':
      return common.givenInWriting;
  }
}

/** Answers to choose from as equal fields, none ticked unless the answer is known. */
export function answerFields(options: readonly AnswerOptionFacts[], setting: Setting, format: Format): Answers {
  const { common } = setting.words;
  return {
    block: 'answers',
    ticks: { open: common.boxOpen, chosen: common.boxChosen },
    answers: options.map(({ title, figure, lines, chosen }) => ({
      title,
      figure: figure ? format.money(figure) : '',
      lines,
      chosen: chosen ?? false,
    })),
  };
}

/** The sentence that names what a paper takes the place of. */
function supersededAs({ signed, replaced }: NonNullable<CommonFacts['supersedes']>) {
  if (!signed) return 'supersedes';
  return replaced === undefined ? 'supersedesSigned' : 'supersedesSignedAgain';
}
