import type { CommandName } from '../record/command-names.ts'
import type { Clearing } from '../record/condition.ts'
import type { Stage, StageState } from '../record/entities/work.ts'

const commandAfter: { readonly [S in StageState]: CommandName | null } = {
  planned: 'stage.start',
  'in work': 'stage.signOff',
  paused: 'stage.resume',
  ended: 'stage.signOff',
  'signed off': null,
  'in doubt': 'stage.confirm',
  reopened: 'stage.start',
}

/** The press that brings a stage nearer to its sign-off; null once it is signed off. */
export function nextPress(stage: Stage): Clearing | null {
  const command = commandAfter[stage.state]
  return command === null ? null : { command, input: { stage: stage.id } }
}
