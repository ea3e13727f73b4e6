/** Every drawn mark of the look. */
export type MarkName =
  | 'ready'
  | 'waiting'
  | 'work'
  | 'held'
  | 'signed'
  | 'doubt'
  | 'reopened'
  | 'paused'
  | 'ended'
  | 'refused'
  | 'approved'
  | 'declined'
  | 'met'
  | 'conceded'
  | 'witness'
  | 'clock'
  | 'off'
  | 'run'
  | 'unsent'
  | 'away'
  | 'camera'
  | 'scan'
  | 'device'
  | 'caution'

/** A mark in the colour of its text. Words stand beside it; where they can't, `label` says them. */
export function Mark({ name, label }: { readonly name: MarkName; readonly label?: string }) {
  return label === undefined ? (
    <i className={`mark m-${name}`} aria-hidden="true" />
  ) : (
    <i className={`mark m-${name}`} role="img" aria-label={label} title={label} />
  )
}
