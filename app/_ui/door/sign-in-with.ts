import * as z from 'zod/mini'
import { forgetThisPerson } from '@/lib/live/phone/forget-person.ts'
import { phoneIsNobodys } from '@/lib/live/phone/whose-phone.ts'

const Csrf = z.object({ csrfToken: z.string() })
const Went = z.object({ url: z.string() })

/** How next-auth calls a pair of address and password that fits nobody, and what we say. */
const WRONG: { readonly [error: string]: string } = {
  CredentialsSignin: 'That address and password don’t belong together here. Nobody was signed in.',
}
const wrongOf = (error: string, way: string): string => {
  if (way === 'password' || error !== 'CredentialsSignin') return WRONG[error] ?? error
  return way === 'link'
    ? 'This link has been used or has run out. Ask for a new one.'
    : 'This door is closed: the demonstration is gone, or others can reach this server.'
}

async function csrfToken(): Promise<string> {
  const response = await fetch('/api/auth/csrf', { cache: 'no-store' })
  return Csrf.parse(await response.json()).csrfToken
}

/** Signs in one of the three ways. Null when it worked, else what to tell the person. */
export async function signInWith(
  way: 'password' | 'link' | 'demo',
  given: { readonly [field: string]: string },
): Promise<string | null> {
  try {
    const response = await fetch(`/api/auth/callback/${way}`, {
      method: 'POST',
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
      body: new URLSearchParams({ ...given, csrfToken: await csrfToken(), json: 'true' }),
    })
    const went = Went.safeParse(await response.json())
    if (!went.success) return 'The server gave no answer that we understand. Try again.'
    const error = new URL(went.data.url, window.location.href).searchParams.get('error')
    if (error !== null) return wrongOf(error, way)
    if (!response.ok) return wrongOf('CredentialsSignin', way)
    // The next page that the server shows says whose phone it is: what it kept for the same person, they find again.
    phoneIsNobodys()
    return null
  } catch {
    return 'No answer from the server. Try again with a signal.'
  }
}

/** Signs out on this device. */
export async function signOutHere(): Promise<void> {
  await fetch('/api/auth/signout', {
    method: 'POST',
    headers: { 'content-type': 'application/x-www-form-urlencoded' },
    body: new URLSearchParams({ csrfToken: await csrfToken(), json: 'true' }),
  })
  await forgetThisPerson()
}
