import { randomBytes } from 'node:crypto'
import type { IncomingMessage, ServerResponse } from 'node:http'
import { styleHash } from './style-hash.ts'

const CSP = 'content-security-policy'

/** Sent with every answer, pages or not. */
const ALWAYS = {
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  // A link in a mail holds a secret; other origins never see it.
  'referrer-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(self), microphone=(), geolocation=(), payment=(), usb=()',
} as const

/** Two years, in seconds. */
const HSTS_SECONDS = 63_072_000

/** Sets what protects every answer; `https` when people reach us so. */
export function protect(response: ServerResponse, https: boolean): void {
  for (const [name, value] of Object.entries(ALWAYS)) response.setHeader(name, value)
  if (https) response.setHeader('strict-transport-security', `max-age=${HSTS_SECONDS}`)
}

/** The content policy of a page, by the nonce of this one answer. */
export type PagePolicy = (nonce: string) => string

/**
 * Gives a page its content policy with a fresh nonce: on the response for the browser, and on the request, where Next
 * reads the nonce for its scripts.
 */
export function allowOwnScripts(
  request: IncomingMessage,
  response: ServerResponse,
  policy: PagePolicy,
): void {
  const text = policy(randomBytes(16).toString('base64'))
  request.headers[CSP] = text
  response.setHeader(CSP, text)
}

/** The pages' policy in this mode; in production it needs a build. */
export function pagePolicy(mode: 'development' | 'production'): PagePolicy {
  // Next's reload evaluates code, and puts styles without a nonce.
  const develop = mode === 'development'
  const styleOfBuild = develop ? '' : `'${styleHash()}'`
  return (nonce) =>
    [
      "default-src 'self'",
      `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${develop ? " 'unsafe-eval'" : ''}`,
      `style-src 'self' ${develop ? "'unsafe-inline'" : `'nonce-${nonce}' ${styleOfBuild}`}`,
      "style-src-attr 'unsafe-inline'",
      "img-src 'self' data: blob:",
      "font-src 'self'",
      "connect-src 'self'",
      "worker-src 'self'",
      "manifest-src 'self'",
      "object-src 'none'",
      "base-uri 'none'",
      "form-action 'self'",
      "frame-ancestors 'none'",
    ].join('; ')
}
