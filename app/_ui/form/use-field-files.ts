'use client'
import { useCallback, useEffect, useEffectEvent, useState } from 'react'
import { hearOfFiles } from '@/lib/live/files/file-news.ts'
import { filesOnPhone, putFile } from '@/lib/live/files/file-shelf.ts'
import { dropFile, filesOfField } from '@/lib/live/files/keep-file.ts'
import { type SentFile, sendWaitingFiles } from '@/lib/live/files/send-waiting-file.ts'
import type { WaitingFile } from '@/lib/live/phone/phone-store.ts'
import type { PersonId } from '@/lib/record/ids.ts'

/** How the list of a field changes, not what it becomes: another photo may have arrived meanwhile. */
export type ListChange = (files: readonly string[]) => readonly string[]

/** What is unsent is tried again after so long, in ms, beside the browser's own word that there is a network. */
const AGAIN_MS = 15_000

/** The files of one field as they lie on this phone. */
export interface FieldFiles {
  readonly shelf: readonly WaitingFile[]
  /** The list as it was when the shelf was read: what it names and the shelf hasn't is the server's. */
  readonly readFor: readonly string[]
  /** How far each address is, 0 to 1; missing where it isn't on its way. */
  readonly progress: ReadonlyMap<string, number>
  /** Why what is unsent isn't going. */
  readonly waitsFor: 'signal' | 'session' | null
  /** Takes one away; gives back what undoes it. */
  readonly leaveOut: (sha256: string) => () => void
}

/** Which field, on whose phone, and what its list names. */
interface Field {
  readonly use: string
  readonly person: PersonId | null
  readonly folder: string
  readonly files: readonly string[]
}

/** Follows the files of a field, sends what waits, and puts those chosen before a reload back on its list. */
export function useFieldFiles(
  { use, person, folder, files }: Field,
  onChange: (change: ListChange) => void,
): FieldFiles {
  const [{ shelf, readFor }, setRead] = useState<Pick<FieldFiles, 'shelf' | 'readFor'>>(unread)
  const [progress, setProgress] = useState<ReadonlyMap<string, number>>(new Map())
  const [waitsFor, setWaitsFor] = useState<'signal' | 'session' | null>(null)
  const list = useEffectEvent(onChange)

  useEffect(() => {
    void filesOfField(use, person).then((found) => {
      if (found.length > 0) list((there) => together(there, found))
    })
  }, [use, person])
  useEffect(() => {
    let gone = false
    // Also what another press let go of: a refused one has its photos on its list again.
    const isHere = (file: WaitingFile) =>
      file.person === person &&
      file.folder === folder &&
      (file.use === use || files.includes(file.sha256))
    const read = async () => {
      const found = (await filesOnPhone()).filter(isHere)
      if (!gone) setRead({ shelf: found, readFor: files })
    }
    const stop = hearOfFiles((news) => {
      if (news === null) void read()
      else setProgress((known) => new Map(known).set(news.address, news.sent))
    })
    void read()
    return () => {
      gone = true
      stop()
    }
  }, [use, person, folder, files])

  const send = useCallback(async () => {
    const sent: SentFile = await sendWaitingFiles(person)
    setWaitsFor(sent.is === 'waits' ? sent.for : null)
  }, [person])

  const unsent = shelf.some(({ bytes, no }) => bytes !== null && no === null)
  useEffect(() => {
    if (!unsent) return
    const go = () => void send()
    go()
    const timer = setInterval(go, AGAIN_MS)
    addEventListener('online', go)
    return () => {
      clearInterval(timer)
      removeEventListener('online', go)
    }
  }, [unsent, send])

  const leaveOut = (sha256: string) => {
    const file = shelf.find((one) => one.sha256 === sha256)
    let at = 0
    onChange((there) => {
      at = there.indexOf(sha256)
      return there.filter((other) => other !== sha256)
    })
    if (file !== undefined) void dropFile(file.address)
    return () => {
      if (file !== undefined) void putFile(file)
      onChange((there) => [...new Set(there.toSpliced(at, 0, sha256))])
    }
  }
  return { shelf, readFor, progress, waitsFor, leaveOut }
}

const unread = { shelf: [], readFor: [] }

const together = (there: readonly string[], found: readonly WaitingFile[]) => [
  ...new Set([...there, ...found.map(({ sha256 }) => sha256)]),
]
