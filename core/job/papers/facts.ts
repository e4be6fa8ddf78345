import type { Paper } from '../../papers/content.ts';
import type { PaperKindId } from '../../papers/words.ts';
import { billPaper } from './bill.ts';
import { certificatePaper } from './certificatePaper.ts';
import { changedFindingPaper } from './changedFinding.ts';
import { consentSheetPaper } from './consentSheet.ts';
import { depositReceiptPaper } from './depositReceiptPaper.ts';
import { disclosurePaper } from './disclosure.ts';
import { estimatePaper } from './estimatePaper.ts';
import { incidentPaper } from './incidentPaper.ts';
import { intakeReceiptPaper } from './intakeReceipt.ts';
import type { Lacking } from './lacking.ts';
import { type Making, makingOf, type PaperAsked } from './making.ts';
import { ownersWordPaper } from './ownersWord.ts';
import { collectionAuthorisationPaper, declinedToSaveDataPaper, lentPartPaper } from './rarePapers.ts';
import { lastNoticePaper, reminderPaper } from './reminders.ts';
import { replacedPartPaper } from './replacedPart.ts';
import { returnReportPaper } from './returnReport.ts';
import { benchTagPaper, partTagPaper } from './tagPapers.ts';

/** By kind: from the journal's state to the paper's content, or what is missing for it. */
export const PAPER_FACTS: { readonly [kind in PaperKindId]: (making: Making) => Paper | Lacking } = {
  'intake-receipt': intakeReceiptPaper,
  'consent-sheet': consentSheetPaper,
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
export const paperContent = (kind: PaperKindId, asked: PaperAsked): Paper | Lacking =>
  PAPER_FACTS[kind](makingOf(asked));
