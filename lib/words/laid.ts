import { promisesOf } from '../gate/indexes.ts'
import type { LaidOut, LaidStage } from '../plan/laid-out.ts'
import type { Stage } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { day, sameDay, span } from './dates.ts'
import { stageNumber } from './labels.ts'
import { counted } from './money.ts'
import { partyName } from './names.ts'
import type { Place } from './reader.ts'

/** `Thu 11 Feb to Fri 19 Feb`, or one day; of what is begun also since when. */
export function laidDays({ from, to, tense }: LaidStage, place: Place): string {
  if (sameDay(from, to, place)) return day(from, place)
  return tense === 'begun' && to <= place.now ? `since ${day(from, place)}` : span(from, to, place)
}

const numberOf = (id: string, record: ProjectRecord): string =>
  stageNumber(record.stages.rows.get(id)?.number ?? 0)

/** What a stage to come begins upon, in a sentence; empty where nothing keeps it. */
export function waitsForWords(
  { waitsFor }: LaidStage,
  record: ProjectRecord,
  place: Place,
): string {
  switch (waitsFor.kind) {
    case 'stage':
      return `It comes on the heels of ${numberOf(waitsFor.stage, record)}.`
    case 'part': {
      const part = record.parts.rows.get(waitsFor.part)
      return `It can’t come before ${part?.name ?? 'a part'} does, as promised last.`
    }
    case 'slot': {
      const slot = record.slots.rows.get(waitsFor.slot)
      return slot === undefined ? '' : `Its slot begins ${day(slot.from, place)}.`
    }
    default:
      return ''
  }
}

/** How far it may slip, in a sentence; empty for what is over. */
export function floatWords({ floatDays, onRun }: LaidStage): string {
  if (floatDays === null) return ''
  if (onRun) return 'It is on the critical run: a day lost here is a day lost at the end.'
  const days = Math.floor(floatDays)
  if (days < 1) return 'It may slip less than a working day before the end moves.'
  return `It may slip ${days === 1 ? 'a working day' : `${days} working days`} before the end moves.`
}

/** `12 working days`; short, for a table. */
export function floatShort({ floatDays, onRun }: LaidStage): string {
  if (floatDays === null) return ''
  if (onRun) return 'none: critical run'
  const days = Math.floor(floatDays)
  return days < 1 ? 'under a day' : `${days} working ${days === 1 ? 'day' : 'days'}`
}

/** What is only sketched about it: no hours, hours that are over, or something without a day before it. */
export function sketchedWords(laid: LaidStage, place: Place): readonly string[] {
  const { hoursUnknown, undated, tense, to } = laid
  if (tense === 'over') return []
  return [
    ...(hoursUnknown ? ['No hours are given: it is drawn as one working day.'] : []),
    ...(tense === 'begun' && to <= place.now
      ? ['It is in work longer than its hours: it is drawn up to now.']
      : []),
    ...(undated ? ['It waits for something that has no day yet: drawn as if that came now.'] : []),
  ]
}

/** More stages than these aren't read one by one: the first and the last of them stand for the run. */
const MOST_OF_RUN = 16
const FIRST_OF_RUN = 8
const LAST_OF_RUN = 3

/** `95 › 100 › 110`; of a long run its beginning, its end and how many it has. */
export function runNumbers(run: readonly string[], record: ProjectRecord): string {
  const numbers = run.map((id) => numberOf(id, record))
  if (numbers.length <= MOST_OF_RUN) return numbers.join(' › ')
  const short = [...numbers.slice(0, FIRST_OF_RUN), '…', ...numbers.slice(-LAST_OF_RUN)]
  return `${short.join(' › ')} (${numbers.length} stages)`
}

/** What the critical run begins with, and what that waits for: there a day lost counts first. */
export function runBegins(laidOut: LaidOut, record: ProjectRecord, place: Place): string {
  const laid = laidOut.stages.get(laidOut.run[0] ?? '')
  if (laid === undefined) return ''
  const first = `It begins with ${numberOf(laid.stage, record)}`
  const { waitsFor } = laid
  if (laid.tense === 'begun') return `${first}, which is in work.`
  switch (waitsFor.kind) {
    case 'stage':
      return `${first}, on the heels of ${numberOf(waitsFor.stage, record)}.`
    case 'part': {
      const name = record.parts.rows.get(waitsFor.part)?.name ?? 'a part'
      const promised = promisesOf(record.promises, waitsFor.part).at(-1)
      const until = promised === undefined ? '' : `, promised for ${day(promised.date, place)}`
      return `${first}, which waits for ${name}${until}.`
    }
    case 'slot': {
      const slot = record.slots.rows.get(waitsFor.slot)
      return `${first}${slot === undefined ? '' : `, whose slot begins ${day(slot.from, place)}`}.`
    }
    default:
      return `${first}.`
  }
}

/** The whole drawing in sentences, for who doesn't see it. */
export function drawnWords(
  laidOut: LaidOut,
  shown: readonly Stage[],
  record: ProjectRecord,
  place: Place,
): string {
  const laid = shown.flatMap((stage) => laidOut.stages.get(stage.id) ?? [])
  const shops = new Set(shown.map((stage) => partyName(stage.party, record))).size
  const of = (tense: LaidStage['tense']) => laid.filter((one) => one.tense === tense).length
  const first = laid.map(({ from }) => from).toSorted()[0]
  const last = laid
    .map(({ to }) => to)
    .toSorted()
    .at(-1)
  const reach =
    first === undefined || last === undefined
      ? ''
      : `, from ${day(first, place)} to ${day(last, place)}`
  const { run, end } = laidOut
  const left =
    end === null
      ? 'Nothing is left to do.'
      : `As the build order stands, without odds, the last of it ends ${day(end, place)}; the critical run is ${runNumbers(run, record)}.`
  return `${counted(shown.length, 'stage', 'stages', place.locale)} along the days in the lanes of ${counted(shops, 'shop', 'shops', place.locale)}${reach}: ${of('over')} over, ${of('begun')} begun, ${of('to come')} to come. ${left}`
}
