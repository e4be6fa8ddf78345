import type { Paper } from '../papers/content.ts';
import type { PaperKindId } from '../text/paperWords.ts';
import { addendumPaper } from './kinds/addendum.ts';
import { billPaper } from './kinds/bill.ts';
import { certificatePaper } from './kinds/certificatePaper.ts';
import { changedFindingPaper } from './kinds/changedFinding.ts';
import { consentSheetPaper } from './kinds/consentSheet.ts';
import { depositReceiptPaper } from './kinds/depositReceiptPaper.ts';
import { disclosurePaper } from './kinds/disclosure.ts';
import { estimatePaper } from './kinds/estimatePaper.ts';
import { incidentPaper } from './kinds/incidentPaper.ts';
import { intakeReceiptPaper } from './kinds/intakeReceipt.ts';
import { ownersWordPaper } from './kinds/ownersWord.ts';
import { collectionAuthorisationPaper, declinedToSaveDataPaper, lentPartPaper } from './kinds/rarePapers.ts';
import { lastNoticePaper, reminderPaper } from './kinds/reminders.ts';
import { replacedPartPaper } from './kinds/replacedPart.ts';
import { returnReportPaper } from './kinds/returnReport.ts';
import { benchTagPaper, partTagPaper } from './kinds/tagPapers.ts';
import type { Lacking } from './lacking.ts';
import { type Making, makingOf, type PaperRequest } from './making.ts';

/** By kind: from the journal's state to the paper's content, or what is missing for it. */
export const PAPER_FACTS: { readonly [kind in PaperKindId]: (making: Making) => Paper | Lacking } = {
  'intake-receipt': intakeReceiptPaper,
  'consent-sheet': consentSheetPaper,
  addendum: addendumPaper,
  estimate: estimatePaper,
  'changed-finding-notice': changedFindingPaper,
  'substitute-part-disclosure': disclosurePaper,
  'owners-word-record': ownersWordPaper,
  'return-report': returnReportPaper,
  'replaced-part-slip': replacedPartPaper,
  bill: billPaper,
  'bench-tag': benchTagPaper,
  'part-tag': partTagPaper,
  'media-sanitisation-certificate': certificatePaper,
  'declined-to-save-data': declinedToSaveDataPaper,
  incident: incidentPaper,
  'lent-part-agreement': lentPartPaper,
  reminder: reminderPaper,
  'last-notice': lastNoticePaper,
  'collection-authorisation': collectionAuthorisationPaper,
  'deposit-receipt': depositReceiptPaper,
};

/** The content of a paper of this kind on what the view holds, or what it lacks. */
export const paperContent = (kind: PaperKindId, asked: PaperRequest): Paper | Lacking =>
  PAPER_FACTS[kind](makingOf(asked, kind));
