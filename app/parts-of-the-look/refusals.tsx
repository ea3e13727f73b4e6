'use client'
import { ConditionList } from '@/app/_ui/press/condition-list.tsx'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { StillProject } from '@/lib/live/project-provider.tsx'
import type { CommandPress } from '@/lib/live/use-command.ts'
import type { Condition } from '@/lib/record/condition.ts'
import { AssemblyId, PartyId, StageId } from '@/lib/record/ids.ts'
import { Instant } from '@/lib/record/scalars.ts'
import { State } from './both.tsx'
import { asLead } from './sample.ts'

const STAGE = StageId.parse('stg_engine')
const engines = PartyId.parse('pty_engines')
const lead = PartyId.parse('pty_lead')

const CONDITIONS: readonly Condition[] = [
  {
    rule: 'custody',
    entity: AssemblyId.parse('asm_engine'),
    root: 'asm_engine',
    since: Instant.parse('2027-01-04T08:00:00.000Z'),
    concedable: false,
    clearedBy: [engines],
    clearedWith: null,
    custodian: engines,
    handover: null,
  },
  {
    rule: 'change-order',
    entity: 'cho_mounts',
    root: 'cho_mounts',
    since: Instant.parse('2027-02-04T09:00:00.000Z'),
    concedable: false,
    clearedBy: [PartyId.parse('pty_owner')],
    clearedWith: null,
    is: 'sent',
    number: 7,
  },
  {
    rule: 'least-lag',
    entity: 'stg_ready',
    root: 'stg_ready',
    since: Instant.parse('2027-02-10T16:00:00.000Z'),
    concedable: true,
    clearedBy: [],
    clearedWith: null,
    stage: StageId.parse('stg_ready'),
    metal: null,
    until: Instant.parse('2027-02-17T16:00:00.000Z'),
  },
  {
    rule: 'state',
    entity: 'stg_gearbox',
    root: 'stg_gearbox',
    since: null,
    concedable: false,
    clearedBy: [lead],
    clearedWith: null,
    is: 'signed off',
    needs: ['planned'],
  },
]

const press = (over: Partial<CommandPress>): CommandPress => ({
  send: () => Promise.resolve({ status: 0 }),
  again: null,
  waiting: false,
  refused: [],
  refusedAt: null,
  issues: [],
  done: false,
  takeUp: () => {},
  here: {
    kept: [],
    refused: [],
    sendAgain: () => Promise.resolve({ status: 0 }),
    sign: () => Promise.resolve({ status: 0 }),
    drop: () => Promise.resolve(() => {}),
  },
  message: '',
  reset: () => {},
  ...over,
})

/** Conditions as they stand on a card, and each way in which a press comes to nothing. */
export function Refusals() {
  return (
    <StillProject view={asLead}>
      <State name="Conditions that aren’t met">
        <ConditionList conditions={CONDITIONS} stage={STAGE} outcome={Outcome} />
      </State>
      <div className="stack">
        <State name="Refused by the gate">
          <Outcome
            press={press({
              refused: CONDITIONS.slice(0, 1),
              refusedAt: Instant.parse('2027-02-11T09:31:00.000Z'),
            })}
            stage={STAGE}
          />
        </State>
        <State name="Refused for what was entered">
          <Outcome
            press={press({
              issues: [{ field: 'Reading', message: 'is a figure such as 3.9' }],
            })}
          />
        </State>
        <State name="No answer came">
          <Outcome
            press={press({
              message: 'No answer from the server. What you entered is still here; send it again.',
              again: () => Promise.resolve({ status: 0 }),
            })}
          />
        </State>
      </div>
    </StillProject>
  )
}
