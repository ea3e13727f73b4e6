'use client'
import type { ReactNode } from 'react'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { fieldsOf, type Sum } from '@/lib/sums/sum.ts'
import { rowsOf, type Typed, type TypedFault, typedAnew, withoutRow } from '@/lib/sums/typed.ts'
import { isUnit, unitsLike } from '@/lib/sums/units.ts'
import { Answers, FieldFault, FigureField } from './figure-field.tsx'

type Field = ReturnType<typeof fieldsOf>[number]
type Column = Field['columns'][number]

interface Filled {
  readonly typed: Typed
  /** Each change is made on what stands there by then: keys may come faster than the screen. */
  readonly change: (by: (typed: Typed) => Typed) => void
  readonly wrong: readonly TypedFault[]
  readonly decimal: '.' | ','
}

/** The fields of a sum. What is wrong stands at its field; what is blank is no fault yet. */
export function SumForm({ sum, ...filled }: Filled & { readonly sum: Sum }) {
  return (
    <form className="sheet stack" noValidate onSubmit={(event) => event.preventDefault()}>
      {fieldsOf(sum).map((field) =>
        field.kind === 'rows' ? (
          <Rows key={field.name} field={field} {...filled} />
        ) : (
          <One key={field.name} meta={field} at={field.name} unitOf={field.name} {...filled} />
        ),
      )}
    </form>
  )
}

/** One field: a figure with its unit, a choice, or words. */
function One({
  meta,
  at,
  unitOf,
  inRow = false,
  helped = true,
  typed,
  change,
  wrong,
  decimal,
}: Filled & {
  readonly meta: Field | Column
  readonly at: string
  /** Whose unit it is typed in: its own, or that of its table. */
  readonly unitOf: string
  readonly inRow?: boolean
  /** Below the first row its words needn't be said again. */
  readonly helped?: boolean
}) {
  const value = typed[at] ?? ''
  const fault = wrong.find(({ key }) => key === at)
  const set = (next: string) => change((now) => typedAnew(now, at, next))
  const help = [helped ? meta.help : '', meta.optional && !inRow ? 'May stay blank.' : '']
    .join(' ')
    .trim()
  const lay = (answer: Typed) => change((now) => ({ ...now, ...answer }))
  if (meta.kind === 'number' || meta.kind === 'numbers') {
    return (
      <FigureField
        label={meta.label}
        unit={meta.unit}
        help={
          meta.kind === 'numbers' && helped && meta.help === ''
            ? `A space between two of them. ${help}`.trim()
            : help
        }
        several={meta.kind === 'numbers'}
        value={value}
        onChange={set}
        decimal={decimal}
        wrong={fault}
        onAnswer={lay}
        chosenUnit={(isUnit(meta.unit) && typed[`${unitOf} unit`]) || meta.unit}
        {...(inRow
          ? {}
          : { onUnit: (unit: string) => change((now) => ({ ...now, [`${unitOf} unit`]: unit })) })}
      />
    )
  }
  if (meta.kind === 'choice') {
    return (
      <Answered fault={fault} onAnswer={lay}>
        <SelectField
          label={meta.label}
          value={value}
          onChange={set}
          options={meta.options}
          none="Choose"
          hint={help === '' ? undefined : help}
          wrong={fault?.message}
        />
      </Answered>
    )
  }
  return (
    <Answered fault={fault} onAnswer={lay}>
      <TextField
        label={meta.label}
        value={value}
        onChange={set}
        hint={help === '' ? undefined : help}
        {...(meta.suggest.length > 0 ? { list: meta.suggest } : {})}
        wrong={fault?.message}
      />
    </Answered>
  )
}

/** A field, and under it what may have been meant by it. */
const Answered = ({
  fault,
  onAnswer,
  children,
}: {
  readonly fault: TypedFault | undefined
  readonly onAnswer: (typed: Typed) => void
  readonly children: ReactNode
}) => (
  <div className="stack tight">
    {children}
    {fault !== undefined && <Answers fault={fault} onAnswer={onAnswer} />}
  </div>
)

/** A table, filled row by row; one unit for all its figures. */
function Rows({ field, ...filled }: Filled & { readonly field: Field }) {
  const { typed, change, wrong } = filled
  const count = rowsOf(typed, field.name)
  const fault = wrong.find(({ key }) => key === field.name)
  const units = new Set(field.columns.map(({ unit }) => unit).filter(isUnit))
  const [unit] = units
  return (
    <fieldset className="picks stack tight">
      <legend>{field.label}</legend>
      {field.help !== '' && <p className="small soft">{field.help}</p>}
      {unit !== undefined && units.size === 1 && (
        <SelectField
          label="Its figures are in"
          value={typed[`${field.name} unit`] || unit}
          onChange={(next) => change((now) => ({ ...now, [`${field.name} unit`]: next }))}
          options={unitsLike(unit).map((sign) => ({ value: sign, label: sign }))}
        />
      )}
      {[...Array(count).keys()].map((row) => (
        <fieldset key={row} className="line-draft sum-row">
          <legend>{row + 1}</legend>
          {field.columns.map((column) => (
            <div
              key={column.name}
              className={column.kind === 'words' || column.kind === 'numbers' ? 'line-text' : ''}
            >
              <One
                meta={column}
                at={`${field.name}.${row}.${column.name}`}
                unitOf={field.name}
                inRow
                helped={row === 0}
                {...filled}
              />
            </div>
          ))}
          {count > 1 && (
            <div className="line-away">
              <button
                type="button"
                className="btn btn-line btn-small"
                onClick={() => change((now) => withoutRow(now, field.name, row))}
              >
                Take row {row + 1} away
              </button>
            </div>
          )}
        </fieldset>
      ))}
      {fault !== undefined && (
        <FieldFault fault={fault} onAnswer={(answer) => change((now) => ({ ...now, ...answer }))} />
      )}
      <button
        type="button"
        className="btn btn-line"
        onClick={() =>
          change((now) => ({ ...now, [`${field.name} rows`]: String(rowsOf(now, field.name) + 1) }))
        }
      >
        Add a row
      </button>
    </fieldset>
  )
}
