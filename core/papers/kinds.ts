import type { PaperKindId } from '../text/paperWords.ts';
import { addendum } from './builders/addendum.ts';
import { bill } from './builders/bill.ts';
import { changedFindingNotice } from './builders/changedFindingNotice.ts';
import { collectionAuthorisation } from './builders/collectionAuthorisation.ts';
import { consentSheet } from './builders/consentSheet.ts';
import { declinedToSaveData } from './builders/declinedToSaveData.ts';
import { depositReceipt } from './builders/depositReceipt.ts';
import { estimate } from './builders/estimate.ts';
import { incident } from './builders/incident.ts';
import { intakeReceipt } from './builders/intakeReceipt.ts';
import { lentPartAgreement } from './builders/lentPartAgreement.ts';
import { ownersWordRecord } from './builders/ownersWordRecord.ts';
import { lastNotice, reminder } from './builders/reminders.ts';
import { replacedPartSlip } from './builders/replacedPartSlip.ts';
import { returnReport } from './builders/returnReport.ts';
import { sanitisationCertificate } from './builders/sanitisationCertificate.ts';
import { substituteDisclosure } from './builders/substituteDisclosure.ts';
import { benchTag, partTag } from './builders/tags.ts';
import type { Paper } from './content.ts';
import type { Setting } from './setting.ts';

/**
 * The one list of papers: each kind and what makes its content of its facts. A new kind is a builder, its words under
 * `kinds` in assets/words, and a line here; a kind with words and no builder does not compile.
 */
export const PAPER_KINDS = {
  'intake-receipt': { build: intakeReceipt },
  'consent-sheet': { build: consentSheet },
  addendum: { build: addendum },
  estimate: { build: estimate },
  'changed-finding-notice': { build: changedFindingNotice },
  'substitute-part-disclosure': { build: substituteDisclosure },
  'owners-word-record': { build: ownersWordRecord },
  'return-report': { build: returnReport },
  'replaced-part-slip': { build: replacedPartSlip },
  bill: { build: bill },
  'bench-tag': { build: benchTag },
  'part-tag': { build: partTag },
  'media-sanitisation-certificate': { build: sanitisationCertificate },
  'declined-to-save-data': { build: declinedToSaveData },
  incident: { build: incident },
  'lent-part-agreement': { build: lentPartAgreement },
  reminder: { build: reminder },
  'last-notice': { build: lastNotice },
  'collection-authorisation': { build: collectionAuthorisation },
  'deposit-receipt': { build: depositReceipt },
} as const satisfies { readonly [kind in PaperKindId]: { readonly build: (facts: never, setting: Setting) => Paper } };
