'use client'
import { type RefObject, useCallback, useEffect, useRef, useState } from 'react'
import { type Eye, openEye } from './open-eye.ts'

/** How the camera stands; `unable`: this browser gives none to this page. */
export type CameraState = 'closed' | 'opening' | 'open' | 'refused' | 'none' | 'busy' | 'unable'

export interface Camera {
  readonly state: CameraState
  readonly video: RefObject<HTMLVideoElement | null>
  /** Null where the camera has no lamp. */
  readonly lamp: { readonly on: boolean; readonly turn: () => void } | null
  readonly open: () => void
  readonly close: () => void
}

/** Pause between two looks, in ms: several a second, and the thumb still finds the page quick. */
const LOOK_MS = 180

/** A camera that looks for QR codes while it is open. It is opened by a press only, and closes with the page. */
export function useCamera(seen: (text: string) => void): Camera {
  const [state, setState] = useState<CameraState>('closed')
  const [lampOn, setLampOn] = useState<boolean | null>(null)
  const video = useRef<HTMLVideoElement>(null)
  const stream = useRef<MediaStream | null>(null)
  const turn = useRef(0)
  const whenSeen = useRef(seen)
  useEffect(() => {
    whenSeen.current = seen
  })

  const close = useCallback((after: CameraState = 'closed') => {
    turn.current += 1
    for (const track of stream.current?.getTracks() ?? []) track.stop()
    stream.current = null
    setLampOn(null)
    setState(after)
  }, [])

  const open = useCallback(async () => {
    const mine = ++turn.current
    setState('opening')
    try {
      if (!('mediaDevices' in navigator)) {
        setState('unable')
        return
      }
      const got = await navigator.mediaDevices.getUserMedia({
        audio: false,
        video: { facingMode: 'environment', width: { ideal: 1280 }, height: { ideal: 720 } },
      })
      if (mine !== turn.current || video.current === null) {
        for (const track of got.getTracks()) track.stop()
        return
      }
      stream.current = got
      const [track] = got.getVideoTracks()
      // Taken away meanwhile, in the browser's settings or by a call.
      track?.addEventListener('ended', () => {
        if (mine === turn.current) close('busy')
      })
      setLampOn(track?.getCapabilities?.().torch === true ? false : null)
      video.current.srcObject = got
      await video.current.play()
      const eye = await openEye()
      if (mine !== turn.current) return
      setState('open')
      void look(
        eye,
        video.current,
        () => mine === turn.current,
        (text) => whenSeen.current(text),
      )
    } catch (error) {
      if (mine === turn.current) close(why(error))
    }
  }, [close])

  useEffect(() => {
    // A camera that nobody looks at is closed: the light beside it goes out.
    const hidden = () => {
      if (document.hidden && stream.current !== null) close()
    }
    document.addEventListener('visibilitychange', hidden)
    return () => {
      document.removeEventListener('visibilitychange', hidden)
      turn.current += 1
      for (const track of stream.current?.getTracks() ?? []) track.stop()
    }
  }, [close])

  const turnLamp = () => {
    const on = lampOn !== true
    const [track] = stream.current?.getVideoTracks() ?? []
    void track
      ?.applyConstraints({ advanced: [{ torch: on }] })
      .then(() => setLampOn(on))
      .catch(() => setLampOn(null))
  }
  return {
    state,
    video,
    lamp: lampOn === null ? null : { on: lampOn, turn: turnLamp },
    open: () => void open(),
    close: () => close(),
  }
}

async function look(
  eye: Eye,
  video: HTMLVideoElement,
  goesOn: () => boolean,
  seen: (text: string) => void,
): Promise<void> {
  while (goesOn()) {
    const text = await eye(video).catch(() => null)
    if (text !== null && goesOn()) seen(text)
    await new Promise((done) => setTimeout(done, LOOK_MS))
  }
}

/** Names of the faults are the standard's (Media Capture and Streams, W3C). */
function why(error: unknown): CameraState {
  if (!(error instanceof DOMException)) return 'unable'
  switch (error.name) {
    case 'NotAllowedError':
    case 'SecurityError':
      return 'refused'
    case 'NotFoundError':
    case 'OverconstrainedError':
      return 'none'
    case 'NotReadableError':
    case 'AbortError':
      return 'busy'
    default:
      return 'unable'
  }
}
