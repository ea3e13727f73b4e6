'use client'
import { useEffect, useState } from 'react'

let hydrated = false

/** Whether this component came with the page's HTML: it and its like wait for their code without a waiting line. */
export function useServed(): boolean {
  const [served] = useState(() => !hydrated)
  useEffect(() => {
    hydrated = true
  }, [])
  return served
}
