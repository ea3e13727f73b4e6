import { learnShopPhone } from './shop-phone.ts'

/** Asks the server what this phone is by now; with no answer it stays what it was. */
export async function refreshShopPhone(): Promise<void> {
  try {
    const response = await fetch('/api/device', { cache: 'no-store' })
    if (response.ok) learnShopPhone(await response.json())
    else if (response.status === 401) learnShopPhone(null)
  } catch {
    // No network: who works in the shop was kept.
  }
}
