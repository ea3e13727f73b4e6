import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { openConnection } from './connection.ts'

const said = '2026-11-25T09:00:00.000Z'
const phone = Date.parse(said)

describe('the clock of a press', () => {
  beforeEach(() => {
    vi.useFakeTimers({ now: phone })
  })
  afterEach(() => {
    vi.useRealTimers()
  })

  it('is the server’s, whatever the phone’s says', () => {
    const { seedClock, nowMs } = openConnection()
    vi.setSystemTime(phone - 90_000)
    seedClock(said)
    expect(nowMs()).toBe(phone)
  })

  it('is not put back by a page that was fetched minutes before it is looked at', () => {
    const { seedClock, nowMs } = openConnection()
    seedClock(said)
    vi.setSystemTime(phone + 110_000)
    seedClock(said)
    expect(nowMs()).toBe(phone + 110_000)
  })

  it('is put right by an answer, also where the phone’s own clock was set meanwhile', () => {
    const { seedClock, setClock, nowMs } = openConnection()
    seedClock(said)
    vi.setSystemTime(phone + 3_600_000)
    setClock('2026-11-25T09:00:10.000Z')
    expect(nowMs()).toBe(phone + 10_000)
  })

  it('goes on from what the phone kept where there is no network: its age is that of the record', () => {
    const { recall, knownUntilMs, nowMs, link } = openConnection()
    vi.setSystemTime(phone + 3_600_000)
    recall(said, 90_000)
    expect(link()).toBe('away')
    expect(new Date(knownUntilMs()).toISOString()).toBe(said)
    expect(nowMs()).toBe(phone + 3_690_000)
  })

  it('lets nothing that was kept put back what is live', () => {
    const { recall, say, seedClock, knownUntilMs, link } = openConnection()
    seedClock(said)
    say('live')
    recall('2026-11-24T09:00:00.000Z', 5)
    expect(link()).toBe('live')
    expect(knownUntilMs()).toBe(phone)
  })
})
