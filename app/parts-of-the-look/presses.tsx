'use client'
import { useState } from 'react'
import { HeldFace, type HeldState } from '@/app/_ui/form/held-face.tsx'
import { HeldPress } from '@/app/_ui/form/held-press.tsx'
import { PressFace } from '@/app/_ui/press/press-face.tsx'
import { State, useShownBy } from './both.tsx'

const HELD: readonly (readonly [HeldState, string])[] = [
  ['idle', 'Held press, idle'],
  ['holding', 'Held press, a thumb on it'],
  ['early', 'Held press, let go too early'],
  ['once', 'Held press, Enter once'],
  ['sending', 'Held press, sending'],
]

/** Buttons idle, pressed, in focus, busy, and not this person's; and the press that is held, at every stage. */
export function Presses() {
  const light = useShownBy()
  const [counted, setCounted] = useState(0)
  return (
    <>
      <div className="sheet stack">
        <State name="The main action of a card, and lesser ones">
          <div className="row">
            <PressFace waiting={false}>Start 41</PressFace>
            <PressFace waiting={false} line>
              Decline
            </PressFace>
            <PressFace waiting={false} line small>
              It ended earlier
            </PressFace>
          </div>
        </State>
        <State name="Across the card">
          <PressFace waiting={false} wide>
            Approve £760.80
          </PressFace>
        </State>
        <State name="Pressed, and in focus">
          <div className="row">
            <PressFace waiting={false} shown="pressed">
              Start 41
            </PressFace>
            <PressFace waiting={false} shown="focus">
              Start 41
            </PressFace>
          </div>
        </State>
        <State name="On its way">
          <div className="row">
            <PressFace waiting>Start 41</PressFace>
            <PressFace waiting line>
              Pause 41
            </PressFace>
          </div>
        </State>
        <State name="Not yours to press: beside it stands whose it is">
          <div className="row">
            <button type="button" className="btn" disabled>
              Release the hold
            </button>
            <p>
              <b>Tarn Lane Coachworks</b> releases it.
            </p>
          </div>
        </State>
        <State name="A link as a button, and one in words">
          <div className="row">
            <a className="btn btn-line" href="#presses">
              Open change order 7
            </a>
            <a className="row-link" href="#presses">
              Your account, sign out
            </a>
          </div>
        </State>
        <State name="The rail">
          <nav className="rail" aria-label={`The rail by ${light}`}>
            <a href="#presses" aria-current="page">
              Stages
            </a>
            <a href="#presses">Build order</a>
            <a href="#presses">Handovers</a>
          </nav>
        </State>
      </div>
      <div className="sheet stack">
        {HELD.map(([state, name]) => (
          <State key={state} name={name}>
            <HeldFace
              id={`held-${state}-${light}`}
              label="Hold to sign off"
              hint="As Jory Wenlock for Bexwater Engines."
              state={state}
              onTwice={() => {}}
            />
          </State>
        ))}
        <State name={`Held press, to be tried: it counted ${counted}`}>
          <HeldPress
            label="Hold to try"
            hint="It signs nothing."
            waiting={false}
            onPressed={() => setCounted((before) => before + 1)}
          />
        </State>
        <State name="Held press, not yet">
          <HeldFace
            id={`held-not-yet-${light}`}
            label="Hold to sign off"
            hint="2 checks are missing."
            state="idle"
            disabled
          />
        </State>
      </div>
    </>
  )
}
