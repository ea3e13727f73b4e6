import { describe, expect, it } from 'vitest'
import {
  aContext,
  anActor,
  anId,
  aRecord,
  aShell,
  aStage,
  at,
  engineShop,
  lead,
  owner,
  shellId,
} from '../../test/builders.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { type BuildOrderImport, buildOrderImport } from './build-order-import.ts'
import { circlesAmong } from './circles.ts'

const nothing: BuildOrderImport = {
  parties: [],
  assemblies: [],
  stages: [],
  links: [],
  checks: [],
  holds: [],
}
const line = (key: string, over: object = {}) => ({
  key,
  name: `Stage ${key}`,
  party: lead,
  assemblies: [shellId],
  hoursLeast: null,
  hoursLikely: null,
  hoursMost: null,
  ...over,
})
const link = (from: string, to: string, over: object = {}) => ({
  from,
  to,
  leastLagHours: 0,
  greatestLagHours: null,
  ...over,
})
const press = (record: ProjectRecord, input: object, actor = anActor(lead)) =>
  buildOrderImport.apply({ ...nothing, ...input }, actor, record, aContext(actor))

describe('buildOrder.import', () => {
  const there = aStage({ number: 12, name: 'Strip the shell' })
  const record = aRecord(aShell(), there)

  it('makes stages, links, checks and holds in one change, with the parties and assemblies that come along', () => {
    const answer = press(record, {
      parties: [{ key: 'party1', name: 'Northgate Plating' }],
      assemblies: [{ key: 'assembly1', name: 'Brightwork', custodian: lead }],
      stages: [line('line1', { party: 'party1', assemblies: ['assembly1'] }), line('line2')],
      links: [link(there.id, 'line1'), link('line1', 'line2', { leastLagHours: 4 })],
      checks: [
        { stage: 'line2', type: 'tick', name: 'padded', unit: null, least: null, greatest: null },
        { stage: 'line2', type: 'reading', name: 'gap', unit: 'mm', least: 3, greatest: 5 },
      ],
      holds: [{ stage: 'line1', point: 'hold', name: 'Seen', party: owner, person: null }],
    })
    if (answer.outcome !== 'changes') throw new Error(JSON.stringify(answer))
    const [party, assembly, first, second, ...rest] = answer.entities
    expect(party).toMatchObject({ kind: 'party', role: 'shop', lead: false, shop: null })
    expect(assembly).toMatchObject({ kind: 'assembly', custodian: lead, since: at(100) })
    expect(first).toMatchObject({ number: 13, party: party?.id, assemblies: [assembly?.id] })
    expect(second).toMatchObject({ number: 14, party: lead, state: 'planned' })
    expect(rest).toMatchObject([
      { kind: 'link', from: there.id, to: first?.id },
      { kind: 'link', from: first?.id, to: second?.id, leastLagHours: 4 },
      { kind: 'check', stage: second?.id, position: 1, name: 'padded' },
      { kind: 'check', stage: second?.id, position: 2, name: 'gap', least: 3 },
      { kind: 'hold', stage: first?.id, party: owner, state: 'set' },
    ])
  })

  it('refuses with everything that is wrong, and makes nothing', () => {
    const answer = press(record, {
      parties: [{ key: 'party1', name: 'bexwater  engines' }],
      assemblies: [
        { key: 'party1', name: 'SHELL', custodian: lead },
        { key: 'assembly2', name: 'Loom', custodian: 'party9' },
      ],
      stages: [
        line('line1', { name: 'strip the shell', hoursLeast: 3, hoursMost: 1 }),
        line('line2', { party: 'party9', assemblies: ['assembly9'] }),
        line('line3'),
        line('line4', { assemblies: [shellId, shellId] }),
      ],
      links: [
        link('line9', 'line1'),
        link('line3', 'line4', { leastLagHours: 5, greatestLagHours: 4 }),
        link('line3', 'line4'),
        link('line4', 'line3'),
      ],
      checks: [
        { stage: 'line9', type: 'tick', name: 'x', unit: null, least: null, greatest: null },
        { stage: 'line1', type: 'tick', name: 'x', unit: null, least: 1, greatest: null },
        { stage: 'line1', type: 'tick', name: 'x', unit: null, least: null, greatest: null },
      ],
      holds: [
        { stage: 'line1', point: 'hold', name: 'x', party: 'party9', person: null },
        { stage: 'line1', point: 'hold', name: 'x', party: owner, person: anId('psn', 'nobody') },
      ],
    })
    expect(answer.outcome).toBe('refusal')
    const conditions = answer.outcome === 'refusal' ? answer.conditions : []
    expect(
      conditions.map((one) => [one.rule, 'field' in one ? one.field : one.entity.slice(0, 3)]),
    ).toEqual([
      ['input', 'key'],
      ['exists', 'parties.0.name'],
      ['exists', 'assemblies.0.name'],
      ['input', 'assemblies.1.custodian'],
      ['exists', 'stages.0.name'],
      ['input', 'stages.0.hours'],
      ['input', 'stages.1.assemblies'],
      ['input', 'stages.1.party'],
      ['input', 'stages.3.assemblies'],
      ['input', 'links.0.from'],
      ['input', 'links.1.greatestLagHours'],
      ['input', 'links.2'],
      ['circle', 'stg'],
      ['input', 'checks.0.stage'],
      ['input', 'checks.1.type'],
      ['input', 'checks.2.name'],
      ['input', 'holds.0.party'],
      ['input', 'holds.1.person'],
    ])
  })

  it('refuses the same file a second time, unless that is meant', () => {
    const stages = [line('line1', { name: 'Strip the shell' })]
    expect(press(record, { stages })).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'exists', entity: there.id }],
    })
    expect(press(record, { stages, acceptExisting: true }).outcome).toBe('changes')
  })

  it("is the lead's manager's to do", () => {
    const stages = [line('line1')]
    expect(press(record, { stages }, anActor(engineShop)).outcome).toBe('forbidden')
    expect(press(record, { stages }, anActor(lead, { role: 'hand' })).outcome).toBe('forbidden')
  })
})

describe('circles among links', () => {
  const links = (...pairs: string[]) =>
    pairs.map((pair) => ({ from: pair.slice(0, 1), to: pair.slice(1) }))

  it('are none in a build order without one', () => {
    expect(circlesAmong(links('ab', 'bc', 'ac', 'cd', 'bd'))).toEqual([])
  })

  it('are each named once, without what leads in or out', () => {
    expect(circlesAmong(links('xa', 'ab', 'bc', 'ca', 'cd', 'de', 'ed', 'ff'))).toEqual([
      ['a', 'b', 'c'],
      ['d', 'e'],
      ['f'],
    ])
  })

  it('are found behind a chain of fifty thousand', () => {
    const chain = Array.from({ length: 50_000 }, (_, i) => ({ from: i, to: i + 1 }))
    expect(circlesAmong([...chain, { from: 50_000, to: 49_999 }])).toEqual([[49_999, 50_000]])
  })
})
