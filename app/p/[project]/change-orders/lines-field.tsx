'use client'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import type { LineDraft, LineFaults } from './lines-draft.ts'

/** Lines as they are typed: quantity × price of one, or a lump sum; minus for what falls away. */
export function LinesField({
  lines,
  onChange,
  onMore,
  faults,
}: {
  readonly lines: readonly LineDraft[]
  readonly onChange: (lines: readonly LineDraft[]) => void
  readonly onMore: () => void
  readonly faults: ReadonlyMap<string, LineFaults>
}) {
  const put = (key: string, part: Partial<LineDraft>) =>
    onChange(lines.map((line) => (line.key === key ? { ...line, ...part } : line)))
  return (
    <div className="stack">
      {lines.map((line, n) => {
        const wrong = faults.get(line.key) ?? {}
        return (
          <fieldset key={line.key} className="line-draft">
            <legend>Line {n + 1}</legend>
            <div className="line-text">
              <TextField
                label="What"
                value={line.text}
                onChange={(text) => put(line.key, { text })}
                wrong={wrong.text}
              />
            </div>
            <TextField
              label="Quantity"
              inputMode="decimal"
              value={line.quantity}
              onChange={(quantity) => put(line.key, { quantity })}
              wrong={wrong.quantity}
            />
            <TextField
              label="Unit"
              value={line.unit}
              onChange={(unit) => put(line.key, { unit })}
              list={['h', 'pieces', 'l', 'm', 'kg']}
            />
            <TextField
              label={line.quantity.trim() === '' ? 'Price' : 'Price of one'}
              value={line.price}
              onChange={(price) => put(line.key, { price })}
              wrong={wrong.price}
            />
            <TextField
              label="Tax, per cent"
              inputMode="decimal"
              value={line.taxRate}
              onChange={(taxRate) => put(line.key, { taxRate })}
              wrong={wrong.taxRate}
            />
            <button
              type="button"
              className="btn btn-line line-away"
              onClick={() => onChange(lines.filter(({ key }) => key !== line.key))}
            >
              Strike line {n + 1}
            </button>
          </fieldset>
        )
      })}
      <button type="button" className="btn btn-line btn-wide" onClick={onMore}>
        Another line
      </button>
    </div>
  )
}
