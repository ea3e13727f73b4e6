import * as z from 'zod/mini'
import {
  type CommandName,
  projectCommandNames,
  shopCommandNames,
} from '../../record/command-names.ts'
import type { Json } from '../../record/condition.ts'
import { CommandKey } from '../../record/ids.ts'
import { type InputIssue, inputIssues } from '../../record/input-issue.ts'
import { Instant } from '../../record/scalars.ts'
import { projectCommand, shopCommand } from './ticket.ts'

const name = z.enum([...projectCommandNames, ...shopCommandNames], 'the name of a command')
const Request = z.strictObject({
  name: name.check(
    z.refine((known) => rootOf(known) !== undefined, 'a command that this version has'),
  ),
  // Whatever JSON it is: the command's own schema comes next.
  input: z.custom<Json>((value) => value !== undefined, 'the input of the command'),
  key: CommandKey,
  happenedAt: Instant,
  expected: z.optional(
    z.record(
      z.string().check(z.regex(/^(prj|shp)_[0-9a-z]{1,48}$/, 'the id of a project or a shop')),
      z.int().check(z.minimum(0)),
    ),
  ),
})
export type Request = Readonly<z.infer<typeof Request>>

/** Which kind of record a command changes; undefined where there is no such command. */
export function rootOf(command: CommandName): 'prj' | 'shp' | undefined {
  if (projectCommand(command) !== undefined) return 'prj'
  return shopCommand(command) === undefined ? undefined : 'shp'
}

/** A request as it came over the wire, or what is wrong with it. */
export function readRequest(
  raw: unknown,
): { readonly request: Request } | { readonly issues: readonly InputIssue[] } {
  const parsed = Request.safeParse(raw)
  if (!parsed.success) {
    return {
      issues: inputIssues(parsed.error),
    }
  }
  const field = unkeepable(parsed.data.input, 'input')
  if (field === undefined) return { request: parsed.data }
  return { issues: [{ field, message: 'text without control characters that no database keeps' }] }
}

/** The first text that Postgres can't keep: with a zero character, or with half of a surrogate pair. */
function unkeepable(value: Json, path: string): string | undefined {
  if (typeof value === 'string') {
    return value.includes('\0') || !value.isWellFormed() ? path : undefined
  }
  if (typeof value !== 'object' || value === null) return undefined
  for (const [key, inner] of Object.entries(value)) {
    const found = unkeepable(key, path) ?? unkeepable(inner, `${path}.${key}`)
    if (found !== undefined) return found
  }
  return undefined
}
