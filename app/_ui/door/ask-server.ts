import * as z from 'zod/mini'

/** What an answer of the server's own pages holds when it says no: which field, and what to do. */
const Said = z.object({ error: z.object({ field: z.string(), message: z.string() }) })
const SaidPlainly = z.object({ message: z.string() })

/** A no of the server, or of the line to it. `field` is empty where no single field is meant. */
export interface No {
  readonly ok: false
  readonly status: number
  readonly field: string
  readonly message: string
}
export type Answer<T> = { readonly ok: true; readonly data: T } | No

const no = (status: number, field: string, message: string): No => ({
  ok: false,
  status,
  field,
  message,
})

function noFrom(status: number, body: unknown): No {
  const said = Said.safeParse(body)
  if (said.success) return no(status, said.data.error.field, said.data.error.message)
  const plainly = SaidPlainly.safeParse(body)
  if (plainly.success) return no(status, '', plainly.data.message)
  return no(status, '', 'The server gave no answer that we understand. Nothing was changed.')
}

/** A body to send as JSON. */
export const posting = (body: unknown, method: 'POST' | 'DELETE' = 'POST'): RequestInit => ({
  method,
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
})

/** Asks one of our own addresses; what comes back is checked against `schema`. An empty answer is null to it. */
export async function askServer<Schema extends z.ZodMiniType>(
  schema: Schema,
  path: string,
  request: RequestInit = {},
): Promise<Answer<z.infer<Schema>>> {
  try {
    const response = await fetch(path, { ...request, cache: 'no-store' })
    const body: unknown = await response.json().catch(() => null)
    if (!response.ok) return noFrom(response.status, body)
    const parsed = schema.safeParse(body)
    return parsed.success ? { ok: true, data: parsed.data } : noFrom(response.status, null)
  } catch {
    return no(0, '', 'No answer from the server. Nothing was changed; try again with a signal.')
  }
}
