import type { EpochMs } from '../../time.ts';
import { facts as factTable, says } from '../blocks.ts';
import type { Sheet } from '../content.ts';
import type { CommonFacts, SignatureFacts, WordFacts } from '../facts.ts';
import { formatFor, groupTag } from '../format.ts';
import type { Setting } from '../setting.ts';
import { howGiven, sheet, signing } from '../sheet.ts';

export type OldPartGoes =
  | { readonly is: 'returned' }
  | { readonly is: 'kept'; readonly until: EpochMs; readonly place: string }
  | { readonly is: 'sent'; readonly to: string }
  | { readonly is: 'recycled' };

/** What becomes of a part that was replaced, and by whose word. */
export type ReplacedPartFacts = CommonFacts & {
  readonly part: { readonly what: string; readonly tag?: string; readonly serial?: string };
  readonly verdict: { readonly is: 'confirmed'; readonly how: string } | { readonly is: 'named' };
  readonly goes: OldPartGoes;
  /** Absent when the part goes back to its owner, or they brought the new one. */
  readonly word?: WordFacts;
  readonly data: 'none' | 'settings-cleared' | 'can-hold-data';
  readonly signature?: SignatureFacts;
};

/**
 * The slip on what becomes of a part that was replaced, laid out without drawing; amounts in minor units, moments in
 * ms of the epoch.
 */
export function replacedPartSlip(facts: ReplacedPartFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds['replaced-part-slip'];
  const { goes, part, word, verdict } = facts;
  const data = { none: words.dataNone, 'settings-cleared': words.dataSettings, 'can-hold-data': words.dataOn };
  const fills = {
    part: part.what,
    date: goes.is === 'kept' ? format.date(goes.until) : '',
    to: goes.is === 'sent' ? goes.to : '',
  };
  return sheet('replaced-part-slip', facts, setting, format, {
    lead: format.say(words.lead[goes.is], fills),
    body: [
      {
        label: words.part,
        blocks: factTable(
          [words.what, part.what],
          [words.tag, part.tag !== undefined && [{ text: groupTag(part.tag), tag: true }]],
          [words.serial, part.serial],
        ),
      },
      {
        label: words.found,
        blocks: says(verdict.is === 'confirmed' ? format.say(words.confirmed, { how: verdict.how }) : words.onlyNamed),
      },
      { label: words.goes, blocks: says(goes.is === 'kept' && format.say(words.shelf, { place: goes.place })) },
      {
        label: words.word,
        blocks: says(
          word &&
            format.say(words.wordText, {
              who: word.who,
              when: format.dayTime(word.at),
              how: howGiven(word.given, setting, format),
            }),
        ),
      },
      { label: words.data, blocks: says(data[facts.data]) },
      { label: words.back, blocks: says(goes.is === 'kept' && format.say(words.backText, fills)) },
    ],
    ...(goes.is === 'returned' || facts.signature
      ? {
          signing: {
            on: 'last-page' as const,
            line: signing(facts.signature, goes.is === 'returned' ? words.signed : words.signedAgreed, setting, format),
          },
        }
      : {}),
  });
}
