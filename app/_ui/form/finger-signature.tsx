'use client'
import { type PointerEvent, useRef } from 'react'
import { CROSS, SIGNATURE, strokesWithin, withoutLastStroke } from '@/lib/custody/signature.ts'

/**
 * Where a finger or a pen signs: what is drawn becomes a path of M and L on its grid. Who can't draw signs with a cross, by a press.
 */
export function FingerSignature({
  path,
  onChange,
  disabled,
}: {
  readonly path: string
  readonly onChange: (path: string) => void
  readonly disabled?: boolean
}) {
  /** The finger that draws: the ball of the hand and a second finger leave no line. */
  const drawing = useRef<number | null>(null)
  const stroke = useRef('')

  const point = ({ currentTarget, clientX, clientY }: PointerEvent<SVGSVGElement>): string => {
    const box = currentTarget.getBoundingClientRect()
    const x = Math.round(((clientX - box.left) / box.width) * SIGNATURE.width)
    const y = Math.round(((clientY - box.top) / box.height) * SIGNATURE.height)
    return `${Math.min(SIGNATURE.width, Math.max(0, x))} ${Math.min(SIGNATURE.height, Math.max(0, y))}`
  }
  const extend = (more: string) => {
    stroke.current = strokesWithin(stroke.current + more)
    onChange(stroke.current)
  }
  const lift = (event: PointerEvent<SVGSVGElement>) => {
    if (drawing.current === event.pointerId) drawing.current = null
  }
  const none = path === '' || disabled === true

  return (
    <div className="stack tight">
      <svg
        className="signature"
        role="img"
        aria-label={saysOf(path)}
        viewBox={`0 0 ${SIGNATURE.width} ${SIGNATURE.height}`}
        preserveAspectRatio="none"
        onPointerDown={(event) => {
          if (disabled === true || drawing.current !== null || event.button !== 0) return
          event.currentTarget.setPointerCapture(event.pointerId)
          drawing.current = event.pointerId
          // A cross is no line to go on with.
          stroke.current = path === CROSS ? '' : path
          const at = point(event)
          extend(`M${at}L${at}`)
        }}
        onPointerMove={(event) => {
          if (drawing.current === event.pointerId) extend(`L${point(event)}`)
        }}
        onPointerUp={lift}
        onPointerCancel={lift}
      >
        <path className="signature-line" d="M30 240H570" />
        <path d={path} />
      </svg>
      <p className="sr-only" role="status">
        {saysOf(path)}
      </p>
      <div className="row">
        <button
          type="button"
          className="btn btn-line"
          disabled={none}
          onClick={() => onChange(withoutLastStroke(path === CROSS ? '' : path))}
        >
          Undo the last stroke
        </button>
        <button type="button" className="btn btn-line" disabled={none} onClick={() => onChange('')}>
          Wipe it
        </button>
        <button
          type="button"
          className="btn btn-line"
          disabled={disabled === true || path === CROSS}
          onClick={() => onChange(CROSS)}
        >
          Sign with a cross
        </button>
      </div>
      <p className="small soft">
        Can’t draw here? A cross beside your name counts as your signature.
      </p>
    </div>
  )
}

function saysOf(path: string): string {
  if (path === '') return 'Empty: sign here with a finger or a pen'
  return path === CROSS ? 'Signed with a cross' : 'A signature'
}
