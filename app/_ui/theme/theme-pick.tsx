'use client'
import { useEffect, useState } from 'react'
import { PickList } from '@/app/_ui/form/pick-list.tsx'
import { isPinned, THEME_COOKIE } from './theme.ts'

type Theme = 'device' | 'card' | 'booth'
const YEAR_SECONDS = 365 * 24 * 3600

function wear(theme: Theme): void {
  const pinned = theme !== 'device'
  const age = pinned ? YEAR_SECONDS : 0
  // biome-ignore lint/suspicious/noDocumentCookie: the cookie store isn't everywhere yet
  document.cookie = `${THEME_COOKIE}=${theme}; path=/; max-age=${age}; samesite=lax`
  if (pinned) document.documentElement.dataset.theme = theme
  else delete document.documentElement.dataset.theme
}

/** Card by day, booth by night, or as the device has it. Kept on this device only. */
export function ThemePick() {
  const [theme, setTheme] = useState<Theme | null>(null)
  useEffect(() => {
    const worn = document.documentElement.dataset.theme
    setTheme(isPinned(worn) ? worn : 'device')
  }, [])
  return (
    <PickList<Theme>
      label="How it looks on this device"
      value={theme}
      onChange={(next) => {
        setTheme(next)
        wear(next)
      }}
      options={[
        { value: 'device', title: 'As the device', text: 'Light or dark, as it is set there.' },
        { value: 'card', title: 'Card', text: 'Light: for the workshop and the sun.' },
        { value: 'booth', title: 'Booth', text: 'Dark: for the evening.' },
      ]}
    />
  )
}
