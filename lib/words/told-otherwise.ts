import type { OtherCondition, SignOffCondition } from '../record/condition.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { exactSpan, moment } from './dates.ts'
import { money } from './money.ts'
import { atStart, entityName, listed, partyName, personName, stageName } from './names.ts'
import type { Reader } from './reader.ts'
import type { Told } from './told.ts'

/** Why a stage may not be signed off, countersigned or confirmed. */
export function toldAtSignOff(
  condition: SignOffCondition,
  record: ProjectRecord,
  reader: Reader,
): Told {
  switch (condition.rule) {
    case 'check': {
      const name = atStart(record.checks.rows.get(condition.entity)?.name ?? 'a check')
      return condition.is === 'missing'
        ? { fact: `${name} is not entered`, detail: 'Every check must pass before the sign-off.' }
        : {
            fact: `${name} is out of limits`,
            detail: 'Enter a reading within the limits, or have it conceded.',
          }
    }
    case 'no-end':
      return {
        fact: 'The end of work is not entered',
        detail: 'Work is signed off when it is over.',
      }
    case 'own-work':
      return {
        fact: `${atStart(personName(reader.person, reader.people))} did this work`,
        detail: 'Who did the work never countersigns it and never releases its hold.',
      }
  }
}

const needs = (states: readonly string[], locale: string): string =>
  states.length === 0 ? '' : `It can be done while it is ${listed(states, locale, 'or')}.`

const timeFacts = {
  'in the future': 'That time is in the future',
  'before the start': 'That time is before the start of work',
  'after the end': 'That time is after the end of work',
  'span ends before it begins': 'The span ends before it begins',
  'span is over': 'That time is over already',
} as const

/** Every other expected no. */
export function toldOtherwise(
  condition: OtherCondition,
  record: ProjectRecord,
  reader: Reader,
): Told {
  switch (condition.rule) {
    case 'state':
      return {
        fact: `${atStart(entityName(condition.entity, record))} is ${condition.is}`,
        detail: needs(condition.needs, reader.locale),
      }
    case 'circle':
      return {
        fact: 'That link would close a circle',
        detail: `${condition.stages.map((stage) => stageName(stage, record)).join(' › ')}. Leave out one of these links.`,
      }
    case 'exists':
      return {
        fact: `${atStart(entityName(condition.entity, record))} is there already`,
        detail: `Choose another ${condition.field}, or use the one that is there.`,
      }
    case 'input':
      return {
        fact: `${atStart(fieldName(condition.field))}: ${condition.why}`,
      }
    case 'time':
      return {
        fact: timeFacts[condition.why],
        detail: condition.limit === null ? '' : `The limit is ${moment(condition.limit, reader)}.`,
      }
    case 'slot-taken': {
      const by = condition.by === null ? 'other work' : partyName(condition.by, record, reader)
      const assembly = record.slots.rows.get(condition.entity)?.assembly ?? condition.entity
      return {
        fact:
          condition.what === 'bay'
            ? `The bay is taken by ${by}`
            : `${atStart(entityName(assembly, record))} is promised to ${by} then`,
        detail: `${exactSpan(condition.from, condition.to, reader)}. Choose another span or another bay.`,
      }
    }
    case 'not-alone':
      return {
        fact: 'Not alone',
        detail: `${personName(condition.person, reader.people)} did one half of this; somebody else does the other.`,
      }
    case 'proof':
      return {
        fact: 'Prove that it is you',
        detail: `A yes needs a proof that is at most ${condition.minutes} minutes old.`,
      }
    case 'shown-changed':
      return {
        fact: 'The text or the figures have changed since you opened it',
        detail: 'Read it again as it stands now, then answer.',
      }
    case 'standing-consent':
      return {
        fact: `It asks for ${money(condition.asked, reader.currency, reader.locale)}`,
        detail: `The standing consent allows ${money(condition.allowed, reader.currency, reader.locale)} ${condition.what === 'each' ? 'each time' : 'in total'}.`,
      }
    case 'stale':
      return {
        fact: `${atStart(entityName(condition.entity, record))} has changed since you opened it`,
        detail: 'It stands here as it is now. Look again, then press again.',
      }
    case 'file':
      return {
        fact: 'A photo or document has not arrived',
        detail: 'Keep this page open until it is sent, then press again.',
      }
    case 'unknown':
      return {
        fact: 'Something that you may not see stands in the way',
        detail: 'The record knows; the lead can say who clears it.',
      }
  }
}

/** `endedAt` → `ended at` */
const fieldName = (field: string): string =>
  field
    .replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
    .replace(/\.\d+/g, '')
    .replaceAll('.', ', ')
