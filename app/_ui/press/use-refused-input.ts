'use client'
import { useEffect, useRef } from 'react'
import type { CommandPress } from '@/lib/live/use-command.ts'
import type { Json } from '@/lib/record/condition.ts'

/** What had been entered in a press that was refused as it arrived, field by field. */
export interface RefusedInput {
  /** A text or a figure as it is typed; empty where there was none. */
  readonly text: (field: string) => string
  readonly list: (field: string) => readonly string[]
  readonly is: (field: string, value: Json) => boolean
}

const read = (input: Json): RefusedInput => {
  const fields = new Map(typeof input === 'object' && input !== null ? Object.entries(input) : [])
  return {
    text(field) {
      const value = fields.get(field)
      return typeof value === 'string' || typeof value === 'number' ? String(value) : ''
    },
    list(field) {
      const value = fields.get(field)
      return Array.isArray(value) ? value.filter((one) => typeof one === 'string') : []
    },
    is: (field, value) => fields.get(field) === value,
  }
}

/** Puts what was refused as it arrived back into its form, once for each refusal: from there it is put right and sent again. */
export function useRefusedInput(
  { here, takeUp }: CommandPress,
  put: (input: RefusedInput) => void,
): void {
  const [first] = here.refused
  const latest = useRef(put)
  useEffect(() => {
    latest.current = put
  })
  const which = first === undefined ? '' : `${first.place} ${first.no?.at ?? ''}`
  // biome-ignore lint/correctness/useExhaustiveDependencies: put back once, not whenever the queue is read anew
  useEffect(() => {
    if (first === undefined) return
    latest.current(read(first.request.input))
    takeUp(first.place)
  }, [which])
}
