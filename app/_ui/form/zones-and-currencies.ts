import { useSyncExternalStore } from 'react'

interface Choice {
  readonly value: string
  readonly label: string
}

/** The commonest for such shops. */
const FIRST = ['GBP', 'EUR', 'USD', 'AUD', 'CAD', 'NZD', 'CHF']
const names = new Intl.DisplayNames('en-GB', { type: 'currency' })
const named = (codes: readonly string[]): readonly Choice[] =>
  codes.map((code) => ({ value: code, label: `${code} · ${names.of(code)}` }))

const never = () => () => {}
/** Server and browser know other zones and currencies: both first paint what they agree on. */
const useInBrowser = (): boolean =>
  useSyncExternalStore(
    never,
    () => true,
    () => false,
  )

/** Currencies that this browser knows by name, the commonest first. */
export function useCurrencies(): readonly Choice[] {
  const rest = useInBrowser()
    ? Intl.supportedValuesOf('currency').filter((code) => !FIRST.includes(code))
    : []
  return named([...FIRST, ...rest])
}

/** Time zones that this browser knows, with `own` among them. */
export function useTimeZones(own: string): readonly Choice[] {
  const known = useInBrowser() ? Intl.supportedValuesOf('timeZone') : []
  return [...new Set([own, ...known])].map((zone) => ({
    value: zone,
    label: zone.replaceAll('_', ' '),
  }))
}
