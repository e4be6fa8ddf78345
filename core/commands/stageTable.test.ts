import { describe, expect, it } from 'vitest';
import { inputs } from '../../tests/builders/commandInputs.ts';
import { aJobAt, askingOf, viewOf } from '../../tests/builders/jobAt.ts';
import { STAGES } from '../stage.ts';
import { COMMANDS, type CommandName } from './commands.ts';
import type { Command } from './kernel/command.ts';

/**
 * Which command is allowed at which stage of a job, written from the way of a job and not from the code. One column
 * each, in this order: taken in, first power-on, tracing, owner's word needed, part on the way, fitting, proving,
 * ready, not collected, home as it came, gone home. `x` is allowed, `.` is not.
 */
const TABLE: { readonly [name in CommandName]?: string } = {
  //                    in on tr ow pw fi pr rd nc as gh
  // The sheet is signed once, before anything is touched. Consents can be given and taken back until the end; one to
  // publish can be taken back after it.
  signSheet: /*        */ 'x  .  .  .  .  .  .  .  .  .  .',
  signAlone: /*        */ 'x  x  x  x  x  x  x  x  x  x  .',
  answerConsent: /*    */ 'x  x  x  x  x  x  x  x  x  x  .',
  withdrawConsent: /*  */ 'x  x  x  x  x  x  x  x  x  x  x',
  addBeforeFirstScrew: 'x  x  x  x  x  x  x  x  x  x  .',
  correctTold: /*      */ 'x  x  x  .  .  x  x  .  .  x  .',
  correctMachine: /*   */ 'x  x  x  x  x  x  x  x  x  x  .',
  // What is written down of an owner can be put right for ever: they are written to after it went home.
  correctOwner: /*     */ 'x  x  x  x  x  x  x  x  x  x  x',
  cancelTakingIn: /*   */ 'x  .  .  .  .  .  .  .  .  .  .',
  tellWorth: /*        */ 'x  x  x  x  x  x  x  x  x  x  .',
  // Things, photographs and secrets come and go as long as the machine is here.
  reportLostThing: /*  */ 'x  x  x  x  x  x  x  x  x  x  .',
  addThing: /*         */ 'x  x  x  x  x  x  x  x  x  x  .',
  putOursOn: /*        */ 'x  x  x  x  x  x  x  x  x  x  .',
  takeOursOff: /*      */ 'x  x  x  x  x  x  x  x  x  x  .',
  addPhotographs: /*   */ 'x  x  x  x  x  x  x  x  x  x  .',
  sealSecret: /*       */ 'x  x  x  x  x  x  x  x  x  x  .',
  wipeSecret: /*       */ 'x  x  x  x  x  x  x  x  x  x  .',
  readReport: /*       */ 'x  x  x  x  x  x  x  x  x  x  .',
  writeCensus: /*      */ 'x  x  x  x  x  x  x  x  x  x  .',
  answerSwitches: /*   */ 'x  x  x  x  x  x  x  x  x  x  .',
  // What the bench sees and judges belongs to looking for the fault.
  recordSeen: /*       */ '.  x  x  .  .  .  .  .  .  .  .',
  recordNotReproduced: '.  x  x  .  .  .  .  .  .  .  .',
  judge: /*            */ '.  x  x  .  .  .  .  .  .  .  .',
  nameFault: /*        */ '.  x  x  .  .  .  .  .  .  .  .',
  leaveSo: /*          */ '.  x  x  .  .  .  .  .  .  .  .',
  thinkItIs: /*        */ '.  x  x  .  .  .  .  .  .  .  .',
  // Hands are in the machine at the bench only; at the door for handling alone. What was begun can always be ended.
  startWork: /*        */ 'x  x  x  .  .  x  x  x  .  x  .',
  turnWork: /*         */ 'x  x  x  x  x  x  x  x  x  x  .',
  finishWork: /*       */ 'x  x  x  x  x  x  x  x  x  x  .',
  logWork: /*          */ 'x  x  x  .  .  x  x  x  .  x  .',
  goBackToWorked: /*   */ 'x  x  x  .  .  x  x  .  .  x  .',
  goBackAsItCame: /*   */ 'x  x  x  x  x  x  x  x  x  x  .',
  takeBackStart: /*    */ 'x  x  x  x  x  x  x  x  x  x  .',
  strikeWork: /*       */ 'x  x  x  x  x  x  x  x  x  x  .',
  unplug: /*           */ 'x  x  x  .  .  x  x  .  .  x  .',
  plugIn: /*           */ '.  x  x  .  .  x  x  .  .  x  .',
  fitPart: /*          */ '.  .  x  .  .  x  x  .  .  x  .',
  movePart: /*         */ 'x  x  x  x  x  x  x  x  x  x  .',
  putAway: /*          */ 'x  x  x  x  x  x  x  x  x  x  .',
  note: /*             */ 'x  x  x  x  x  x  x  x  x  x  .',
  leaveLikeThis: /*    */ 'x  x  x  x  x  x  x  x  x  x  .',
  confirmLeft: /*      */ 'x  x  x  x  x  x  x  x  x  x  .',
  // Nobody goes on by hand past the owner's word, or out of a job that has ended or goes home as it came.
  goOn: /*             */ 'x  x  x  .  x  x  x  x  .  .  .',
  noteEstimate: /*     */ 'x  x  x  x  x  x  x  x  x  x  .',
  promise: /*          */ 'x  x  x  x  x  x  x  x  x  x  .',
  tellPromise: /*      */ 'x  x  x  x  x  x  x  x  x  x  .',
  // The owner can be asked, answer and take the word back as long as the machine is here.
  ask: /*              */ 'x  x  x  x  x  x  x  x  x  x  .',
  logTry: /*           */ 'x  x  x  x  x  x  x  x  x  x  .',
  answer: /*           */ 'x  x  x  x  x  x  x  x  x  x  .',
  lapse: /*            */ 'x  x  x  x  x  x  x  x  x  x  .',
  withdrawWord: /*     */ 'x  x  x  x  x  x  x  x  x  x  .',
  // A part is ordered once it is known what is wrong, and comes while it is waited for or already being fitted.
  orderPart: /*        */ '.  .  x  .  x  x  .  .  .  .  .',
  receivePart: /*      */ '.  .  .  .  x  x  .  .  .  .  .',
  // The supplier names another day or the order is called off while the machine is here; what goes back may outlast it.
  orderLate: /*        */ 'x  x  x  x  x  x  x  x  x  x  .',
  cancelOrder: /*      */ 'x  x  x  x  x  x  x  x  x  x  .',
  sendBack: /*         */ 'x  x  x  x  x  x  x  x  x  x  x',
  settleReturn: /*     */ 'x  x  x  x  x  x  x  x  x  x  x',
  // The owner brings a part once it is known which one is needed.
  bringOwnPart: /*     */ '.  .  x  x  x  x  .  .  .  .  .',
  bookCharge: /*       */ 'x  x  x  x  x  x  x  x  x  x  .',
  // Money comes, and is put right, after it went home too.
  takePayment: /*      */ 'x  x  x  x  x  x  x  x  x  x  x',
  correctPayment: /*   */ 'x  x  x  x  x  x  x  x  x  x  x',
  waiveFee: /*         */ 'x  x  x  x  x  x  x  x  x  x  .',
  giveBack: /*         */ '.  .  .  .  .  .  .  x  x  x  .',
  // Only what was proved stands ready; only what stands at the door goes out of it.
  markReady: /*        */ '.  .  .  .  .  .  x  .  .  .  .',
  goHomeAsItCame: /*   */ 'x  x  x  x  x  x  x  x  x  .  .',
  tellReady: /*        */ '.  .  .  .  .  .  .  x  x  x  .',
  remind: /*           */ '.  .  .  .  .  .  .  x  x  x  .',
  handOver: /*         */ '.  .  .  .  .  .  .  x  x  x  .',
  reportIncident: /*   */ 'x  x  x  x  x  x  x  x  x  x  .',
  tellIncident: /*     */ 'x  x  x  x  x  x  x  x  x  x  .',
  // What the owner left with us, kept or to be destroyed, may outlast the job.
  destroyPart: /*      */ 'x  x  x  x  x  x  x  x  x  x  x',
  endKeeping: /*       */ 'x  x  x  x  x  x  x  x  x  x  x',
  // Ours is lent while the machine is here; it comes back whenever it comes back.
  lendPart: /*         */ 'x  x  x  x  x  x  x  x  x  x  .',
  // Papers can be printed anew for ever.
  issue: /*            */ 'x  x  x  x  x  x  x  x  x  x  x',
};

/** About no job, or about many: no stage can forbid them. */
const NO_JOB: readonly CommandName[] = [
  'openShop',
  'changeShop',
  'changeStaff',
  'workWithoutPins',
  'giveBadge',
  'eraseOwner',
  'setPin',
  'makeRecoveryWords',
  'noteMissed',
  'noteMet',
  'enquire',
  'answerEnquiry',
  'lapseEnquiry',
  'noteEnquiryEstimate',
  'stopClocks',
  'takeIn',
  'signTakingIn',
  'knowPart',
  'correctPart',
  'knowRig',
  'moveShopPart',
  'provePart',
  'reservePart',
  'releasePart',
  'tagPart',
  'tagMachine',
  'voidTag',
  'takeBackLent',
  'sellPart',
  'useModel',
  'keepCode',
  'dropCode',
  'goBackToModel',
  'takeOverPriors',
  'resetPriors',
];

const rows = Object.entries(TABLE).map(([name, row]) => [name as CommandName, row.split(/\s+/)] as const);

describe('stage by command', () => {
  it('has a row for every command, and for nothing else', () => {
    expect([...rows.map(([name]) => name), ...NO_JOB].toSorted()).toEqual(Object.keys(COMMANDS).toSorted());
    for (const [name, row] of rows) expect([name, row.length]).toEqual([name, STAGES.length]);
    for (const name of NO_JOB) expect([name, COMMANDS[name].stages]).toEqual([name, 'no-job']);
  });

  describe.each(rows)('%s', (name, row) => {
    it.each(STAGES.map((stage, at) => [stage, row[at]] as const))('at %s: %s', (stage, mark) => {
      const command = COMMANDS[name] as unknown as Command;
      const input = command.input.parse(inputs[name as keyof typeof inputs]);
      const decision = command.decide(viewOf(aJobAt(stage)), input, askingOf());
      const refusal = decision.ok ? null : decision.refusal;
      if (mark === 'x') return expect(refusal?.refused).not.toBe('not-at-this-stage');
      expect(refusal).toMatchObject({ refused: 'not-at-this-stage', command: command.name, stage });
      expect(refusal?.allowed).not.toContain(stage);
    });
  });
});

describe('at the door', () => {
  it.each(['step', 'fitting', 'proof', 'cleaning', 'own-proof'])('no %s is begun any more, only handling', (kind) => {
    const decision = COMMANDS.startWork.decide(
      viewOf(aJobAt('ready')),
      COMMANDS.startWork.input.parse({ ...inputs.startWork, kind }),
      askingOf(),
    );
    expect(decision).toMatchObject({ ok: false, refusal: { refused: 'not-at-this-stage', stage: 'ready' } });
  });
});

/** Where one goes on to by hand, from each stage; everywhere else is refused. */
const NEXT_STAGES = {
  'taken-in': ['first-power-on'],
  'first-power-on': ['tracing'],
  // Nothing was found yet: only a part can be waited for.
  tracing: ['part-on-the-way'],
  'part-on-the-way': ['fitting', 'tracing'],
  fitting: ['proving', 'tracing', 'part-on-the-way'],
  proving: ['tracing', 'fitting'],
  ready: ['proving'],
} as const;
const TO = ['first-power-on', 'tracing', 'part-on-the-way', 'fitting', 'proving'] as const;

describe.each(Object.entries(NEXT_STAGES))('going on from %s', (from, ways) => {
  it.each(TO)('to %s', (to) => {
    const goesOn = COMMANDS.goOn.decide(
      viewOf(aJobAt(from as keyof typeof NEXT_STAGES)),
      COMMANDS.goOn.input.parse({ job: 'j', to }),
      askingOf(),
    );
    expect(goesOn.ok).toBe((ways as readonly string[]).includes(to));
  });
});

it('known work goes straight to fitting, and tracing that found something goes on to fitting too', () => {
  const to = (job: ReturnType<typeof aJobAt>) =>
    COMMANDS.goOn.decide(viewOf(job), COMMANDS.goOn.input.parse({ job: 'j', to: 'fitting' }), askingOf()).ok;
  expect(to(aJobAt('taken-in', { tasks: [{ id: 'clean', fixedMinor: null }] }))).toBe(true);
  expect(to(aJobAt('tracing', { verdict: { is: 'named', fault: 'dimm-dead', part: null } }))).toBe(true);
});
