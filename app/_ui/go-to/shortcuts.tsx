'use client'
import { showNonce } from './own-nonce.ts'
import { SheetOver } from './sheet-over.tsx'

showNonce()

const keys = [
  ['Ctrl K, ⌘ K', 'Go to a stage, an assembly, a change order, a part, a person or a screen'],
  ['?', 'These keys'],
  ['↑ ↓ Home End', 'Through the rows of a list'],
  ['A letter or a number', 'To the row that begins so'],
  ['Enter', 'Opens the row, presses the button'],
  ['Enter, Enter', 'Signs off or approves: twice, for what can’t be taken back'],
  ['/', 'To the search of the build order'],
  ['F6', 'To what was just done, to take it back; again to return'],
  ['Esc', 'Puts away what lies over the screen'],
  ['Tab', 'From press to press; the first one jumps to the content'],
] as const

/** Every key that this program listens to. */
export function Shortcuts({ onClose }: { readonly onClose: () => void }) {
  return (
    <SheetOver title="Keys" onClose={onClose}>
      <dl className="keys-list">
        {keys.map(([key, does]) => (
          <div key={key}>
            <dt>
              <kbd>{key}</kbd>
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
    </SheetOver>
  )
}
