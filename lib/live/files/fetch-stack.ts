import type { HttpRequest, HttpResponse, HttpStack } from 'tus-js-client'

/** The upload's requests by `fetch`: the service worker has nothing else. How far it is is told after each piece. */
export const fetchStack: HttpStack = {
  createRequest: (method, url) => request(method, url),
  getName: () => 'fetch',
}

function request(method: string, url: string): HttpRequest {
  const headers = new Headers()
  const stop = new AbortController()
  return {
    getMethod: () => method,
    getURL: () => url,
    setHeader: (name, value) => headers.set(name, value),
    getHeader: (name) => headers.get(name) ?? undefined,
    setProgressHandler: () => undefined,
    async send(body: BodyInit | null) {
      const { signal } = stop
      const sent = await fetch(url, { method, headers, body, signal, cache: 'no-store' })
      return response(sent, await sent.text())
    },
    async abort() {
      stop.abort()
    },
    getUnderlyingObject: () => null,
  }
}

const response = (sent: Response, body: string): HttpResponse => ({
  getStatus: () => sent.status,
  getHeader: (name) => sent.headers.get(name) ?? undefined,
  getBody: () => body,
  getUnderlyingObject: () => sent,
})
