'use client'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { Head } from '@/app/_ui/paper.tsx'
import { getProject } from '@/lib/live/http.ts'
import { ProjectProvider, useProject } from '@/lib/live/project-provider.tsx'
import { useShop } from '@/lib/live/shop-provider.tsx'
import { all } from '@/lib/record/table.ts'
import { exactSpan } from '@/lib/words/dates.ts'
import { assemblyName } from '@/lib/words/names.ts'

/** The open windows of every project that this shop works on, and a claim for any. */
export function Windows() {
  const { projects } = useShop()
  return (
    <section className="sheet stack">
      <Head title="Open windows for us" />
      {projects.length === 0 && (
        <p>No project yet. A lead shop that adds you to its project opens windows here.</p>
      )}
      {projects.map(({ id, name }) => (
        <WindowsOf key={id} project={id} name={name} />
      ))}
    </section>
  )
}

function WindowsOf({ project, name }: { readonly project: string; readonly name: string }) {
  const { data, isPending } = useQuery({
    queryKey: ['windows of', project],
    queryFn: () => getProject(project),
  })
  const claim = (
    <p>
      <Link className="btn btn-line btn-wide" href={`/p/${project}/windows`}>
        Claim a slot for {name}
      </Link>
    </p>
  )
  return (
    <div className="stack tight">
      <h3>{name}</h3>
      {isPending && <p className="soft">Looking…</p>}
      {data?.ok === false && <p>Its windows could not be fetched. The claim page may know more.</p>}
      {data?.ok === true && (
        <ProjectProvider initial={data.data} gone={<p>This project is no longer open to you.</p>}>
          <WindowList />
        </ProjectProvider>
      )}
      {claim}
    </div>
  )
}

function WindowList() {
  const { record, reader } = useProject()
  const open = all(record.openWindows).filter(
    (window) => window.closedAt === null && window.to > reader.now,
  )
  if (open.length === 0) return <p className="soft">No window is open now.</p>
  return (
    <ul className="ruled">
      {open.map((window) => (
        <li key={window.id}>
          <Link className="row-link" href={`/p/${record.id}/windows?window=${window.id}`}>
            {assemblyName(window.assembly, record)}: {exactSpan(window.from, window.to, reader)}
          </Link>
        </li>
      ))}
    </ul>
  )
}
