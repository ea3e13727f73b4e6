'use client'
import Link from 'next/link'
import { Tag } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { spacedCode, tagCode } from '@/lib/custody/tag-code.ts'
import { slotsOf } from '@/lib/gate/indexes.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { all } from '@/lib/record/table.ts'
import { exactSpan, since } from '@/lib/words/dates.ts'
import { counted } from '@/lib/words/money.ts'
import { assemblyName, atStart, partyName } from '@/lib/words/names.ts'

/** The tag on its string: what it is, its code, who answers for it since when, and where it is. */
export function AssemblyTag({ assembly }: { readonly assembly: Assembly }) {
  const { record, reader, bays } = useProject()
  const on = all(record.assemblies).filter(({ host }) => host === assembly.id)
  const slot = slotsOf(record.slots, assembly.id).find(
    ({ state, from, to }) => state === 'agreed' && from <= reader.now && reader.now < to,
  )
  const link = (id: string) => projectPath(record.id, `assemblies/${id}`)
  return (
    <>
      <article className="tag-big">
        <h2>{assembly.name}</h2>
        {assembly.pieces > 1 && (
          <p>
            A lot of <b>{counted(assembly.pieces, 'piece', 'pieces', reader.locale)}</b>
          </p>
        )}
        <p className="tag-code">{spacedCode(tagCode(assembly.id))}</p>
        <p>
          <b>{atStart(partyName(assembly.custodian, record))}</b> answers for it,{' '}
          {since(assembly.since, reader)}.
        </p>
        {assembly.host !== null && (
          <p>
            Fitted to the{' '}
            <Link className="plain" prefetch={false} href={link(assembly.host)}>
              {assemblyName(assembly.host, record)}
            </Link>
            .
          </p>
        )}
        {slot !== undefined && (
          <p>
            In {bays.find(({ id }) => id === slot.bay)?.name ?? 'its bay'},{' '}
            {exactSpan(slot.from, slot.to, reader)}.
          </p>
        )}
      </article>
      {on.length > 0 && (
        <section className="sheet stack tight">
          <h3>On it</h3>
          <ul className="row">
            {on.map(({ id, name }) => (
              <li key={id}>
                <Link className="tag-link" prefetch={false} href={link(id)}>
                  <Tag>{name}</Tag>
                </Link>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  )
}
