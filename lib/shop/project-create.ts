import * as z from 'zod/mini'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { plain } from '../record/condition.ts'
import type { Party } from '../record/entities/people.ts'
import { ShopId } from '../record/ids.ts'
import { Currency, Line, OptionalText, TimeZone } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { bookOf } from './diary.ts'

/** Year of a car's make. */
export const Year = z.int().check(z.minimum(1880), z.maximum(2200))

/**
 * Begins a project: its lead is the shop whose manager begins it; its owner may be named at once. Currency and time zone are
 * the shop's unless said otherwise. The project's id is the first that derives from the command's key.
 */
export const projectCreate = defineCommand({
  name: 'project.create',
  input: z.strictObject({
    shop: ShopId,
    name: Line,
    year: z.optional(Year),
    description: z.optional(OptionalText),
    currency: z.optional(Currency),
    timeZone: z.optional(TimeZone),
    owner: z.optional(Line),
  }),
  shops: (_record, input) => [input.shop],
  may: (actor, _record, input) => actor.role === 'manager' && actor.shop === input.shop,
  decide(record, input, ctx) {
    const project = ctx.newId('prj')
    const existing = all(record.projects)[0]
    if (existing !== undefined)
      return refusal({ ...plain(existing.id), rule: 'exists', field: 'project' })
    const shop = must(bookOf(ctx, input.shop).shops, input.shop)
    const party = (name: string, over: Partial<Party>): Party => ({
      kind: 'party',
      id: ctx.newId('pty'),
      project,
      name,
      role: 'shop',
      lead: false,
      shop: null,
      bills: 'owner',
      leftAt: null,
      ...over,
    })
    return changes(
      {
        kind: 'project',
        id: project,
        name: input.name,
        year: input.year ?? null,
        description: input.description ?? '',
        currency: input.currency ?? shop.currency,
        timeZone: input.timeZone ?? shop.timeZone,
        standingConsentEach: null,
        standingConsentTotal: null,
        demo: shop.demo,
        createdAt: ctx.happenedAt,
      },
      party(shop.name, { lead: true, shop: shop.id }),
      ...(input.owner === undefined ? [] : [party(input.owner, { role: 'owner' })]),
    )
  },
})
