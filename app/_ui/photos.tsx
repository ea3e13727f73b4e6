'use client'
import { lazy, type MouseEvent, Suspense, useState } from 'react'
import { filesFolder } from '@/lib/live/files/files-folder.ts'
import { Picture } from './picture.tsx'

/** Where a file of a project is fetched, as far as this person may see it. */
export const fileAddress = (project: string, sha256: string, folder?: string): string =>
  `${folder ?? filesFolder(project)}/${sha256}`

// Comes with the first photo that is opened.
const PhotoViewer = lazy(() =>
  import('./photo-viewer.tsx').then((part) => ({ default: part.PhotoViewer })),
)

interface Group {
  readonly title: string
  readonly files: readonly string[]
}

/** Photos in groups with their captions; each opens over the whole screen, a paper in a page of its own. Nothing where there are none. */
export function Photos({
  project,
  folder,
  groups,
}: {
  readonly project: string
  /** Where they are fetched, if not from the project's own folder. */
  readonly folder?: string
  readonly groups: readonly Group[]
}) {
  const [opened, setOpened] = useState<string | null>(null)
  const [papers, setPapers] = useState<ReadonlySet<string>>(new Set())
  const shown = groups.flatMap(({ title, files }) =>
    files.map((file, n) => ({
      address: fileAddress(project, file, folder),
      caption: files.length === 1 ? title : `${title} · ${n + 1} of ${files.length}`,
    })),
  )
  if (shown.length === 0) return null
  const pictures = shown.filter(({ address }) => !papers.has(address))
  const open = (event: MouseEvent, address: string) => {
    // With a key held the browser's own way is meant: another tab.
    if (event.metaKey || event.ctrlKey || event.shiftKey || papers.has(address)) return
    event.preventDefault()
    setOpened(address)
  }
  return (
    <div className="pics">
      {shown.map(({ address, caption }) => (
        <figure key={`${caption}${address}`}>
          <a
            href={address}
            className="photo"
            target={papers.has(address) ? '_blank' : undefined}
            rel="noreferrer"
            onClick={(event) => open(event, address)}
          >
            <Picture
              address={address}
              caption={caption}
              onPaper={() => setPapers((known) => new Set(known).add(address))}
            />
          </a>
          <figcaption className="small">{caption}</figcaption>
        </figure>
      ))}
      {opened !== null && (
        <Suspense>
          <PhotoViewer
            photos={pictures}
            at={pictures.findIndex(({ address }) => address === opened)}
            onMove={(at) => setOpened(pictures[at]?.address ?? null)}
            onClose={() => setOpened(null)}
          />
        </Suspense>
      )}
    </div>
  )
}
