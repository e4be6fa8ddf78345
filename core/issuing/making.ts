import type { ConsentId } from '../approval/consent.ts';
import type { Owner } from '../approval/owner.ts';
import type { Answer, AnswerHow } from '../approval/question.ts';
import type { Signature } from '../approval/signature.ts';
import type { Machine } from '../custody/machine.ts';
import type { View } from '../entries/view.ts';
import type { PartId } from '../ids.ts';
import type { Job } from '../job/job.ts';
import type { ShopSettings } from '../job/shop.ts';
import type { NamedPaper } from '../papers/facts.ts';
import { type Format, formatFor } from '../papers/format.ts';
import type { Setting } from '../papers/setting.ts';
import type { PaperKindId } from '../text/paperWords.ts';
import type { JobWords } from './jobWords.ts';
import { restsOn } from './lines/restsOn.ts';
import type { PaperTools } from './paperTools.ts';

/** What changed after the receipt or the consent sheet was signed: the paper that was signed stays as it is. */
export type SignedChange =
  | {
      readonly of: 'consent-sheet';
      readonly id: ConsentId;
      /** The job before it. */
      readonly before: Job;
      readonly by:
        | { readonly is: 'taken-back' }
        | { readonly is: 'alone'; readonly signature: Signature }
        | { readonly is: 'answer'; readonly name: Answer['name']; readonly how: AnswerHow };
    }
  | {
      readonly of: 'intake-receipt';
      readonly thing: string;
      readonly before: number;
      readonly now: number;
      readonly where: string;
    };

/** The owner was told of an incident, and by what word they say so. */
export type ToldIncident = {
  readonly incident: string;
  readonly word: Pick<Answer, 'name' | 'how' | 'at' | 'heardBy'>;
};

/** What a paper is about, where a job has several of it: the newest one where it is not said. */
export type PaperAbout = {
  /** What an addendum is about. */
  readonly change?: SignedChange;
  readonly told?: ToldIncident;
};

/** What a paper is made from. */
export type PaperRequest = PaperAbout & {
  readonly view: View & { readonly job: Job; readonly owner: Owner; readonly machine: Machine };
  readonly settings: ShopSettings;
  /** The job as the press found it; null where that press begins it. What comes of one press is no ground of its papers. */
  readonly found: Job | null;
  readonly number: string;
  /** The paper that this one takes the place of. */
  readonly older: { readonly number: string; readonly at: number } | null;
  readonly part: PartId | null;
  /** Of all that is handed in, what a paper needs; a sheet not yet signed can be worded from it too. */
  readonly asking: Omit<PaperTools, 'tracing'> & Partial<Pick<PaperTools, 'tracing'>>;
};

/** The same, with the words and the number style of the owner's language. */
export type Making = PaperRequest & {
  readonly job: Job;
  readonly words: JobWords;
  readonly setting: Setting;
  readonly format: Format;
  readonly restsOn: readonly NamedPaper[];
};

/**
 * What a paper of this request is made with: its job, words and format in the owner's language, and the shop's
 * setting, and the earlier papers that one of this kind rests on.
 */
export function makingOf(asked: PaperRequest, kind: PaperKindId): Making {
  const { view, settings, asking } = asked;
  const setting = asking.paperSetting(view.owner.language, settings);
  return {
    ...asked,
    job: view.job,
    words: asking.jobWords(view.owner.language),
    setting,
    format: formatFor(setting),
    restsOn: restsOn({ papers: asked.found?.papers ?? [], setting }, kind),
  };
}
