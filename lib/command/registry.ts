import { buildOrderImport } from '../build-order/build-order-import.ts'
import { checkAdd } from '../build-order/check-add.ts'
import { checkRecord } from '../build-order/check-record.ts'
import { checkRemove } from '../build-order/check-remove.ts'
import { decisionAsk } from '../build-order/decision-ask.ts'
import { decisionChoose } from '../build-order/decision-choose.ts'
import { decisionWithdraw } from '../build-order/decision-withdraw.ts'
import { holdInvite } from '../build-order/hold-invite.ts'
import { holdRelease } from '../build-order/hold-release.ts'
import { holdRemove } from '../build-order/hold-remove.ts'
import { holdSet } from '../build-order/hold-set.ts'
import { holdTakeBack } from '../build-order/hold-take-back.ts'
import { holdWaive } from '../build-order/hold-waive.ts'
import { linkDescribe } from '../build-order/link-describe.ts'
import { linkDraw } from '../build-order/link-draw.ts'
import { linkRemove } from '../build-order/link-remove.ts'
import { noteWithdraw } from '../build-order/note-withdraw.ts'
import { noteWrite } from '../build-order/note-write.ts'
import { stageAdd } from '../build-order/stage-add.ts'
import { stageConfirm } from '../build-order/stage-confirm.ts'
import { stageCorrectEnd } from '../build-order/stage-correct-end.ts'
import { stageCountersign } from '../build-order/stage-countersign.ts'
import { stageDescribe } from '../build-order/stage-describe.ts'
import { stageEnd } from '../build-order/stage-end.ts'
import { stageGive } from '../build-order/stage-give.ts'
import { stageMerge } from '../build-order/stage-merge.ts'
import { stageMove } from '../build-order/stage-move.ts'
import { stagePause } from '../build-order/stage-pause.ts'
import { stageRemove } from '../build-order/stage-remove.ts'
import { stageReopen } from '../build-order/stage-reopen.ts'
import { stageReportDone } from '../build-order/stage-report-done.ts'
import { stageResume } from '../build-order/stage-resume.ts'
import { stageSignOff } from '../build-order/stage-sign-off.ts'
import { stageSplit } from '../build-order/stage-split.ts'
import { stageStart } from '../build-order/stage-start.ts'
import { stageTakeBack } from '../build-order/stage-take-back.ts'
import { stepAdd } from '../build-order/step-add.ts'
import { stepDescribe } from '../build-order/step-describe.ts'
import { stepRemove } from '../build-order/step-remove.ts'
import { stepTick } from '../build-order/step-tick.ts'
import { assemblyAdd } from '../custody/assembly-add.ts'
import { assemblyDescribe } from '../custody/assembly-describe.ts'
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
import { estimateAdd } from '../money/estimate-add.ts'
import { estimateWithdraw } from '../money/estimate-withdraw.ts'
import { partArrive } from '../parts/part-arrive.ts'
import { partInspect } from '../parts/part-inspect.ts'
import { partOrder } from '../parts/part-order.ts'
import { partPromise } from '../parts/part-promise.ts'
import { partWant } from '../parts/part-want.ts'
import { partWithdraw } from '../parts/part-withdraw.ts'
import type { ProjectCommand, ShopCommand } from '../record/command.ts'
import type { ProjectCommandName, ShopCommandName } from '../record/command-names.ts'
import { bayAdd } from '../shop/bay-add.ts'
import { bayDescribe } from '../shop/bay-describe.ts'
import { bayRetire } from '../shop/bay-retire.ts'
import { membershipAdd } from '../shop/membership-add.ts'
import { membershipChange } from '../shop/membership-change.ts'
import { membershipRemove } from '../shop/membership-remove.ts'
import { participantAdd } from '../shop/participant-add.ts'
import { participantRemove } from '../shop/participant-remove.ts'
import { partyAdd } from '../shop/party-add.ts'
import { partyDescribe } from '../shop/party-describe.ts'
import { partyLeave } from '../shop/party-leave.ts'
import { projectCreate } from '../shop/project-create.ts'
import { projectDescribe } from '../shop/project-describe.ts'
import { shopCreate } from '../shop/shop-create.ts'
import { shopDescribe } from '../shop/shop-describe.ts'
import { slotAgree } from '../shop/slot-agree.ts'
import { slotClaim } from '../shop/slot-claim.ts'
import { slotRelease } from '../shop/slot-release.ts'
import { windowClose } from '../shop/window-close.ts'
import { windowOpen } from '../shop/window-open.ts'

/** Every command on a project, by name. */
export const projectCommands = {
  'part.want': partWant,
  'part.order': partOrder,
  'part.promise': partPromise,
  'part.arrive': partArrive,
  'part.inspect': partInspect,
  'part.withdraw': partWithdraw,
  'project.create': projectCreate,
  'project.describe': projectDescribe,
  'party.add': partyAdd,
  'party.describe': partyDescribe,
  'party.leave': partyLeave,
  'participant.add': participantAdd,
  'participant.remove': participantRemove,
  'stage.remove': stageRemove,
  'stage.split': stageSplit,
  'stage.merge': stageMerge,
  'stage.move': stageMove,
  'stage.give': stageGive,
  'link.describe': linkDescribe,
  'step.add': stepAdd,
  'step.describe': stepDescribe,
  'step.remove': stepRemove,
  'step.tick': stepTick,
  'stage.describe': stageDescribe,
  'stage.add': stageAdd,
  'note.write': noteWrite,
  'note.withdraw': noteWithdraw,
  'link.remove': linkRemove,
  'link.draw': linkDraw,
  'hold.set': holdSet,
  'hold.remove': holdRemove,
  'decision.withdraw': decisionWithdraw,
  'decision.choose': decisionChoose,
  'decision.ask': decisionAsk,
  'check.remove': checkRemove,
  'check.add': checkAdd,
  'buildOrder.import': buildOrderImport,
  'assembly.add': assemblyAdd,
  'assembly.describe': assemblyDescribe,
  'assembly.fit': assemblyFit,
  'assembly.takeOff': assemblyTakeOff,
  'estimate.add': estimateAdd,
  'estimate.withdraw': estimateWithdraw,
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
  'window.open': windowOpen,
  'window.close': windowClose,
  'slot.claim': slotClaim,
  'slot.agree': slotAgree,
  'slot.release': slotRelease,
  'handover.prepare': handoverPrepare,
  'handover.release': handoverRelease,
  'handover.takeBack': handoverTakeBack,
  'handover.receive': handoverReceive,
} satisfies {
  readonly [Name in ProjectCommandName]: ProjectCommand<Name>
}

/** Every command on a shop book, by name. */
export const shopCommands = {
  'shop.create': shopCreate,
  'shop.describe': shopDescribe,
  'bay.add': bayAdd,
  'bay.describe': bayDescribe,
  'bay.retire': bayRetire,
  'membership.add': membershipAdd,
  'membership.change': membershipChange,
  'membership.remove': membershipRemove,
} satisfies { readonly [Name in ShopCommandName]: ShopCommand<Name> }
