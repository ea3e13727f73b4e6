import { cookies } from 'next/headers'
import { isPinned, THEME_COOKIE } from './theme.ts'

/** The theme that this device pins, for the first paint; undefined where the device decides. */
export async function wornTheme(): Promise<'card' | 'booth' | undefined> {
  const value = (await cookies()).get(THEME_COOKIE)?.value
  return isPinned(value) ? value : undefined
}
