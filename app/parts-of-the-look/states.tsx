'use client'
import { BrokenFace } from '@/app/_ui/broken-face.tsx'
import { LiveFace } from '@/app/_ui/live-face.tsx'
import { Loading } from '@/app/_ui/loading.tsx'
import { NotHere } from '@/app/_ui/not-here.tsx'
import { EmptyState } from '@/app/_ui/paper.tsx'
import { State } from './both.tsx'

/** Live, connecting and away; loading, empty, nothing here, broken. */
export function States() {
  return (
    <>
      <div className="stack">
        <State name="Live, and what somebody else just did">
          <LiveFace says="Live" said="Wyn Pardoe entered a reading on 38, just now" />
        </State>
        <State name="Connecting">
          <LiveFace says="Connecting…" said={null} />
        </State>
        <State name="No network">
          <LiveFace says="As of 09:31, no network" said={null} />
        </State>
        <State name="On its way">
          <Loading what="the project" />
        </State>
      </div>
      <div className="stack">
        <State name="Empty">
          <EmptyState title="No handovers yet">
            <p>The first one is prepared when a stage ends with one.</p>
          </EmptyState>
        </State>
        <State name="Nothing here">
          <NotHere what="stage" href="#states" />
        </State>
        <State name="Broken">
          <BrokenFace missing={false} onPress={() => {}} />
        </State>
        <State name="A part of it is missing">
          <BrokenFace missing onPress={() => {}} />
        </State>
      </div>
    </>
  )
}
