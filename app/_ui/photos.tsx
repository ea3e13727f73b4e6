'use client'
import { Picture } from './picture.tsx'

/** Where a file of a project is fetched, as far as this person may see it. */
export const fileAddress = (project: string, sha256: string, folder?: string): string =>
  `${folder ?? `/api/projects/${project}/files`}/${sha256}`

interface Group {
  readonly title: string
  readonly files: readonly string[]
}

/** Photos in groups with their captions; each opens the full picture. Nothing where there are none. */
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
  const shown = groups.flatMap(({ title, files }) =>
    files.map((file, n) => ({
      file,
      caption: files.length === 1 ? title : `${title} · ${n + 1} of ${files.length}`,
    })),
  )
  if (shown.length === 0) return null
  return (
    <div className="pics">
      {shown.map(({ file, caption }) => (
        <figure key={`${caption}${file}`}>
          <a href={fileAddress(project, file, folder)} className="photo">
            <Picture address={fileAddress(project, file, folder)} caption={caption} />
          </a>
          <figcaption className="small">{caption}</figcaption>
        </figure>
      ))}
    </div>
  )
}
