import { decisionAsk } from '../build-order/decision-ask.ts'
import { decisionWithdraw } from '../build-order/decision-withdraw.ts'
import { holdInvite } from '../build-order/hold-invite.ts'
import { holdTakeBack } from '../build-order/hold-take-back.ts'
import { holdWaive } from '../build-order/hold-waive.ts'
import { metalRecord } from '../build-order/metal-record.ts'
import { stageConfirm } from '../build-order/stage-confirm.ts'
import { stageCorrectEnd } from '../build-order/stage-correct-end.ts'
import { stageCountersign } from '../build-order/stage-countersign.ts'
import { stageInsertKeying } from '../build-order/stage-insert-keying.ts'
import { stageReopen } from '../build-order/stage-reopen.ts'
import { stageReportDone } from '../build-order/stage-report-done.ts'
import { assemblyFit } from '../custody/assembly-fit.ts'
import { assemblyTakeOff } from '../custody/assembly-take-off.ts'
import { handoverPrepare } from '../custody/handover-prepare.ts'
import { handoverTakeBack } from '../custody/handover-take-back.ts'
import { askClose } from '../gate/ask-close.ts'
import { concessionWithdraw } from '../gate/concession-withdraw.ts'
import { conditionAsk } from '../gate/condition-ask.ts'
import { toldConfirm } from '../gate/told-confirm.ts'
import { changeOrderAnswer } from '../money/change-order-answer.ts'
import { changeOrderAsk } from '../money/change-order-ask.ts'
import { changeOrderRaise } from '../money/change-order-raise.ts'
import { changeOrderRevise } from '../money/change-order-revise.ts'
import { changeOrderSend } from '../money/change-order-send.ts'
import { changeOrderWithdraw } from '../money/change-order-withdraw.ts'
import { partArrive } from '../parts/part-arrive.ts'
import { partInspect } from '../parts/part-inspect.ts'
import { partOrder } from '../parts/part-order.ts'
import { partPromise } from '../parts/part-promise.ts'
import { partWant } from '../parts/part-want.ts'
import { partWithdraw } from '../parts/part-withdraw.ts'
import { slotAgree } from '../shop/slot-agree.ts'
import { slotClaim } from '../shop/slot-claim.ts'
import { slotRelease } from '../shop/slot-release.ts'

/** Commands of whoever arranges the work: their rules come with the first press of one. */
export const deskCommands = {
  'stage.countersign': stageCountersign,
  'handover.takeBack': handoverTakeBack,
  'changeOrder.answer': changeOrderAnswer,
  'changeOrder.ask': changeOrderAsk,
  'hold.waive': holdWaive,
  'handover.prepare': handoverPrepare,
  'part.inspect': partInspect,
  'part.arrive': partArrive,
  'metal.record': metalRecord,
  'stage.insertKeying': stageInsertKeying,
  'part.want': partWant,
  'part.order': partOrder,
  'part.promise': partPromise,
  'part.withdraw': partWithdraw,
  'decision.withdraw': decisionWithdraw,
  'decision.ask': decisionAsk,
  'assembly.fit': assemblyFit,
  'assembly.takeOff': assemblyTakeOff,
  'changeOrder.raise': changeOrderRaise,
  'changeOrder.revise': changeOrderRevise,
  'changeOrder.send': changeOrderSend,
  'changeOrder.withdraw': changeOrderWithdraw,
  'stage.correctEnd': stageCorrectEnd,
  'stage.reopen': stageReopen,
  'stage.confirm': stageConfirm,
  'stage.reportDone': stageReportDone,
  'hold.invite': holdInvite,
  'hold.takeBack': holdTakeBack,
  'concession.withdraw': concessionWithdraw,
  'condition.ask': conditionAsk,
  'ask.close': askClose,
  'told.confirm': toldConfirm,
  'slot.claim': slotClaim,
  'slot.agree': slotAgree,
  'slot.release': slotRelease,
}
