'use client'
import Link from 'next/link'
import { useMemo, useState } from 'react'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Preview } from '@/lib/build-order/csv/preview.ts'
import type { ReadingContext } from '@/lib/build-order/csv/read-build-order.ts'
import { namedPersons } from '@/lib/build-order/named-persons.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { ImportFoot } from './import-foot.tsx'
import { type Accepted, PreviewSheet } from './preview-sheet.tsx'

type Read = (text: string, context: ReadingContext) => Preview

/** A build order from a spreadsheet: read on this device, shown with all that is wrong, and imported whole or not at all. */
export function ImportScreen() {
  const { record, reader, standing } = useDesk()
  const { members } = useProject()
  const [file, setFile] = useState<{ readonly name: string; readonly text: string }>()
  const [read, setRead] = useState<{ readonly with: Read }>()
  const [accept, setAccept] = useState<Accepted>({ shops: [], existing: false })
  const [wrong, setWrong] = useState<string>()

  const people = useMemo(
    () => namedPersons(record, members, reader.people),
    [record, members, reader.people],
  )
  const preview = useMemo(
    () =>
      file === undefined || read === undefined
        ? undefined
        : read.with(file.text, { record, people, accept }),
    [file, read, record, people, accept],
  )

  const open = async (chosen: File) => {
    setWrong(undefined)
    setAccept({ shops: [], existing: false })
    try {
      const [{ decodeText }, { readBuildOrder }, bytes] = await Promise.all([
        import('@/lib/build-order/csv/decode-text.ts'),
        import('@/lib/build-order/csv/read-build-order.ts'),
        chosen.arrayBuffer(),
      ])
      setRead({ with: readBuildOrder })
      setFile({ name: chosen.name, text: decodeText(new Uint8Array(bytes)) })
    } catch {
      setWrong('The file could not be opened. Choose it again; nothing was changed.')
    }
  }

  if (!standing.managesLead) {
    return <EmptyState title="The lead imports the build order.">Ask them to.</EmptyState>
  }
  return (
    <div className="stack">
      <p className="way">
        <Link href={`/p/${record.id}/set-up`}>Project set-up</Link>
      </p>
      <section className="sheet stack">
        <Head title="Import a build order" />
        <p>
          A CSV file with the headings{' '}
          <b>stage, shop, assembly, hours least, hours likely, hours most, after, checks, hold</b>,
          in any order. Several things in a cell are separated by |. Commas or semicolons, any
          quotes, as a spreadsheet saves it.
        </p>
        <div className="field">
          <label htmlFor="build-order-file">The file</label>
          <input
            id="build-order-file"
            type="file"
            accept=".csv,.txt,text/csv,text/plain"
            onChange={(event) => {
              const chosen = event.target.files?.[0]
              if (chosen !== undefined) void open(chosen)
              event.target.value = ''
            }}
          />
          <p className="hint">It is read on this device first. Nothing is imported yet.</p>
        </div>
        {wrong !== undefined && (
          <p className="wrong" role="alert">
            {wrong}
          </p>
        )}
      </section>
      {preview !== undefined && file !== undefined && (
        <>
          <PreviewSheet name={file.name} preview={preview} accept={accept} onAccept={setAccept} />
          <ImportFoot preview={preview} />
        </>
      )}
    </div>
  )
}
