'use client'
import {
  DayList,
  DayStrip,
  dayStarts,
  daysFrom,
  type Lane,
  type OnFloor,
} from '@/app/_ui/day-strip.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { all } from '@/lib/record/table.ts'
import { civilDateIn, mondayOf } from '@/lib/record/zoned-time.ts'
import { onStrip } from '@/lib/shop/day-lanes.ts'
import { exactSpan } from '@/lib/words/dates.ts'
import { atStart, partyName } from '@/lib/words/names.ts'

const WEEKS = 6
const DAYS = 7 * WEEKS

/** The weeks to come on slate: a lane for each bay that the assembly comes to, and one for its open windows. */
export function Floor({ assembly }: { readonly assembly: Assembly }) {
  const { record, reader } = useDesk()
  const { bays, shops } = useProject()
  const monday = mondayOf(civilDateIn(reader.now, reader.timeZone))
  const days = daysFrom(monday, DAYS)
  const starts = dayStarts(days, reader.timeZone)
  const slots = all(record.slots).filter(
    (slot) =>
      slot.assembly === assembly.id && slot.state !== 'released' && onStrip(slot, starts) !== null,
  )
  const windows = all(record.openWindows).filter(
    (window) => window.assembly === assembly.id && window.closedAt === null,
  )
  const lanes: Lane[] = [...new Set(slots.map(({ bay }) => bay))].map((id) => {
    const bay = bays.find((candidate) => candidate.id === id)
    const shop = shops.find((candidate) => candidate.id === bay?.shop)
    return {
      id,
      name: `${shop?.name ?? 'A shop'} · ${bay?.name ?? 'a bay'}`,
      things: slots
        .filter((slot) => slot.bay === id)
        .map((slot): OnFloor => {
          const stage = record.stages.rows.get(slot.stage ?? '')
          const words = `${atStart(partyName(slot.party, record, reader))}${stage === undefined ? '' : ` · ${stage.name}`}`
          return {
            id: slot.id,
            from: slot.from,
            to: slot.to,
            words,
            sentence: `${exactSpan(slot.from, slot.to, reader)}: ${words}${slot.state === 'agreed' ? '' : ', asked, not agreed yet'}`,
            look: slot.state === 'agreed' ? 'agreed' : 'asked',
          }
        }),
    }
  })
  if (windows.length > 0) {
    lanes.push({
      id: 'windows',
      name: 'Open windows',
      things: windows.map((window) => ({
        id: window.id,
        from: window.from,
        to: window.to,
        words: 'Open',
        sentence: exactSpan(window.from, window.to, reader),
        look: 'free' as const,
      })),
    })
  }
  return (
    <section className="floor stack tight" aria-label={`${assembly.name}: where it will be`}>
      <div className="row spread">
        <h2>{assembly.name}: where it will be</h2>
        <span className="small">a week from each Monday; heavy line: now</span>
      </div>
      {lanes.length === 0 ? (
        <p>No bay is claimed and no window is open in the weeks to come.</p>
      ) : (
        <>
          <DayStrip lanes={lanes} days={days} place={reader} each={7} />
          <DayList lanes={lanes} days={days} place={reader} nothing="Nothing in these weeks." />
        </>
      )}
    </section>
  )
}
