import type { Condition } from '../record/condition.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { since } from './dates.ts'
import type { Reader } from './reader.ts'
import { type Told, whoDoes } from './told.ts'
import { toldAtStart } from './told-at-start.ts'
import { toldAtSignOff, toldOtherwise } from './told-otherwise.ts'

/** A condition in words: what is not so, what stands behind it, since when, and who can clear it. */
export interface Sentence {
  readonly fact: string
  readonly detail: string
  readonly since: string
  readonly who: string
}

/** Rules whose facts can be conceded or not: said beside *since*. Other refusals only say what is not so. */
function told(condition: Condition, record: ProjectRecord, reader: Reader): Told {
  switch (condition.rule) {
    case 'predecessor':
    case 'countersign':
    case 'least-lag':
    case 'greatest-lag':
    case 'custody':
    case 'exclusive-use':
    case 'must-be-fitted':
    case 'must-be-off':
    case 'part':
    case 'change-order':
    case 'decision':
    case 'hold':
    case 'coat-over':
    case 'sanded-through':
    case 'bare-metal':
    case 'lacquer-cure':
    case 'film-left':
    case 'slot':
    case 'precautions':
    case 'air':
    case 'in-date':
    case 'milestone':
      return toldAtStart(condition, record, reader)
    case 'check':
    case 'no-end':
    case 'own-work':
      return toldAtSignOff(condition, record, reader)
    default:
      return toldOtherwise(condition, record, reader)
  }
}

const gateRules: ReadonlySet<string> = new Set([
  'predecessor',
  'countersign',
  'least-lag',
  'greatest-lag',
  'custody',
  'exclusive-use',
  'must-be-fitted',
  'must-be-off',
  'part',
  'change-order',
  'decision',
  'hold',
  'coat-over',
  'sanded-through',
  'bare-metal',
  'lacquer-cure',
  'film-left',
  'slot',
])

/** Tells whether a condition comes from the gate's rules for a start. */
export const isGateRule = (condition: Condition): boolean => gateRules.has(condition.rule)

/** The words for a condition, for this reader: lead with the fact, end with who can clear it. */
export function sentence(condition: Condition, record: ProjectRecord, reader: Reader): Sentence {
  const words = told(condition, record, reader)
  const when =
    words.since ?? (condition.since === null ? '' : `Not met ${since(condition.since, reader)}`)
  const fixed = isGateRule(condition) && !condition.concedable ? 'can’t be conceded' : ''
  return {
    fact: words.fact,
    detail: words.detail ?? '',
    since: [when, fixed].filter((part) => part !== '').join(' · '),
    who: words.who ?? whoDoes(condition.clearedBy, record, reader, 'clear it', 'clears it'),
  }
}
