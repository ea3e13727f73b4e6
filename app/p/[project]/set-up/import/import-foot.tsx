'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { TickField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Preview } from '@/lib/build-order/csv/preview.ts'
import { label } from '@/lib/words/labels.ts'

/** The press that imports what is well; where something is left out, only after it was said to be so meant. */
export function ImportFoot({ preview }: { readonly preview: Preview }) {
  const { record } = useDesk()
  const router = useRouter()
  const press = usePress('buildOrder.import', 'The build order is in.')
  const [meant, setMeant] = useState(false)
  const { input, leftOut, faults } = preview
  // A fault of the whole file stands on no line, so nothing tells what it leaves out.
  const whole = faults.some(({ line }) => line === null)
  if (input === null || whole) {
    return (
      <section className="sheet-foot">
        <p>
          <b>Nothing in it can be imported as it stands.</b> Mend the file and choose it again.
        </p>
      </section>
    )
  }
  return (
    <form
      className="sheet-foot stack tight"
      onSubmit={async (event) => {
        event.preventDefault()
        if (await press.send(JSON.parse(JSON.stringify(input))))
          router.push(`/p/${record.id}/build-order`)
      }}
    >
      {leftOut.length > 0 && (
        <TickField
          label={`Leave ${leftOut.length === 1 ? '1 line' : `${leftOut.length} lines`} out`}
          hint="They are named above. The rest comes without them."
          checked={meant}
          onChange={setMeant}
        />
      )}
      <PressFoot
        press={press}
        label={`${label('buildOrder.import')}: ${input.stages.length} ${input.stages.length === 1 ? 'stage' : 'stages'}`}
        disabled={leftOut.length > 0 && !meant}
        note={
          leftOut.length > 0 && !meant
            ? 'Accept what is left out first, or mend the file.'
            : 'All of it or nothing: with links, checks and points.'
        }
      />
    </form>
  )
}
