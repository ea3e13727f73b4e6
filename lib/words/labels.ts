import type { CommandName } from '../record/command-names.ts'
import type { StageState } from '../record/entities/work.ts'

/** What a card may show: the stored states, and those computed on *planned*. */
export type ShownState = Exclude<StageState, 'planned'> | 'planned' | 'ready' | 'waiting' | 'held'

const states: { readonly [S in ShownState]: string } = {
  planned: 'Planned',
  ready: 'Ready',
  waiting: 'Waiting',
  held: 'Held',
  'in work': 'In work',
  paused: 'Paused',
  ended: 'Ended',
  'signed off': 'Signed off',
  'in doubt': 'In doubt',
  reopened: 'Reopened',
}
/** The word that stands beside a state's mark. */
export const stateLabel = (state: ShownState): string => states[state]

/** What a label may name: a stage's number, a sum, a thing. */
export interface Thing {
  readonly number?: number | undefined
  readonly name?: string | undefined
  readonly sum?: string | undefined
  /** A stage that ends with a handover is *ready to fit* when it is signed off. */
  readonly handoverTo?: string | null | undefined
}

/** A stage's number as it is stencilled: two figures at least. */
export const stageNumber = (number: number): string => String(number).padStart(2, '0')

const numbered = (thing: Thing): string =>
  thing.number === undefined ? (thing.name ?? '') : stageNumber(thing.number)
const after = (verb: string) => (thing: Thing) => `${verb} ${numbered(thing)}`.trimEnd()
const named = (verb: string) => (thing: Thing) => `${verb} ${thing.name ?? ''}`.trimEnd()
const just = (words: string) => () => words

const commands: { readonly [Name in CommandName]: (thing: Thing) => string } = {
  'project.create': just('Create the project'),
  'project.describe': just('Save'),
  'party.add': named('Add'),
  'party.describe': just('Save'),
  'party.leave': (thing) => `${thing.name ?? 'The party'} leaves the project`,
  'participant.add': named('Add'),
  'participant.remove': named('Remove'),
  'assembly.add': named('Add'),
  'assembly.describe': just('Save'),
  'assembly.fit': named('Enter as fitted:'),
  'assembly.takeOff': named('Enter as taken off:'),
  'stage.add': named('Add'),
  'stage.describe': just('Save'),
  'stage.remove': after('Remove'),
  'stage.precautions': just('The precautions are in place'),
  'stage.insertKeying': just('Put a keying stage in'),
  'metal.record': just('Enter the metal’s temperature'),
  'air.record': just('Enter air and surface'),
  'inDate.record': just('Enter as in date'),
  'inDate.withdraw': just('No longer in date'),
  'milestone.agree': just('Agree the payment'),
  'milestone.meet': just('It is paid'),
  'milestone.withdraw': just('No longer wait for it'),
  'stage.split': after('Split'),
  'stage.merge': just('Make one stage of them'),
  'stage.move': after('Move'),
  'stage.give': (thing) => `Give it to ${thing.name ?? 'another party'}`,
  'link.describe': just('Save the link'),
  'step.add': just('Add the step'),
  'step.describe': just('Save the step'),
  'step.remove': just('Take the step off'),
  'step.tick': just('Tick'),
  'coat.record': (thing) =>
    thing.name === undefined ? 'Record a coat' : `Record a coat on ${thing.name}`,
  'coat.correct': just('Correct the coat'),
  'coat.strip': (thing) =>
    thing.name === undefined ? 'Enter what is taken off' : `Enter what is taken off ${thing.name}`,
  'film.record': (thing) =>
    thing.name === undefined ? 'Enter film readings' : `Enter film readings of ${thing.name}`,
  'colour.add': just('Keep the colour'),
  'colour.describe': just('Save the colour'),
  'colour.cardAgreed': just('Agree to the sprayed-out card'),
  'colour.remove': just('Take the colour off the list'),
  'link.draw': just('Draw the link'),
  'link.remove': just('Remove the link'),
  'check.add': named('Add check'),
  'check.remove': just('Remove the check'),
  'hold.set': just('Set the point'),
  'hold.remove': just('Remove the point'),
  'buildOrder.import': just('Import the build order'),
  'library.build': just('Make the build order'),
  'stage.start': after('Start'),
  'stage.pause': after('Pause'),
  'stage.resume': after('Resume'),
  'stage.end': after('End work on'),
  'stage.correctEnd': just('Correct the end of work'),
  'stage.takeBack': just('Take back the last press'),
  'stage.signOff': (thing) =>
    thing.handoverTo ? `Ready to fit: ${numbered(thing)}` : `Sign off ${numbered(thing)}`,
  'stage.countersign': after('Countersign'),
  'stage.reopen': after('Reopen'),
  'stage.confirm': after('Confirm'),
  'stage.reportDone': (thing) => `Report ${numbered(thing)} as done`,
  'check.record': just('Enter'),
  'hold.release': just('Release the hold'),
  'hold.invite': just('Invite'),
  'hold.waive': just('Waive'),
  'hold.takeBack': just('Take back the release'),
  'condition.concede': just('Concede, with a reason'),
  'concession.withdraw': just('Withdraw the concession'),
  'condition.ask': (thing) => (thing.name === undefined ? 'Ask' : `Ask ${thing.name}`),
  'ask.close': just('Close the question'),
  'told.confirm': just('Confirm what was told'),
  'handover.prepare': just('Prepare the handover'),
  'handover.release': named('Release'),
  'handover.takeBack': just('Take back the release'),
  'handover.receive': named('Receive'),
  'estimate.add': just('Add to the estimate'),
  'estimate.withdraw': just('Withdraw from the estimate'),
  'changeOrder.raise': just('Raise the change order'),
  'changeOrder.revise': just('Save'),
  'changeOrder.send': after('Send change order'),
  'changeOrder.ask': just('Ask about it'),
  'changeOrder.answer': just('Answer'),
  'changeOrder.approve': (thing) => `Approve ${thing.sum ?? ''}`.trimEnd(),
  'changeOrder.decline': just('Decline'),
  'changeOrder.withdraw': just('Withdraw the change order'),
  'decision.ask': just('Ask for the decision'),
  'decision.choose': named('Choose'),
  'decision.withdraw': just('Withdraw the question'),
  'part.want': named('Put on the list:'),
  'part.order': named('Order'),
  'part.promise': just('Enter the promise'),
  'part.arrive': named('Enter as arrived:'),
  'part.inspect': named('Inspect'),
  'part.withdraw': just('Withdraw the part'),
  'window.open': just('Open the window'),
  'window.close': just('Close the window'),
  'slot.claim': just('Claim the slot'),
  'slot.agree': just('Agree to the slot'),
  'slot.release': just('Give the slot back'),
  'note.write': just('Write the note'),
  'note.withdraw': just('Withdraw the note'),
  'shop.create': just('Create the shop'),
  'shop.describe': just('Save'),
  'bay.add': named('Add'),
  'bay.describe': just('Save'),
  'bay.retire': named('Retire'),
  'membership.add': named('Add'),
  'membership.change': just('Change the role'),
  'membership.remove': named('Remove'),
}

/** What stands on the button of a command: *Start 41*, *Approve £760.80*. */
export const label = (command: CommandName, thing: Thing = {}): string => commands[command](thing)
