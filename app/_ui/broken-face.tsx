import { Notice } from './paper.tsx'

/** What stands in the place of a screen that broke, or that lacks a part of itself. */
export const BrokenFace = ({
  missing,
  onPress,
}: {
  /** A part of it could not be fetched: the page is to be loaded anew. */
  readonly missing: boolean
  readonly onPress: () => void
}) => (
  <div className="stack">
    <Notice mark="refused" no>
      <p>
        <b>
          {missing
            ? 'A part of this screen could not be fetched.'
            : 'This screen could not be shown.'}
        </b>{' '}
        Nothing was changed.
      </p>
    </Notice>
    <div className="row">
      <button type="button" className="btn" onClick={onPress}>
        {missing ? 'Load the page anew' : 'Try again'}
      </button>
    </div>
  </div>
)
