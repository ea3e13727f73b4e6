'use client'
import Link from 'next/link'
import { useRouter } from 'next/navigation'
import { DayList, DayStrip, daysFrom, type Lane } from '@/app/_ui/day-strip.tsx'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { type ShopHere, useShop } from '@/lib/live/shop-provider.tsx'
import type { Slot } from '@/lib/record/entities/things.ts'
import { CivilDate } from '@/lib/record/scalars.ts'
import { all } from '@/lib/record/table.ts'
import { civilDateIn, daysAfter, mondayOf } from '@/lib/record/zoned-time.ts'
import { day, exactSpan } from '@/lib/words/dates.ts'
import { Windows } from './windows.tsx'

const DAYS = 7

/** The shop's bays over a week, from Monday: what lies in each, asked or agreed, over all its projects. */
export function DiaryScreen({ week }: { readonly week: string | undefined }) {
  const shop = useShop()
  const router = useRouter()
  const { book, place } = shop
  const today = civilDateIn(place.now, place.timeZone)
  const asked = CivilDate.safeParse(week)
  const monday = mondayOf(asked.success ? asked.data : today)
  const days = daysFrom(monday, DAYS)
  const lanes = lanesOf(shop)
  const to = (date: string) => `/shops/${book.id}/diary?week=${date}`

  return (
    <div className="stack">
      <section
        className="floor stack"
        aria-label={`Bays in the week of ${day(monday, place)}`}
        onKeyDown={(event) => {
          if (event.key === 'ArrowLeft') router.push(to(daysAfter(monday, -DAYS)))
          if (event.key === 'ArrowRight') router.push(to(daysAfter(monday, DAYS)))
        }}
      >
        <div className="row spread">
          <h2>Week of {day(monday, place)}</h2>
          <nav className="row" aria-label="Weeks">
            <Link className="btn btn-chalk" href={to(daysAfter(monday, -DAYS))}>
              Before
            </Link>
            <Link className="btn btn-chalk" href={to(mondayOf(today))}>
              This week
            </Link>
            <Link className="btn btn-chalk" href={to(daysAfter(monday, DAYS))}>
              After
            </Link>
          </nav>
        </div>
        {lanes.length === 0 ? (
          <p>
            No bays yet. <Link href={`/shops/${book.id}/set-up`}>Add the places of your shop</Link>:
            booth, lift, bench, trim bay.
          </p>
        ) : (
          <DayStrip lanes={lanes} days={days} place={place} />
        )}
        <p className="small">
          Heavy line: now. Double frame: a claim that is asked, not yet agreed. With the keys ← and
          → from a button above, a week back or on.
        </p>
      </section>
      <div className="cols cols-2">
        <section className="sheet stack">
          <Head title="The week in words" />
          {lanes.length === 0 ? (
            <EmptyState title="No bays, so no slots" />
          ) : (
            <DayList lanes={lanes} days={days} place={place} nothing="Free all week." />
          )}
        </section>
        <Windows />
      </div>
    </div>
  )
}

/** What a slot is for, as far as this shop may know. */
function wordsOf(slot: Slot, shop: ShopHere): string {
  const project = shop.projects.find(({ id }) => id === slot.project)
  if (project === undefined) return 'Busy'
  return `${project.assemblies[slot.assembly] ?? 'An assembly'} · ${project.name}`
}

function lanesOf(shop: ShopHere): readonly Lane[] {
  const { book, place } = shop
  const slots = all(book.slots).filter((slot) => slot.state !== 'released')
  return all(book.bays)
    .filter((bay) => bay.retiredAt === null || slots.some((slot) => slot.bay === bay.id))
    .map((bay) => ({
      id: bay.id,
      name: bay.name,
      things: slots
        .filter((slot) => slot.bay === bay.id)
        .map((slot) => {
          const words = wordsOf(slot, shop)
          const known = shop.projects.some(({ id }) => id === slot.project)
          return {
            id: slot.id,
            from: slot.from,
            to: slot.to,
            words,
            look: slot.state === 'agreed' ? ('agreed' as const) : ('asked' as const),
            sentence: `${exactSpan(slot.from, slot.to, place)}: ${words}${
              slot.state === 'agreed' ? ', agreed' : ', asked, not agreed yet'
            }`,
            ...(known ? { href: `/p/${slot.project}/windows#${slot.id}` } : {}),
          }
        }),
    }))
}
