/** How far a file is on its way, 0 to 1. */
export interface FileProgress {
  readonly address: string
  readonly sent: number
}

type News = FileProgress | null
const CHANNEL = 'fettleyard-files'
const listeners = new Set<(news: News) => void>()
let channel: BroadcastChannel | undefined

/** Another tab or the service worker may do the sending: its news come by a channel. */
function open(): BroadcastChannel | undefined {
  if (channel === undefined && typeof BroadcastChannel !== 'undefined') {
    channel = new BroadcastChannel(CHANNEL)
    channel.onmessage = ({ data }: MessageEvent<News>) => {
      for (const listener of listeners) listener(data)
    }
  }
  return channel
}

function tell(news: News): void {
  for (const listener of listeners) listener(news)
  open()?.postMessage(news)
}

/** Says that what lies on the phone is another than before. */
export const tellFilesChanged = (): void => tell(null)

/** Says how far a file is on its way. */
export const tellProgress = (progress: FileProgress): void => tell(progress)

/** Hears of both, also from other tabs: null is a change, all else how far one is. Gives back what ends it. */
export function hearOfFiles(listener: (news: News) => void): () => void {
  listeners.add(listener)
  open()
  return () => {
    listeners.delete(listener)
    if (listeners.size > 0) return
    channel?.close()
    channel = undefined
  }
}
