import { describe, expect, it } from 'vitest'
import { projectCommandNames, shopCommandNames } from './command-names.ts'
import { weightOf } from './weight-of.ts'

const names = [...projectCommandNames, ...shopCommandNames]
const weighing = (weight: string) => names.filter((name) => weightOf[name] === weight)

describe('what a press weighs on a phone that hands share', () => {
  it('is a signature where it puts a name under something', () => {
    expect(weighing('signature')).toEqual([
      'stage.precautions',
      'milestone.meet',
      'colour.cardAgreed',
      'stage.signOff',
      'stage.countersign',
      'stage.confirm',
      'hold.release',
      'hold.waive',
      'condition.concede',
      'told.confirm',
      'handover.release',
      'handover.receive',
      'decision.choose',
      'part.inspect',
    ])
  })

  it('is a yes or a no to a change order, which is not given there', () => {
    expect(weighing('proof')).toEqual(['changeOrder.approve', 'changeOrder.decline'])
  })
})
