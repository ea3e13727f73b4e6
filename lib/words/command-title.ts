import type { CommandName } from '../record/command-names.ts'

/** The noun of each kind of command, as a person says it. */
const nouns: { readonly [noun: string]: string } = {
  buildOrder: 'build order',
  changeOrder: 'change order',
  signOff: 'sign-off',
}
const verbs: { readonly [verb: string]: string } = {
  add: 'added',
  agree: 'agreed',
  answer: 'question answered',
  approve: 'approved',
  arrive: 'arrived',
  ask: 'asked',
  choose: 'made',
  claim: 'claimed',
  close: 'closed',
  concede: 'conceded',
  confirm: 'confirmed',
  correctEnd: 'end of work corrected',
  countersign: 'countersigned',
  create: 'created',
  decline: 'declined',
  describe: 'described anew',
  draw: 'drawn',
  end: 'work ended',
  fit: 'fitted',
  import: 'imported',
  inspect: 'inspected',
  invite: 'invited',
  leave: 'left',
  open: 'opened',
  order: 'ordered',
  pause: 'paused',
  prepare: 'prepared',
  promise: 'promised',
  raise: 'raised',
  receive: 'received',
  record: 'entered',
  release: 'released',
  remove: 'removed',
  reopen: 'reopened',
  reportDone: 'reported as done',
  resume: 'resumed',
  revise: 'revised',
  send: 'sent',
  set: 'set',
  signOff: 'signed off',
  start: 'started',
  takeBack: 'taken back',
  takeOff: 'taken off',
  waive: 'waived',
  want: 'wanted',
  withdraw: 'withdrawn',
  write: 'written',
}

/** A kind of entry in the journal: *Stage signed off*, *Change order approved*. */
export function commandTitle(name: CommandName): string {
  const [noun = '', verb = ''] = name.split('.')
  const words = `${nouns[noun] ?? noun} ${verbs[verb] ?? verb}`
  return words.charAt(0).toUpperCase() + words.slice(1)
}
