import type { IncomingMessage, ServerResponse } from 'node:http'
import compression from 'compression'

/** Below this an answer stays plain: it fits the packet that carries its head, and pressing costs time. In bytes. */
const WORTH_PRESSING = 1_024

/** A method, because the package types its requests as those of a framework, and uses nothing of it. */
interface Compress {
  pass(request: IncomingMessage, response: ServerResponse, next: () => void): void
}

/**
 * Presses text on its way out, by brotli where the reader takes it, else by gzip: pages as they stream, answers of the API, manifest and
 * drawings. Whoever answers may write as ever.
 */
export const compress: Compress = { pass: compression({ threshold: WORTH_PRESSING }) }
