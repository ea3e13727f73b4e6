import type { Rule, StartCondition } from '../record/condition.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { moment } from './dates.ts'
import { figure } from './money.ts'
import { assemblyName, atStart } from './names.ts'
import type { Reader } from './reader.ts'
import { type Told, whoDoes } from './told.ts'

type OfCoats = Extract<
  StartCondition,
  { readonly rule: 'coat-over' | 'sanded-through' | 'bare-metal' | 'lacquer-cure' | 'film-left' }
>

const sheet = 'The maker’s data sheet outranks this.'

/** What keeps a stage from laying or flatting a coat. */
export function toldOfCoats(condition: OfCoats, record: ProjectRecord, reader: Reader): Told {
  const on = assemblyName(condition.assembly, record)
  switch (condition.rule) {
    case 'coat-over':
      return toldOver(condition, on, record, reader)
    case 'sanded-through':
      return {
        fact: `${on} is sanded through to ${condition.to}: ${condition.place}`,
        detail: `That place has its own primer first. ${sheet}`,
        who: whoDoes(condition.clearedBy, record, reader, 'prime it', 'primes it'),
      }
    case 'bare-metal':
      return {
        fact: `${on} has stood bare for more than a shift`,
        detail: 'Blast or abrade it anew, and coat it the same shift.',
        since: `Ran out ${moment(condition.ranOutAt, reader)}`,
        who: whoDoes(condition.clearedBy, record, reader, 'abrade it', 'abrades it'),
      }
    case 'lacquer-cure':
      return {
        fact: `The lacquer on ${on} is too young to flat`,
        detail: `Flatted now it sinks back. Counted from the end of its last coat. ${sheet}`,
        since: `Cures until ${moment(condition.until, reader)}`,
        who: 'The clock clears it.',
      }
    case 'film-left': {
      const microns = (µm: number) => `${figure(µm, reader.locale, 0)} µm`
      if (condition.left === null)
        return {
          fact: `Nobody knows how much lacquer lies on ${on}`,
          detail: `${microns(condition.flats)} are to come off. The film is read before the lacquer and after it, at the same points.`,
          who: whoDoes(condition.clearedBy, record, reader, 'read the film', 'reads the film'),
        }
      return {
        fact: `Flatting would leave ${microns(condition.left)} of lacquer on ${on}`,
        detail: `${microns(condition.flats)} are to come off; about 40 µm must stay. The thinnest point: ${condition.where}.`,
        who: whoDoes(
          condition.clearedBy,
          record,
          reader,
          'lacquer it again, or take less off',
          'lacquers it again, or takes less off',
        ),
      }
    }
  }
}

function toldOver(
  condition: Extract<OfCoats, { readonly rule: 'coat-over' }>,
  on: string,
  record: ProjectRecord,
  reader: Reader,
): Told {
  const { lays, over, ranOutAt, opensAt, clearedBy } = condition
  const cleared = (you: string, they: string) => whoDoes(clearedBy, record, reader, you, they)
  switch (condition.why) {
    case 'not over it':
      return {
        fact: `${atStart(lays)} does not go over ${over}: ${on}`,
        detail: `Take the ${over} off first. ${sheet}`,
        who: cleared('take it off', 'takes it off'),
      }
    case 'isolator first':
      return {
        fact: `${on} has no isolator under the ${lays}`,
        detail: `${atStart(over)} lies bare there, and an isolator goes between the build and the ${lays}.`,
        who: cleared('lay one and record it', 'lays one and records it'),
      }
    case 'primer first':
      return {
        fact: `${on} is bare metal: ${lays} does not go over it`,
        detail: 'Its own primer goes on first.',
        who: cleared('prime it and record it', 'primes it and records it'),
      }
    default: {
      if (opensAt !== null)
        return {
          fact: `The ${over} on ${on} has not flashed off`,
          detail: `${atStart(lays)} laid now would trap its solvent. ${sheet}`,
          since: `Opens ${moment(opensAt, reader)}`,
          who: 'The clock clears it.',
        }
      const fresh = condition.why === 'window or a fresh coat'
      return {
        fact:
          ranOutAt === null
            ? `The ${over} on ${on} is not keyed for the ${lays}`
            : `The recoat window of the ${over} on ${on} has run out`,
        detail: fresh
          ? `Key it lightly and lay a fresh coat of ${over} first. Counted from the end of the last coat.`
          : 'Key it first. No window is drawn that it is still inside of; windows count from the end of the last coat.',
        ...(ranOutAt === null ? {} : { since: `Ran out ${moment(ranOutAt, reader)}` }),
        who: fresh
          ? cleared('key it and lay it', 'keys it and lays it')
          : cleared('key it', 'keys it'),
      }
    }
  }
}

/** What a rule about coats says where it is met. */
export function metOfCoats(rule: Rule, entity: string, record: ProjectRecord): string {
  const coat = record.coats.rows.get(entity)
  const on = assemblyName(coat?.assembly ?? entity, record)
  switch (rule) {
    case 'lacquer-cure':
      return `${on}: its lacquer has cured`
    case 'film-left':
      return `${on}: enough lacquer would be left`
    case 'bare-metal':
      return `${on}: bare, and still within the shift`
    default:
      return coat === undefined
        ? `${on}: what lies on it bears the next coat`
        : `${on}: the ${coat.product} on it bears the next coat`
  }
}
