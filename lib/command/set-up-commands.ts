import { buildOrderImport } from '../build-order/build-order-import.ts'
import { checkAdd } from '../build-order/check-add.ts'
import { checkRemove } from '../build-order/check-remove.ts'
import { holdRemove } from '../build-order/hold-remove.ts'
import { holdSet } from '../build-order/hold-set.ts'
import { inDateRecord, inDateWithdraw } from '../build-order/in-date-record.ts'
import { linkDescribe } from '../build-order/link-describe.ts'
import { linkDraw } from '../build-order/link-draw.ts'
import { linkRemove } from '../build-order/link-remove.ts'
import { milestoneAgree, milestoneMeet, milestoneWithdraw } from '../build-order/milestone-agree.ts'
import { stageAdd } from '../build-order/stage-add.ts'
import { stageDescribe } from '../build-order/stage-describe.ts'
import { stageGive } from '../build-order/stage-give.ts'
import { stageMerge } from '../build-order/stage-merge.ts'
import { stageMove } from '../build-order/stage-move.ts'
import { stageRemove } from '../build-order/stage-remove.ts'
import { stageSplit } from '../build-order/stage-split.ts'
import { stepAdd } from '../build-order/step-add.ts'
import { stepDescribe } from '../build-order/step-describe.ts'
import { stepRemove } from '../build-order/step-remove.ts'
import { assemblyAdd } from '../custody/assembly-add.ts'
import { assemblyDescribe } from '../custody/assembly-describe.ts'
import { libraryBuild } from '../library/library-build.ts'
import { estimateAdd } from '../money/estimate-add.ts'
import { estimateWithdraw } from '../money/estimate-withdraw.ts'
import type { ShopCommand } from '../record/command.ts'
import type { ShopCommandName } from '../record/command-names.ts'
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
import { windowClose } from '../shop/window-close.ts'
import { windowOpen } from '../shop/window-open.ts'

/** Commands by which a project is set up and its build order changed: mostly at a desk. */
export const setUpCommands = {
  'library.build': libraryBuild,
  'inDate.record': inDateRecord,
  'inDate.withdraw': inDateWithdraw,
  'milestone.agree': milestoneAgree,
  'milestone.meet': milestoneMeet,
  'milestone.withdraw': milestoneWithdraw,
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
  'stage.describe': stageDescribe,
  'stage.add': stageAdd,
  'link.remove': linkRemove,
  'link.draw': linkDraw,
  'hold.set': holdSet,
  'hold.remove': holdRemove,
  'check.remove': checkRemove,
  'check.add': checkAdd,
  'buildOrder.import': buildOrderImport,
  'assembly.add': assemblyAdd,
  'assembly.describe': assemblyDescribe,
  'estimate.add': estimateAdd,
  'estimate.withdraw': estimateWithdraw,
  'window.open': windowOpen,
  'window.close': windowClose,
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
