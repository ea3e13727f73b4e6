import type { Env } from '../env.ts'

/** Tells whether an `Origin` header is our own. */
export type OwnOrigin = (origin: string | undefined) => boolean

/** The address that links are made with; `port` is the one in use. */
export function publicOrigin(env: Env, port: number): string {
  return env.publicUrl ?? `http://localhost:${port}`
}

/** Our own origins: PUBLIC_URL and, while only this machine reaches us, each of its names. */
export function ownOrigin(env: Env, port: number): OwnOrigin {
  const own = new Set([publicOrigin(env, port)])
  if (env.loopback) {
    for (const name of ['localhost', '127.0.0.1', '[::1]']) own.add(`http://${name}:${port}`)
  }
  return (origin) => origin !== undefined && own.has(origin)
}
