'use client'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { Assemblies } from './assemblies.tsx'
import { Car } from './car.tsx'
import { Parties } from './parties.tsx'
import { Stages } from './stages.tsx'

/** The project as it is set up: the car, who takes part, what is worked on, the stages. The lead changes it; others read. */
export function SetUpScreen() {
  const { standing } = useDesk()
  return (
    <div className="stack">
      {!standing.managesLead && (
        <p className="sheet">
          The lead sets the project up. A shop’s manager changes its own stages.
        </p>
      )}
      <div className="cols cols-2">
        <Car />
        <Parties />
      </div>
      <div className="cols cols-2">
        <Assemblies />
        <Stages />
      </div>
    </div>
  )
}
