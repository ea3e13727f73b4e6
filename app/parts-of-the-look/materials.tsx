const SWATCHES = [
  ['floor', 'ink', 'Floor'],
  ['card', 'ink', 'Card'],
  ['tag', 'ink', 'Tag'],
  ['sheet', 'ink', 'Sheet'],
  ['copy', 'ink', 'Carbon copy'],
  ['tin', 'ink', 'Tin'],
  ['tape', 'ink', 'Tape'],
  ['slate', 'chalk', 'Slate'],
  ['slot', 'on-slot', 'Slot'],
  ['ink', 'on-ink', 'Ink'],
  ['carbon', 'on-carbon', 'Carbon'],
  ['oxide', 'on-oxide', 'Oxide'],
  ['stamp', 'on-ink', 'Stamp'],
] as const

/** Every token that words lie on, with what they are written in. */
export function Materials() {
  return (
    <>
      <ul className="swatches">
        {SWATCHES.map(([on, ink, name]) => (
          <li key={on} style={{ background: `var(--${on})`, color: `var(--${ink})` }}>
            <b>{name}</b>
            <br />
            <span className="small">--{on}</span>
          </li>
        ))}
      </ul>
      <div className="sheet stack">
        <h1>Stencil, page head</h1>
        <h2>Stencil, section head</h2>
        <p className="big">Big words: 1,250 rev/min, 3.9 bar, £14,212.80</p>
        <p>
          Body words. A <a href="#materials">way to these tokens</a> among them, <b>strong</b> ones,
          and Čeněk Żółć.
        </p>
        <p className="small">Small words, 15 px.</p>
        <p className="small soft">Small and soft: the second line.</p>
        <p className="num num-big">0123 456 789</p>
      </div>
    </>
  )
}
