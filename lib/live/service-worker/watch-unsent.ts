import { outboxChannel } from '../outbox/outbox-channel.ts'
import { openPhoneStore } from '../phone/phone-store.ts'

/** How often the count is looked at besides, in ms: photos arrive without a word. */
const LOOK_MS = 3_000

/**
 * Tells how much waits on this phone for the server: commands that have no answer yet, and photos on their way. What was refused waits for
 * a person, and isn't counted.
 * @returns ends it
 */
export function watchUnsent(hear: (waiting: number) => void): () => void {
  const channel = outboxChannel()
  const look = () => void countUnsent().then(hear, () => hear(0))
  channel.hear(look)
  const timer = setInterval(look, LOOK_MS)
  look()
  return () => {
    clearInterval(timer)
    channel.close()
  }
}

async function countUnsent(): Promise<number> {
  const phone = await openPhoneStore()
  try {
    const commands = (await phone.getAll('unsent')).filter(({ no }) => no === null)
    const files = (await phone.getAll('files')).filter(
      ({ bytes, no }) => bytes !== null && no === null,
    )
    return commands.length + files.length
  } finally {
    phone.close()
  }
}
