import * as z from 'zod/mini'

/** An instant in UTC, to the millisecond: `2026-11-25T08:17:22.123Z`. Such texts sort by time. */
export const Instant = z
  .string()
  .check(
    z.regex(
      /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/,
      'a time such as 2026-11-25T08:17:22.123Z',
    ),
  )
  .check(z.refine((text) => isOwnName(text), 'a time that exists'))
  .brand<'Instant'>()
export type Instant = z.infer<typeof Instant>

/** 24:00 and the 30th of February are taken for the next day: such a text would come back from the database as another. */
function isOwnName(text: string): boolean {
  const ms = Date.parse(text)
  return !Number.isNaN(ms) && new Date(ms).toISOString() === text
}

/** A day in the shop's own zone, `2026-11-25`: promises, decide-by days, closures. */
export const CivilDate = z.iso.date().brand<'CivilDate'>()
export type CivilDate = z.infer<typeof CivilDate>

/** Whole minor units (pence, cents), never a float; its project holds the currency. */
export const Minor = z.int().brand<'Minor'>()
export type Minor = z.infer<typeof Minor>

/** A tax rate in hundredths of a per cent: 2000 is 20 %. */
export const TaxRate = z.int().check(z.minimum(0), z.maximum(10_000)).brand<'TaxRate'>()
export type TaxRate = z.infer<typeof TaxRate>

/** ISO 4217 code of a currency. */
export const Currency = z.string().check(z.regex(/^[A-Z]{3}$/, 'a currency code such as GBP'))
export type Currency = z.infer<typeof Currency>

/** IANA name of a time zone. */
export const TimeZone = z
  .string()
  .check(z.refine((name) => isTimeZone(name), 'a time zone such as Europe/London'))
export type TimeZone = z.infer<typeof TimeZone>

function isTimeZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== ''
  } catch {
    return false
  }
}

/** SHA-256 of a file's bytes, in lower-case hexadecimal. */
export const Sha256 = z
  .string()
  .check(z.regex(/^[0-9a-f]{64}$/, 'a SHA-256 in 64 hexadecimal digits'))
  .brand<'Sha256'>()
export type Sha256 = z.infer<typeof Sha256>

const notBlank = z.regex(/\S/, 'at least one letter')

/** One line that a person types: a name, a title. */
export const Line = z.string().check(z.maxLength(200), notBlank)
/** Some sentences that a person types. */
export const Text = z.string().check(z.maxLength(8000), notBlank)
/** Sentences that may be missing: then an empty text. */
export const OptionalText = z.string().check(z.maxLength(8000))
/** Hours of work or of the clock. */
export const Hours = z.number().check(z.minimum(0), z.maximum(100_000))
