import type { ReactNode } from 'react'
import { stageNumber } from '@/lib/words/labels.ts'
import { Mark, type MarkName } from './mark.tsx'

/** A stage's card: punched hole, stencilled number, name. `as` is its heading's level. */
export function Card({
  number,
  title,
  under,
  big,
  children,
}: {
  readonly number?: number | undefined
  readonly title: ReactNode
  readonly under?: ReactNode
  readonly big?: boolean
  readonly children?: ReactNode
}) {
  return (
    <article className={big === true ? 'card card-big' : 'card'}>
      <div className="card-head">
        {number !== undefined && <span className="num">{stageNumber(number)}</span>}
        <div className={number === undefined ? 'card-title' : undefined}>
          <h2>{title}</h2>
          {under !== undefined && <p className="small">{under}</p>}
        </div>
      </div>
      {children}
    </article>
  )
}

/** An assembly's tag on its string. */
export const Tag = ({ children }: { readonly children: ReactNode }) => (
  <span className="tag">{children}</span>
)

/** The stamped tin plate: whose car or whose shop this is. */
export function Plate({
  title,
  under,
  children,
}: {
  readonly title: ReactNode
  readonly under?: ReactNode
  readonly children?: ReactNode
}) {
  return (
    <header className="plate">
      <div>
        <h1>{title}</h1>
        {under !== undefined && <p>{under}</p>}
      </div>
      {children !== undefined && <p>{children}</p>}
    </header>
  )
}

/** A stencilled heading over a heavy rule; `note` stands at its end. */
export function Head({
  title,
  note,
  id,
}: {
  readonly title: ReactNode
  readonly note?: ReactNode
  readonly id?: string
}) {
  return (
    <div className="head">
      <h2 id={id}>{title}</h2>
      {note !== undefined && <span className="n">{note}</span>}
    </div>
  )
}

/** White paper with a heading. */
export function Sheet({
  title,
  note,
  id,
  children,
}: {
  readonly title?: ReactNode
  readonly note?: ReactNode
  readonly id?: string
  readonly children: ReactNode
}) {
  return (
    <section className="sheet stack" id={id}>
      {title !== undefined && <Head title={title} note={note} />}
      {children}
    </section>
  )
}

/** A leaf of the duplicate pad, its carbon copy under it. */
export const Slip = ({ children }: { readonly children: ReactNode }) => (
  <div className="pad">
    <article className="slip stack tight">{children}</article>
  </div>
)

/** A signature in one thump. One per card. `fresh` lets it land. */
export function Stamp({
  word,
  lines,
  no,
  fresh,
}: {
  readonly word: string
  readonly lines: readonly string[]
  readonly no?: boolean
  readonly fresh?: boolean
}) {
  const names = ['stamp', no === true ? 'stamp-oxide' : '', fresh === true ? 'stamp-new' : '']
  return (
    <div className={names.filter((name) => name !== '').join(' ')}>
      <b>{word}</b>
      {lines.map((line) => (
        <span key={line}>{line}</span>
      ))}
    </div>
  )
}

/** A strip of masking tape, for one thing at a time; `no` is the same in red oxide. */
export function Notice({
  mark,
  no,
  children,
}: {
  readonly mark?: MarkName
  readonly no?: boolean
  readonly children: ReactNode
}) {
  return (
    <div
      className={no === true ? 'notice notice-oxide' : 'notice'}
      role={no === true ? 'alert' : 'note'}
    >
      {mark !== undefined && <Mark name={mark} />}
      <div className="notice-words">{children}</div>
    </div>
  )
}

/** Nothing here yet, and what to do about it. */
export function EmptyState({
  title,
  children,
}: {
  readonly title: string
  readonly children?: ReactNode
}) {
  return (
    <div className="sheet stack tight empty">
      <h3>{title}</h3>
      {children !== undefined && <div>{children}</div>}
    </div>
  )
}

/** A screen that can't be shown: what is so, and the way out. */
export function ErrorState({
  title,
  children,
}: {
  readonly title: string
  readonly children?: ReactNode
}) {
  return (
    <main className="page stack">
      <Plate title="Fettleyard" />
      <Notice mark="refused" no>
        <p>
          <b>{title}</b>
        </p>
      </Notice>
      {children !== undefined && <div className="sheet stack">{children}</div>}
    </main>
  )
}
