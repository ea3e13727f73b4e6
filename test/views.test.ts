import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { tagCode } from '../lib/custody/tag-code.ts'
import { aPlantedYard, type PlantedYard } from './a-planted-yard.ts'
import { aBrowser, type Browser, type TestYard } from './a-yard.ts'
import {
  aHandover,
  anAssembly,
  anId,
  aParty,
  aProject,
  at,
  engineShop,
  lead,
  leadShop,
  owner,
  project,
} from './builders.ts'
import { personOf } from './see-cast.ts'
import { aSlot } from './shop-builders.ts'

let planted: PlantedYard
let yard: TestYard
let manager: Browser

const plated = anAssembly({ id: anId('asm', 'plated'), name: 'Brightwork', pieces: 14 })
const toOwner = aHandover({
  id: anId('hnd', 'brightwork'),
  assemblies: [plated.id],
  from: lead,
  to: owner,
  state: 'released',
  pieces: 14,
  releasedAt: at(1),
  releasedBy: personOf.lead,
})

/** Another shop's car that stands in our bay for a day: its shell only. */
const guest = anId('prj', 'guest')
const itsLead = aParty({ project: guest, lead: true, shop: anId('shp', 'trim') })
const itsShell = anAssembly({ project: guest, name: 'Shell', custodian: itsLead.id })
const guestCar = [
  aProject({ id: guest, name: 'Corrie van' }),
  itsLead,
  itsShell,
  anAssembly({ project: guest, name: 'Gearbox', custodian: itsLead.id }),
  aSlot({
    project: guest,
    assembly: itsShell.id,
    party: itsLead.id,
    agreedBy: itsLead.id,
    from: at(60),
    to: at(72),
  }),
]

beforeAll(async () => {
  planted = await aPlantedYard(plated, toOwner, ...guestCar)
  yard = planted.yard

  manager = await aBrowser(yard, personOf.lead)
  const engines = await aBrowser(yard, personOf.engines)
  const estimated = await engines.command('estimate.add', {
    party: engineShop,
    lines: [{ text: 'Rebuild the engine', type: 'fixed', net: 480_000, taxRate: 2000 }],
  })
  expect(estimated.status).toBe(200)
  const ines = await aBrowser(yard, personOf.owner)
  const receipt = { handover: toOwner.id, outcome: 'accepted', pieces: 14 }
  expect((await ines.command('handover.receive', receipt)).status).toBe(200)
})
afterAll(() => planted.close())

describe('the API', () => {
  it('describes every command in an OpenAPI document', async () => {
    const { projectCommands } = await import('../lib/command/registry.ts')
    const document = await (await fetch(`${yard.url}/api/openapi.json`)).json()
    const { oneOf } =
      document.paths['/api/commands'].post.requestBody.content['application/json'].schema
    const names = oneOf.map(
      (body: { properties: { name: { const: string } } }) => body.properties.name.const,
    )
    expect(names).toEqual(expect.arrayContaining(Object.keys(projectCommands)))
  })

  it('gives the newest of a journal to who asks from beyond its end', async () => {
    const answer = await manager.get(`/api/projects/${project}/journal?before=9999999999&limit=1`)
    expect((await answer.json()).entries).toHaveLength(1)
  })

  it('gives a journal page by page, with what this view may see of each entry', async () => {
    const first = await (await manager.get(`/api/projects/${project}/journal?limit=1`)).json()
    expect(first.entries).toHaveLength(1)
    const rest = await (
      await manager.get(`/api/projects/${project}/journal?before=${first.next}`)
    ).json()
    expect(rest.entries[0].sequence).toBeLessThan(first.entries[0].sequence)
    const trim = await aBrowser(yard, personOf.trim)
    const { entries } = await (await trim.get(`/api/projects/${project}/journal`)).json()
    const kinds = entries.flatMap(({ entities }: { entities: { kind: string }[] }) =>
      entities.map(({ kind }) => kind),
    )
    expect(kinds).not.toContain('changeOrder')
    expect(kinds).not.toContain('estimateLine')
    const found = await (
      await manager.get(
        `/api/projects/${project}/journal?entity=${plated.id}&command=handover.receive`,
      )
    ).json()
    expect(found.entries).toHaveLength(1)
  })

  it('leads a tag’s code to its assembly for who may see it, and tells nobody else that there is one', async () => {
    const code = tagCode(plated.id)
    const trim = await aBrowser(yard, personOf.trim)
    for (const who of [manager, trim]) {
      const found = await who.get(`/api/tags/${code.toLowerCase()}`)
      expect(await found.json()).toEqual({ project, assembly: plated.id })
    }
    // The engine shop has no part in the guest's car: as if there were no such code.
    const engines = await aBrowser(yard, personOf.engines)
    const foreign = await engines.get(`/api/tags/${tagCode(itsShell.id)}`)
    const none = await engines.get(`/api/tags/${tagCode('asm_nowhere')}`)
    expect([foreign.status, none.status]).toEqual([404, 404])
    expect(await foreign.text()).toBe(await none.text())
    expect((await manager.get('/api/tags/7KQM')).status).toBe(400)
    expect((await fetch(`${yard.url}/api/tags/${code}`)).status).toBe(401)
  })

  it('gives the record as it stood at a moment', async () => {
    const now = await (await manager.get(`/api/projects/${project}`)).json()
    const then = await manager.get(`/api/projects/${project}/as-of?at=${at(2)}`)
    const { view } = await then.json()
    expect(view.version).toBe(1)
    expect(now.version).toBeGreaterThan(1)
    const custodian = (of: { entities: { id: string; custodian?: string }[] }) =>
      of.entities.find(({ id }) => id === plated.id)?.custodian
    expect([custodian(view), custodian(now)]).toEqual([lead, owner])
  })

  it('gives a shop its book and its day, and nobody else', async () => {
    expect(await (await manager.get(`/api/shops/${leadShop}`)).json()).toMatchObject({
      role: 'manager',
      projects: [{ id: project }, { id: guest, name: 'Corrie van' }],
    })
    expect(await (await manager.get(`/api/shops/${leadShop}/day-sheet`)).json()).toMatchObject({
      projects: [{ record: project }],
    })
    const trim = await aBrowser(yard, personOf.trim)
    for (const path of ['', '/changes?after=0', '/day-sheet']) {
      expect((await trim.get(`/api/shops/${leadShop}${path}`)).status).toBe(404)
    }
  })

  it('tells a manager who acts for the shops, by their books, and nobody else', async () => {
    const ofEngines = { person: personOf['engines hand'], party: engineShop }
    const view = await (await manager.get(`/api/projects/${project}`)).json()
    expect(view.members).toContainEqual(ofEngines)
    expect(view.people[ofEngines.person]).toMatch(/^Person/)
    for (const who of ['engines hand', 'owner', 'glass', 'insurer'] as const) {
      const other = await aBrowser(yard, personOf[who])
      expect((await (await other.get(`/api/projects/${project}`)).json()).members).toEqual([])
    }
  })

  it('tells a shop of a car that is only in its bay what stands there, and no more of it', async () => {
    const { projects } = await (await manager.get(`/api/shops/${leadShop}`)).json()
    expect(projects[1].assemblies).toEqual({ [itsShell.id]: 'Shell' })
    expect(Object.values(projects[0].assemblies)).toContain('Brightwork')
  })

  it('gives the build order as a sheet', async () => {
    const response = await manager.get(`/api/projects/${project}/build-order.csv`)
    expect(response.headers.get('content-type')).toContain('text/csv')
    expect(await response.text()).toContain('Run it in')
  })

  it('keeps answers out of caches', async () => {
    expect((await manager.get('/api/me')).headers.get('cache-control')).toBe('no-store')
  })
})
