'use client'
import Link from 'next/link'
import { shopPath } from '@/app/_ui/paths.ts'
import type { ProjectHere } from '@/lib/live/project-provider.tsx'
import { useShop } from '@/lib/live/shop-provider.tsx'
import type { Slot } from '@/lib/record/entities/things.ts'
import type { Instant } from '@/lib/record/scalars.ts'
import { civilDateIn, instantAt } from '@/lib/record/zoned-time.ts'
import { moment, timeOfDay } from '@/lib/words/dates.ts'
import { stageNumber } from '@/lib/words/labels.ts'
import type { Place } from '@/lib/words/reader.ts'

/** A day on the floor is drawn in quarter hours. */
const COLUMNS = 40

/** The shop's bays today, as chalk lanes: what lies in each, and when it is free. */
export function OurFloor({ projects }: { readonly projects: readonly ProjectHere[] }) {
  const { book, place } = useShop()
  const shop = book.shops.rows.get(book.id)
  const bays = [...book.bays.rows.values()].filter(({ retiredAt }) => retiredAt === null)
  const today = civilDateIn(place.now, place.timeZone)
  const opens = instantAt(`${today}T${shop?.opensAt ?? '08:00'}`, place.timeZone)
  const closes = instantAt(`${today}T${shop?.closesAt ?? '18:00'}`, place.timeZone)
  if (opens === null || closes === null || bays.length === 0) return null
  return (
    <section className="floor stack" aria-label="Our floor today">
      <div className="row spread">
        <h2>Our floor today</h2>
        <Link className="small row-link" href={shopPath(book.id, 'diary')}>
          {timeOfDay(opens, place)} to {timeOfDay(closes, place)} · diary
        </Link>
      </div>
      <div>
        {bays.map((bay) => (
          <div key={bay.id} className="lane">
            <span className="lane-name">{bay.name}</span>
            <div className="hours floor-hours">
              {pieces(bay.id, [...book.slots.rows.values()], opens, closes, place).map((piece) => (
                <span
                  key={`${piece.from} ${piece.slot?.id ?? 'free'}`}
                  className={piece.slot === null ? 'slot slot-free' : 'slot'}
                  style={{ gridColumn: `${piece.from} / ${piece.to}` }}
                >
                  <SlotWords piece={piece} projects={projects} />
                </span>
              ))}
            </div>
          </div>
        ))}
      </div>
    </section>
  )
}

interface Piece {
  readonly slot: Slot | null
  readonly from: number
  readonly to: number
  readonly words: string
}

/** The day of one bay, cut into slots and what is free between them. */
function pieces(
  bay: string,
  slots: readonly Slot[],
  opens: Instant,
  closes: Instant,
  place: Place,
): readonly Piece[] {
  const start = Date.parse(opens)
  const length = Date.parse(closes) - start
  const column = (at: Instant): number =>
    Math.min(
      COLUMNS + 1,
      Math.max(1, Math.round(((Date.parse(at) - start) / length) * COLUMNS) + 1),
    )
  const today = slots
    .filter(
      (slot) =>
        slot.bay === bay && slot.state === 'agreed' && slot.from < closes && slot.to > opens,
    )
    .toSorted((a, b) => (a.from < b.from ? -1 : 1))
  const found: Piece[] = []
  let free: Instant = opens
  for (const slot of today) {
    if (column(slot.from) > column(free)) {
      found.push({
        slot: null,
        from: column(free),
        to: column(slot.from),
        words: `Free until ${timeOfDay(slot.from, place)}`,
      })
    }
    const from = Math.max(column(slot.from), column(free))
    const to = Math.max(from + 1, column(slot.to))
    found.push({ slot, from, to, words: `until ${moment(slot.to, place)}` })
    if (slot.to > free) free = slot.to
  }
  if (free < closes) {
    const words = free === opens ? 'Free all day' : `Free from ${timeOfDay(free, place)}`
    found.push({ slot: null, from: column(free), to: COLUMNS + 1, words })
  }
  return found
}

function SlotWords({
  piece,
  projects,
}: {
  readonly piece: Piece
  readonly projects: readonly ProjectHere[]
}) {
  const shop = useShop()
  const { slot } = piece
  if (slot === null) return <span>{piece.words}</span>
  const project = projects.find(({ record }) => record.id === slot.project)
  const stage = project?.record.stages.rows.get(slot.stage ?? '')
  const named = shop.projects.find(({ id }) => id === slot.project)
  const what = stage?.name ?? named?.assemblies[slot.assembly] ?? 'Busy'
  return (
    <>
      {stage !== undefined && <span className="num">{stageNumber(stage.number)}</span>}
      <span>
        {what}
        {named === undefined ? '' : `, ${named.name}`}
        <span className="vh">, {piece.words}</span>
      </span>
    </>
  )
}
