import type { Entity, EntityByKind, Kind } from './entity.ts'

/** Fields that a kind has now and had not when the oldest entries and kept views were written, with what stood in their place. */
const later: { readonly [K in Kind]?: Partial<EntityByKind[K]> } = {
  stage: {
    hazards: [],
    precautionsAt: null,
    precautionsBy: null,
    airAgeMost: null,
    dewMarginLeast: null,
    humidityMost: null,
    surfaceLeast: null,
    surfaceMost: null,
    inDate: [],
    lays: null,
    keys: false,
    flats: null,
    people: 1,
    trade: null,
    madeFrom: null,
  },
  link: { why: null, safety: false, curesAt: null },
  check: { points: [], basis: null, limitSource: null, limitWanted: false, needsInstrument: false },
  concession: { file: null },
  hold: { noticeDays: 2 },
  assembly: { holdsFuel: false },
}

/** An entity as an older program wrote it, with the fields that its kind has since got. A journal's entries themselves are never changed. */
export const withLaterFields = <E extends Entity>(entity: E): E => ({
  ...later[entity.kind],
  ...entity,
})
