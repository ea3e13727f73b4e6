'use client'
import { useMemo } from 'react'
import { encode } from 'uqr'

/** A link as a QR code, black on white in both themes, to hold up to somebody's phone. */
export function QrSquare({ link, says }: { readonly link: string; readonly says: string }) {
  const { path, size } = useMemo(() => squares(link), [link])
  return (
    <svg className="qr" role="img" aria-label={says} viewBox={`0 0 ${size} ${size}`}>
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" shapeRendering="crispEdges" />
    </svg>
  )
}

function squares(link: string): { path: string; size: number } {
  const { data, size } = encode(link, { ecc: 'M', border: 3 })
  const path = data
    .flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : '')))
    .join('')
  return { path, size }
}
