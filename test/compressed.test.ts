import { readdirSync } from 'node:fs'
import { type IncomingHttpHeaders, request } from 'node:http'
import { fileURLToPath } from 'node:url'
import { brotliDecompressSync, gunzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { aServer, type TestServer } from './a-server.ts'

type Answer = {
  readonly status: number
  readonly headers: IncomingHttpHeaders
  readonly body: Buffer
}

let server: TestServer
beforeAll(async () => {
  server = await aServer()
})
afterAll(() => server.remove())

/** As it goes over the wire: `fetch` would decode it. */
function ask(path: string, encodings: string, body?: string): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const { hostname, port } = new URL(server.url)
    const headers: Record<string, string> = { 'accept-encoding': encodings }
    if (body !== undefined)
      Object.assign(headers, { 'content-type': 'application/json', origin: server.url })
    const asked = request(
      { hostname, port, path, headers, method: body === undefined ? 'GET' : 'POST' },
      (response) => {
        const pieces: Buffer[] = []
        response.on('data', (piece: Buffer) => pieces.push(piece))
        response.on('end', () =>
          resolve({
            status: response.statusCode ?? 0,
            headers: response.headers,
            body: Buffer.concat(pieces),
          }),
        )
      },
    )
    asked.once('error', reject)
    asked.end(body)
  })
}

const scripts = (ending: string): string => {
  const folder = fileURLToPath(new URL('../.next/static/chunks', import.meta.url))
  const name = readdirSync(folder).find((file) => file.endsWith(`${ending}.br`))
  if (name === undefined) throw new Error(`The build has no pressed ${ending}.`)
  return `/_next/static/chunks/${name.slice(0, -'.br'.length)}`
}

/** Of a page what stands on it: its nonce is another each time, and the order of its data. */
const standing = (text: Buffer): string =>
  /<main.*<\/main>/s.exec(text.toString())?.[0] ?? text.toString()

describe('text on its way out', () => {
  const texts: readonly { readonly what: string; readonly path: () => string }[] = [
    { what: 'a page', path: () => '/set-up' },
    { what: 'a script', path: () => scripts('.js') },
    { what: 'a style', path: () => scripts('.css') },
    { what: 'JSON of the API', path: () => '/api/openapi.json' },
    { what: 'the manifest', path: () => '/manifest.webmanifest' },
    { what: 'a drawing', path: () => '/icon.svg' },
    { what: 'the service worker', path: () => '/sw.js' },
  ]
  for (const { what, path } of texts) {
    it(`is pressed for who takes it, and is the same unpressed: ${what}`, async () => {
      const plain = await ask(path(), 'identity')
      expect(plain.status).toBe(200)
      expect(plain.headers['content-encoding']).toBeUndefined()
      const brotli = await ask(path(), 'gzip, deflate, br')
      const gzip = await ask(path(), 'gzip')
      // Else a cache between would hand the pressed one to whoever can't read it.
      for (const answer of [plain, brotli, gzip])
        expect(String(answer.headers.vary).toLowerCase()).toContain('accept-encoding')
      if (plain.body.length < 1024) return
      expect(brotli.headers['content-encoding']).toBe('br')
      expect(gzip.headers['content-encoding']).toBe('gzip')
      expect(brotli.body.length).toBeLessThan(plain.body.length)
      expect(standing(brotliDecompressSync(brotli.body))).toBe(standing(plain.body))
      expect(standing(gunzipSync(gzip.body))).toBe(standing(plain.body))
    })
  }

  it('stays plain where it fits one packet', async () => {
    const { headers, body } = await ask('/api/health', 'gzip, deflate, br')
    expect(headers['content-encoding']).toBeUndefined()
    expect(body.toString()).toContain('"ok"')
    const refused = await ask('/api/commands', 'gzip, deflate, br', '{}')
    expect(refused.status).toBeGreaterThanOrEqual(400)
    expect(refused.headers['content-encoding']).toBeUndefined()
    expect(JSON.parse(refused.body.toString())).toBeTruthy()
  })

  it('leaves pictures and faces as they are', async () => {
    const picture = await ask('/icons/card-512.png', 'gzip, deflate, br')
    expect(picture.headers['content-encoding']).toBeUndefined()
    expect(picture.body.subarray(1, 4).toString()).toBe('PNG')
  })
})

describe('scripts of the build', () => {
  it('are asked for once and kept, and the worker’s own is looked at each time', async () => {
    const { headers } = await ask(scripts('.js'), 'br')
    expect(headers['cache-control']).toMatch(/max-age=31536000.*immutable/)
    const worker = await ask('/sw.js', 'br')
    expect(worker.headers['cache-control']).toBe('no-cache')
    expect(worker.headers['content-type']).toMatch(/javascript/)
  })

  it('that are gone are said to be gone, and nothing outside their folder is served', async () => {
    expect((await ask('/_next/static/chunks/gone.js', 'br')).status).toBe(404)
    for (const path of [
      '/_next/static/../BUILD_ID',
      '/_next/static/..%2fBUILD_ID',
      '/_next/static/%2e%2e/BUILD_ID',
    ])
      expect((await ask(path, 'br')).status, path).not.toBe(200)
  })
})
