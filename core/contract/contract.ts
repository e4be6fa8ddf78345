import { eventIterator, oc, type } from '@orpc/contract';
import { z } from 'zod';
import { type CommandRequest, checkedInput, type PreviewAsked } from '../commands/asked.ts';
import { COMMANDS } from '../commands/commands.ts';
import { zEpoch, zId, zJobId, zMachineId, zOwnerId, zPartId, zStaffId, zTag } from '../commands/kernel/fields.ts';
import type { zFigures } from '../commands/promise/noteEstimate.ts';
import type { Shown } from '../job/bench/offerStands.ts';
import type { Stream } from '../journal/entry.ts';
import type { Paper } from '../papers/content.ts';
import type { Refusal } from '../refusal.ts';
import { keysOf } from '../table.ts';
import { type BackupSheet, zBackupSettings } from './backupSheet.ts';
import type { MachineThenNow, OutRow, PathStay } from './custodySheets.ts';
import type { HereSheet, WordsOnce } from './hereSheet.ts';
import type { PersonSheet, PersonsDue } from './personsSheet.ts';
import type { Previewed } from './previewed.ts';
import type { ReckoningSheet } from './reckoningSheet.ts';
import type { RefusalKind } from './refusalKind.ts';
import type {
  DayPoint,
  EnquirySheet,
  FindHit,
  JobSheet,
  KeptRow,
  NightRow,
  OrderRow,
  PlanAhead,
  SetApartJob,
  ShopSheet,
  TracingSheet,
  WallSheet,
} from './screens.ts';
import type { StandingSheet } from './standing.ts';

const names = keysOf(COMMANDS);
/** As it was typed; whether it can be a PIN is said by a refusal. */
const zPin = z.string().max(200);
const zNamed = z.strictObject({ by: zId, name: z.enum(names), input: z.unknown() });

/**
 * One command, whole: who asks, under which id (the same id asked twice is carried out once), which command, and its
 * input, checked by that command's own shape. What is wrong is named with its field.
 */
export const zAsked = zNamed
  .extend({ command: zId })
  .transform(({ command, ...given }, context): CommandRequest => ({ ...withCheckedInput(given, context), command }));

/** A command that is only looked at: who would ask, which one, and its input; signatures name no content yet. */
export const zPreview = zNamed.transform(withCheckedInput);

function withCheckedInput({ by, name, input }: z.infer<typeof zNamed>, context: z.RefinementCtx): PreviewAsked {
  const checked = checkedInput(name, input);
  if (!('wrong' in checked)) return { ...checked, by };
  for (const issue of checked.wrong)
    context.addIssue({ code: 'custom', message: issue.message, path: ['input', ...issue.path] });
  return z.NEVER;
}

/** What a command that was carried out comes to. `firstStream` is the stream of its first entry: the new job, part or enquiry. `replayed`: this id had been carried out before. */
export type CommandResult = { readonly seq: number; readonly firstStream: Stream; readonly replayed: boolean };
/** What a machine that is not here yet would take, by what was told alone. Minutes; amounts in minor units. */
export type FirstEstimate = {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  readonly priceP50: number;
  readonly priceP90: number;
  readonly passesLimit: number;
  readonly firstFigure: boolean;
  /** The same as a command takes it, for the papers that say it. */
  readonly figures: Figures;
  /** The day to promise, as the queue stands. */
  readonly day: number | null;
};

/** An estimate as a command takes it. */
export type Figures = z.output<typeof zFigures>;

const zChange = z.object({ seq: z.int(), streams: z.array(z.string()), kinds: z.array(z.string()) });
/**
 * What happened, without saying what was in it: enough for a window to know which of its answers are stale. `seq` is the
 * last entry this covers; asked again with it, the stream goes on behind it.
 */
export type Change = z.output<typeof zChange>;
const refusal = { data: z.looseObject({ refused: z.string() }) };
const refusals = {
  NOT_FOUND: refusal,
  FORBIDDEN: refusal,
  UNPROCESSABLE_CONTENT: refusal,
  CONFLICT: refusal,
} satisfies { readonly [kind in RefusalKind]: typeof refusal };
const read = oc.errors({ NOT_FOUND: refusal, FORBIDDEN: refusal });
const stores = oc.errors(refusals);

/**
 * The one contract between the screens and the service. Inputs are checked at run time at both doors; of outputs only
 * files and changes are, the others are typed and made by the service alone. A refusal is an error with its facts,
 * of its kind (`refusalKind`), at every procedure that can refuse; a preview, which is asked for it, answers it.
 */
export const contract = {
  execute: oc.input(zAsked).output(type<CommandResult>()).errors(refusals),
  /**
   * What a command would come to, by the same decision; nothing is written. That it would be refused is an answer here
   * and no failure: a sheet being written is refused now and then.
   */
  preview: oc.input(zPreview).output(type<Previewed | Refusal>()),
  /** Who is at this screen, and how the next one gets in. */
  here: oc.output(type<HereSheet>()),
  /** Somebody comes to this screen: by their PIN, or by their word in a shop that works without. */
  enter: stores.input(z.strictObject({ who: zStaffId, pin: zPin.nullable() })).output(type<null>()),
  lock: oc.output(type<null>()),
  /** A hand was on this screen. */
  stir: oc.output(type<null>()),
  /** Sets a PIN by one's own; the shop's first answers its recovery words, this once. */
  setPin: stores
    .input(z.strictObject({ who: zStaffId, pin: zPin, own: zPin.nullable() }))
    .output(type<WordsOnce | null>()),
  makeRecoveryWords: stores.input(z.strictObject({ own: zPin })).output(type<WordsOnce>()),
  /** A keeper's way back to a new PIN, and to new words. */
  recover: stores
    .input(z.strictObject({ who: zStaffId, words: z.string().max(1000), pin: zPin }))
    .output(type<WordsOnce>()),
  /** The shop's backups: where, the last, the last good one. */
  backups: read.output(type<BackupSheet>()),
  setBackups: stores.input(zBackupSettings).output(type<BackupSheet>()),
  /** Makes one now and tries it out. */
  backUpNow: stores.output(type<BackupSheet>()),
  /** Whose agreed time is over within a week. */
  personsDue: read.output(type<PersonsDue>()),
  /** What is held of the owner of a job, and what would become of it. */
  personOf: read.input(z.strictObject({ job: zJobId })).output(type<PersonSheet>()),
  /** All that is held of an owner, as JSON. */
  personFile: read.input(z.strictObject({ owner: zOwnerId })).output(z.instanceof(File)),
  shop: read.output(type<ShopSheet>()),
  /** Whether the shop's data can be written, and what is to be known about it and about the clock. */
  standing: read.output(type<StandingSheet>()),
  /** `setApart`: jobs here that are on no line, since entries of theirs cannot be read. */
  dayLine: read.output(
    type<{
      readonly now: number;
      readonly points: readonly DayPoint[];
      readonly setApart: readonly SetApartJob[];
    }>(),
  ),
  job: read.input(z.strictObject({ job: zJobId })).output(type<JobSheet>()),
  tracing: read
    .input(
      z.strictObject({
        job: zJobId,
        method: z.enum(['ratio', 'rollout']),
        /** What stands on the screen that asks: its step is not changed by the passing of time alone. */
        shown: z.strictObject({ asOf: zEpoch, logged: z.string().max(2000) }).optional(),
      }),
    )
    .output(type<TracingSheet & Shown>()),
  /** Nothing follows where no step is on offer. Computed aside: the step itself never waits for it. */
  planAhead: read.input(z.strictObject({ job: zJobId })).output(type<PlanAhead>()),
  wall: read.output(type<WallSheet>()),
  reckoning: read.output(type<ReckoningSheet>()),
  /** Orders on the way, waiting for a word, to go back or gone back, and old parts to send, over all jobs. */
  orders: read.output(type<readonly OrderRow[]>()),
  /** Dead parts we keep, until when, and what may be done with each now. */
  kept: read.output(type<readonly KeptRow[]>()),
  /** The whole path of a part, the first place first. */
  path: read.input(z.strictObject({ part: zPartId })).output(type<readonly PathStay[]>()),
  /** What is out of ours, past its day first. */
  out: read.output(type<readonly OutRow[]>()),
  /** What was inside a machine at taking-in against now. */
  thenAndNow: read.input(z.strictObject({ machine: zMachineId })).output(type<MachineThenNow>()),
  /** Machines on which something long could run over the night. */
  night: read.output(type<readonly NightRow[]>()),
  enquiries: read.output(type<readonly EnquirySheet[]>()),
  find: read.input(z.strictObject({ text: z.string().max(200) })).output(type<readonly FindHit[]>()),
  byTag: read.input(z.strictObject({ tag: z.string().max(20) })).output(type<FindHit | null>()),
  recognise: read
    .input(z.strictObject({ kind: z.enum(['phone', 'mail', 'serial']), value: z.string().max(200) }))
    .output(type<readonly FindHit[]>()),
  /** A paper as it was issued, and what is stamped over it; `copy`: it was given out before. */
  paper: read.input(z.strictObject({ number: zId, copy: z.boolean().optional() })).output(
    type<{
      readonly content: Paper;
      readonly contentHash: string;
      readonly supersededBy: string | null;
      readonly stamps: readonly string[];
    }>(),
  ),
  paperFile: read.input(z.strictObject({ number: zId, copy: z.boolean().optional() })).output(z.instanceof(File)),
  /** Every bill of those days as CSV, for bookkeeping. */
  bookkeeping: read
    .input(z.strictObject({ from: z.iso.date().nullable(), to: z.iso.date().nullable() }))
    .output(z.instanceof(File)),
  /** Tags on the shop's roll or sheets: fresh ones to be bound by their first scan, or these again. */
  printTags: read
    .input(
      z.discriminatedUnion('is', [
        z.strictObject({ is: z.literal('fresh'), count: z.int().min(1).max(1000) }),
        z.strictObject({ is: z.literal('these'), tags: z.array(zTag).min(1).max(1000) }),
      ]),
    )
    .output(z.instanceof(File)),
  storePhotograph: stores
    .input(z.strictObject({ job: zJobId, file: z.instanceof(File) }))
    .output(type<{ readonly blob: string }>()),
  holdPhotograph: stores.input(z.strictObject({ file: z.instanceof(File) })).output(type<{ readonly blob: string }>()),
  keepHeldPhotograph: stores
    .input(z.strictObject({ owner: zOwnerId, held: zId }))
    .output(type<{ readonly blob: string }>()),
  photograph: read.input(z.strictObject({ blob: zId })).output(z.instanceof(File)),
  /** What an owner wrote, kept as it came beside their answer in writing. */
  storeLetter: stores
    .input(z.strictObject({ job: zJobId, file: z.instanceof(File) }))
    .output(type<{ readonly blob: string }>()),
  letter: read.input(z.strictObject({ blob: zId })).output(z.instanceof(File)),
  firstEstimate: read
    .input(
      z.strictObject({
        symptoms: z.array(zId).max(12),
        changed: z.array(zId).max(12),
        tasks: z.array(zId).max(12).nullable(),
        limitMinor: z.int().min(0).nullable(),
      }),
    )
    .output(type<FirstEstimate | null>()),
  /** What was typed and not yet written for good: kept sealed until it is, or is thrown away. */
  saveDraft: stores.input(z.strictObject({ key: zId, text: z.string().max(200_000).nullable() })).output(type<null>()),
  loadDraft: oc.input(z.strictObject({ key: zId })).output(type<string | null>()),
  changes: oc.input(z.strictObject({ since: z.int().min(0).nullable() })).output(eventIterator(zChange)),
};
