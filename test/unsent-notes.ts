import type { CommandAnswer } from '../lib/command/wire.ts'
import { newKey } from '../lib/live/new-key.ts'
import type { Unsent } from '../lib/live/phone/phone-store.ts'
import { plain } from '../lib/record/condition.ts'
import { PersonId } from '../lib/record/ids.ts'
import { at, project } from './builders.ts'

export const sil = PersonId.parse('psn_sil')
export const jory = PersonId.parse('psn_jory')

/** What a server says to a press. */
export const done: CommandAnswer = { status: 200, changed: [] }
export const no: CommandAnswer = {
  status: 409,
  conditions: [{ ...plain(project), rule: 'unknown' }],
  message: 'Not now.',
}

/** A note that was pressed on a phone and isn't sent. */
export const note = (text: string, over: Partial<Unsent> = {}): Unsent => ({
  person: sil,
  personName: 'Sil',
  lanes: [project],
  request: {
    name: 'note.write',
    input: { on: project, sharing: 'shared', text },
    key: newKey(),
    happenedAt: at(100),
  },
  pressedAt: at(100),
  files: [],
  path: '/p/prj_x',
  label: 'Write the note',
  where: 'Averley',
  entered: [{ field: 'text', value: text }],
  no: null,
  ...over,
})

/** What it says. */
export const textOf = ({ request: { input } }: Unsent): string =>
  typeof input === 'object' && input !== null && 'text' in input ? String(input.text) : ''
