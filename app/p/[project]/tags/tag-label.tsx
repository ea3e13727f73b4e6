'use client'
import { Qr } from '@/app/_ui/qr.tsx'
import { useOrigin } from '@/app/_ui/use-origin.ts'
import { spacedCode, tagCode, tagPath } from '@/lib/custody/tag-code.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { counted } from '@/lib/words/money.ts'

/** What is printed and tied to an assembly: the squares that lead to it, its name, its code to type, its car. */
export function TagLabel({ assembly }: { readonly assembly: Assembly }) {
  const { record, reader } = useProject()
  const origin = useOrigin()
  const code = tagCode(assembly.id)
  return (
    <article className="label">
      <Qr
        text={origin === '' ? '' : origin + tagPath(code)}
        alt={`The squares of tag ${spacedCode(code)}: they lead to ${assembly.name}`}
      />
      <div className="stack tight">
        <h3>{assembly.name}</h3>
        {assembly.pieces > 1 && <p>{counted(assembly.pieces, 'piece', 'pieces', reader.locale)}</p>}
        <p className="tag-code">{spacedCode(code)}</p>
        <p className="small">{record.projects.rows.get(record.id)?.name}</p>
      </div>
    </article>
  )
}
