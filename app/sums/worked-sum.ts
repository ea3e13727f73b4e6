import * as z from 'zod/mini'
import { type Figure, fieldsOf, type Sum, shownFigure } from '@/lib/sums/sum.ts'
import { rowsOf, type Typed } from '@/lib/sums/typed.ts'
import { isUnit } from '@/lib/sums/units.ts'
import { keepInTab, keptInTab } from './carried.ts'

const typedKey = (sum: string): string => `fettleyard sum ${sum}`

/** What was typed in a sum in this tab before. */
export function typedBefore(sum: string): Typed {
  const read = z.record(z.string(), z.string()).safeParse(keptInTab(typedKey(sum)))
  return read.success ? read.data : {}
}

/** Keeps what is typed for as long as the tab is there. */
export const keepTyped = (sum: string, typed: Typed): void => keepInTab(typedKey(sum), typed)

/** What was typed, in words, field by field: `Relative humidity 60 %`. */
export function enteredLines(sum: Sum, typed: Typed): readonly string[] {
  return fieldsOf(sum).flatMap((field) => {
    const unit = (own: string) => (isUnit(own) ? typed[`${field.name} unit`] || own : own)
    if (field.kind !== 'rows') {
      const text = typed[field.name]?.trim() ?? ''
      if (text === '') return []
      const said = field.options.find(({ value }) => value === text)?.label ?? text
      return [`${field.label} ${said} ${unit(field.unit)}`.trim()]
    }
    return [...Array(rowsOf(typed, field.name)).keys()].flatMap((row) => {
      const cells = field.columns.flatMap((column) => {
        const text = typed[`${field.name}.${row}.${column.name}`]?.trim() ?? ''
        if (text === '') return []
        return [
          column.kind === 'words' ? text : `${column.label} ${text} ${unit(column.unit)}`.trim(),
        ]
      })
      return cells.length === 0 ? [] : [cells.join(', ')]
    })
  })
}

/** A figure as it is read: with the reader's decimal sign, and its unit. */
export const figureSaid = (figure: Figure, decimal: '.' | ','): string => {
  const shown = shownFigure(figure).replace('-', '−')
  const figures = typeof figure.value === 'number' ? shown.replace('.', decimal) : shown
  return `${figures} ${figure.unit}`.trim()
}
