interface Choice {
  readonly value: string
  readonly label: string
}

/** Currencies that this browser knows by name, the commonest for such shops first. */
export function currencies(): readonly Choice[] {
  const names = new Intl.DisplayNames('en-GB', { type: 'currency' })
  const first = ['GBP', 'EUR', 'USD', 'AUD', 'CAD', 'NZD', 'CHF']
  const rest = Intl.supportedValuesOf('currency').filter((code) => !first.includes(code))
  return [...first, ...rest].map((code) => ({ value: code, label: `${code} · ${names.of(code)}` }))
}

/** Time zones that this browser knows, with `own` among them. */
export function timeZones(own: string): readonly Choice[] {
  const zones = new Set([own, ...Intl.supportedValuesOf('timeZone')])
  return [...zones].map((zone) => ({ value: zone, label: zone.replaceAll('_', ' ') }))
}
