/** In the place of a screen that is on its way. */
export const Loading = ({ what }: { readonly what: string }) => (
  <div className="sheet" role="status">
    <p>Fetching {what}…</p>
  </div>
)
