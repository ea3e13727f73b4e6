import 'fake-indexeddb/auto'
import { randomBytes } from 'node:crypto'
import { once } from 'node:events'
import { connect, createServer, type Socket } from 'node:net'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { fileOnPhone, filesOnPhone } from '../lib/live/files/file-shelf.ts'
import { dropFile, keepFile, letGoOfField } from '../lib/live/files/keep-file.ts'
import { sendWaitingFile, sendWaitingFiles } from '../lib/live/files/send-waiting-file.ts'
import { aPlantedYard, type PlantedYard } from './a-planted-yard.ts'
import { aBrowser, type Browser } from './a-yard.ts'
import { project } from './builders.ts'
import { personOf } from './see-cast.ts'

let planted: PlantedYard
let manager: Browser
let line: Awaited<ReturnType<typeof aLine>>
const ownFetch = globalThis.fetch
let cookie = ''

/** A line to the server that can be cut, also in mid-upload. */
async function aLine(port: number) {
  const open = new Set<Socket>()
  let isCut = false
  let left = Number.POSITIVE_INFINITY
  const cut = () => {
    isCut = true
    for (const socket of open) socket.destroy()
  }
  const proxy = createServer((phone) => {
    if (isCut) return void phone.destroy()
    const server = connect(port, '127.0.0.1')
    for (const socket of [phone, server]) {
      open.add(socket)
      socket.on('error', () => socket.destroy())
      socket.on('close', () => {
        open.delete(socket)
        phone.destroy()
        server.destroy()
      })
    }
    phone.on('data', (bytes) => {
      left -= bytes.length
      if (left < 0) cut()
      else server.write(bytes)
    })
    server.pipe(phone)
  }).listen(0, '127.0.0.1')
  await once(proxy, 'listening')
  const address = proxy.address()
  return {
    url: `http://127.0.0.1:${typeof address === 'object' ? address?.port : 0}`,
    cut,
    cutAfter: (bytes: number) => {
      left = bytes
    },
    mend: () => {
      isCut = false
      left = Number.POSITIVE_INFINITY
    },
    close: () => proxy.close(),
  }
}

beforeAll(async () => {
  planted = await aPlantedYard()
  manager = await aBrowser(planted.yard, personOf.lead)
  line = await aLine(Number(new URL(planted.yard.url).port))
  // What a browser has of itself: where its page is from, and its cookie on every request.
  Object.assign(globalThis, { location: new URL(line.url) })
  globalThis.fetch = (input, request) => {
    const headers = new Headers(request?.headers)
    headers.set('origin', planted.yard.url)
    if (cookie !== '') headers.set('cookie', cookie)
    return ownFetch(input, { ...request, headers })
  }
})
afterAll(async () => {
  globalThis.fetch = ownFetch
  line.close()
  await planted.close()
})
beforeEach(async () => {
  line.mend()
  cookie = manager.cookie
  for (const { address } of await filesOnPhone()) await dropFile(address)
})

const folder = `/api/projects/${project}/files`
const keep = (bytes: Buffer, use = 'check') =>
  keepFile({
    folder,
    person: personOf.lead,
    name: 'seam.jpg',
    bytes: new Blob([new Uint8Array(bytes)]),
    thumb: null,
    use,
  })
const aPhoto = (bytes = 900_000) =>
  Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), randomBytes(bytes)])
const arrived = async (sha256: string) =>
  Buffer.from(await (await manager.get(`${folder}/${sha256}`)).arrayBuffer())

describe('a photo on the phone', () => {
  it('is sent, and its bytes leave the phone, while its field still shows it', async () => {
    const photo = aPhoto()
    const sha256 = await keep(photo)
    expect(await sendWaitingFile(`${folder}/${sha256}`)).toEqual({ is: 'sent' })
    expect(await arrived(sha256)).toEqual(photo)
    expect(await filesOnPhone()).toMatchObject([{ sha256, bytes: null, use: 'check' }])
    await letGoOfField('check')
    expect(await filesOnPhone()).toEqual([])
  })

  it('goes on where it stopped when the line was cut in the middle', {
    timeout: 30_000,
  }, async () => {
    const photo = aPhoto()
    const sha256 = await keep(photo)
    line.cutAfter(400_000)
    expect(await sendWaitingFile(`${folder}/${sha256}`)).toEqual({ is: 'waits', for: 'signal' })
    const waiting = await fileOnPhone(`${folder}/${sha256}`)
    const upload = waiting?.upload ?? ''
    expect(upload).toContain('/uploads/')
    const head = await ownFetch(planted.yard.url + upload, {
      method: 'HEAD',
      headers: { cookie, 'tus-resumable': '1.0.0' },
    })
    expect(Number(head.headers.get('upload-offset'))).toBeGreaterThanOrEqual(256 * 1024)
    line.mend()
    line.cutAfter(photo.length - 200_000)
    expect(await sendWaitingFile(`${folder}/${sha256}`), 'what is there isn’t sent again').toEqual({
      is: 'sent',
    })
    expect(await arrived(sha256)).toEqual(photo)
  })

  it('chosen without a signal waits, and keeps waiting when its field is done', async () => {
    const sha256 = await keep(aPhoto())
    line.cut()
    expect(await sendWaitingFiles(personOf.lead)).toEqual({ is: 'waits', for: 'signal' })
    await letGoOfField('check')
    line.mend()
    expect(await sendWaitingFiles(personOf.lead)).toEqual({ is: 'sent' })
    expect((await arrived(sha256)).length).toBeGreaterThan(900_000)
    expect(await filesOnPhone()).toEqual([])
  }, 30_000)

  it('waits for its person: nobody else’s session sends it', async () => {
    const sha256 = await keep(aPhoto())
    expect(await sendWaitingFiles(personOf.engines)).toEqual({ is: 'sent' })
    expect((await manager.get(`${folder}/${sha256}`)).status).toBe(404)
    cookie = ''
    expect(await sendWaitingFile(`${folder}/${sha256}`)).toEqual({ is: 'waits', for: 'session' })
    expect(await filesOnPhone()).toMatchObject([{ sha256, no: null }])
  })

  it('that the server won’t have says why, and stays', async () => {
    const sha256 = await keep(Buffer.from('no picture'))
    const sent = await sendWaitingFile(`${folder}/${sha256}`)
    expect(sent).toMatchObject({ is: 'refused', status: 415 })
    expect(await filesOnPhone()).toMatchObject([{ sha256, no: expect.stringContaining('PDF') }])
  })

  it('sent by two at once arrives once', async () => {
    const photo = aPhoto()
    const sha256 = await keep(photo)
    const both = await Promise.all([
      sendWaitingFile(`${folder}/${sha256}`),
      sendWaitingFile(`${folder}/${sha256}`),
    ])
    expect(both).toEqual([{ is: 'sent' }, { is: 'sent' }])
    expect(await arrived(sha256)).toEqual(photo)
  })

  it('that is there already is not sent again', async () => {
    const photo = aPhoto()
    const sha256 = await keep(photo)
    await sendWaitingFile(`${folder}/${sha256}`)
    await keep(photo)
    line.cutAfter(20_000)
    expect(await sendWaitingFile(`${folder}/${sha256}`)).toEqual({ is: 'sent' })
  })
})
