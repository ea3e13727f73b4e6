import type { CommandName } from '../record/command-names.ts'
import type { Entity, EntityByKind, Kind } from '../record/entity.ts'
import { isKind } from '../record/entity.ts'
import type { PartyId, PersonId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { stageNumber } from './labels.ts'
import { counted } from './money.ts'
import {
  assemblyName,
  atStart,
  entityName,
  listed,
  partyName,
  personName,
  stageName,
} from './names.ts'
import type { Reader } from './reader.ts'

/** Who did what: of an entry of the journal, or of a live change. */
export interface Done {
  readonly person: PersonId
  readonly party: PartyId | null
  readonly command: CommandName
}

interface Left {
  readonly entities: readonly Entity[]
  readonly record: ProjectRecord
  readonly reader: Reader
}
type Phrase = (left: Left) => string

function first<K extends Kind>(left: Left, kind: K): EntityByKind[K] | undefined {
  return left.entities.find(isKind(kind))
}

const just =
  (words: string): Phrase =>
  () =>
    words
/** With the stage that the command was about: the one that a check, hold or note lies on, else the changed one. */
const stage =
  (verb: string, rest = ''): Phrase =>
  (left) => {
    const on =
      first(left, 'check')?.stage ??
      first(left, 'hold')?.stage ??
      first(left, 'step')?.stage ??
      first(left, 'signOff')?.stage ??
      first(left, 'concession')?.stage ??
      first(left, 'ask')?.stage ??
      first(left, 'stage')?.id
    return on === undefined
      ? `${verb} a stage${rest}`
      : `${verb} ${stageName(on, left.record)}${rest}`
  }
/** Work by who had released a point of it: the release counts no more, and the line says so. */
const work =
  (verb: string, rest = ''): Phrase =>
  (left) => {
    const again = left.entities.filter(isKind('hold')).map(({ name }) => `“${name}”`)
    const said = stage(verb, rest)(left)
    return again.length === 0
      ? said
      : `${said}; ${listed(again, left.reader.locale)} is to be cleared anew, by somebody else`
  }
const link =
  (verb: string): Phrase =>
  (left) => {
    const found = first(left, 'link')
    return found === undefined
      ? `${verb} between two stages`
      : `${verb} ${stageName(found.from, left.record)} › ${stageName(found.to, left.record)}`
  }
const check =
  (verb: string): Phrase =>
  (left) => {
    const found = first(left, 'check')
    if (found === undefined) return `${verb} a check`
    const number = left.record.stages.rows.get(found.stage)?.number
    return `${verb} “${found.name}”${number === undefined ? '' : ` on ${stageNumber(number)}`}`
  }
const hold =
  (verb: string): Phrase =>
  (left) => {
    const found = first(left, 'hold')
    return found === undefined
      ? `${verb} a hold point`
      : `${verb} “${found.name}”, after ${stageName(found.stage, left.record)}`
  }
const handover =
  (verb: string): Phrase =>
  (left) => {
    const found = first(left, 'handover')
    if (found === undefined) return `${verb} a handover`
    const names = found.assemblies.map((id) => assemblyName(id, left.record))
    return `${verb} ${listed(names, left.reader.locale)}`
  }
const order =
  (verb: string): Phrase =>
  (left) => {
    // A question and its answer are notes on it.
    const noted = left.record.changeOrders.rows.get(first(left, 'note')?.on ?? '')
    const found = first(left, 'changeOrder') ?? noted
    return found === undefined
      ? `${verb} a change order`
      : `${verb} change order ${found.number}, ${found.title}`
  }
const decision =
  (verb: string): Phrase =>
  (left) =>
    `${verb} ${first(left, 'decision')?.question ?? 'a decision'}`
const part =
  (verb: string): Phrase =>
  (left) =>
    `${verb} ${first(left, 'part')?.name ?? left.record.parts.rows.get(first(left, 'promise')?.part ?? '')?.name ?? 'a part'}`
const openWindow =
  (verb: string): Phrase =>
  (left) => {
    const found = first(left, 'openWindow')
    return found === undefined
      ? `${verb} a window`
      : `${verb} a window for ${assemblyName(found.assembly, left.record)}`
  }
const note =
  (verb: string): Phrase =>
  (left) => {
    const found = first(left, 'note')
    return found === undefined
      ? `${verb} a note`
      : `${verb} a note on ${entityName(found.on, left.record)}`
  }
const slot =
  (verb: string): Phrase =>
  (left) => {
    const found = first(left, 'slot')
    return found === undefined
      ? `${verb} a slot`
      : `${verb} a slot for ${assemblyName(found.assembly, left.record)}`
  }
const coat =
  (verb: string, place: 'on' | 'from'): Phrase =>
  (left) => {
    const coats = left.entities.filter(isKind('coat'))
    const top = coats.at(-1)
    if (top === undefined) return `${verb} a coat`
    const sanded = top.sandedPlace !== null && top.offAt === null && place === 'from'
    const where = assemblyName(top.assembly, left.record)
    return sanded
      ? `sanded through on ${where}: ${top.sandedPlace}`
      : `${verb} ${listed(
          coats.map(({ product }) => product),
          left.reader.locale,
        )} ${place} ${where}`
  }
const colour =
  (verb: string): Phrase =>
  (left) =>
    `${verb} ${first(left, 'colour')?.name ?? 'a colour'}`
const named =
  (verb: string, kind: 'assembly' | 'party' | 'project' | 'shop' | 'bay'): Phrase =>
  (left) =>
    `${verb} ${first(left, kind)?.name ?? `a ${kind}`}`

const phrases: { readonly [Name in CommandName]: Phrase } = {
  'project.create': named('created the project', 'project'),
  'project.describe': just('described the project anew'),
  'party.add': named('brought in', 'party'),
  'party.describe': named('described anew', 'party'),
  'party.leave': named('took leave of', 'party'),
  'participant.add': just('brought in a person'),
  'participant.remove': just('removed a person'),
  'assembly.add': named('added', 'assembly'),
  'assembly.describe': named('described anew', 'assembly'),
  'assembly.fit': named('entered as fitted', 'assembly'),
  'assembly.takeOff': named('entered as taken off', 'assembly'),
  'stage.add': stage('added'),
  'stage.describe': stage('described anew'),
  'stage.remove': stage('removed'),
  'stage.precautions': stage('ticked the precautions of'),
  'stage.insertKeying': stage('put a keying stage in:'),
  'metal.record': (left) => {
    const read = first(left, 'metalReading')
    return read === undefined
      ? 'read the metal’s temperature'
      : `read the metal’s temperature after ${stageName(read.stage, left.record)}`
  },
  'air.record': (left) => {
    const on = first(left, 'airReading')?.stage
    return `entered air and surface at ${on === undefined ? 'a stage' : stageName(on, left.record)}`
  },
  'inDate.record': just('entered something as in date'),
  'inDate.withdraw': just('took back that something is in date'),
  'milestone.agree': just('agreed a payment before a stage'),
  'milestone.meet': just('said that an agreed payment has come'),
  'milestone.withdraw': just('withdrew a payment as a condition'),
  'stage.split': stage('split', ' in two'),
  'stage.merge': stage('put another stage into'),
  'stage.move': just('moved a stage within the build order'),
  'stage.give': (left) => {
    const given = first(left, 'stage')
    return given === undefined
      ? 'gave a stage to another party'
      : `gave ${stageName(given.id, left.record)} to ${partyName(given.party, left.record)}`
  },
  'link.describe': link('changed the link'),
  'step.add': stage('added a step to'),
  'step.describe': stage('changed a step of'),
  'step.remove': stage('took a step off'),
  'step.tick': (left) => {
    const step = first(left, 'step')
    return stage(step?.tickedAt === null ? 'took back a tick on' : 'ticked a step of')(left)
  },
  'coat.record': coat('recorded', 'on'),
  'coat.correct': coat('corrected', 'on'),
  'coat.strip': coat('took off', 'from'),
  'film.record': (left) => {
    const films = left.entities.filter(isKind('film'))
    const on = films[0]?.assembly
    return `read the film of ${on === undefined ? 'an assembly' : assemblyName(on, left.record)} at ${counted(films.length, 'point', 'points', left.reader.locale)}`
  },
  'colour.add': colour('kept'),
  'colour.describe': colour('described anew'),
  'colour.cardAgreed': colour('agreed to the sprayed-out card of'),
  'colour.remove': colour('took off the list'),
  'link.draw': link('drew the link'),
  'link.remove': link('removed the link'),
  'check.add': check('added check'),
  'check.remove': check('removed check'),
  'hold.set': hold('set'),
  'hold.remove': hold('removed'),
  'buildOrder.import': just('imported a build order'),
  'library.build': just('made a build order from the library'),
  'stage.start': work('started'),
  'stage.pause': stage('paused'),
  'stage.resume': work('resumed'),
  'stage.end': work('ended work on'),
  'stage.correctEnd': stage('corrected the end of work on'),
  'stage.takeBack': stage('took back the last press on'),
  'stage.signOff': work('signed off'),
  'stage.countersign': stage('countersigned'),
  'stage.reopen': stage('reopened'),
  'stage.confirm': stage('confirmed'),
  'stage.reportDone': work('reported', ' as done'),
  'check.record': check('entered'),
  'hold.release': hold('released'),
  'hold.invite': hold('gave the visiting time for'),
  'hold.waive': hold('waived'),
  'hold.takeBack': hold('took back the release of'),
  'condition.concede': stage('conceded a condition of'),
  'concession.withdraw': stage('withdrew a concession on'),
  'condition.ask': stage('asked about', ''),
  'ask.close': stage('closed a question about'),
  'told.confirm': just('confirmed what was told by phone'),
  'handover.prepare': handover('prepared the handover of'),
  'handover.release': handover('released'),
  'handover.takeBack': handover('took back the release of'),
  'handover.receive': (left) =>
    handover(first(left, 'handover')?.outcome === 'refused' ? 'refused' : 'received')(left),
  'estimate.add': just('added to an estimate'),
  'estimate.withdraw': just('withdrew from an estimate'),
  'changeOrder.raise': order('raised'),
  'changeOrder.revise': order('revised'),
  'changeOrder.send': order('sent'),
  'changeOrder.ask': order('asked about'),
  'changeOrder.answer': order('answered about'),
  'changeOrder.approve': order('approved'),
  'changeOrder.decline': order('declined'),
  'changeOrder.withdraw': order('withdrew'),
  'decision.ask': decision('asked:'),
  'decision.choose': decision('chose:'),
  'decision.withdraw': decision('withdrew the question:'),
  'part.want': part('put on the list:'),
  'part.order': part('ordered'),
  'part.promise': part('entered a promise for'),
  'part.arrive': part('entered as arrived:'),
  'part.inspect': part('inspected'),
  'part.withdraw': part('withdrew'),
  'window.open': openWindow('opened'),
  'window.close': openWindow('closed'),
  'slot.claim': slot('claimed'),
  'slot.agree': slot('agreed to'),
  'slot.release': slot('gave back'),
  'note.write': note('wrote'),
  'note.withdraw': note('withdrew'),
  'shop.create': named('created the shop', 'shop'),
  'shop.describe': just('described the shop anew'),
  'bay.add': named('added', 'bay'),
  'bay.describe': named('described anew', 'bay'),
  'bay.retire': named('retired', 'bay'),
  'membership.add': just('brought in a person'),
  'membership.change': just('changed a person’s role'),
  'membership.remove': just('removed a person'),
}

/** What was done, without who: `signed off 38 · Engine ready to fit`. */
export const whatWasDone = (
  command: CommandName,
  entities: readonly Entity[],
  record: ProjectRecord,
  reader: Reader,
): string => phrases[command]({ entities, record, reader })

/** An entry of the journal: `Jory Quill, on Bench phone, signed off 38 · Engine ready to fit`; `device` names a shop's phone. */
export const journalLine = (
  done: Done & { readonly device?: string | null },
  entities: readonly Entity[],
  record: ProjectRecord,
  reader: Reader,
): string => {
  const through = done.device == null ? '' : `, on ${done.device},`
  const who = `${atStart(personName(done.person, reader.people))}${through}`
  return `${who} ${whatWasDone(done.command, entities, record, reader)}`
}

/** A live change, by the party that made it: `Bexwater Engines signed off 38 · Engine ready to fit`. */
export const doingLine = (
  done: Done,
  entities: readonly Entity[],
  record: ProjectRecord,
  reader: Reader,
): string => {
  const who =
    done.party === null ? personName(done.person, reader.people) : partyName(done.party, record)
  return `${atStart(who)} ${whatWasDone(done.command, entities, record, reader)}`
}
