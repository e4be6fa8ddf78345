import consents from '../../../assets/words/en/consents.json';
import fit from '../../../assets/words/en/fit.json';
import history from '../../../assets/words/en/history.json';
import paperFacts from '../../../assets/words/en/paper-facts.json';
import papers from '../../../assets/words/en/papers.json';
import symptoms from '../../../assets/words/en/symptoms.json';
import tracing from '../../../assets/words/en/tracing.json';
import type { Owner } from '../../../core/approval/owner.ts';
import type { Signature } from '../../../core/approval/signature.ts';
import type { MachineId, OwnerId } from '../../../core/ids.ts';
import type { JobWords } from '../../../core/issuing/jobWords.ts';
import { consentSheetPaper } from '../../../core/issuing/kinds/consentSheet.ts';
import { intakeReceiptFacts } from '../../../core/issuing/kinds/intakeReceipt.ts';
import { makingOf, type PaperRequest } from '../../../core/issuing/making.ts';
import type { Estimate } from '../../../core/job/estimate.ts';
import { type Job, newJob } from '../../../core/job/job.ts';
import { noShop, type ShopSettings, type Staff } from '../../../core/job/shop.ts';
import { personal } from '../../../core/journal/personal.ts';
import { minorDigits } from '../../../core/money/minorDigits.ts';
import type { Paper } from '../../../core/papers/content.ts';
import { PAPER_KINDS } from '../../../core/papers/kinds.ts';
import { type EpochMs, epochMs, minutes } from '../../../core/time.ts';
import type { SignatureMark } from '../../kit/paper/SignaturePad.tsx';
import { beforeAsked, signerOf, type TakingInSheet } from './sheet.ts';
import type { Marks } from './sheetContext.tsx';
import { beforeInput, momentOf, takeInInput } from './takeInInput.ts';

const WORDS: JobWords = { consents, fit, history, facts: paperFacts, symptoms, tracing };

export type FirstEstimate = {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  readonly priceP50: number;
  readonly priceP90: number;
  readonly passesLimit: number;
  readonly firstFigure: boolean;
  readonly day: number | null;
};

export type LiveFacts = {
  readonly sheet: TakingInSheet;
  readonly marks: Marks;
  readonly settings: ShopSettings;
  readonly staff: Staff;
  readonly estimate: FirstEstimate | null;
  readonly at: EpochMs;
  /** Stands where the number will be once it is issued. */
  readonly notIssued: string;
};

export type LivePapers = { readonly receipt: Paper; readonly consents: Paper };

/** The papers that the sheet becomes, made by the very builders that will issue them. */
export function livePapers(facts: LiveFacts): LivePapers {
  const making = makingOf(paperAsked(facts));
  const { limit, ...receipt } = intakeReceiptFacts(making);
  return {
    receipt: PAPER_KINDS['intake-receipt'].build(
      // A limit that was not said yet is left out: no figure stands on the paper that nobody named.
      { ...receipt, ...(facts.sheet.limitMinor !== null && limit && { limit }) },
      making.setting,
    ),
    consents: consentSheetPaper(making),
  };
}

function paperAsked({ sheet, marks, settings, staff, estimate, at, notIssued }: LiveFacts): PaperRequest {
  const owner = ownerOf(sheet, settings.language);
  const job = jobOf(sheet, marks, settings, estimate, at, staff.id);
  const machine = {
    id: 'machine' as MachineId,
    owner: owner.id,
    tag: job.tag,
    called: sheet.machine.called.trim() || '…',
    serial: sheet.machine.serial.trim() === '' ? null : personal('readings', owner.id, sheet.machine.serial.trim()),
    slots: [],
    gaps: [],
    inside: {},
    atTakingIn: {},
    belongsIn: {},
    parts: [],
    report: null,
    driveSerials: null,
    switches: {},
    unplugged: [],
  };
  return {
    view: {
      shop: { ...noShop, settings, staff: [staff] },
      job,
      elsewhere: [],
      olderJob: null,
      owner,
      machine,
      rigs: new Map(),
      parts: new Map(),
      enquiry: null,
      paperCounts: new Map(),
    },
    settings,
    number: notIssued,
    older: null,
    part: null,
    asking: {
      at,
      by: staff.id,
      lastHead: null,
      jobWords: () => WORDS,
      paperSetting: (language, { zone, paperSize, locale, language: ofShop }) => ({
        locale: language === ofShop ? locale : language,
        zone,
        pageSize: paperSize,
        words: papers,
        minorDigits,
      }),
    },
  };
}

const contact = <T>(value: T) => personal('contact', 'owner', value);

function ownerOf({ owner }: TakingInSheet, language: string): Owner {
  return {
    id: 'owner' as OwnerId,
    name: contact(owner.name.trim() || '…'),
    reach: contact({ phone: owner.phone.trim() || null, mail: owner.mail.trim() || null, first: 'phone' }),
    address: owner.address.trim() === '' ? null : contact(owner.address.trim()),
    language,
    kind: { is: 'person' },
    mayCollect: contact(
      owner.mayCollect
        .split(',')
        .map((name) => name.trim())
        .filter(Boolean),
    ),
  };
}

function jobOf(
  sheet: TakingInSheet,
  marks: Marks,
  settings: ShopSettings,
  estimate: FirstEstimate | null,
  at: EpochMs,
  by: string,
): Job {
  const {
    owner: _,
    machine: __,
    cameBack,
    enquiry: ___,
    told,
    ...input
  } = takeInInput(sheet, settings.language, settings.zone);
  const promise = momentOf(sheet.promise, settings.zone);
  const signature = (mark: SignatureMark | undefined) => mark && signatureOf(mark, signerOf(sheet.owner), at);
  const under = signature(marks.sheet);
  const own = Object.fromEntries(
    Object.entries(marks).flatMap(([id, mark]) =>
      id === 'sheet' ? [] : [[id, signatureOf(mark, signerOf(sheet.owner), at)]],
    ),
  );
  const fee = cameBack && cameBack.same !== 'new' ? 0 : settings.findingFee.minor;
  return {
    ...newJob('job' as Job['id'], at, by, {
      ...input,
      owner: 'owner' as OwnerId,
      machine: 'machine' as MachineId,
      tag: sheet.tag as Job['tag'],
      enquiry: null,
      cameBackFrom: null,
      feeMinor: fee,
      perMinuteMinor: settings.perMinuteMinor,
      told: {
        ...told,
        ownWords: personal('record', 'owner', told.ownWords || '…'),
        symptoms: sheet.symptoms,
        changed: told.changed.map((one) => ({
          ...one,
          what: one.what === null ? null : personal('record', 'owner', one.what),
        })),
      },
    }),
    consents: {
      answers: { ...sheet.answers },
      signature: under ?? null,
      own,
      about: { risk: sheet.riskAbout.trim() },
      withdrawn: [],
    },
    photographs: sheet.photographs.map((one) => ({ ...one, at })),
    before: beforeAsked(sheet.before) ? { ...beforeInput(sheet.before), keyPlace: null } : null,
    estimates: estimate ? [asEstimate(estimate, at)] : [],
    promised: promise === null ? null : { at: promise, p90: promise, told: true },
  };
}

const signatureOf = (mark: SignatureMark, name: string, at: EpochMs): Signature => ({
  name: personal('signature', 'owner', mark.by === 'typed' ? mark.name : name),
  drawn: mark.by === 'hand' ? personal('signature', 'owner', mark.strokes) : null,
  typed: mark.by === 'typed',
  at: epochMs(at),
  contentHash: '',
});

const asEstimate = (first: FirstEstimate, at: EpochMs): Estimate & { readonly at: EpochMs } => ({
  moment: 'told',
  handsOn: { p10: minutes(first.p10), p50: minutes(first.p50), p90: minutes(first.p90) },
  price: { p50: first.priceP50, p90: first.priceP90 },
  withPart: null,
  passesLimit: first.passesLimit,
  drivers: [],
  seed: 0,
  paths: 0,
  policy: first.firstFigure ? 'ratio' : 'none',
  at,
});
