import type { EpochMs } from '../../time.ts';
import { says } from '../blocks.ts';
import type { Block, ConsentLine, Section, Sheet } from '../content.ts';
import type { CommonFacts, SignatureFacts } from '../facts.ts';
import { type Format, formatFor } from '../format.ts';
import type { Setting } from '../setting.ts';
import { sheet, signing } from '../sheet.ts';

/** One line as it was put to the owner, its places filled in. */
export type ConsentFacts = {
  readonly asks: string;
  /** `undefined`: not answered, which counts as no, or as "back to you" for what becomes of a part. */
  readonly answer?: 'yes' | 'no';
  readonly unansweredIs?: 'no' | 'back';
  readonly takenBackAt?: EpochMs;
  /** Lines that are signed for by themselves: filming, publishing, destroying data, risk work. */
  readonly ownSignature?: { readonly given?: SignatureFacts };
};

/**
 * What the owner agreed to, line by line. Consents are kept apart from each other and from the contract, in plain words,
 * and the sheet says how to take one back and for how long data are held (GDPR Art. 7 and 13).
 */
export type ConsentSheetFacts = CommonFacts & {
  readonly lines: readonly ConsentFacts[];
  readonly signature?: SignatureFacts;
  /** Days that the record and the photographs are held after collection. */
  readonly keepDays?: number;
};

/**
 * The sheet of what the owner agrees to, laid out without drawing; amounts in minor units, moments in ms of the
 * epoch.
 */
export function consentSheet(facts: ConsentSheetFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds['consent-sheet'];
  const shared = facts.lines.filter((line) => !line.ownSignature);
  const own = facts.lines.filter((line) => line.ownSignature);
  return sheet('consent-sheet', facts, setting, format, {
    lead: words.lead,
    body: [
      { label: words.asked, wide: true, blocks: consents(shared, setting, format) },
      {
        label: words.one,
        blocks: [signing(facts.signature, words.signed, setting, format)],
      },
      ownSection(own, setting, format),
      { label: words.takeBack, blocks: says(words.takeBackText) },
      {
        label: words.holds,
        blocks: says(format.say(words.holdsText, { shop: [facts.shop.name, ...facts.shop.address].join(', ') })),
      },
      {
        label: words.howLong,
        blocks: says(facts.keepDays !== undefined && format.say(words.howLongText, { n: facts.keepDays })),
      },
    ],
  });
}

function ownSection(own: readonly ConsentFacts[], setting: Setting, format: Format): Section {
  const words = setting.words.kinds['consent-sheet'];
  if (own.length === 0) return { label: words.ownAsked, blocks: [] };
  const signatures = own.flatMap(({ asks, answer, ownSignature }): Block[] =>
    answer === 'yes' ? [signing(ownSignature?.given, format.say(words.signedFor, { asks }), setting, format)] : [],
  );
  return {
    label: words.ownAsked,
    wide: true,
    blocks: [...says(words.ownNote), ...consents(own, setting, format), ...signatures],
  };
}

function consents(lines: readonly ConsentFacts[], setting: Setting, format: Format): Block[] {
  const words = setting.words.kinds['consent-sheet'];
  if (lines.length === 0) return [];
  return [
    {
      block: 'consents',
      summary: words.summary,
      columns: [words.question, words.answer],
      lines: lines.map((line): ConsentLine => {
        const takenBack =
          line.takenBackAt === undefined
            ? undefined
            : format.say(words.takenBack, { day: format.date(line.takenBackAt) });
        return {
          asks: line.asks,
          answered: line.answer !== undefined,
          answerSays: takenBack ?? answerText(line, setting),
        };
      }),
    },
  ];
}

function answerText({ answer, unansweredIs }: ConsentFacts, setting: Setting): ConsentLine['answerSays'] {
  const words = setting.words.kinds['consent-sheet'];
  if (answer) return [{ text: words[answer], strong: true }];
  const means = unansweredIs === 'back' ? words.unansweredBack : words.unansweredNo;
  return [{ text: words.unanswered }, { text: means, strong: true }];
}
