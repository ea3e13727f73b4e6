import { createHash, randomBytes } from 'node:crypto'
import { existsSync } from 'node:fs'
import { readFile, writeFile } from 'node:fs/promises'
import { request } from 'node:http'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { HandedLink } from '../lib/command/wire-access.ts'
import { openUploads } from '../lib/server/uploads.ts'
import { aPlantedYard, type PlantedYard } from './a-planted-yard.ts'
import { aBrowser, type Browser, type TestYard } from './a-yard.ts'
import { aHandover, anAssembly, anId, at, lead, owner, project } from './builders.ts'
import { personOf } from './see-cast.ts'

let planted: PlantedYard
let yard: TestYard
let manager: Browser

const seats = anAssembly({ id: anId('asm', 'armchairs'), name: 'Front seats' })
const toOwner = aHandover({
  id: anId('hnd', 'seats'),
  assemblies: [seats.id],
  from: lead,
  to: owner,
  state: 'released',
  releasedAt: at(1),
  releasedBy: personOf.lead,
})

beforeAll(async () => {
  planted = await aPlantedYard(seats, toOwner)
  yard = planted.yard
  manager = await aBrowser(yard, personOf.lead)
})
afterAll(() => planted.close())

const uploads = `/api/projects/${project}/uploads`
const files = `/api/projects/${project}/files`
const aPhoto = (bytes = 400_000) =>
  Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), randomBytes(bytes)])
const nameOf = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex')

interface Step {
  readonly path: string
  readonly method: string
  readonly headers?: Readonly<Record<string, string>>
  readonly body?: Buffer
  readonly cookie?: string
}
const ask = ({ path, method, headers = {}, body, cookie = manager.cookie }: Step) =>
  fetch(yard.url + path, {
    method,
    headers: { cookie, origin: yard.url, 'tus-resumable': '1.0.0', ...headers },
    ...(body !== undefined && { body: new Uint8Array(body) }),
  })

const begin = (sha256: string, length: number, more: Partial<Step> = {}) =>
  ask({
    path: uploads,
    method: 'POST',
    headers: {
      'upload-length': String(length),
      'upload-metadata': `sha256 ${btoa(sha256)},name ${btoa('a photo.jpg')}`,
    },
    ...more,
  })
const pieceAt = (offset: number) => ({
  'upload-offset': String(offset),
  'content-type': 'application/offset+octet-stream',
})
const send = (path: string, offset: number, body: Buffer, cookie = manager.cookie) =>
  ask({ path, method: 'PATCH', headers: pieceAt(offset), body, cookie })
const far = async (path: string) =>
  Number((await ask({ path, method: 'HEAD' })).headers.get('upload-offset'))
const placeOf = (begun: Response) => begun.headers.get('location') ?? ''
const seen = async (sha256: string) =>
  Buffer.from(await (await manager.get(`${files}/${sha256}`)).arrayBuffer())

/** Sends the beginning of a piece, and then the line is gone. */
const cutOff = (path: string, all: Buffer, after: number) =>
  new Promise<void>((gone) => {
    const headers = { cookie: manager.cookie, origin: yard.url, 'tus-resumable': '1.0.0' }
    const line = request(yard.url + path, {
      method: 'PATCH',
      headers: { ...headers, ...pieceAt(0), 'content-length': String(all.length) },
    })
    line.on('error', () => undefined)
    line.on('close', gone)
    line.write(all.subarray(0, after), () => setTimeout(() => line.destroy(), 200))
  })

describe('an upload', () => {
  it('arrives whole after the line was cut, from where it stopped', async () => {
    const photo = aPhoto()
    const begun = await begin(nameOf(photo), photo.length)
    expect(begun.status).toBe(201)
    const place = placeOf(begun)
    expect(place.startsWith(`${uploads}/`)).toBe(true)
    expect([...begun.headers.keys()].join(' ')).not.toContain('access-control')
    await cutOff(place, photo, 150_000)
    const offset = await far(place)
    expect(offset).toBeGreaterThan(0)
    expect(offset).toBeLessThanOrEqual(150_000)
    expect((await manager.get(`${files}/${nameOf(photo)}`)).status).toBe(404)
    const rest = await send(place, offset, photo.subarray(offset))
    expect(rest.status).toBe(204)
    expect(await seen(nameOf(photo))).toEqual(photo)
    expect((await ask({ path: place, method: 'HEAD' })).status).toBe(404)
  })

  it('is refused at its end where other bytes came than were announced, with the field named', async () => {
    const photo = aPhoto()
    const begun = await begin(nameOf(aPhoto()), photo.length)
    const end = await send(placeOf(begun), 0, photo)
    expect(end.status).toBe(400)
    expect(await end.json()).toMatchObject({ error: { field: 'file' } })
    expect((await manager.get(`${files}/${nameOf(photo)}`)).status).toBe(404)
  })

  it('is refused where it is no picture and no PDF', async () => {
    const script = Buffer.from('<script>alert(1)</script>')
    const end = await send(placeOf(await begin(nameOf(script), script.length)), 0, script)
    expect(end.status).toBe(415)
    expect((await end.json()).error.message).toContain('PDF')
  })

  it('is not gone on with, looked at or given up by another person', async () => {
    const photo = aPhoto()
    const place = placeOf(await begin(nameOf(photo), photo.length))
    const { cookie } = await aBrowser(yard, personOf.engines)
    const others = await Promise.all([
      ask({ path: place, method: 'HEAD', cookie }),
      send(place, 0, photo, cookie),
      ask({ path: place, method: 'DELETE', cookie }),
    ])
    expect(others.map(({ status }) => status)).toEqual([404, 404, 404])
    expect((await send(place, 0, photo)).status).toBe(204)
  })

  it('is shown to nobody before it is whole', async () => {
    const photo = aPhoto()
    const place = placeOf(await begin(nameOf(photo), photo.length))
    await send(place, 0, photo.subarray(0, 1000))
    expect((await ask({ path: place, method: 'GET' })).status).toBe(404)
  })

  it('too large is refused before any byte is sent', async () => {
    const begun = await begin('a'.repeat(64), 30_000_001)
    expect(begun.status).toBe(413)
    expect(await begun.json()).toMatchObject({ error: { field: 'file' } })
  })

  it('that doesn’t say what it is, or how long, is refused with the field named', async () => {
    const unnamed = await begin('not a hash', 1000)
    expect(unnamed.status).toBe(400)
    expect(await unnamed.json()).toMatchObject({ error: { field: 'sha256' } })
    const endless = await ask({
      path: uploads,
      method: 'POST',
      headers: {
        'upload-defer-length': '1',
        'upload-metadata': `sha256 ${btoa('a'.repeat(64))}`,
      },
    })
    expect(endless.status).toBe(400)
    expect(await endless.json()).toMatchObject({ error: { field: 'upload-length' } })
  })

  it('of a file that is there already says so, and no byte is sent twice', async () => {
    const photo = aPhoto()
    await send(placeOf(await begin(nameOf(photo), photo.length)), 0, photo)
    const again = await begin(nameOf(photo), photo.length)
    expect(again.status).toBe(200)
    expect(await again.json()).toEqual({ kept: true })
    const { cookie } = await aBrowser(yard, personOf.engines)
    const unseen = await begin(nameOf(photo), photo.length, { cookie })
    expect(unseen.status, 'another shop learns nothing of it').toBe(201)
  })

  it('can be given up', async () => {
    const photo = aPhoto()
    const place = placeOf(await begin(nameOf(photo), photo.length))
    expect((await ask({ path: place, method: 'DELETE' })).status).toBe(204)
    expect((await send(place, 0, photo)).status).toBe(404)
  })

  it('that nobody went on with for three days is given up', async () => {
    const photo = aPhoto()
    const place = placeOf(await begin(nameOf(photo), photo.length))
    await send(place, 0, photo.subarray(0, 1000))
    const { env, files: shelf } = yard.doors
    const said = join(env.dataDir, 'uploads', `${place.split('/').at(-1)}.json`)
    const old = new Date(Date.now() - 3 * 86_400_000 - 1).toISOString()
    const upload: object = JSON.parse(await readFile(said, 'utf8'))
    await writeFile(said, JSON.stringify({ ...upload, creation_date: old }))
    expect((await send(place, 1000, photo.subarray(1000))).status).toBe(410)
    // Once a start and once an hour what is left of it goes.
    openUploads(shelf, env.dataDir).close()
    await expect.poll(() => existsSync(said)).toBe(false)
    expect((await ask({ path: place, method: 'HEAD' })).status).toBe(404)
  })

  it('goes on only from where it is', async () => {
    const photo = aPhoto()
    const place = placeOf(await begin(nameOf(photo), photo.length))
    const ahead = await send(place, 10, photo.subarray(10))
    expect(ahead.status).toBe(409)
    expect(await ahead.json()).toMatchObject({ error: { field: 'upload' } })
  })

  it('is refused from nobody, from who may only look, and from another site', async () => {
    const photo = aPhoto()
    expect((await begin(nameOf(photo), photo.length, { cookie: '' })).status).toBe(401)
    const { cookie } = await aBrowser(yard, personOf.insurer)
    expect((await begin(nameOf(photo), photo.length, { cookie })).status).toBe(403)
    const elsewhere = await fetch(yard.url + uploads, {
      method: 'POST',
      headers: {
        cookie: manager.cookie,
        origin: 'https://elsewhere.test',
        'tus-resumable': '1.0.0',
      },
    })
    expect(elsewhere.status).toBe(403)
  })

  it('of more than a person sends in an hour waits, in words', async () => {
    const trimmer = await aBrowser(yard, personOf.trim)
    const statuses: number[] = []
    const words: string[] = []
    for (let n = 0; n < 17; n++) {
      const sha256 = n.toString(16).padStart(64, '0')
      const begun = await begin(sha256, 30_000_000, { cookie: trimmer.cookie })
      statuses.push(begun.status)
      words.push(await begun.text())
    }
    expect(statuses).toEqual([...Array<number>(16).fill(201), 429])
    expect(words.at(-1)).toMatch(/500 MB.*Wait \d+ minutes/)
    expect((await begin('b'.repeat(64), 1000)).status, 'nobody else waits').toBe(201)
  })
})

describe('an upload by a receipt’s link', () => {
  it('arrives for a guest, goes on by that link alone, and is no flood', async () => {
    const link = async () => {
      const handed = await manager.post(`/api/handovers/${toOwner.id}/link`, {})
      const { url }: HandedLink = await handed.json()
      return `${new URL(url).pathname.replace('/receipt/', '/api/receipts/')}/uploads`
    }
    const [path, other] = [await link(), await link()]
    const photo = aPhoto()
    const begun = await begin(nameOf(photo), photo.length, { path, cookie: '' })
    expect(begun.status).toBe(201)
    const place = placeOf(begun)
    await send(place, 0, photo.subarray(0, 1000), '')
    const elsewhere = place.replace(path, other)
    expect((await ask({ path: elsewhere, method: 'HEAD', cookie: '' })).status).toBe(404)
    expect((await send(place, 1000, photo.subarray(1000), '')).status).toBe(204)
    expect(await seen(nameOf(photo))).toEqual(photo)
    const statuses: number[] = []
    for (let n = 0; n < 4; n++) {
      const sha256 = n.toString(16).padStart(64, '0')
      statuses.push((await begin(sha256, 30_000_000, { path, cookie: '' })).status)
    }
    expect(statuses).toEqual([201, 201, 201, 429])
    expect((await begin('a'.repeat(64), 10, { path: '/api/receipts/madeup/uploads' })).status).toBe(
      404,
    )
  })
})
