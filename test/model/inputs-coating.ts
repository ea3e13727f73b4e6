import { all } from '../../lib/record/table.ts'
import { anEnd } from './inputs-work.ts'
import { aName, type Inputs, oneOf, perhaps, type Scene } from './scene.ts'

const products = ['etch primer', 'epoxy', 'filler', 'isolator', 'colour', 'lacquer'] as const

const aColour = (scene: Scene) =>
  oneOf(scene, scene.record.colours, ({ removedAt }) => removedAt === null)
const aCoat = (scene: Scene) => oneOf(scene, scene.record.coats, ({ offAt }) => offAt === null)

/** Inputs of what is kept of coats, films and colours. */
export const coatingInputs: Inputs<
  | 'coat.record'
  | 'coat.correct'
  | 'coat.strip'
  | 'film.record'
  | 'colour.add'
  | 'colour.describe'
  | 'colour.cardAgreed'
  | 'colour.remove'
> = {
  'coat.record': (scene) => {
    const { dice, record } = scene
    const begun = all(record.stages).filter(({ state }) => state !== 'planned')
    const stage = dice.chance(75) ? dice.of(begun) : undefined
    const assembly = stage === undefined ? oneOf(scene, record.assemblies)?.id : stage.assemblies[0]
    const product = dice.of(products)
    const colour = product === 'colour' ? aColour(scene) : undefined
    return assembly === undefined || product === undefined
      ? undefined
      : {
          assembly,
          product,
          ...(stage !== undefined && {
            stage: stage.id,
            endedAt: anEnd(scene, stage.startedAt),
          }),
          ...(colour !== undefined && { colour: colour.id, batch: 'A 1' }),
        }
  },
  'coat.correct': (scene) => {
    const coat = aCoat(scene)
    return coat && { coat: coat.id, batch: 'A 2', reason: 'read the tin again' }
  },
  'coat.strip': (scene) => {
    const coat = aCoat(scene)
    return (
      coat && {
        assembly: coat.assembly,
        downTo: scene.dice.chance(50) ? coat.id : null,
        reason: 'it had lifted',
        ...perhaps(scene, 40, { place: 'rear edge' }),
      }
    )
  },
  'film.record': (scene) => {
    const assembly = oneOf(scene, scene.record.assemblies)
    const steel = scene.dice.chance(80)
    return (
      assembly && {
        assembly: assembly.id,
        metal: steel ? 'steel' : 'aluminium',
        method: steel === scene.dice.chance(90) ? 'magnetic' : 'eddy current',
        zeroed: scene.dice.chance(80),
        readings: [{ panel: 'Roof', point: '1', microns: 90 + scene.dice.below(80) }],
      }
    )
  },
  'colour.add': (scene) => ({
    name: aName(scene, 'Colour'),
    tinters: [{ name: 'White', grams: 1 + scene.dice.below(900) }],
  }),
  'colour.describe': (scene) => {
    const colour = aColour(scene)
    return colour && { colour: colour.id, tinters: [{ name: 'Ochre', grams: 2.5 }] }
  },
  'colour.cardAgreed': (scene) => {
    const colour = aColour(scene)
    return colour && { colour: colour.id }
  },
  'colour.remove': (scene) => {
    const colour = aColour(scene)
    return colour && { colour: colour.id, reason: 'another was chosen' }
  },
}
