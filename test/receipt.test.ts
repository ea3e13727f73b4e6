import { createHash } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Changed } from '../lib/command/wire.ts'
import type { HandedLink, Receipt } from '../lib/command/wire-access.ts'
import { isKind } from '../lib/record/entity.ts'
import { freshKey } from '../lib/server/fresh-key.ts'
import { aPlantedYard, type PlantedYard } from './a-planted-yard.ts'
import { aBrowser, type Browser, browserWith, type TestYard } from './a-yard.ts'
import { aHandover, anAssembly, anId, at, lead, owner, project } from './builders.ts'
import { personOf } from './see-cast.ts'

let planted: PlantedYard
let yard: TestYard
let manager: Browser

const plated = anAssembly({ id: anId('asm', 'plated'), name: 'Brightwork', pieces: 14 })
const seats = anAssembly({ id: anId('asm', 'armchairs'), name: 'Front seats' })
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

beforeAll(async () => {
  planted = await aPlantedYard(plated, seats, toOwner)
  yard = planted.yard

  manager = await aBrowser(yard, personOf.lead)
})
afterAll(() => planted.close())

const pathOf = (url: string): string => new URL(url).pathname

describe('a receipt by link', () => {
  const link = async (browser: Browser) => browser.post(`/api/handovers/${toOwner.id}/link`, {})

  it('is made by who releases, and shows that one handover without an account', async () => {
    expect((await link(await aBrowser(yard, personOf.engines))).status).toBe(404)
    const { url, qr }: HandedLink = await (await link(manager)).json()
    expect(qr).toContain('<svg')
    const nobody = browserWith(yard.url, '')
    const receipt: Receipt = await (await nobody.get(`/api/receipts/${token(url)}`)).json()
    expect(receipt).toMatchObject({
      handover: { id: toOwner.id, pieces: 14 },
      from: 'Tarn Lane Coachworks',
      to: 'Ines Halloran',
      assemblies: [{ name: 'Brightwork', pieces: 14 }],
    })
    expect((await nobody.get('/api/receipts/madeup')).status).toBe(404)
  })

  it('is counted, photographed and signed by a guest, once', async () => {
    const { url }: HandedLink = await (await link(manager)).json()
    const path = `/api/receipts/${token(url)}`
    const nobody = browserWith(yard.url, '')
    const unsigned = await nobody.post(path, { outcome: 'accepted', pieces: 14 })
    expect(unsigned.status).toBe(409)
    expect((await unsigned.json()).message).toMatch(/who receives it.*sign with a finger/)
    const { sha256, response } = await upload(`${path}/files/`, photo(), '')
    expect(response.status).toBe(201)
    const said = {
      outcome: 'accepted',
      pieces: 14,
      receivedByName: 'A. Carter',
      signature: 'M 10 40 L 40 10 L 80 60 L 120 20 L 160 70 L 200 30',
      files: [sha256],
    }
    const received = await nobody.post(path, said)
    expect(await received.json()).toMatchObject({
      handover: { state: 'received', receivedByName: 'A. Carter', receivedBy: null },
    })
    expect((await nobody.post(path, said)).status).toBe(404)
    expect((await nobody.get(path)).status).toBe(200)
    const seen = await (await manager.get(`/api/projects/${project}`)).json()
    expect(seen.entities).toContainEqual(
      expect.objectContaining({ id: plated.id, custodian: owner }),
    )
  })

  it('shows a guest the photos of that handover, and no other of the car', async () => {
    const folder = `/api/projects/${project}/files/`
    const [asReleased, other] = [photo(), photo()]
    const released = await upload(folder, asReleased, manager.cookie)
    const elsewhere = await upload(folder, other, manager.cookie)
    const prepared = await manager.command(
      'handover.prepare',
      { assemblies: [seats.id], to: owner, condition: 'As trimmed.', files: [released.sha256] },
      project,
    )
    expect(prepared.status).toBe(200)
    const { changed }: { readonly changed: readonly Changed[] } = await prepared.json()
    const id = changed.flatMap(({ entities }) => entities).find(isKind('handover'))?.id
    expect((await manager.command('handover.release', { handover: id }, project)).status).toBe(200)
    const handed = await manager.post(`/api/handovers/${id}/link`, {})
    const { url }: HandedLink = await handed.json()
    const nobody = browserWith(yard.url, '')
    const files = `/api/receipts/${token(url)}/files/`
    const seen = await nobody.get(`${files}${released.sha256}`)
    expect(seen.headers.get('content-type')).toBe('image/jpeg')
    expect(Buffer.from(await seen.arrayBuffer())).toEqual(asReleased)
    expect((await nobody.get(`${files}${elsewhere.sha256}`)).status).toBe(404)
    expect((await nobody.get(`/api/receipts/madeup/files/${released.sha256}`)).status).toBe(404)
  })

  const token = (url: string) => pathOf(url).replace('/receipt/', '')
})

const photo = () => Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), Buffer.from(freshKey())])
async function upload(
  folder: string,
  bytes: Buffer,
  cookie: string,
  sha256 = createHash('sha256').update(bytes).digest('hex'),
  type = 'image/jpeg',
) {
  const response = await fetch(`${yard.url}${folder}${sha256}`, {
    method: 'PUT',
    headers: { cookie, origin: yard.url, 'content-type': type },
    body: new Uint8Array(bytes),
  })
  return { sha256, response }
}

describe('a photo', () => {
  const folder = `/api/projects/${project}/files/`

  it('is kept if its bytes are what was announced, and of a kind that is kept', async () => {
    const good = await upload(folder, photo(), manager.cookie)
    expect(good.response.status).toBe(201)
    const again = await fetch(`${yard.url}${folder}${good.sha256}`, {
      headers: { cookie: manager.cookie },
    })
    expect(again.headers.get('content-type')).toBe('image/jpeg')
    expect(again.headers.get('content-security-policy')).toContain('sandbox')
    const other = await upload(folder, photo(), manager.cookie, '0'.repeat(64))
    expect(other.response.status).toBe(400)
    const script = await upload(folder, Buffer.from('<script>'), manager.cookie)
    expect(script.response.status).toBe(415)
    const nothing = await upload(folder, Buffer.alloc(0), manager.cookie)
    expect(nothing.response.status).toBe(415)
  })

  it('is refused from nobody, from strangers and from who may only look', async () => {
    expect((await upload(folder, photo(), '')).response.status).toBe(401)
    const insurer = await aBrowser(yard, personOf.insurer)
    expect((await upload(folder, photo(), insurer.cookie)).response.status).toBe(403)
  })

  it('is shown to those who see what names it', async () => {
    const engines = await aBrowser(yard, personOf.engines)
    const trim = await aBrowser(yard, personOf.trim)
    const { sha256 } = await upload(folder, photo(), engines.cookie)
    const path = `${folder}${sha256}`
    expect((await engines.get(path)).status).toBe(200)
    expect((await trim.get(path)).status).toBe(404)
    const raised = await engines.command(
      'changeOrder.raise',
      {
        party: anId('pty', 'engines'),
        title: 'Pitted bores',
        text: 'Seen when it was stripped.',
        reason: 'found',
        bears: 'owner',
        files: [sha256],
        lines: [{ text: 'Bore and hone', net: 48_000, taxRate: 2000 }],
      },
      project,
    )
    const { changed }: { readonly changed: readonly Changed[] } = await raised.json()
    const owner = await aBrowser(yard, personOf.owner)
    expect((await owner.get(path)).status).toBe(404)
    const order = changed[0]?.entities.find(({ kind }) => kind === 'changeOrder')?.id
    expect((await engines.command('changeOrder.send', { changeOrder: order })).status).toBe(200)
    expect((await owner.get(path)).status).toBe(200)
    expect((await trim.get(path)).status).toBe(404)
  })
})
