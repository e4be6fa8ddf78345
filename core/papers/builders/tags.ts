import type { PaperKindId } from '../../text/paperWords.ts';
import type { EpochMs } from '../../time.ts';
import type { Labels, PartMark } from '../content.ts';
import type { CommonFacts } from '../facts.ts';
import { formatFor, groupTag } from '../format.ts';
import type { Setting } from '../setting.ts';
import { tagCode } from '../sheet.ts';
import type { LabelSize } from '../sizes.ts';

/** A roll label of 62 × 40 mm unless the shop's printer takes another. */
export const LABEL_62_40: LabelSize = { widthMm: 62, heightMm: 40 };

type LabelFacts = Omit<CommonFacts, 'owner'> & { readonly size?: LabelSize };

/** Hangs on the machine. No name and no number of its owner: it hangs where others see it. */
export type BenchTagFacts = LabelFacts & {
  readonly acceptedAt: EpochMs;
  readonly liftedBy: number;
  readonly things: number;
};

/** The label of the machine, laid out without drawing; sizes in mm. */
export function benchTag(facts: BenchTagFacts, setting: Setting): Labels {
  const format = formatFor(setting);
  const words = setting.words.kinds['bench-tag'];
  const { machine } = facts;
  return labels('bench-tag', facts, machine.tag, setting, [
    {
      qr: tagCode(machine.tag, format, setting),
      tag: groupTag(machine.tag),
      mark: null,
      lines: [
        [{ text: machine.what, strong: true }],
        format.say(words.taken, { day: format.shortDay(facts.acceptedAt) }),
        format.say(words.lift, { n: facts.liftedBy }),
        ...(facts.things > 0 ? [format.say(words.with, { n: facts.things })] : []),
      ],
    },
  ]);
}

export type TaggedPartFacts = {
  readonly tag: string;
  readonly what: string;
  readonly whose: 'owner' | 'shop';
  readonly state?: PartMark['state'];
  /** Where it came out of: `slot A2`. */
  readonly from?: string;
};
/** Hang on parts that left their place; each on a label of its own. */
export type PartTagFacts = LabelFacts & { readonly parts: readonly TaggedPartFacts[] };

/** The labels of parts, each on one of its own, laid out without drawing; sizes in mm. */
export function partTag(facts: PartTagFacts, setting: Setting): Labels {
  const format = formatFor(setting);
  const words = setting.words.kinds['part-tag'];
  return labels(
    'part-tag',
    facts,
    facts.parts.map((part) => part.tag).join(', '),
    setting,
    facts.parts.map((part) => ({
      qr: tagCode(part.tag, format, setting),
      tag: groupTag(part.tag),
      mark: { whose: part.whose, ...(part.state ? { state: part.state } : {}), says: words[part.whose] },
      lines: [
        [{ text: part.what, strong: true }],
        ...(part.from ? [format.say(words.from, { slot: part.from })] : []),
        ...(part.whose === 'owner' ? [[{ text: format.say(words.of, { tag: groupTag(facts.machine.tag) }) }]] : []),
      ],
    })),
  );
}

function labels(
  kind: PaperKindId & ('bench-tag' | 'part-tag'),
  facts: LabelFacts,
  tags: string,
  setting: Setting,
  all: Labels['labels'],
): Labels {
  const format = formatFor(setting);
  return {
    shape: 'labels',
    kind,
    number: facts.number,
    language: setting.locale,
    title: format.say(setting.words.kinds[kind].title, { tag: tags.split(', ').map(groupTag).join(', ') }),
    issuedAt: facts.issuedAt,
    headShort: facts.headShort,
    contentHash: null,
    shopName: facts.shop.name,
    ...(facts.shopId !== undefined && { shopId: facts.shopId }),
    size: facts.size ?? LABEL_62_40,
    labels: all,
  };
}
