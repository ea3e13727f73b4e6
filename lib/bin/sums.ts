import { allSums, sumNamed } from '../sums/all-sums.ts'
import { type Answer, fieldsOf, type Sum, shownFigure } from '../sums/sum.ts'

// `npm run sums -- NAME '{json}'` works one sum; `npm run sums -- --list` names them all with their fields.

const [name, input = '{}'] = process.argv.slice(2)

const listed = (sum: Sum) => ({
  name: sum.name,
  title: sum.title,
  group: sum.group,
  formula: sum.formula,
  source: sum.source,
  tolerance: sum.tolerance,
  fields: fieldsOf(sum).map(({ name: field, kind, label, unit, optional, options, columns }) => ({
    field,
    kind,
    label,
    unit,
    optional,
    ...(options.length > 0 && { choose: options.map(({ value }) => value) }),
    ...(columns.length > 0 && {
      columns: columns.map((column) => ({
        field: column.name,
        kind: column.kind,
        label: column.label,
        unit: column.unit,
        optional: column.optional,
      })),
    }),
  })),
})

function fail(message: string): void {
  console.log(JSON.stringify({ outcome: 'refused', faults: [{ field: '', message, ask: false }] }))
  process.exitCode = 2
}

/** A result with all that makes it evidence: as written, from what, how, after whom. */
const whole = (sum: Sum, input: unknown, answer: Extract<Answer, { outcome: 'result' }>) => ({
  ...answer,
  figures: answer.figures.map((figure) => ({ ...figure, shown: shownFigure(figure) })),
  input,
  formula: sum.formula,
  source: sum.source,
  tolerance: sum.tolerance,
})

function work(sum: Sum): void {
  let raw: unknown
  try {
    raw = JSON.parse(input)
  } catch {
    fail(`The input is no JSON: ${input}`)
    return
  }
  const answer = sum.work(raw)
  console.log(
    JSON.stringify({
      sum: sum.name,
      ...(answer.outcome === 'result' ? whole(sum, raw, answer) : answer),
    }),
  )
  if (answer.outcome === 'refused') process.exitCode = 1
}

const sum = name === undefined ? undefined : sumNamed(name)
if (name === undefined || name === '--list')
  console.log(JSON.stringify(allSums.map(listed), null, 2))
else if (sum === undefined) fail(`There is no sum ${name}. See npm run sums -- --list.`)
else work(sum)
