'use client'
import { useState } from 'react'
import { SelectField } from '@/app/_ui/form/text-field.tsx'
import { Mark } from '@/app/_ui/mark.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import type { Desk } from '@/app/_ui/use-desk.ts'
import { behindShell, type Difference } from '@/lib/coating/behind.ts'
import { stackOf } from '@/lib/coating/stack.ts'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { atStart } from '@/lib/words/names.ts'
import { coatTitle } from '../coat-words.ts'

/** What a panel was made up beside: its stack and the other's, side by side, with each difference named. */
export function AgainstShell({
  assembly,
  others,
  desk: { record },
}: {
  readonly assembly: Assembly
  /** Other assemblies with coats, the one it belongs to first. */
  readonly others: readonly Assembly[]
  readonly desk: Desk
}) {
  const [chosen, setChosen] = useState<string>(others[0]?.id ?? '')
  const shell = others.find(({ id }) => id === chosen) ?? others[0]
  if (shell === undefined) return null
  const [theirs, own] = [stackOf(record, shell.id), stackOf(record, assembly.id)]
  const found = behindShell(theirs, own)
  return (
    <section className="sheet stack">
      <Head
        title="Side by side"
        note={found.length === 0 ? 'no difference' : String(found.length)}
      />
      {others.length > 1 && (
        <SelectField
          label="Beside"
          value={shell.id}
          onChange={setChosen}
          options={others.map(({ id, name }) => ({ value: id, label: name }))}
        />
      )}
      <div className="beside">
        {[
          { one: shell, stack: theirs },
          { one: assembly, stack: own },
        ].map(({ one, stack }) => (
          <div key={one.id}>
            <h3>{one.name}</h3>
            <ol className="small">
              {stack.map((coat) => (
                <li key={coat.id}>
                  {coatTitle(coat, record)}
                  {coat.batch !== null && `, batch ${coat.batch}`}
                </li>
              ))}
            </ol>
          </div>
        ))}
      </div>
      {found.length === 0 ? (
        <p className="rowmark">
          <Mark name="met" />
          <span>They match: the same layers, the same formula and the same batch of colour.</span>
        </p>
      ) : (
        <ul className="ruled">
          {found.map((difference) => (
            <li key={difference.product} className="rowmark">
              <Mark name="refused" />
              <p>{differenceWords(difference, assembly, shell)}</p>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}

function differenceWords(
  { product, what, shell: on, panel }: Difference,
  assembly: Assembly,
  shell: Assembly,
): string {
  const thing = atStart(product)
  switch (what) {
    case 'missing':
      return `${thing}: on ${shell.name}, not yet on ${assembly.name}`
    case 'extra':
      return `${thing}: on ${assembly.name}, not on ${shell.name}`
    case 'other colour':
      return `${thing}: mixed by another formula`
    case 'other batch':
      return `${thing}: batch ${on?.batch} on ${shell.name}, batch ${panel?.batch} on ${assembly.name}`
    case 'batch not recorded':
      return `${thing}: a batch isn’t recorded, so nobody can say that they match`
  }
}
