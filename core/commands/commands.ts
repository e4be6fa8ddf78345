import { answer } from './approval/answer.ts';
import { ask } from './approval/ask.ts';
import { lapse } from './approval/lapse.ts';
import { logTry } from './approval/logTry.ts';
import { withdrawWord } from './approval/withdrawWord.ts';
import { goOn } from './bench/goOn.ts';
import { note } from './bench/note.ts';
import { fitPart } from './bench/parts/fitPart.ts';
import { goBackAsItCame, goBackToWorked } from './bench/parts/goBack.ts';
import { movePart } from './bench/parts/movePart.ts';
import { putAway } from './bench/parts/putAway.ts';
import { plugIn, unplug } from './bench/parts/unplug.ts';
import { recordNotReproduced, recordSeen } from './bench/recordSeen.ts';
import { judge } from './bench/verdict/judge.ts';
import { confirmLeft, leaveLikeThis } from './bench/verdict/leaveLikeThis.ts';
import { leaveSo } from './bench/verdict/leaveSo.ts';
import { nameFault } from './bench/verdict/nameFault.ts';
import { thinkItIs } from './bench/verdict/thinkItIs.ts';
import { finishWork } from './bench/work/finishWork.ts';
import { logWork } from './bench/work/logWork.ts';
import { startWork } from './bench/work/startWork.ts';
import { stopClocks } from './bench/work/stopClocks.ts';
import { strikeWork } from './bench/work/strikeWork.ts';
import { takeBackStart } from './bench/work/takeBackStart.ts';
import { turnWork } from './bench/work/turnWork.ts';
import { answerEnquiry, lapseEnquiry } from './enquiry/answerEnquiry.ts';
import { enquire } from './enquiry/enquire.ts';
import { noteEnquiryEstimate } from './enquiry/noteEnquiryEstimate.ts';
import { destroyPart } from './home/destroyPart.ts';
import { endKeeping } from './home/endKeeping.ts';
import { goHomeAsItCame } from './home/goHomeAsItCame.ts';
import { handOver } from './home/handOver.ts';
import { markReady } from './home/markReady.ts';
import { reportIncident, tellIncident } from './home/reportIncident.ts';
import { reportLostThing } from './home/reportLostThing.ts';
import { remind, tellReady } from './home/tellReady.ts';
import { addBeforeFirstScrew } from './intake/addBeforeFirstScrew.ts';
import { addPhotographs } from './intake/addPhotographs.ts';
import { addThing } from './intake/addThing.ts';
import { answerConsent, signAlone, withdrawConsent } from './intake/answerConsent.ts';
import { answerSwitches } from './intake/answerSwitches.ts';
import { cancelTakingIn } from './intake/cancelTakingIn.ts';
import { correctMachine } from './intake/correctMachine.ts';
import { correctOwner } from './intake/correctOwner.ts';
import { correctTold } from './intake/correctTold.ts';
import { putOursOn, takeOursOff } from './intake/putOursOn.ts';
import { readReport } from './intake/readReport.ts';
import { sealSecret, wipeSecret } from './intake/sealSecret.ts';
import { signSheet } from './intake/signSheet.ts';
import { signTakingIn } from './intake/signTakingIn.ts';
import { takeIn } from './intake/takeIn.ts';
import { tellWorth } from './intake/tellWorth.ts';
import { writeCensus } from './intake/writeCensus.ts';
import { bookCharge } from './money/bookCharge.ts';
import { correctPayment } from './money/correctPayment.ts';
import { giveBack } from './money/giveBack.ts';
import { takePayment } from './money/takePayment.ts';
import { waiveFee } from './money/waiveFee.ts';
import { bringOwnPart } from './orders/bringOwnPart.ts';
import { cancelOrder, orderLate } from './orders/orderLate.ts';
import { orderPart } from './orders/orderPart.ts';
import { receivePart } from './orders/receivePart.ts';
import { sendBack, settleReturn } from './orders/sendBack.ts';
import { eraseOwner } from './owners/eraseOwner.ts';
import { issue } from './papers/issue.ts';
import { giveBadge } from './people/giveBadge.ts';
import { makeRecoveryWords } from './people/makeRecoveryWords.ts';
import { noteMet } from './people/noteMet.ts';
import { noteMissed } from './people/noteMissed.ts';
import { setPin } from './people/setPin.ts';
import { workWithoutPins } from './people/workWithoutPins.ts';
import { noteEstimate } from './promise/noteEstimate.ts';
import { promise, tellPromise } from './promise/promise.ts';
import { changeShop } from './shop/changeShop.ts';
import { changeStaff } from './shop/changeStaff.ts';
import { goBackToModel } from './shop/goBackToModel.ts';
import { dropCode, keepCode } from './shop/keepCode.ts';
import { openShop } from './shop/openShop.ts';
import { resetPriors, takeOverPriors } from './shop/takeOverPriors.ts';
import { useModel } from './shop/useModel.ts';
import { correctPart } from './wall/correctPart.ts';
import { knowPart } from './wall/knowPart.ts';
import { knowRig } from './wall/knowRig.ts';
import { lendPart, takeBackLent } from './wall/lendPart.ts';
import { moveShopPart } from './wall/moveShopPart.ts';
import { provePart } from './wall/provePart.ts';
import { releasePart, reservePart } from './wall/reservePart.ts';
import { sellPart } from './wall/sellOverCounter.ts';
import { tagMachine } from './wall/tagMachine.ts';
import { tagPart } from './wall/tagPart.ts';
import { voidTag } from './wall/voidTag.ts';

/** The one list of commands. A new command is written in its subject's folder and named here; door, guard and test follow. */
export const COMMANDS = {
  openShop,
  changeShop,
  changeStaff,
  workWithoutPins,
  giveBadge,
  eraseOwner,
  setPin,
  makeRecoveryWords,
  noteMissed,
  noteMet,
  useModel,
  keepCode,
  dropCode,
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
  cancelTakingIn,
  correctMachine,
  correctOwner,
  tellWorth,
  addThing,
  reportLostThing,
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
  takeBackStart,
  goBackToWorked,
  goBackAsItCame,
  judge,
  nameFault,
  leaveSo,
  thinkItIs,
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
  waiveFee,
  correctPayment,
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
