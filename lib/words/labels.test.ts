import { describe, expect, it } from 'vitest'
import {
  aHold,
  anEngine,
  anId,
  aRecord,
  aStage,
  at,
  engineShop,
  lead,
} from '../../test/builders.ts'
import { projectCommandNames, shopCommandNames } from '../record/command-names.ts'
import { commandTitle } from './command-title.ts'
import { doingLine, journalLine, whatWasDone } from './journal-line.ts'
import { label } from './labels.ts'
import { metSentence } from './met-sentence.ts'
import type { Reader } from './reader.ts'

const reader: Reader = {
  view: { party: lead, role: 'manager' },
  person: anId('psn', 'ada'),
  people: { psn_jory: 'Jory Quill' },
  currency: 'GBP',
  locale: 'en-GB',
  timeZone: 'Europe/London',
  now: at(100),
}
const names = [...projectCommandNames, ...shopCommandNames]

describe('labels', () => {
  it('repeats the number or the sum that the button acts on', () => {
    expect(label('stage.start', { number: 41 })).toBe('Start 41')
    expect(label('stage.start', { number: 9 })).toBe('Start 09')
    expect(label('changeOrder.approve', { sum: '£760.80' })).toBe('Approve £760.80')
  })

  it('says *ready to fit* where a stage ends with a handover', () => {
    expect(label('stage.signOff', aStage({ number: 38, handoverTo: lead }))).toBe(
      'Ready to fit: 38',
    )
    expect(label('stage.signOff', aStage({ number: 38 }))).toBe('Sign off 38')
  })

  it('has words for every command, on its button and in the journal', () => {
    for (const name of names) {
      expect(label(name), name).toMatch(/^[A-Z]/)
      expect(commandTitle(name), name).toMatch(/^[A-Z][^.]* \S+/)
      expect(whatWasDone(name, [], aRecord(), reader), name).toMatch(/^[a-z]/)
    }
  })
})

describe('lines of the journal', () => {
  const stage = aStage({ number: 38, name: 'Engine ready to fit', party: engineShop })
  const record = aRecord([stage], [anEngine()])
  const done = { person: anId('psn', 'jory'), party: engineShop, command: 'stage.signOff' } as const

  it('names the person in the journal and the party in a live change', () => {
    expect(journalLine(done, [stage], record, reader)).toBe(
      'Jory Quill signed off 38 · Engine ready to fit',
    )
    expect(doingLine(done, [stage], record, reader)).toBe(
      'Bexwater Engines signed off 38 · Engine ready to fit',
    )
  })

  it('names the shop’s phone that a press came through', () => {
    expect(journalLine({ ...done, device: 'Paint bay phone' }, [stage], record, reader)).toBe(
      'Jory Quill, on Paint bay phone, signed off 38 · Engine ready to fit',
    )
  })

  it('names nobody whose name this view may not know', () => {
    expect(journalLine({ ...done, person: anId('psn', 'x') }, [stage], record, reader)).toBe(
      'Somebody signed off 38 · Engine ready to fit',
    )
  })

  it('says of work by who had released a point of it that the point is to be cleared anew', () => {
    const hold = aHold({ stage: stage.id, name: 'Seen before it is closed' })
    expect(doingLine({ ...done, command: 'stage.end' }, [stage, hold], record, reader)).toBe(
      'Bexwater Engines ended work on 38 · Engine ready to fit; “Seen before it is closed” is to be cleared anew, by somebody else',
    )
  })

  it('says what is met, by its name', () => {
    expect(metSentence({ rule: 'predecessor', entity: stage.id }, record, reader)).toBe(
      '38 · Engine ready to fit: signed off',
    )
  })
})
