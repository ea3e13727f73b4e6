import { airRecord } from '../build-order/air-record.ts'
import { checkRecord } from '../build-order/check-record.ts'
import { decisionChoose } from '../build-order/decision-choose.ts'
import { holdRelease } from '../build-order/hold-release.ts'
import { noteWithdraw } from '../build-order/note-withdraw.ts'
import { noteWrite } from '../build-order/note-write.ts'
import { stageEnd } from '../build-order/stage-end.ts'
import { stagePause } from '../build-order/stage-pause.ts'
import { stagePrecautions } from '../build-order/stage-precautions.ts'
import { stageResume } from '../build-order/stage-resume.ts'
import { stageSignOff } from '../build-order/stage-sign-off.ts'
import { stageStart } from '../build-order/stage-start.ts'
import { stageTakeBack } from '../build-order/stage-take-back.ts'
import { stepTick } from '../build-order/step-tick.ts'
import { handoverReceive } from '../custody/handover-receive.ts'
import { handoverRelease } from '../custody/handover-release.ts'
import { conditionConcede } from '../gate/condition-concede.ts'
import { changeOrderApprove } from '../money/change-order-approve.ts'
import { changeOrderDecline } from '../money/change-order-decline.ts'

/** Commands of the work itself: what a phone in a workshop presses, with a signal or without. */
export const workCommands = {
  'stage.precautions': stagePrecautions,
  'air.record': airRecord,
  'step.tick': stepTick,
  'note.write': noteWrite,
  'note.withdraw': noteWithdraw,
  'decision.choose': decisionChoose,
  'changeOrder.approve': changeOrderApprove,
  'changeOrder.decline': changeOrderDecline,
  'stage.start': stageStart,
  'stage.end': stageEnd,
  'stage.pause': stagePause,
  'stage.resume': stageResume,
  'stage.takeBack': stageTakeBack,
  'hold.release': holdRelease,
  'condition.concede': conditionConcede,
  'stage.signOff': stageSignOff,
  'check.record': checkRecord,
  'handover.release': handoverRelease,
  'handover.receive': handoverReceive,
}
