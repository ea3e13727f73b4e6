import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { circlesAmong } from '../build-order/circles.ts'
import { type Choice, chooseStages, scopes } from './choose-stages.ts'
import { fullRestoration } from './library.ts'

const choices: readonly Choice[] = scopes.flatMap((scope) =>
  [...Array(2 ** fullRestoration.options.length).keys()].map((bits) => ({
    scope,
    options: fullRestoration.options.filter((_, i) => (bits >> i) % 2 === 1),
  })),
)

describe('the library', () => {
  const { stages, trades } = fullRestoration
  const known = new Set(stages.map(({ key }) => key))

  it('has each stage once, with a trade, checks, three-point hours in order and a why on each link', () => {
    expect(known.size).toBe(stages.length)
    for (const { key, trade, hours, after, checks } of stages) {
      expect(trades, key).toContain(trade)
      expect(hours.a, key).toBeGreaterThan(0)
      expect(hours.a <= hours.m && hours.m <= hours.b, key).toBe(true)
      expect(checks.length, key).toBeGreaterThan(0)
      for (const link of after) {
        expect(known, key).toContain(link.key)
        expect(link.why.length, key).toBeGreaterThan(0)
        if (link.greatest_lag_hours != null)
          expect(link.greatest_lag_hours, key).toBeGreaterThanOrEqual(link.least_lag_hours)
      }
    }
  })

  it('says a caution wherever it names a hazard', () => {
    for (const { key, hazard, caution } of stages)
      expect(hazard === null, key).toBe(caution === null)
  })
})

test.each(choices)(
  'chosen as $scope with $options it has no circle, no loose end and one way out',
  (choice) => {
    const { stages, links, left } = chooseStages(fullRestoration, choice)
    const keys = new Set(stages.map(({ key }) => key))
    expect(circlesAmong(links)).toEqual([])
    for (const { from, to } of links) expect(keys.has(from) && keys.has(to)).toBe(true)
    expect(new Set(links.map(({ from, to }) => `${from} ${to}`)).size).toBe(links.length)
    const waits = new Set(links.map(({ to }) => to))
    const waitedFor = new Set(links.map(({ from }) => from))
    expect([...keys].filter((key) => !waits.has(key))).toEqual(['arr.receive'])
    expect([...keys].filter((key) => !waitedFor.has(key))).toEqual(['end.handover'])
    expect(stages.length + left.filter(({ why }) => /outside|option/.test(why)).length).toBe(
      fullRestoration.stages.length,
    )
  },
)

test('in a full restoration every need is brought about by a stage before it', () => {
  for (const body of ['closed_car', 'open_car']) {
    const options = ['runs_on_arrival', 'flow_coats', body]
    const { left } = chooseStages(fullRestoration, { scope: 'full', options })
    expect(left.filter(({ why }) => why.startsWith('asks'))).toEqual([])
  }
})

test('a stage that is left out hands its own wait on: nothing comes sooner by leaving it out', () => {
  const whole = chooseStages(fullRestoration, { scope: 'full', options: fullRestoration.options })
  fc.assert(
    fc.property(
      fc.subarray([...fullRestoration.options]),
      fc.constantFrom(...scopes),
      (options, scope) => {
        const chosen = chooseStages(fullRestoration, { scope, options })
        const after = (links: typeof whole.links, key: string): Set<string> => {
          const found = new Set<string>()
          const follow = (at: string) => {
            for (const { from, to } of links)
              if (to === at && !found.has(from)) {
                found.add(from)
                follow(from)
              }
          }
          follow(key)
          return found
        }
        const keys = chosen.stages.map(({ key }) => key)
        for (const key of keys.slice(-6)) {
          const far = after(whole.links, key)
          const near = after(chosen.links, key)
          expect(keys.filter((other) => far.has(other)).toSorted()).toEqual([...near].toSorted())
        }
      },
    ),
    { numRuns: 40 },
  )
})
