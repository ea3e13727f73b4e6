/** The browser's own question whether to put the page among the phone's programs, held back until the person asks for it. */
interface InstallOffer extends Event {
  readonly prompt: () => Promise<unknown>
}

declare global {
  interface WindowEventMap {
    beforeinstallprompt: InstallOffer
  }
}

let offer: InstallOffer | null = null
const listeners = new Set<() => void>()

function hold(next: InstallOffer | null): void {
  offer = next
  for (const listener of listeners) listener()
}

/** Listens from the first moment: a browser makes its offer once a page. */
export function catchInstallOffer(): void {
  window.addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault()
    hold(event)
  })
  window.addEventListener('appinstalled', () => hold(null))
}

/** Whether the browser has made its offer, for `useSyncExternalStore`. */
export const installOffer = {
  subscribe(listener: () => void): () => void {
    listeners.add(listener)
    return () => listeners.delete(listener)
  },
  isThere: (): boolean => offer !== null,
  /** Shows the browser's question; it may be asked once. */
  async take(): Promise<void> {
    const held = offer
    hold(null)
    await held?.prompt()
  },
}
