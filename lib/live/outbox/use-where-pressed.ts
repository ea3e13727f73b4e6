'use client'
import type { PersonId } from '../../record/ids.ts'
import { type ProjectHere, useProjectIfAny } from '../project-provider.tsx'
import { type ShopHere, useShopIfAny } from '../shop-provider.tsx'

/** Where a press stands: on whose screen, in which records, and which version of each is looked at. */
export interface WherePressed {
  readonly person: PersonId
  readonly personName: string
  readonly project: ProjectHere | null
  readonly shop: ShopHere | null
  readonly expected: { readonly [record: string]: number }
}

/** Where the presses of this screen stand; null outside any record. */
export function useWherePressed(): WherePressed | null {
  const project = useProjectIfAny()
  const shop = useShopIfAny()
  const here = project ?? shop
  if (here === null) return null
  return {
    person: here.person,
    personName: here.people[here.person] ?? '',
    project,
    shop,
    expected: {
      ...(project === null ? {} : { [project.record.id]: project.record.version }),
      ...(shop === null ? {} : { [shop.book.id]: shop.book.version }),
    },
  }
}
