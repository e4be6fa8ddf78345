import type { EpochMs } from '../../time.ts';
import { says, strongly } from '../blocks.ts';
import type { Sheet } from '../content.ts';
import type { AnswerOptionFacts, CommonFacts, SignatureFacts, WordFacts } from '../facts.ts';
import { formatFor, groupTag } from '../format.ts';
import type { Setting } from '../setting.ts';
import { answerFields, howGiven, sheet, signing } from '../sheet.ts';

/** A part broke, is lost, or died at the shop's hands. The hand-over waits until the owner was told. */
export type IncidentFacts = CommonFacts & {
  readonly happenedAt: EpochMs;
  /** One sentence, with its full stop. */
  readonly what: string;
  readonly more?: readonly string[];
  readonly part?: { readonly what: string; readonly tag?: string };
  readonly cause?: string;
  /** The cause is in what happened, so that there is no more to say of it. */
  readonly causeKnown?: boolean;
  readonly present: readonly string[];
  readonly photographs: number;
  readonly means: string;
  readonly told?: WordFacts;
  readonly options?: readonly AnswerOptionFacts[];
  readonly signature?: SignatureFacts;
};

/**
 * The report of a part that came to harm at the shop, laid out without drawing; amounts in minor units, moments in ms
 * of the epoch.
 */
export function incident(facts: IncidentFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds.incident;
  const { part, told, options = [] } = facts;
  return sheet('incident', facts, setting, format, {
    lead: format.say(words.lead, {
      day: format.day(facts.happenedAt),
      time: format.time(facts.happenedAt),
      what: facts.what,
    }),
    body: [
      { label: words.what, blocks: says(...(facts.more ?? [])) },
      {
        label: words.part,
        blocks: says(
          part &&
            (part.tag ? [{ text: `${part.what}, ` }, { text: groupTag(part.tag), tag: true as const }] : part.what),
        ),
      },
      { label: words.cause, blocks: says(facts.cause ?? (facts.causeKnown ? undefined : words.causeUnknown)) },
      { label: words.who, blocks: says(format.list(facts.present)) },
      { label: words.photographs, blocks: says(facts.photographs > 0 && format.number(facts.photographs)) },
      { label: words.means, blocks: says(facts.means) },
      { label: words.pays, blocks: says(strongly(words.paysText)) },
      {
        label: words.told,
        blocks: says(
          told && `${told.who}, ${format.dayTime(told.at)}, ${howGiven(told.given, setting, format)}; ${told.heardBy}`,
        ),
      },
      {
        label: format.say(words.answer, { n: options.length }),
        wide: true,
        blocks: options.length > 0 ? [answerFields(options, setting, format)] : [],
      },
    ],
    signing: { on: 'last-page', line: signing(facts.signature, words.signed, setting, format) },
  });
}
