'use client'
import { Plate } from '@/app/_ui/paper.tsx'
import { Both } from './both.tsx'
import { Fields } from './fields.tsx'
import { Floor } from './floor.tsx'
import { Leaves } from './leaves.tsx'
import { Marks } from './marks.tsx'
import { Materials } from './materials.tsx'
import { Papers } from './papers.tsx'
import { Phone } from './phone.tsx'
import { Presses } from './presses.tsx'
import { Refusals } from './refusals.tsx'
import { StageCards } from './stage-cards.tsx'
import { States } from './states.tsx'

/** All groups of parts. Each is a picture in e2e/parts.spec.ts. */
export function PartsPage() {
  return (
    <main className="page stack">
      <Plate title="Parts of the look" under="Every part in every state, by day and by night">
        A press here changes nothing.
      </Plate>
      <Both id="materials" title="Materials and inks">
        <Materials />
      </Both>
      <Both id="marks" title="Marks">
        <Marks />
      </Both>
      <Both id="presses" title="Presses">
        <Presses />
      </Both>
      <Both id="fields" title="Fields">
        <Fields />
      </Both>
      <Both id="phone" title="In the workshop">
        <Phone />
      </Both>
      <Both id="papers" title="Papers">
        <Papers />
      </Both>
      <Both id="refusals" title="Refusals">
        <Refusals />
      </Both>
      <Both id="stage-cards" title="Stage cards">
        <StageCards />
      </Both>
      <Both id="leaves" title="Leaves of the pad">
        <Leaves />
      </Both>
      <Both id="floor" title="The floor">
        <Floor />
      </Both>
      <Both id="states" title="A screen’s own states">
        <States />
      </Both>
    </main>
  )
}
