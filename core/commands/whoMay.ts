import type { Staff } from '../job/shop.ts';
import type { PinUse } from '../people/people.ts';
import type { Role } from '../people/roles.ts';
import type { Refusal } from '../refusal.ts';
import type { CommandName } from './commands.ts';

/** Roles of which one is needed; or nobody's at a screen: the service alone asks it. */
export type WhoMay = readonly Role[] | 'the-service';

/** Who keeps the shop answers for all of it, and may do all of it. */
const KEEPER = ['keeper'] as const;
/** What is agreed with owners and suppliers, and money. */
const DESK = ['desk', 'keeper'] as const;
/** Hands in a machine, and what is found there. */
const BENCH = ['bench', 'keeper'] as const;
/** What comes up at both. */
const BOTH = ['desk', 'bench', 'keeper'] as const;
const SERVICE = 'the-service';

/**
 * Who may ask each command, where PINs are used: every one named once. Common practice of a small shop, no source; whoever
 * works at desk and bench has both roles.
 */
export const WHO_MAY: { readonly [Name in CommandName]: WhoMay } = {
  openShop: BOTH,
  changeShop: KEEPER,
  changeStaff: KEEPER,
  workWithoutPins: KEEPER,
  giveBadge: KEEPER,
  eraseOwner: KEEPER,
  setPin: SERVICE,
  makeRecoveryWords: SERVICE,
  noteMissed: SERVICE,
  noteMet: SERVICE,
  useModel: KEEPER,
  goBackToModel: KEEPER,
  takeOverPriors: KEEPER,
  resetPriors: KEEPER,
  enquire: DESK,
  answerEnquiry: DESK,
  lapseEnquiry: DESK,
  noteEnquiryEstimate: SERVICE,
  takeIn: DESK,
  signTakingIn: DESK,
  signSheet: DESK,
  signAlone: DESK,
  answerConsent: DESK,
  withdrawConsent: DESK,
  addBeforeFirstScrew: BOTH,
  correctTold: BOTH,
  cancelTakingIn: DESK,
  correctMachine: BOTH,
  correctOwner: DESK,
  tellWorth: DESK,
  addThing: BOTH,
  reportLostThing: BOTH,
  putOursOn: BOTH,
  takeOursOff: BOTH,
  addPhotographs: BOTH,
  sealSecret: BOTH,
  wipeSecret: BOTH,
  readReport: BOTH,
  writeCensus: BENCH,
  answerSwitches: BENCH,
  recordSeen: BENCH,
  recordNotReproduced: BENCH,
  startWork: BENCH,
  turnWork: BENCH,
  stopClocks: BOTH,
  finishWork: BENCH,
  logWork: BENCH,
  strikeWork: BENCH,
  takeBackStart: BENCH,
  goBackToWorked: BENCH,
  goBackAsItCame: BENCH,
  judge: BENCH,
  nameFault: BENCH,
  thinkItIs: BENCH,
  leaveSo: BENCH,
  keepCode: BENCH,
  dropCode: BENCH,
  unplug: BENCH,
  plugIn: BENCH,
  movePart: BENCH,
  fitPart: BENCH,
  putAway: BENCH,
  note: BOTH,
  leaveLikeThis: BENCH,
  confirmLeft: BENCH,
  goOn: BENCH,
  noteEstimate: SERVICE,
  promise: DESK,
  tellPromise: BOTH,
  ask: BOTH,
  logTry: BOTH,
  answer: DESK,
  lapse: DESK,
  withdrawWord: DESK,
  orderPart: DESK,
  receivePart: BOTH,
  orderLate: DESK,
  cancelOrder: DESK,
  bringOwnPart: BOTH,
  sendBack: DESK,
  settleReturn: DESK,
  bookCharge: DESK,
  takePayment: DESK,
  waiveFee: DESK,
  correctPayment: DESK,
  giveBack: DESK,
  markReady: BENCH,
  goHomeAsItCame: BOTH,
  tellReady: BOTH,
  remind: DESK,
  handOver: DESK,
  reportIncident: BOTH,
  tellIncident: DESK,
  destroyPart: BOTH,
  endKeeping: DESK,
  knowPart: BOTH,
  correctPart: BOTH,
  knowRig: BENCH,
  moveShopPart: BOTH,
  provePart: BENCH,
  reservePart: BOTH,
  releasePart: BOTH,
  tagPart: BOTH,
  lendPart: DESK,
  takeBackLent: DESK,
  sellPart: DESK,
  tagMachine: BOTH,
  voidTag: BOTH,
  issue: BOTH,
};

/** What a step under way may be told while the screen is locked. */
export const WHILE_LOCKED: ReadonlySet<CommandName> = new Set(['finishWork', 'stopClocks']);

/**
 * Why somebody may not ask a command: `only-the-service`, or `role-may-not`. Roles count where PINs are used: without
 * them anybody may say to be another, and a role would keep nobody from anything.
 */
export function whyNotAsked(name: CommandName, { name: called, roles }: Staff, use: PinUse): Refusal | null {
  const needs = WHO_MAY[name];
  if (needs === 'the-service') return { refused: 'only-the-service', command: name };
  if (use !== 'on' || needs.some((role) => roles.includes(role))) return null;
  return { refused: 'role-may-not', command: name, name: called, roles, needs };
}
