'use client'
import { DayList, DayStrip, daysFrom, type Lane } from '@/app/_ui/day-strip.tsx'
import { useLocale } from '@/lib/live/live-provider.tsx'
import { Instant } from '@/lib/record/scalars.ts'

const at = (text: string) => Instant.parse(`2027-02-${text}:00.000Z`)
const LANES: readonly Lane[] = [
  {
    id: 'cell',
    name: 'Run cell',
    things: [
      {
        id: 'one',
        from: at('11T08:00'),
        to: at('12T14:00'),
        words: '38 Engine ready to fit',
        sentence: '38 Engine ready to fit, until Fri 12 Feb, 14:00.',
        look: 'agreed',
      },
      {
        id: 'two',
        from: at('15T08:00'),
        to: at('17T18:00'),
        words: 'asked: Gearbox',
        sentence: 'Gearbox, asked for Mon 15 to Wed 17 Feb.',
        look: 'asked',
      },
    ],
  },
  {
    id: 'bench',
    name: 'Bench 1',
    things: [
      {
        id: 'three',
        from: at('13T08:00'),
        to: at('16T18:00'),
        words: 'Open window',
        sentence: 'An open window, Sat 13 to Tue 16 Feb.',
        look: 'free',
        href: '#floor',
      },
    ],
  },
]

/** Bays as chalk lanes over days: what is agreed, asked and free; and the same as a list. */
export function Floor() {
  const place = { locale: useLocale(), timeZone: 'Europe/London', now: at('11T09:31') }
  const days = daysFrom('2027-02-10', 9)
  return (
    <>
      <section className="floor stack">
        <h2>Over days</h2>
        <DayStrip lanes={LANES} days={days} place={place} />
        <DayList lanes={LANES} days={days} place={place} nothing="Nothing lies here." />
      </section>
      <section className="floor stack">
        <h2>Today</h2>
        <div className="lane">
          <span className="lane-name">Bench 2</span>
          <div className="hours">
            <span className="slot" style={{ gridColumn: '1 / 7' }}>
              Taken
            </span>
            <span className="slot slot-free" style={{ gridColumn: '7 / 11' }}>
              Free from 14:00
            </span>
          </div>
        </div>
        <a className="btn btn-chalk" href="#floor">
          Open the diary
        </a>
      </section>
    </>
  )
}
