'use client'
import { useEffect, useState } from 'react'

/** Modules of paper that a reader needs around the squares (ISO/IEC 18004: four). */
const QUIET = 4

interface Squares {
  readonly side: number
  readonly path: string
}

/** A run of dark modules is one bar: few, long marks print clean. */
function squaresOf(rows: readonly (readonly boolean[])[]): Squares {
  const bars = rows.flatMap((row, y) => {
    const found: string[] = []
    for (let x = 0; x < row.length; x++) {
      const from = x
      while (row[x] === true) x++
      if (x > from) found.push(`M${from} ${y}h${x - from}v1h-${x - from}z`)
    }
    return found
  })
  return { side: rows.length, path: bars.join('') }
}

/** A text as a QR code, dark on white in both themes; blank for none. What draws it is fetched with the first one. */
export function Qr({ text, alt }: { readonly text: string; readonly alt: string }) {
  const [squares, setSquares] = useState<Squares | null>(null)
  useEffect(() => {
    if (text === '') return
    let here = true
    void import('qr')
      .then(({ encodeQR }) => {
        if (here) setSquares(squaresOf(encodeQR(text, 'raw', { border: QUIET, ecc: 'medium' })))
      })
      // Without a network it isn't there yet; the code under it can be typed.
      .catch(() => undefined)
    return () => {
      here = false
    }
  }, [text])
  return (
    <svg
      className="squares"
      viewBox={`0 0 ${squares?.side ?? 33} ${squares?.side ?? 33}`}
      role="img"
      aria-label={alt}
      shapeRendering="crispEdges"
    >
      {squares !== null && <path d={squares.path} />}
    </svg>
  )
}
