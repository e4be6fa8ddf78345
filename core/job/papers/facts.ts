import type { Machine } from '../../custody/machine.ts';
import type { Asking } from '../../decision.ts';
import type { PartId } from '../../ids.ts';
import type { Paper } from '../../papers/content.ts';
import type { Setting } from '../../papers/setting.ts';
import type { PaperKindId } from '../../papers/words.ts';
import type { Owner } from '../../word/owner.ts';
import type { Job } from '../job.ts';
import type { ShopSettings } from '../shop.ts';
import type { View } from '../view.ts';
import { billPaper, lastNoticePaper, reminderPaper, replacedPartPaper, returnReportPaper } from './homePapers.ts';
import { benchTagPaper, consentSheetPaper, estimatePaper, intakeReceiptPaper, partTagPaper } from './intakePapers.ts';
import { changedFindingPaper, disclosurePaper, incidentPaper, ownersWordPaper } from './wordPapers.ts';

/** What a paper is made from. */
export type PaperAsked = {
  readonly view: View & { readonly job: Job; readonly owner: Owner; readonly machine: Machine };
  readonly settings: ShopSettings;
  readonly number: string;
  /** The paper that this one takes the place of. */
  readonly older: { readonly number: string; readonly at: number } | null;
  readonly part: PartId | null;
  readonly asking: Asking;
};

/** How this paper is worded. */
export const settingOf = ({ asking, view, settings }: PaperAsked): Setting =>
  asking.paperSetting(view.owner.language, settings);

/** By kind: from the journal's state to the paper's content. A kind that is not here has no facts in the journal yet and is not issued. */
export const PAPER_FACTS: { readonly [kind in PaperKindId]?: (asked: PaperAsked) => Paper } = {
  'intake-receipt': intakeReceiptPaper,
  'consent-sheet': consentSheetPaper,
  estimate: estimatePaper,
  'bench-tag': benchTagPaper,
  'part-tag': partTagPaper,
  'changed-finding-notice': changedFindingPaper,
  'substitute-part-disclosure': disclosurePaper,
  'owners-word-record': ownersWordPaper,
  'return-report': returnReportPaper,
  'replaced-part-slip': replacedPartPaper,
  bill: billPaper,
  incident: incidentPaper,
  reminder: reminderPaper,
  'last-notice': lastNoticePaper,
};
