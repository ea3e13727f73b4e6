import type { CommandName } from '../../record/command-names.ts'
import type { Json } from '../../record/condition.ts'
import type { Queued } from './unsent-store.ts'

/** What tells one press on the screens from the others of the same command: the part of its input that doesn't change. */
export type About = Json

/** Whether two inputs say the same. */
export const sameInput = (one: Json, other: Json): boolean => canonical(one) === canonical(other)

const canonical = (value: Json): string =>
  JSON.stringify(value, (_key, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).toSorted(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  )

const isPlain = (value: Json): value is { readonly [field: string]: Json } =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

function holds(input: Json, about: About): boolean {
  if (!isPlain(input) || !isPlain(about)) return sameInput(input, about)
  const fields = new Map(Object.entries(input))
  return Object.entries(about).every(([field, value]) => {
    const there = fields.get(field)
    return there !== undefined && sameInput(there, value)
  })
}

/** Whether an unsent command was pressed here: by what it is about, or, where the screen has but one such press, by the screen. */
export const isPressOf = (
  { request, path }: Queued,
  name: CommandName,
  about: About | undefined,
  here: string,
): boolean =>
  request.name === name &&
  (about === undefined ? path.split('?')[0] === here : holds(request.input, about))
