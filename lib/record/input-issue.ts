import type * as z from 'zod/mini'

/** One thing wrong with an input: the path of the field, and what it should be. */
export interface InputIssue {
  readonly field: string
  readonly message: string
}

/** What the schemas' library says of everything that nobody gave words of its own. */
const WORDLESS = 'Invalid input'

/** Everything wrong with an input, by field; a schema's own words come first, else what kind of thing is expected. */
export const inputIssues = (error: z.core.$ZodError): InputIssue[] =>
  error.issues.map((issue) => ({
    field: issue.path.join('.'),
    message: issue.message === WORDLESS ? expected(issue) : issue.message,
  }))

function expected(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'too_big':
      return `at most ${amount(issue.maximum, issue.origin)}`
    case 'too_small':
      return `at least ${amount(issue.minimum, issue.origin)}`
    case 'invalid_type':
      return kinds[issue.expected] ?? 'something of another kind'
    case 'invalid_value':
      return `one of: ${issue.values.join(', ')}`
    case 'unrecognized_keys':
      return `nothing called ${issue.keys.join(', ')}`
    case 'invalid_format':
      return formats[issue.format] ?? 'something that is written otherwise'
    default:
      return 'something that can be read'
  }
}

function amount(limit: number | bigint, origin: string): string {
  const things = origin === 'string' ? ' letter' : origin === 'array' ? ' thing' : ''
  return things === '' || Number(limit) === 1 ? `${limit}${things}` : `${limit}${things}s`
}

const kinds: { readonly [kind: string]: string | undefined } = {
  string: 'some words',
  number: 'a number',
  int: 'a whole number',
  boolean: 'yes or no',
  array: 'a list',
  object: 'a set of fields',
}
const formats: { readonly [format: string]: string | undefined } = {
  date: 'a day such as 2026-11-25',
  email: 'an e-mail address such as jo@shop.example',
  starts_with: 'the id of something in the record',
  safeint: 'a whole number',
}
