import type { EpochMs } from '../../time.ts';
import { facts as factTable, says } from '../blocks.ts';
import type { Sheet } from '../content.ts';
import type { CommonFacts, NamedPaper, SignatureFacts } from '../facts.ts';
import { formatFor } from '../format.ts';
import type { Setting } from '../setting.ts';
import { paperNamed, sheet, signing } from '../sheet.ts';

/** One line of a signed paper that holds otherwise from now on. */
export type AddendumFacts = CommonFacts & {
  /** The paper that was signed, and stays in force for the rest. */
  readonly of: NamedPaper;
  readonly line: string;
  readonly before: string;
  readonly now: string;
  readonly at: EpochMs;
  readonly how: string;
  readonly heardBy: string;
  /** What was read back on the telephone. */
  readonly readBack?: string;
  /** What was written. */
  readonly written?: string;
  /** Only where it was signed for itself. */
  readonly signature?: SignatureFacts;
};

/**
 * What changed after a paper was signed, laid out without drawing: the line, before, now, how, when and who heard it,
 * with room for a mark of its own. The signed paper is not written anew. Moments in ms of the epoch.
 */
export function addendum(facts: AddendumFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds.addendum;
  const paper = paperNamed(facts.of, setting, format);
  return sheet('addendum', facts, setting, format, {
    lead: format.say(words.lead, { paper }),
    body: [
      { label: words.line, blocks: says(facts.line) },
      {
        label: words.change,
        blocks: factTable(
          [words.before, facts.before],
          [words.now, [{ text: facts.now, strong: true }]],
          [words.when, format.dayTime(facts.at)],
          [words.how, facts.how],
          [words.heardBy, facts.heardBy],
        ),
      },
      { label: words.readBack, blocks: says(facts.readBack) },
      { label: words.writtenWords, blocks: says(facts.written) },
    ],
    signing: { on: 'last-page', line: signing(facts.signature, words.signed, setting, format) },
  });
}
