import 'fake-indexeddb/auto'
import { beforeEach, describe, expect, it } from 'vitest'
import {
  anEngine,
  anId,
  aProject,
  aStage,
  at,
  lead,
  project,
  theParties,
} from '../../../test/builders.ts'
import type { ProjectView } from '../../command/wire.ts'
import { ProjectId } from '../../record/ids.ts'
import { projectStateAfter, projectStateOf } from '../project-state.ts'
import { forgetViews, keepViews, keptFor } from './kept-views.ts'
import { type KeptView, openPhoneStore, type PhoneStore } from './phone-store.ts'
import { viewOfProject } from './view-of-state.ts'

const ada = anId('psn', 'ada')
const jory = anId('psn', 'jory')
const stage = aStage({ number: 38 })
const view: ProjectView = {
  record: project,
  view: { party: lead, role: 'manager' },
  person: ada,
  version: 7,
  epoch: 2,
  now: at(100),
  entities: [aProject(), ...theParties(), anEngine(), stage],
  stubs: [{ kind: 'changeOrder', id: 'cho_hidden', hidden: true }],
  versions: { [stage.id]: 5 },
  people: { psn_ada: 'Ada Thackwell' },
  shops: [],
  bays: [],
  members: [],
}
const keptOf = (name: string, minute: number, person = ada): KeptView => ({
  kind: 'project',
  record: `prj_${name}`,
  person,
  keptAt: at(minute),
  clockAhead: 0,
  view: { ...view, record: ProjectId.parse(`prj_${name}`), person },
})
const names = async (phone: PhoneStore, person = ada): Promise<readonly string[]> =>
  (await keptFor(phone, person)).map(({ record }) => record)

describe('what a phone keeps of what was seen', () => {
  let phone: PhoneStore
  beforeEach(async () => {
    phone = await openPhoneStore()
    await phone.clear('views')
    return () => phone.close()
  })

  it('opens again as it stood, with its changes, its stubs and its versions', () => {
    const changed = projectStateAfter(
      projectStateOf(view),
      {
        record: project,
        from: 7,
        to: 8,
        epoch: 2,
        entities: [{ ...stage, state: 'in work', startedAt: at(101) }],
        stubs: [],
        people: {},
        doings: [],
      },
      at(101),
    )
    const again = projectStateOf(viewOfProject(changed, at(102)))
    expect(again.record.stages).toEqual(changed.record.stages)
    expect(again.record.changeOrders.hidden.has('cho_hidden')).toBe(true)
    expect(Object.fromEntries(again.record.versions)).toEqual({ [stage.id]: 8 })
    expect({ ...again, record: null, asOf: null }).toEqual({ ...changed, record: null, asOf: null })
    expect(viewOfProject(projectStateOf(view), view.now)).toEqual(view)
  })

  it('is what was seen last first, and twenty at most', async () => {
    for (let n = 0; n < 23; n++) await keepViews(phone, [keptOf(`car${n}`, n)])
    await keepViews(phone, [keptOf('car5', 30)])
    const kept = await names(phone)
    expect(kept).toHaveLength(20)
    expect(kept.slice(0, 2)).toEqual(['prj_car5', 'prj_car22'])
    expect(kept).not.toContain('prj_car2')
  })

  it('is nobody else’s: with the first view of another person that of the former goes', async () => {
    await keepViews(phone, [keptOf('one', 1), keptOf('two', 2)])
    expect(await names(phone, jory)).toEqual([])
    await keepViews(phone, [keptOf('one', 3, jory)])
    expect(await names(phone)).toEqual([])
    expect(await names(phone, jory)).toEqual(['prj_one'])
  })

  it('goes with a sign-out, and one by one where it may no longer be seen', async () => {
    await keepViews(phone, [keptOf('one', 1), keptOf('two', 2)])
    await forgetViews(phone, 'prj_one')
    expect(await names(phone)).toEqual(['prj_two'])
    await forgetViews(phone)
    expect(await names(phone)).toEqual([])
  })

  it('has the day sheet still after another screen of the shop was opened', async () => {
    const shop = (projects: readonly string[] | null, minute: number): KeptView => ({
      kind: 'shop',
      record: 'shp_a',
      person: ada,
      keptAt: at(minute),
      clockAhead: 0,
      projects,
      view: {
        record: anId('shp', 'a'),
        role: 'manager',
        person: ada,
        version: 1,
        epoch: 1,
        now: at(minute),
        entities: [],
        people: {},
        projects: [],
      },
    })
    await keepViews(phone, [shop(['prj_one'], 1)])
    await keepViews(phone, [shop(null, 2)])
    expect(await keptFor(phone, ada)).toMatchObject([{ keptAt: at(2), projects: ['prj_one'] }])
  })
})
