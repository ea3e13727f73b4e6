import { airRecord } from '../build-order/air-record.ts'
import { checkRecord } from '../build-order/check-record.ts'
import { decisionAsk } from '../build-order/decision-ask.ts'
import { decisionChoose } from '../build-order/decision-choose.ts'
import { decisionWithdraw } from '../build-order/decision-withdraw.ts'
import { holdInvite } from '../build-order/hold-invite.ts'
import { holdRelease } from '../build-order/hold-release.ts'
import { holdTakeBack } from '../build-order/hold-take-back.ts'
import { holdWaive } from '../build-order/hold-waive.ts'
import { metalRecord } from '../build-order/metal-record.ts'
import { noteWithdraw } from '../build-order/note-withdraw.ts'
import { noteWrite } from '../build-order/note-write.ts'
import { stageConfirm } from '../build-order/stage-confirm.ts'
import { stageCorrectEnd } from '../build-order/stage-correct-end.ts'
import { stageCountersign } from '../build-order/stage-countersign.ts'
import { stageEnd } from '../build-order/stage-end.ts'
import { stageInsertKeying } from '../build-order/stage-insert-keying.ts'
import { stagePause } from '../build-order/stage-pause.ts'
import { stagePrecautions } from '../build-order/stage-precautions.ts'
import { stageReopen } from '../build-order/stage-reopen.ts'
import { stageReportDone } from '../build-order/stage-report-done.ts'
import { stageResume } from '../build-order/stage-resume.ts'
import { stageSignOff } from '../build-order/stage-sign-off.ts'
import { stageStart } from '../build-order/stage-start.ts'
import { stageTakeBack } from '../build-order/stage-take-back.ts'
import { stepTick } from '../build-order/step-tick.ts'
import { coatCorrect } from '../coating/coat-correct.ts'
import { coatRecord } from '../coating/coat-record.ts'
import { coatStrip } from '../coating/coat-strip.ts'
import { colourAdd } from '../coating/colour-add.ts'
import { colourCardAgreed } from '../coating/colour-card-agreed.ts'
import { colourDescribe } from '../coating/colour-describe.ts'
import { colourRemove } from '../coating/colour-remove.ts'
import { filmRecord } from '../coating/film-record.ts'
import { assemblyFit } from '../custody/assembly-fit.ts'
import { assemblyTakeOff } from '../custody/assembly-take-off.ts'
import { handoverPrepare } from '../custody/handover-prepare.ts'
import { handoverReceive } from '../custody/handover-receive.ts'
import { handoverRelease } from '../custody/handover-release.ts'
import { handoverTakeBack } from '../custody/handover-take-back.ts'
import { askClose } from '../gate/ask-close.ts'
import { concessionWithdraw } from '../gate/concession-withdraw.ts'
import { conditionAsk } from '../gate/condition-ask.ts'
import { conditionConcede } from '../gate/condition-concede.ts'
import { toldConfirm } from '../gate/told-confirm.ts'
import { changeOrderAnswer } from '../money/change-order-answer.ts'
import { changeOrderApprove } from '../money/change-order-approve.ts'
import { changeOrderAsk } from '../money/change-order-ask.ts'
import { changeOrderDecline } from '../money/change-order-decline.ts'
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

/** Commands of the work itself: what a phone in a workshop presses, with a signal or without. */
export const workCommands = {
  'stage.precautions': stagePrecautions,
  'stage.insertKeying': stageInsertKeying,
  'air.record': airRecord,
  'metal.record': metalRecord,
  'part.want': partWant,
  'part.order': partOrder,
  'part.promise': partPromise,
  'part.arrive': partArrive,
  'part.inspect': partInspect,
  'part.withdraw': partWithdraw,
  'step.tick': stepTick,
  'coat.record': coatRecord,
  'coat.correct': coatCorrect,
  'coat.strip': coatStrip,
  'film.record': filmRecord,
  'colour.add': colourAdd,
  'colour.describe': colourDescribe,
  'colour.cardAgreed': colourCardAgreed,
  'colour.remove': colourRemove,
  'note.write': noteWrite,
  'note.withdraw': noteWithdraw,
  'decision.withdraw': decisionWithdraw,
  'decision.choose': decisionChoose,
  'decision.ask': decisionAsk,
  'assembly.fit': assemblyFit,
  'assembly.takeOff': assemblyTakeOff,
  'changeOrder.raise': changeOrderRaise,
  'changeOrder.revise': changeOrderRevise,
  'changeOrder.send': changeOrderSend,
  'changeOrder.ask': changeOrderAsk,
  'changeOrder.answer': changeOrderAnswer,
  'changeOrder.approve': changeOrderApprove,
  'changeOrder.decline': changeOrderDecline,
  'changeOrder.withdraw': changeOrderWithdraw,
  'stage.start': stageStart,
  'stage.end': stageEnd,
  'stage.pause': stagePause,
  'stage.resume': stageResume,
  'stage.correctEnd': stageCorrectEnd,
  'stage.takeBack': stageTakeBack,
  'stage.countersign': stageCountersign,
  'stage.reopen': stageReopen,
  'stage.confirm': stageConfirm,
  'stage.reportDone': stageReportDone,
  'hold.release': holdRelease,
  'hold.waive': holdWaive,
  'hold.invite': holdInvite,
  'hold.takeBack': holdTakeBack,
  'condition.concede': conditionConcede,
  'concession.withdraw': concessionWithdraw,
  'condition.ask': conditionAsk,
  'ask.close': askClose,
  'told.confirm': toldConfirm,
  'stage.signOff': stageSignOff,
  'check.record': checkRecord,
  'slot.claim': slotClaim,
  'slot.agree': slotAgree,
  'slot.release': slotRelease,
  'handover.prepare': handoverPrepare,
  'handover.release': handoverRelease,
  'handover.takeBack': handoverTakeBack,
  'handover.receive': handoverReceive,
}
