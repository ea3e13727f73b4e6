'use client'
import { useEffect, useState } from 'react'
import { Mark } from '@/app/_ui/mark.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import { cameraWords } from './code-words.ts'
import type { Camera } from './use-camera.ts'

/** After this time without a code the page says how to hold the tag, in ms. */
const HINT_MS = 6000

/** The camera's frame, and in words how it stands. It opens by a press, never by itself. */
export function TagCamera({ camera }: { readonly camera: Camera }) {
  const { state, video, lamp, open, close } = camera
  const isOpen = state === 'open'
  return (
    <section className="sheet stack">
      <Head title="With the camera" />
      <div className={isOpen || state === 'opening' ? 'finder' : 'finder finder-shut'}>
        <video
          ref={video}
          className="finder-view"
          muted
          playsInline
          aria-label="What the camera sees"
        />
        {isOpen && <span className="finder-frame" aria-hidden="true" />}
        {!isOpen && (
          <p className="finder-words">
            <Mark name="camera" /> <span>{cameraWords[state]}</span>
          </p>
        )}
      </div>
      {isOpen && <Looking />}
      {isOpen ? (
        <div className="row">
          {lamp !== null && (
            <button
              type="button"
              className="btn btn-line"
              aria-pressed={lamp.on}
              onClick={lamp.turn}
            >
              {lamp.on ? 'Lamp off' : 'Lamp on'}
            </button>
          )}
          <button type="button" className="btn btn-line" onClick={close}>
            Close the camera
          </button>
        </div>
      ) : (
        <button
          type="button"
          className="btn btn-wide"
          aria-busy={state === 'opening'}
          onClick={() => {
            if (state !== 'opening') open()
          }}
        >
          {state === 'opening' ? 'Opening…' : 'Open the camera'}
        </button>
      )}
    </section>
  )
}

function Looking() {
  const [long, setLong] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setLong(true), HINT_MS)
    return () => clearTimeout(timer)
  }, [])
  return (
    <p role="status">
      {long
        ? 'Nothing found yet. Hold the tag flat, a hand’s width away and in the light, or type its code.'
        : 'Hold the squares of the tag within the frame.'}
    </p>
  )
}
