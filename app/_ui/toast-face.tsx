import { Mark, type MarkName } from './mark.tsx'

/** What a toast says, and the press that takes it back. */
export interface ToastWords {
  readonly text: string
  readonly mark?: MarkName
  readonly undo?: { readonly label: string; readonly press: () => void }
}

/** A line at the foot: what was done, the press that takes it back, and the one that puts the line away. */
export function ToastFace({
  words,
  onClose,
}: {
  readonly words: ToastWords
  readonly onClose: () => void
}) {
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape is a second way to the Close beside it
    <div
      className="toast"
      onKeyDown={(event) => {
        if (event.key === 'Escape') onClose()
      }}
    >
      <Mark name={words.mark ?? 'met'} />
      <p>{words.text}</p>
      {words.undo !== undefined && (
        <button
          type="button"
          className="btn btn-line"
          onClick={() => {
            words.undo?.press()
            onClose()
          }}
        >
          {words.undo.label}
        </button>
      )}
      <button type="button" className="toast-away" onClick={onClose}>
        Close
      </button>
    </div>
  )
}
