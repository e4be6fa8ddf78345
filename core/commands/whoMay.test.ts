import { describe, expect, it } from 'vitest';
import { staffId } from '../ids.ts';
import { ROLES, type Role } from '../people/roles.ts';
import { keysOf } from '../table.ts';
import { COMMANDS, type CommandName } from './commands.ts';
import { whyNotAsked } from './whoMay.ts';

/**
 * Who may ask what where PINs are used, written from the way of a small shop and not from the code (common practice, no
 * source). One column each: desk, bench, keeper. `x` may, `.` may not; `-` only the program itself does.
 */
const TABLE: { readonly [name in CommandName]: string } = {
  //                    de be ke
  // The shop itself is its keeper's; who opens it is asked for no role, as there is none yet.
  openShop: /*         */ 'x  x  x',
  changeShop: /*       */ '.  .  x',
  changeStaff: /*      */ '.  .  x',
  workWithoutPins: /*  */ '.  .  x',
  giveBadge: /*        */ '.  .  x',
  eraseOwner: /*       */ '.  .  x',
  useModel: /*         */ '.  .  x',
  goBackToModel: /*    */ '.  .  x',
  takeOverPriors: /*   */ '.  .  x',
  resetPriors: /*      */ '.  .  x',
  // What the program writes by itself: secrets it has looked at, and figures it has computed.
  setPin: /*           */ '-  -  -',
  makeRecoveryWords: /**/ '-  -  -',
  noteMissed: /*       */ '-  -  -',
  noteMet: /*          */ '-  -  -',
  noteEstimate: /*     */ '-  -  -',
  noteEnquiryEstimate: '-  -  -',
  // What the owner is asked, signs and agrees to is the desk's.
  enquire: /*          */ 'x  .  x',
  answerEnquiry: /*    */ 'x  .  x',
  lapseEnquiry: /*     */ 'x  .  x',
  takeIn: /*           */ 'x  .  x',
  signTakingIn: /*     */ 'x  .  x',
  signSheet: /*        */ 'x  .  x',
  signAlone: /*        */ 'x  .  x',
  answerConsent: /*    */ 'x  .  x',
  withdrawConsent: /*  */ 'x  .  x',
  tellWorth: /*        */ 'x  .  x',
  correctOwner: /*     */ 'x  .  x',
  cancelTakingIn: /*   */ 'x  .  x',
  promise: /*          */ 'x  .  x',
  answer: /*           */ 'x  .  x',
  lapse: /*            */ 'x  .  x',
  withdrawWord: /*     */ 'x  .  x',
  handOver: /*         */ 'x  .  x',
  remind: /*           */ 'x  .  x',
  tellIncident: /*     */ 'x  .  x',
  endKeeping: /*       */ 'x  .  x',
  // A question comes up at the bench too, and whoever is near rings.
  ask: /*              */ 'x  x  x',
  logTry: /*           */ 'x  x  x',
  tellPromise: /*      */ 'x  x  x',
  tellReady: /*        */ 'x  x  x',
  goHomeAsItCame: /*   */ 'x  x  x',
  // Money, suppliers and what leaves the shop for it.
  bookCharge: /*       */ 'x  .  x',
  takePayment: /*      */ 'x  .  x',
  correctPayment: /*   */ 'x  .  x',
  waiveFee: /*         */ 'x  .  x',
  giveBack: /*         */ 'x  .  x',
  sellPart: /*         */ 'x  .  x',
  lendPart: /*         */ 'x  .  x',
  takeBackLent: /*     */ 'x  .  x',
  orderPart: /*        */ 'x  .  x',
  orderLate: /*        */ 'x  .  x',
  cancelOrder: /*      */ 'x  .  x',
  sendBack: /*         */ 'x  .  x',
  settleReturn: /*     */ 'x  .  x',
  receivePart: /*      */ 'x  x  x',
  bringOwnPart: /*     */ 'x  x  x',
  // What is written down wherever it is seen.
  addBeforeFirstScrew: 'x  x  x',
  correctTold: /*      */ 'x  x  x',
  correctMachine: /*   */ 'x  x  x',
  reportLostThing: /*  */ 'x  x  x',
  addThing: /*         */ 'x  x  x',
  putOursOn: /*        */ 'x  x  x',
  takeOursOff: /*      */ 'x  x  x',
  addPhotographs: /*   */ 'x  x  x',
  sealSecret: /*       */ 'x  x  x',
  wipeSecret: /*       */ 'x  x  x',
  readReport: /*       */ 'x  x  x',
  note: /*             */ 'x  x  x',
  stopClocks: /*       */ 'x  x  x',
  reportIncident: /*   */ 'x  x  x',
  issue: /*            */ 'x  x  x',
  // Hands in the machine, and what they find.
  writeCensus: /*      */ '.  x  x',
  answerSwitches: /*   */ '.  x  x',
  recordSeen: /*       */ '.  x  x',
  recordNotReproduced: '.  x  x',
  startWork: /*        */ '.  x  x',
  turnWork: /*         */ '.  x  x',
  finishWork: /*       */ '.  x  x',
  logWork: /*          */ '.  x  x',
  takeBackStart: /*    */ '.  x  x',
  strikeWork: /*       */ '.  x  x',
  goBackToWorked: /*   */ '.  x  x',
  goBackAsItCame: /*   */ '.  x  x',
  judge: /*            */ '.  x  x',
  nameFault: /*        */ '.  x  x',
  thinkItIs: /*        */ '.  x  x',
  leaveSo: /*          */ '.  x  x',
  keepCode: /*         */ '.  x  x',
  dropCode: /*         */ '.  x  x',
  unplug: /*           */ '.  x  x',
  plugIn: /*           */ '.  x  x',
  movePart: /*         */ '.  x  x',
  fitPart: /*          */ '.  x  x',
  putAway: /*          */ '.  x  x',
  leaveLikeThis: /*    */ '.  x  x',
  confirmLeft: /*      */ '.  x  x',
  goOn: /*             */ '.  x  x',
  markReady: /*        */ '.  x  x',
  provePart: /*        */ '.  x  x',
  knowRig: /*          */ '.  x  x',
  // The wall is everybody's.
  knowPart: /*         */ 'x  x  x',
  correctPart: /*      */ 'x  x  x',
  moveShopPart: /*     */ 'x  x  x',
  reservePart: /*      */ 'x  x  x',
  releasePart: /*      */ 'x  x  x',
  tagPart: /*          */ 'x  x  x',
  tagMachine: /*       */ 'x  x  x',
  voidTag: /*          */ 'x  x  x',
  destroyPart: /*      */ 'x  x  x',
};

const COLUMNS = ['desk', 'bench', 'keeper'] as const;
const works = (...roles: readonly Role[]) => ({ id: staffId('nessa'), name: 'Nessa Quill', roles });
const said = { x: undefined, '.': 'role-may-not', '-': 'only-the-service' } as const;
const cellOf = (name: CommandName, role: (typeof COLUMNS)[number]): keyof typeof said => {
  const cell = TABLE[name].split(/\s+/)[COLUMNS.indexOf(role)];
  if (cell !== 'x' && cell !== '.' && cell !== '-') throw new Error(`no cell for ${name}, ${role}`);
  return cell;
};

describe.each(keysOf(COMMANDS))('%s', (name) => {
  it.each(COLUMNS)('asked by somebody of the %s', (role) => {
    expect(whyNotAsked(name, works(role), 'on')?.refused).toBe(said[cellOf(name, role)]);
  });

  it('is kept from nobody of the shop for their role where it works without PINs', () => {
    for (const use of ['off', 'none-yet'] as const) {
      for (const role of ROLES)
        expect(whyNotAsked(name, works(role), use)?.refused).toBe(
          cellOf(name, role) === '-' ? 'only-the-service' : undefined,
        );
    }
  });
});

it('whoever has two roles may what either may, and the refusal says who, as what, and what it takes', () => {
  for (const name of keysOf(COMMANDS)) {
    const either = COLUMNS.slice(0, 2).map((role) => cellOf(name, role));
    const wanted = either.includes('x') ? undefined : said[either[0] ?? '.'];
    expect(whyNotAsked(name, works('desk', 'bench'), 'on')?.refused, name).toBe(wanted);
  }
  expect(whyNotAsked('takePayment', works('bench'), 'on')).toEqual({
    refused: 'role-may-not',
    command: 'takePayment',
    name: 'Nessa Quill',
    roles: ['bench'],
    needs: ['desk', 'keeper'],
  });
});
