import type { Paper } from '../../../core/papers/content.ts';
import { PAPER_KINDS } from '../../../core/papers/kinds.ts';
import type { Setting } from '../../../core/papers/setting.ts';
import type { PaperKindId } from '../../../core/text/paperWords.ts';
import { addendumFacts, consentSheetFacts, estimateFacts } from './agreedFacts.ts';
import { setting } from './harrowmouth.ts';
import { benchTagFacts, billFacts, partTagFacts, replacedPartFacts, returnReportFacts } from './homeFacts.ts';
import { intakeReceiptFacts } from './intakeReceiptFacts.ts';
import {
  authorisationFacts,
  declinedFacts,
  depositFacts,
  incidentFacts,
  lastNoticeFacts,
  lentFacts,
  reminderFacts,
  sanitisationFacts,
} from './otherFacts.ts';
import { substituteFacts } from './substituteFacts.ts';
import { changedFindingFacts, ownersWordFacts } from './wordFacts.ts';

/** Facts that a kind of paper is made of. */
type FactsOf<Kind extends PaperKindId> = Parameters<(typeof PAPER_KINDS)[Kind]['build']>[0];

/** Facts of the invented job for every kind of paper. */
export const everyFacts: { readonly [kind in PaperKindId]: FactsOf<kind> } = {
  'intake-receipt': intakeReceiptFacts,
  'consent-sheet': consentSheetFacts,
  addendum: addendumFacts,
  estimate: estimateFacts,
  'changed-finding-notice': changedFindingFacts,
  'substitute-part-disclosure': substituteFacts,
  'owners-word-record': ownersWordFacts,
  'return-report': returnReportFacts,
  'replaced-part-slip': replacedPartFacts,
  bill: billFacts,
  'bench-tag': benchTagFacts,
  'part-tag': partTagFacts,
  'media-sanitisation-certificate': sanitisationFacts,
  'declined-to-save-data': declinedFacts,
  incident: incidentFacts,
  'lent-part-agreement': lentFacts,
  reminder: reminderFacts,
  'last-notice': lastNoticeFacts,
  'collection-authorisation': authorisationFacts,
  'deposit-receipt': depositFacts,
};

/** The paper that a kind makes of the invented job. */
export function paperOf<Kind extends PaperKindId>(kind: Kind, facts: FactsOf<Kind>, how: Setting = setting): Paper {
  const build = PAPER_KINDS[kind].build as (facts: FactsOf<Kind>, setting: Setting) => Paper;
  return build(facts, how);
}

/** Every paper of the invented job, by its kind. */
export const everyPaper = (how: Setting = setting): { readonly [kind: string]: Paper } =>
  Object.fromEntries(
    Object.entries(everyFacts).map(([kind, facts]) => [kind, paperOf(kind as PaperKindId, facts as never, how)]),
  );
