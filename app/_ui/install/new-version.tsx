'use client'
import { useEffect, useRef, useState } from 'react'
import { Mark } from '@/app/_ui/mark.tsx'
import { watchUnsent } from '@/lib/live/service-worker/watch-unsent.ts'
import {
  type VersionNews,
  type Watch,
  watchWorker,
} from '@/lib/live/service-worker/watch-worker.ts'
import { noteTyped, type TypedHere } from './typed-here.ts'

const words: { readonly [news in VersionNews]: string } = {
  ready: 'A new version is ready.',
  'taken elsewhere': 'A new version was taken in another tab. This page is of the former one.',
  'part missing': 'A part of this page could not be fetched.',
}

/** Puts the program on this phone, and offers a new version of it, quietly: nobody has to take it, and what is unsent goes first. */
export function NewVersion() {
  const [news, setNews] = useState<VersionNews>()
  const [away, setAway] = useState(false)
  const watch = useRef<Watch>(undefined)
  const typed = useRef<TypedHere>(undefined)
  useEffect(() => {
    watch.current = watchWorker((heard) => {
      setNews(heard)
      setAway(false)
    })
    typed.current = noteTyped()
    return () => {
      watch.current?.end()
      typed.current?.end()
    }
  }, [])
  if (news === undefined || away) return null
  return (
    <Offer
      news={news}
      take={() => {
        typed.current?.keep()
        watch.current?.take()
      }}
      later={() => setAway(true)}
    />
  )
}

function Offer({
  news,
  take,
  later,
}: {
  readonly news: VersionNews
  readonly take: () => void
  readonly later: () => void
}) {
  const [unsent, setUnsent] = useState<number>()
  const [taken, setTaken] = useState(false)
  useEffect(() => watchUnsent(setUnsent), [])
  if (unsent === undefined) return null
  return (
    <div className="version-place">
      <section className="toast" aria-label="The program">
        <Mark name={unsent > 0 ? 'unsent' : 'clock'} />
        <p role="status">
          {words[news]}
          {unsent > 0 ? ' It waits until what is unsent here has been sent.' : ''}
        </p>
        {unsent === 0 && (
          <button
            type="button"
            className="btn btn-line"
            disabled={taken}
            onClick={() => {
              setTaken(true)
              take()
            }}
          >
            {news === 'ready' ? 'Take it' : 'Load the page anew'}
          </button>
        )}
        <button type="button" className="toast-away" onClick={later}>
          Later
        </button>
      </section>
    </div>
  )
}
