import { describe, expect, it } from 'vitest'
import { openTurns } from './turns.ts'

describe('turns', () => {
  it('let so many at work at once, in the order in which they came, and go on after one that failed', async () => {
    const turn = openTurns(2)
    const begun: number[] = []
    const ends = [0, 1, 2, 3].map(() => Promise.withResolvers<void>())
    const work = ends.map(({ promise }, n) =>
      turn(() => {
        begun.push(n)
        return promise
      }),
    )
    expect(begun).toEqual([0, 1])
    ends[1]?.reject(new Error('The saw is blunt.'))
    await expect(work[1]).rejects.toThrow('blunt')
    expect(begun).toEqual([0, 1, 2])
    ends[2]?.resolve()
    await work[2]
    expect(begun).toEqual([0, 1, 2, 3])
    ends[0]?.resolve()
    ends[3]?.resolve()
    await Promise.all([work[0], work[3]])
    await turn(async () => begun.push(4))
    expect(begun).toEqual([0, 1, 2, 3, 4])
  })
})
