import { randomBytes } from 'node:crypto'
import type { IncomingMessage, ServerResponse } from 'node:http'

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

/**
 * Gives a page its content policy with a fresh nonce: on the response for the browser, and on the request, where Next
 * reads the nonce for its scripts.
 */
export function allowOwnScripts(
  request: IncomingMessage,
  response: ServerResponse,
  mode: 'development' | 'production',
): void {
  const policy = contentPolicy(randomBytes(16).toString('base64'), mode)
  request.headers[CSP] = policy
  response.setHeader(CSP, policy)
}

function contentPolicy(nonce: string, mode: 'development' | 'production'): string {
  // Next's reload evaluates code, and puts styles without a nonce.
  const develop = mode === 'development'
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${develop ? " 'unsafe-eval'" : ''}`,
    `style-src 'self' ${develop ? "'unsafe-inline'" : `'nonce-${nonce}'`}`,
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
