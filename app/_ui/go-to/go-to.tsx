'use client'
import { usePathname } from 'next/navigation'
import { type ComponentType, useCallback, useEffect, useState } from 'react'
import { useToast } from '@/app/_ui/toast.tsx'
import { visited } from './recent.ts'

interface Over {
  readonly onClose: () => void
  readonly onKeys: () => void
}

/** What draws them comes when one is first opened, never before. */
const loads = {
  palette: async (): Promise<ComponentType<Over>> => (await import('./palette.tsx')).Palette,
  keys: async (): Promise<ComponentType<Over>> => (await import('./shortcuts.tsx')).Shortcuts,
} as const

const types = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable || target.closest('input, textarea, select') !== null)

/** At a desk: Ctrl or Command with K, or its button, opens the way to everywhere; a question mark shows all keys. */
export function GoTo() {
  const path = usePathname()
  const toast = useToast()
  const [Open, setOpen] = useState<ComponentType<Over>>()
  useEffect(() => visited(path), [path])
  const close = useCallback(() => setOpen(undefined), [])
  const open = useCallback(
    async (what: keyof typeof loads) => {
      try {
        const Loaded = await loads[what]()
        setOpen(() => Loaded)
      } catch {
        toast({
          mark: 'away',
          text: 'That comes with a network only. The places above work as ever.',
        })
      }
    },
    [toast],
  )
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const goes =
        (event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === 'k'
      if (!goes && (event.key !== '?' || types(event.target))) return
      event.preventDefault()
      void open(goes ? 'palette' : 'keys')
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  }, [open])
  return (
    <>
      <button
        type="button"
        className="rail-go desk"
        aria-haspopup="dialog"
        aria-keyshortcuts="Control+K Meta+K"
        onClick={() => void open('palette')}
      >
        Go to… <kbd>Ctrl K</kbd>
      </button>
      {Open !== undefined && <Open onClose={close} onKeys={() => void open('keys')} />}
    </>
  )
}
