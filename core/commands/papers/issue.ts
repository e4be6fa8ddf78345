import { z } from 'zod';
import { yearOf } from '../../calendar.ts';
import type { PartId } from '../../ids.ts';
import { paperContent } from '../../issuing/facts.ts';
import { replacedParts } from '../../issuing/kinds/replacedPart.ts';
import { isLacking } from '../../issuing/lacking.ts';
import type { PaperAbout, SignedChange } from '../../issuing/making.ts';
import { shownPaper } from '../../issuing/shownPaper.ts';
import { zoneOf } from '../../job/shop.ts';
import { canonicalJson } from '../../journal/canonicalJson.ts';
import { personal } from '../../journal/personal.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import type { Refusal } from '../../refusal.ts';
import { STAGES } from '../../stage.ts';
import { keysOf } from '../../table.ts';
import type { PaperKindId } from '../../text/paperWords.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zJobId, zPartId } from '../kernel/fields.ts';
import { openUnitOfWork, type UnitOfWork } from '../kernel/unitOfWork.ts';
import { whySignedStays } from './signedStays.ts';

/**
 * Issues a paper on what the unit of work says so far: number, content and hash are fixed in the same transaction as
 * what it records. A paper of a kind that the job already has takes that one's place; nothing is overwritten.
 * @throws when the journal does not hold what the paper says: a command that issues one by itself has just written it.
 */
export function issuePaper(
  unit: UnitOfWork,
  kind: PaperKindId,
  asking: Asking,
  part: PartId | null = null,
  about: PaperAbout = {},
): void {
  const refusal = askForPaper(unit, kind, asking, part, about);
  if (refusal) throw new Error(`a paper ${kind} that lacks what it says: ${refusal.refused}`);
}

/**
 * Issues an addendum: what changed after a paper was signed. The signed paper stays as it is.
 * @throws where none of that kind was issued.
 */
export const issueAddendum = (unit: UnitOfWork, change: SignedChange, asking: Asking): void =>
  issuePaper(unit, 'addendum', asking, null, { change });

/**
 * The same, for whoever may ask for a paper before there is one to be had: what is missing is a refusal.
 * @throws {Error} without a job, its owner and machine, or a shop that is set up: no command can ask for it then.
 */
export function askForPaper(
  unit: UnitOfWork,
  kind: PaperKindId,
  asking: Asking,
  part: PartId | null = null,
  of: PaperAbout = {},
): Refusal | null {
  const { job, owner, machine, shop } = unit.view();
  if (!job || !owner || !machine || !shop.settings) throw new Error(`a paper ${kind} without a job`);
  const year = yearOf(asking.at, shop.settings.zone);
  const number = nextNumber(unit, kind, asking);
  const single = SINGLE.has(kind);
  const about =
    kind === 'replaced-part-slip' ? (part ?? replacedParts({ ...unit.view(), job, machine }).at(-1) ?? null) : null;
  const older = single
    ? (job.papers.findLast((paper) => paper.kind === kind && (about === null || paper.part === about)) ?? null)
    : null;
  const asked = {
    view: { ...unit.view(), job, owner, machine },
    settings: shop.settings,
    found: unit.found.job,
    number,
    older,
    part,
    asking,
    ...of,
  };
  const made = paperContent(kind, asked);
  if (isLacking(made)) return { refused: made.lacks, kind };
  unit.shows(() => shownPaper(kind, asked));
  unit.add(`paper:${kind}:${year}`, 'paper-issued', {
    number,
    kind,
    job: job.id,
    language: made.language,
    issued: asking.at,
    content: personal('record', owner.id, made),
    contentHash: asking.sha256(canonicalJson(made)),
    supersedes: older?.number ?? null,
  });
  unit.add(`job:${job.id}`, 'paper-named', {
    kind,
    number,
    supersedes: older?.number ?? null,
    ...(about && { part: about }),
  });
  return null;
}

/** Issues anew those of these kinds that the job has given out: what they said was put right. */
export function issueAnew(unit: UnitOfWork, kinds: readonly PaperKindId[], asking: Asking): void {
  const given = unit.view().job?.papers ?? [];
  for (const kind of kinds) if (given.some((paper) => paper.kind === kind)) issuePaper(unit, kind, asking);
}

/** The number that the next paper of a kind gets, for what names its paper before it is issued. */
export function nextNumber(unit: UnitOfWork, kind: PaperKindId, asking: Asking): string {
  const { shop, paperCounts } = unit.view();
  return paperNumber(kind, yearOf(asking.at, zoneOf(shop)), (paperCounts.get(kind) ?? 0) + 1);
}

/**
 * `26/0003` for a bill: the year and its count, one series without letters or gaps; it goes on from older bills of the
 * year, which keep the numbers that they were given. Any other paper `IR-2026-0001`: initials of its kind, the year,
 * counted from one within both.
 */
function paperNumber(kind: PaperKindId, year: number, nth: number): string {
  const count = String(nth).padStart(4, '0');
  if (kind === 'bill') return `${String(year).slice(-2)}/${count}`;
  const initials = kind.split('-').map((word) => word.slice(0, 1).toUpperCase());
  return `${initials.join('')}-${year}-${count}`;
}

/** Kinds of which a job has one that holds; others are issued as often as there is reason. */
const SINGLE: ReadonlySet<PaperKindId> = new Set<PaperKindId>([
  'intake-receipt',
  'consent-sheet',
  'estimate',
  'return-report',
  'replaced-part-slip',
  'bill',
  'bench-tag',
]);

const zPaperKind = z.enum(keysOf(PAPER_KINDS));

/** Issues a paper by hand, or anew. */
export const issue = jobCommand(
  'issue',
  z.strictObject({ job: zJobId, kind: zPaperKind, part: zPartId.nullable() }),
  STAGES,
  (view, { kind, part }, asking) => {
    if (kind === 'part-tag' && part === null) return refuse('which-part', { kind });
    if (part !== null && !view.parts.has(part)) return refuse('no-such-part', { part });
    const signed = whySignedStays(view.job, kind);
    if (signed) return { ok: false, refusal: signed };
    const unit = openUnitOfWork(view, asking);
    const refusal = askForPaper(unit, kind, asking, part);
    return refusal ? { ok: false, refusal } : unit.accept();
  },
  ({ kind, part }) => ({ papers: [kind], parts: part === null ? [] : [part] }),
);
