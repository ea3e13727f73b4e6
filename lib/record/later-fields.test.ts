import { expect, test } from 'vitest'
import { aStage } from '../../test/builders.ts'
import { withLaterFields } from './later-fields.ts'

test('a stage of an entry from before hazards were named reads as one that has none; what it says of itself stays', () => {
  const { hazards, people, ...older } = aStage({ name: 'Weld the sills' })
  const read = withLaterFields({ ...older, hazards, people: 3 })
  expect(read).toMatchObject({ name: 'Weld the sills', hazards: [], people: 3 })
})
