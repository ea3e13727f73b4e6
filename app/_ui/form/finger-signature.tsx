'use client'
import { type PointerEvent, useRef } from 'react'
import { strokesWithin } from '@/lib/custody/signature.ts'

/** Where a finger signs: what is drawn becomes a path of M and L on a 600 × 200 grid. */
export function FingerSignature({
  path,
  onChange,
  disabled,
}: {
  readonly path: string
  readonly onChange: (path: string) => void
  readonly disabled?: boolean
}) {
  const drawing = useRef(false)
  const stroke = useRef('')

  const point = ({ currentTarget, clientX, clientY }: PointerEvent<SVGSVGElement>): string => {
    const box = currentTarget.getBoundingClientRect()
    const x = Math.round(((clientX - box.left) / box.width) * 600)
    const y = Math.round(((clientY - box.top) / box.height) * 200)
    return `${Math.min(600, Math.max(0, x))} ${Math.min(200, Math.max(0, y))}`
  }
  const extend = (more: string) => {
    stroke.current = strokesWithin(stroke.current + more)
    onChange(stroke.current)
  }

  return (
    <div className="stack tight">
      <svg
        className="signature"
        role="img"
        aria-label={path === '' ? 'Empty: sign here with a finger' : 'A signature'}
        viewBox="0 0 600 200"
        preserveAspectRatio="none"
        onPointerDown={(event) => {
          if (disabled === true) return
          event.currentTarget.setPointerCapture(event.pointerId)
          drawing.current = true
          stroke.current = path
          const at = point(event)
          extend(`M${at}L${at}`)
        }}
        onPointerMove={(event) => {
          if (drawing.current) extend(`L${point(event)}`)
        }}
        onPointerUp={() => {
          drawing.current = false
        }}
        onPointerCancel={() => {
          drawing.current = false
        }}
      >
        <path className="signature-line" d="M30 160H570" />
        <path d={path} />
      </svg>
      <button
        type="button"
        className="btn btn-line"
        disabled={path === ''}
        onClick={() => onChange('')}
      >
        Wipe the signature
      </button>
    </div>
  )
}
