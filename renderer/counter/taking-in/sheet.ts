import type { ConsentAnswer, ConsentId } from '../../../core/approval/consent.ts';
import type { CommandRequest } from '../../../core/commands/asked.ts';
import type { TakeInInput } from '../../../core/commands/intake/takeIn.ts';
import type { Tag } from '../../../core/custody/part.ts';
import { issueTag } from '../../../core/custody/tag.ts';
import { type EnquiryId, type JobId, type MachineId, type OwnerId, ownerId } from '../../../core/ids.ts';

type InputOf<Name extends CommandRequest['name']> = Extract<CommandRequest, { readonly name: Name }>['input'];
export type BeforeInput = Omit<InputOf<'addBeforeFirstScrew'>, 'job'>;

/** Who brings the machine, as it is being written. */
export type OwnerSheet = {
  readonly known: OwnerId | null;
  readonly name: string;
  readonly phone: string;
  readonly mail: string;
  readonly address: string;
  readonly kind: 'person' | 'minor' | 'company' | 'for-someone-else';
  readonly guardian: string;
  readonly orderNumber: string;
  readonly approves: string;
  readonly approvesUpToMinor: number | null;
  readonly alsoApprove?: readonly { readonly name: string; readonly upToMinor: number | null }[];
  readonly machineOf: string;
  /** Names with commas between them. */
  readonly mayCollect: string;
};

/** What was asked before the first screw; null is "not asked yet". */
export type BeforeSheet = {
  readonly encryption: BeforeInput['encryption'] | null;
  readonly keyInHand: boolean | null;
  readonly keyPlace: string;
  readonly backup: BeforeInput['backup'] | null;
  readonly bought: string;
  readonly from: string;
  readonly makersWarranty: BeforeInput['makersWarranty'] | null;
  readonly seals: BeforeInput['seals'] | null;
};

export type ChangedLine = { readonly id: string; readonly since: string; readonly what: string };
type ThingLine = { readonly thing: string; readonly count: number };

/** The taking-in sheet while it is written; kept as a draft, so it holds nothing but plain values. */
export type TakingInSheet = {
  readonly tag: Tag;
  /** Under which a new owner will be known: what is sealed before the sheet is signed is sealed for them. */
  readonly ownerId: OwnerId;
  readonly owner: OwnerSheet;
  readonly machine: { readonly known: MachineId | null; readonly called: string; readonly serial: string };
  readonly enquiry: EnquiryId | null;
  readonly cameBack: { readonly from: JobId; readonly same: 'same-fault' | 'new' | 'ours' | null } | null;
  readonly tasks: readonly { readonly id: string; readonly fixedMinor: number | null }[] | null;
  readonly charging: TakeInInput['charging'];
  readonly ownWords: string;
  readonly symptoms: readonly string[];
  readonly changed: readonly ChangedLine[];
  readonly often: readonly string[];
  readonly onlyWhen: readonly string[];
  readonly sinceDays: number | null;
  readonly lastWorked: string;
  readonly cameAlong: readonly ThingLine[];
  /** Taken while the sheet is written; the pictures themselves lie with the drafts. */
  readonly photographs: readonly { readonly of: string; readonly blob: string }[];
  readonly lift: 'one' | 'two' | null;
  readonly limitMinor: number | null;
  readonly smallPartsUpToMinor: number | null;
  /** What the machine is worth to its owner; a draft kept from before may lack it. */
  readonly worthMinor?: number | null;
  /** Wall times `YYYY-MM-DDTHH:MM` in the shop's zone. */
  readonly deadline: string;
  readonly promise: string;
  readonly used: 'yes' | 'no' | null;
  readonly lesser: 'yes' | 'no' | null;
  readonly answers: { readonly [id in ConsentId]?: ConsentAnswer };
  readonly riskAbout: string;
  readonly before: BeforeSheet;
  readonly report: { readonly text: string; readonly taken: string; readonly keepSerials: 'yes' | 'no' | null } | null;
};

export const freshBefore: BeforeSheet = {
  encryption: null,
  keyInHand: null,
  keyPlace: '',
  backup: null,
  bought: '',
  from: '',
  makersWarranty: null,
  seals: null,
};

const randomInt = (below: number): number => {
  const [drawn = 0] = crypto.getRandomValues(new Uint32Array(1));
  return Math.floor((drawn / 4_294_967_296) * below);
};

/** An empty sheet with the tag its machine will carry unless a printed one is scanned. */
export const freshSheet = (): TakingInSheet => ({
  tag: issueTag(randomInt),
  ownerId: ownerId(crypto.randomUUID()),
  owner: {
    known: null,
    name: '',
    phone: '',
    mail: '',
    address: '',
    kind: 'person',
    guardian: '',
    orderNumber: '',
    approves: '',
    approvesUpToMinor: null,
    machineOf: '',
    mayCollect: '',
  },
  machine: { known: null, called: '', serial: '' },
  enquiry: null,
  cameBack: null,
  tasks: null,
  charging: 'charged',
  ownWords: '',
  symptoms: [],
  changed: [],
  often: [],
  onlyWhen: [],
  sinceDays: null,
  lastWorked: '',
  cameAlong: [],
  photographs: [],
  lift: null,
  limitMinor: null,
  smallPartsUpToMinor: null,
  worthMinor: null,
  deadline: '',
  promise: '',
  used: null,
  lesser: null,
  answers: {},
  riskAbout: '',
  before: freshBefore,
  report: null,
});

export const namesOf = (text: string): readonly string[] =>
  text
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '');

/** Was anything of the second tier answered? */
export const beforeAnswered = (before: BeforeSheet): boolean =>
  before.encryption !== null || before.backup !== null || before.makersWarranty !== null || before.seals !== null;

/** Who signs: the guardian of a minor, else the one who brings it. */
export const signerOf = (owner: OwnerSheet): string => (owner.kind === 'minor' ? owner.guardian : owner.name).trim();
