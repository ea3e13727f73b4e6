import type { Coat, Colour, Film } from '../lib/record/entities/coating.ts'
import { anId, at, fresh, lead, project, shellId } from './builders.ts'

const person = anId('psn', 'ada')

export const aCoat = (over: Partial<Coat> = {}): Coat => ({
  kind: 'coat',
  id: fresh('cot'),
  project,
  assembly: shellId,
  stage: null,
  party: lead,
  product: 'epoxy',
  name: null,
  batch: null,
  ratio: null,
  thinner: null,
  coats: 2,
  endedAt: at(0),
  keyedWith: null,
  keyedAt: null,
  colour: null,
  air: null,
  remark: '',
  by: person,
  at: at(0),
  sandedAt: null,
  sandedTo: null,
  sandedPlace: null,
  offAt: null,
  ...over,
})

export const aFilm = (over: Partial<Film> = {}): Film => ({
  kind: 'film',
  id: fresh('flm'),
  project,
  assembly: shellId,
  stage: null,
  panel: 'Roof',
  point: '1',
  microns: 120,
  metal: 'steel',
  method: 'magnetic',
  zeroed: true,
  gauge: null,
  at: at(0),
  by: person,
  ...over,
})

export const aColour = (over: Partial<Colour> = {}): Colour => ({
  kind: 'colour',
  id: fresh('clr'),
  project,
  party: lead,
  name: 'Sedge green',
  code: null,
  variant: null,
  batch: null,
  cardAt: null,
  cardBy: null,
  gun: null,
  keepsake: null,
  at: at(0),
  by: person,
  removedAt: null,
  ...over,
})
