import { answer, lapse, logTry, withdrawWord } from './approval/answer.ts';
import { ask } from './approval/ask.ts';
import { goBackAsItCame, goBackToWorked } from './bench/goBack.ts';
import { logWork } from './bench/logWork.ts';
import { confirmLeft, fitPart, goOn, leaveLikeThis, movePart, note, putAway } from './bench/movePart.ts';
import { judge, plugIn, recordNotReproduced, recordSeen, unplug } from './bench/see.ts';
import { stopClocks } from './bench/stopClocks.ts';
import { turnWork } from './bench/turnWork.ts';
import { finishWork, startWork, strikeWork } from './bench/work.ts';
import { answerEnquiry, enquire, lapseEnquiry, noteEnquiryEstimate } from './enquiry/enquiryCommands.ts';
import { goHomeAsItCame, handOver, markReady, remind, tellReady } from './home/close.ts';
import { destroyPart } from './home/destroyPart.ts';
import { endKeeping } from './home/endKeeping.ts';
import { reportIncident, tellIncident } from './home/incident.ts';
import { answerSwitches, readReport, writeCensus } from './intake/machineSelf.ts';
import {
  addBeforeFirstScrew,
  answerConsent,
  correctTold,
  signAlone,
  signSheet,
  tellWorth,
  withdrawConsent,
} from './intake/sheet.ts';
import { signTakingIn } from './intake/signTakingIn.ts';
import { takeIn } from './intake/takeIn.ts';
import { addPhotographs, addThing, putOursOn, sealSecret, takeOursOff, wipeSecret } from './intake/things.ts';
import { bookCharge, giveBack, takePayment } from './money/payments.ts';
import { cancelOrder, orderLate } from './orders/orderLate.ts';
import { orderPart } from './orders/orderPart.ts';
import { bringOwnPart } from './orders/ownPart.ts';
import { receivePart } from './orders/receivePart.ts';
import { sendBack, settleReturn } from './orders/sendBack.ts';
import { issue } from './papers/issue.ts';
import { noteEstimate } from './promise/noteEstimate.ts';
import { promise, tellPromise } from './promise/promise.ts';
import { goBackToModel, resetPriors, takeOverPriors, useModel } from './shop/modelCommands.ts';
import { changeShop, changeStaff, openShop } from './shop/shopCommands.ts';
import { correctPart } from './wall/correctPart.ts';
import { lendPart, takeBackLent } from './wall/lend.ts';
import { sellPart } from './wall/sellOverCounter.ts';
import { tagMachine, voidTag } from './wall/tagCommands.ts';
import { knowPart, knowRig, moveShopPart, provePart, releasePart, reservePart, tagPart } from './wall/wall.ts';

/** The one list of commands. A new command is written in its subject's folder and named here; door, guard and test follow. */
export const COMMANDS = {
  openShop,
  changeShop,
  changeStaff,
  useModel,
  goBackToModel,
  takeOverPriors,
  resetPriors,
  enquire,
  answerEnquiry,
  lapseEnquiry,
  noteEnquiryEstimate,
  takeIn,
  signTakingIn,
  signSheet,
  signAlone,
  answerConsent,
  withdrawConsent,
  addBeforeFirstScrew,
  correctTold,
  tellWorth,
  addThing,
  putOursOn,
  takeOursOff,
  addPhotographs,
  sealSecret,
  wipeSecret,
  readReport,
  writeCensus,
  answerSwitches,
  recordSeen,
  recordNotReproduced,
  startWork,
  turnWork,
  stopClocks,
  finishWork,
  logWork,
  strikeWork,
  goBackToWorked,
  goBackAsItCame,
  judge,
  unplug,
  plugIn,
  movePart,
  fitPart,
  putAway,
  note,
  leaveLikeThis,
  confirmLeft,
  goOn,
  noteEstimate,
  promise,
  tellPromise,
  ask,
  logTry,
  answer,
  lapse,
  withdrawWord,
  orderPart,
  receivePart,
  orderLate,
  cancelOrder,
  bringOwnPart,
  sendBack,
  settleReturn,
  bookCharge,
  takePayment,
  giveBack,
  markReady,
  goHomeAsItCame,
  tellReady,
  remind,
  handOver,
  reportIncident,
  tellIncident,
  destroyPart,
  endKeeping,
  knowPart,
  correctPart,
  knowRig,
  moveShopPart,
  provePart,
  reservePart,
  releasePart,
  tagPart,
  lendPart,
  takeBackLent,
  sellPart,
  tagMachine,
  voidTag,
  issue,
} as const;
export type CommandName = keyof typeof COMMANDS;
