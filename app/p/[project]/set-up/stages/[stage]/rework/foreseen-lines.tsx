'use client'
import { useProject } from '@/lib/live/project-provider.tsx'
import { sentence } from '@/lib/words/sentence.ts'
import type { Foreseen } from './use-foreseen.ts'

/** What the press under it would do, before it is done; what would refuse it. */
export function ForeseenLines({ foreseen }: { readonly foreseen: Foreseen }) {
  const { record, reader } = useProject()
  if (foreseen === null) return null
  return (
    <div className="shim stack tight" role="status">
      <p>
        <b>{foreseen.is === 'effect' ? 'What it would do' : 'It would be refused'}</b>
      </p>
      {foreseen.is === 'effect'
        ? foreseen.lines.map((line) => <p key={line}>{line}</p>)
        : foreseen.conditions.map((condition) => (
            <p key={`${condition.rule} ${condition.entity}`}>
              {sentence(condition, record, reader).fact}{' '}
              {sentence(condition, record, reader).detail}
            </p>
          ))}
    </div>
  )
}
