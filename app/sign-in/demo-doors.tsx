'use client'
import { useState } from 'react'
import * as z from 'zod/mini'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import { signInWith } from '@/app/_ui/door/sign-in-with.ts'
import type { Installation } from '@/lib/command/wire-access.ts'

type DemoPerson = Installation['demoPersons'][number]

const can: { readonly [R in DemoPerson['role']]: string } = {
  manager: 'starts, signs off, releases, prices; sees the shop’s money',
  hand: 'starts, records readings, receives; sees no money',
  owner: 'says yes or no, chooses, sees the whole car',
  shop: 'works on the car',
  supplier: 'promises days for parts',
  observer: 'reads, and changes nothing',
}

/** What stands after the role: the shop or the car. */
const placeOf = ({ at }: DemoPerson): string => at.replace(/^.*? of /, '')

/** One press signs in as a person of the demonstration. */
export function DemoDoors({
  persons,
  way,
  leaves,
}: {
  readonly persons: readonly DemoPerson[]
  readonly way: string
  /** This browser is the demonstration's phone of a shop: whoever comes in leaves that first. */
  readonly leaves: boolean
}) {
  const [waiting, setWaiting] = useState<string>()
  const [wrong, setWrong] = useState<string>()
  const groups = Map.groupBy(persons, placeOf)

  const enter = async (person: string) => {
    setWaiting(person)
    setWrong(undefined)
    if (leaves) await askServer(z.unknown(), '/api/device/leave', posting({}))
    const said = await signInWith('demo', { person })
    if (said === null) {
      window.location.assign(way)
      return
    }
    setWaiting(undefined)
    setWrong(said)
  }

  return (
    <section className="stack" aria-label="The demonstration">
      <div className="notice">
        <i className="mark m-witness" aria-hidden="true" />
        <p>
          <b>This is the demonstration.</b> Invented cars, shops and people. One press signs you in
          as any of them; these doors vanish with it.
        </p>
      </div>
      {wrong !== undefined && (
        <p className="wrong" role="alert">
          {wrong}
        </p>
      )}
      <div className="doors">
        {[...groups].map(([place, of]) => (
          <section key={place} className="sheet stack tight">
            <div className="head">
              <h2>{place}</h2>
            </div>
            {of.map((person) => (
              <div key={person.id} className="stack tight">
                <button
                  type="button"
                  className="btn btn-line btn-wide"
                  disabled={waiting !== undefined}
                  onClick={() => void enter(person.id)}
                >
                  {waiting === person.id ? 'Signing in…' : `Sign in as ${person.name}`}
                </button>
                <p className="small">
                  {person.at}: {can[person.role]}
                </p>
              </div>
            ))}
          </section>
        ))}
      </div>
    </section>
  )
}
